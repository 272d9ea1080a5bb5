/** The blocks of a drawing as they lie on its sheet. */
import { InputError } from '../errors';
import type { ReadingNote } from '../given/raw-point';
import { D6673_LAYERS } from './d6673-layers';
import { mapped } from './line-point';
import type { DxfInsert, Placement } from './placement';
import {
  ALIKE,
  AS_DRAWN,
  after,
  fromBase,
  isMirrored,
  isUpright,
  placed,
  scaleOf,
} from './placement';
import type { DxfBlock, DxfContent, DxfEntity } from './read';

export interface PlacedBlock {
  readonly name: string;
  readonly row: number;
  /** Its own and those of the blocks in it; in the unit of the file, y down, from its base point. */
  readonly entities: readonly DxfEntity[];
  /** Whether it lies turned over, and so do its rules. */
  readonly mirrored: boolean;
  /** Where its x axis lies, if not upright. */
  readonly turned: DxfEntity | undefined;
}

/** Blocks in blocks go no deeper, and a drawing has no more entities when they are all put in. */
const DEEPEST = 16;
const MOST = 500_000;
/** The layer whose entities are on that of the insert. */
const FLOATING = '0';

/**
 * Each block that is inserted on the sheet, once, as its first insert has it; where the drawing
 * inserts none, each block that is in no other. Where on the sheet a block lies is of no matter.
 * Throws InputError `dxf-malformed` for a block that is not there, that is in itself, or that is
 * inserted in two sizes.
 */
export function placedBlocks(
  { blocks, inserts }: DxfContent,
  file: string,
): { readonly placed: readonly PlacedBlock[]; readonly notes: readonly ReadingNote[] } {
  const byName = new Map(blocks.map((block) => [block.name.toUpperCase(), block]));
  const find = (name: string, row: number): DxfBlock =>
    byName.get(name.toUpperCase()) ??
    refuse(file, row, 'a block is inserted that the drawing does not have', name);
  const notes: ReadingNote[] = [];
  let count = 0;
  const expanded = (
    block: DxfBlock,
    { layer, placement, depth }: { layer: string; placement: Placement; depth: number },
  ): readonly DxfEntity[] => {
    if (depth > DEEPEST) refuse(file, block.row, 'a block is in itself, or too deep', block.name);
    const own = after(placement, fromBase(block.base));
    count += block.entities.length + 1;
    if (count > MOST) refuse(file, block.row, 'blocks in blocks are too many', block.name);
    return [
      ...block.entities.map((entity) => moved(entity, layer, own)),
      ...block.inserts.filter(isSound).flatMap((inner) =>
        expanded(find(inner.block, inner.row), {
          layer: inner.layer === FLOATING ? layer : inner.layer,
          placement: after(own, inner.placement),
          depth: depth + 1,
        }),
      ),
    ];
  };
  const decided = new Map<string, boolean>();
  /** Whether a block, or one in it, has anything on the layers of a piece. */
  const isOfPiece = (block: DxfBlock, layer: string): boolean => {
    const key = `${block.name}\n${layer}`;
    const known = decided.get(key);
    if (known !== undefined) return known;
    // A block in itself is no more of a piece by that.
    decided.set(key, false);
    const is =
      block.entities.some((own) => LAYERS.has(own.layer === FLOATING ? layer : own.layer)) ||
      block.inserts.some((inner) => {
        const on = inner.layer === FLOATING ? layer : inner.layer;
        return isOfPiece(find(inner.block, inner.row), on);
      });
    decided.set(key, is);
    return is;
  };
  /** Tells of an insert whether it can be read; throws its fault if it has to be. */
  const isSound = (insert: DxfInsert): boolean => {
    if (insert.fault === undefined) return true;
    if (isOfPiece(find(insert.block, insert.row), insert.layer)) throw insert.fault;
    notes.push(aside('note', `block ${insert.block}, inserted in row ${insert.row}`));
    return false;
  };
  const inOthers = new Set(
    blocks.flatMap((block) => block.inserts.map((inner) => inner.block.toUpperCase())),
  );
  const drawn = blocks.filter(({ name }) => !name.startsWith('*'));
  if (inserts.length === 0) {
    const outer = drawn.filter(({ name }) => !inOthers.has(name.toUpperCase()));
    const as = { layer: FLOATING, placement: AS_DRAWN, depth: 0 };
    return {
      placed: outer.map((block) => placedOne(block, AS_DRAWN, expanded(block, as))),
      notes,
    };
  }
  const onSheet = new Map<DxfBlock, (typeof inserts)[number][]>();
  for (const insert of inserts.filter(isSound)) {
    const block = find(insert.block, insert.row);
    onSheet.set(block, [...(onSheet.get(block) ?? []), insert]);
  }
  const inserted = new Set(inserts.map((insert) => insert.block.toUpperCase()));
  for (const block of drawn) {
    const name = block.name.toUpperCase();
    if (inserted.has(name) || inOthers.has(name)) continue;
    const severity = isOfPiece(block, FLOATING) ? 'fail' : 'note';
    notes.push(aside(severity, `block ${block.name}, row ${block.row}, not inserted on the sheet`));
  }
  // A frame or a legend may be a block too, beside those of pieces.
  const all = [...onSheet.keys()];
  const pieces = all.filter((block) =>
    isOfPiece(block, onSheet.get(block)?.[0]?.layer ?? FLOATING),
  );
  for (const block of pieces.length === 0 ? [] : all.filter((own) => !pieces.includes(own))) {
    const severity = block.entities.some(({ closed }) => closed) ? 'warning' : 'note';
    const what = `block ${block.name}, row ${block.row}, which has nothing on the layers of a piece`;
    notes.push(aside(severity, what));
    onSheet.delete(block);
  }
  return {
    notes,
    placed: [...onSheet].map(([block, [first, ...more]]) => {
      // A block is only there with an insert.
      const { placement, layer, row } = first as (typeof inserts)[number];
      const scale = scaleOf(placement);
      const other = more.find((own) => Math.abs(scaleOf(own.placement) / scale - 1) > ALIKE);
      if (other !== undefined) {
        const got = `${scale} in row ${row}, ${scaleOf(other.placement)}`;
        refuse(file, other.row, `block ${block.name} is inserted in two scales`, got);
      }
      if (more.length > 0) {
        const turnedOver = more.filter(
          (own) => isMirrored(own.placement) !== isMirrored(placement),
        ).length;
        notes.push({
          severity: 'warning',
          check: 'placed',
          piece: block.name,
          what:
            `the block is inserted ${more.length + 1} times` +
            `${turnedOver === 0 ? '' : `, ${turnedOver} of them mirrored against the first`}; ` +
            `it is one piece, as row ${row} has it`,
        });
      }
      const linear = { ...placement, e: 0, f: 0 };
      return placedOne(block, linear, expanded(block, { layer, placement: linear, depth: 0 }));
    }),
  };
}

const LAYERS: ReadonlySet<string> = new Set(Object.values(D6673_LAYERS));

function aside(severity: ReadingNote['severity'], what: string): ReadingNote {
  return { severity, check: 'left-out', piece: '', what };
}

function placedOne(
  { name, row }: DxfBlock,
  linear: Placement,
  entities: readonly DxfEntity[],
): PlacedBlock {
  const line: DxfEntity = {
    type: 'LINE',
    kind: 'INSERT',
    layer: D6673_LAYERS.gradeReference,
    points: [placed(linear, { x: 0, y: 0 }), placed(linear, { x: 1, y: 0 })],
    closed: false,
    words: '',
    row,
  };
  const turned = isUpright(linear) ? undefined : line;
  return { name, row, entities, mirrored: isMirrored(linear), turned };
}

function moved(entity: DxfEntity, layer: string, placement: Placement): DxfEntity {
  const { points, center } = entity;
  const to = (at: { readonly x: number; readonly y: number }) => placed(placement, at);
  return {
    ...entity,
    layer: entity.layer === FLOATING ? layer : entity.layer,
    points: mapped(points, to),
    ...(center && { center: to(center) }),
  };
}

function refuse(file: string, row: number, what: string, got: string): never {
  throw new InputError('dxf-malformed', {
    what,
    allowed: 'a block for each piece, inserted as it is',
    got,
    place: { file, row },
  });
}
