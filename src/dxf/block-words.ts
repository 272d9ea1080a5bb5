/** What the words of a block say. */
import { FACES } from '../pattern/face-up';
import type { Cutting } from '../pattern/piece';
import { D6673_LAYERS } from './d6673-layers';
import { UNITS } from './drawing-unit';
import type { PlacedBlock } from './placed-blocks';
import type { DxfEntity } from './entity';
import { RULE_WORDS } from './rule-words';
import { joinless } from './seam-words';

/** The name of the piece that words give, or that of the block. */
export function pieceTitle({ name, entities }: Pick<PlacedBlock, 'name' | 'entities'>): string {
  return joinless(wordsAfter(entities, 'PIECE NAME') ?? name);
}

/** What stands after `PIECE NAME:` and the like. */
export function wordsAfter(entities: readonly DxfEntity[], title: string): string | undefined {
  const start = `${title}:`;
  for (const { type, words } of entities) {
    if (type !== 'TEXT' || !words.toUpperCase().startsWith(start)) continue;
    const own = words.slice(start.length).trim();
    if (own !== '') return own;
  }
  return undefined;
}

const QUANTITY = /^QUANTITY:\s*(\d+)( ON FOLD)?(?: OF (\w+))?$/iu;

const SIDE_UP = /^(RIGHT|WRONG) SIDE UP: (\w+)$/iu;

/**
 * How often a piece is cut from which cloth, and which side of it is up, as far as its words say it; the other side
 * where the block is `mirrored` in its place.
 */
export function cuttingsOf(said: readonly string[], mirrored: boolean): readonly Cutting[] {
  const faces = new Map(
    said.flatMap((words) => {
      const [, face, cloth = ''] = SIDE_UP.exec(words) ?? [];
      if (face === undefined) return [];
      const up = FACES.find((known) => (known === face.toLowerCase()) !== mirrored);
      return up === undefined ? [] : [[cloth.toLowerCase(), up] as const];
    }),
  );
  return said.flatMap((words): readonly Cutting[] => {
    const parts = QUANTITY.exec(words);
    if (parts === null) return [];
    const stated = parts[3]?.toLowerCase();
    const cloth = stated === 'lining' || stated === 'interfacing' ? stated : 'shell';
    const up = faces.get(cloth);
    return [{ cloth, count: Number(parts[1]), onFold: parts[2] !== undefined, ...(up && { up }) }];
  });
}

/** Words of a block that are read, or that say nothing of the shape. */
const PLAIN = [/^(PIECE NAME|SIZE|SAMPLE SIZE|STYLE NAME|NET LINE)\b/iu, UNITS, QUANTITY, SIDE_UP];
/** Words that name a place of the outline. */
const PLACED = /^(EDGE: |DART: |DOUBLE NOTCH$)/u;

/** Whether words of a block are known; those with a place only at a point of a line. */
export function isKnownWord(entity: DxfEntity, isMarked: (entity: DxfEntity) => boolean): boolean {
  const { words, layer } = entity;
  // Rules that have no point are told of by who matches them.
  if (RULE_WORDS.test(words)) return true;
  if (PLACED.test(words)) return layer === D6673_LAYERS.annotation && isMarked(entity);
  return PLAIN.some((known) => known.test(words));
}
