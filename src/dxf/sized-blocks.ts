/** Drawings that show a piece in more than the sample size, or in another: those are not graded. */
import { InputError } from '../errors';
import { pointBounds } from '../geometry/bounds';
import { pieceTitle, wordsAfter } from './block-words';
import type { PlacedBlock } from './placed-blocks';
import type { RuleTable } from './rule-table';
import { sizeWord } from './rule-table';
import { RULE_WORDS } from './rule-words';

/**
 * Throws InputError `dxf-malformed` for a nest, of which each size of a piece is a block of its own,
 * for pieces of one name that nothing tells apart or that only grow, and for a piece in another than
 * the sample size.
 */
export function refuseSized(
  blocks: readonly PlacedBlock[],
  { sizes, sample }: Pick<RuleTable, 'sizes' | 'sample'>,
  file: string,
): void {
  const shown = blocks.map((block) => labeled(block, sizes));
  const groups = new Map<string, Labeled[]>();
  for (const own of shown) {
    const key = (isOneOfSizes(own, shown) ? own.stem : own.piece).toUpperCase();
    groups.set(key, [...(groups.get(key) ?? []), own]);
  }
  for (const same of groups.values()) {
    const [first, second] = same;
    if (first === undefined || second === undefined) continue;
    const labels = same.map(({ said, ending, block }) => said ?? ending ?? block.name);
    const isNest = new Set(labels).size === same.length && labels.every((own) => isIn(sizes, own));
    throw new InputError('dxf-malformed', {
      what: isNest
        ? `the drawing is a nest, graded already: ${first.stem} is there in ${same.length} sizes`
        : `${same.length} blocks are the piece ${first.piece}, and nothing tells them apart`,
      allowed: `one block for each piece, in the sample size ${sample}`,
      got: labels.join(', '),
      place: { file, row: second.block.row },
    });
  }
  refuseGrowing(shown, sample, file);
  const other = shown.find(({ said }) => said !== undefined && !isIn([sample], said));
  if (other === undefined) return;
  throw new InputError('dxf-malformed', {
    what: `the piece ${other.piece} is in another size than the rule table counts from`,
    allowed: `the sample size ${sample}`,
    got: other.said ?? '',
    place: { file, row: other.block.row },
  });
}

/**
 * Pieces such as `FRONT_36` and `FRONT_38` may be sizes that the rule table does not have: if they have
 * the same rules in the same order and each is larger than the one before, they are taken for that.
 */
function refuseGrowing(shown: readonly Labeled[], sample: string, file: string): void {
  const families = new Map<string, Labeled[]>();
  for (const own of shown) {
    if (own.said !== undefined || !own.isParted) continue;
    const key = `${own.stem.toUpperCase()}\n${rulesOf(own.block)}`;
    families.set(key, [...(families.get(key) ?? []), own]);
  }
  for (const family of families.values()) {
    const [first, second] = family;
    if (first === undefined || second === undefined || rulesOf(first.block) === '') continue;
    const boxes = family.map(({ block }) => boxOf(block));
    const grows = (from: Box, to: Box): boolean => from.every((side, i) => side < (to[i] ?? 0));
    const pairs = boxes.slice(1).map((to, i) => [boxes[i] ?? to, to] as const);
    const isNest =
      pairs.every(([from, to]) => grows(from, to)) || pairs.every(([from, to]) => grows(to, from));
    if (!isNest) continue;
    throw new InputError('dxf-malformed', {
      what: `blocks with the same rules, each larger than the other, look like sizes of ${first.stem}`,
      allowed: `one block for each piece, in the sample size ${sample}, or SIZE: ${sample} in each`,
      got: family.map(({ block }) => block.name).join(', '),
      place: { file, row: second.block.row },
    });
  }
}

/** The numbers of the rules of a block in their order. */
function rulesOf({ entities }: PlacedBlock): string {
  const numbers = entities.map(({ words }) => RULE_WORDS.exec(words)?.[1] ?? '');
  return numbers.filter((number) => number !== '').join(' ');
}

/** Width and height. */
type Box = readonly [number, number];

function boxOf({ entities }: PlacedBlock): Box {
  const { left, right, top, bottom } = pointBounds(entities.flatMap(({ points }) => points));
  return [right - left, bottom - top];
}

interface Labeled {
  readonly block: PlacedBlock;
  readonly piece: string;
  /** The name without its ending, such as `FRONT` of `FRONT_10`. */
  readonly stem: string;
  /** The size in words. */
  readonly said: string | undefined;
  /** What the name ends with, if it is a size. */
  readonly ending: string | undefined;
  /** Whether it ends with a size or with anything else after a stem. */
  readonly isParted: boolean;
}

function labeled(block: PlacedBlock, sizes: readonly string[]): Labeled {
  const piece = pieceTitle(block);
  const said = wordsAfter(block.entities, 'SIZE');
  const [title, name] = [parted(piece), parted(block.name)];
  const own = title !== undefined && isIn(sizes, title.ending) ? title : undefined;
  const ending =
    own?.ending ?? (name !== undefined && isIn(sizes, name.ending) ? name.ending : undefined);
  return {
    block,
    piece,
    stem: own?.stem ?? (title === undefined || ending !== undefined ? piece : title.stem),
    said,
    ending,
    isParted: title !== undefined,
  };
}

function parted(name: string): { readonly stem: string; readonly ending: string } | undefined {
  const [, stem, ending] = /^(.+?)[\s_.-]+([^\s_.-]+)$/u.exec(name) ?? [];
  return stem === undefined || ending === undefined ? undefined : { stem, ending };
}

/** Whether a piece is one size of others; panels numbered 1 to 6 are not, though 2 is a size. */
function isOneOfSizes({ stem, said, ending }: Labeled, shown: readonly Labeled[]): boolean {
  if (ending === undefined) return false;
  if (said !== undefined) return isIn([said], ending);
  const family = shown.filter((own) => own.stem.toUpperCase() === stem.toUpperCase());
  return family.every((own) => own.ending !== undefined || !own.isParted);
}

function isIn(sizes: readonly string[], label: string): boolean {
  return sizes.some((size) => sizeWord(size).toUpperCase() === sizeWord(label).toUpperCase());
}
