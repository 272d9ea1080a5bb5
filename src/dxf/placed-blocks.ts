/** The blocks of a drawing as they lie on its sheet. */
import { grouped } from '../lists/grouped';
import type { ReadingNote } from '../pattern/pattern';
import { DRAWN_ALIKE } from '../tolerance';
import type { BlockTree } from './block-tree';
import { FLOATING, aside, blockTree, refusePlacing } from './block-tree';
import { D6673_LAYERS } from './d6673-layers';
import type { DxfInsert, AffineMap } from './affine-map';
import { AS_DRAWN, turnsOver, isUpright, placed, scaleOf } from './affine-map';
import type { DxfEntity } from './entity';
import type { DxfBlock, DxfContent } from './read';

/** A block as it lies on the sheet. */
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

/** All of them, and what is to be said of how they lie. */
export interface PlacedBlocks {
  readonly placed: readonly PlacedBlock[];
  readonly notes: readonly ReadingNote[];
}

/**
 * Each block that is inserted on the sheet, once, as its first insert has it; where the drawing
 * inserts none, each block that is in no other. Where on the sheet a block lies is of no matter.
 * Throws InputError `dxf-malformed` for a block that is not there, that is in itself, or that is
 * inserted in two sizes.
 */
export function placedBlocks({ blocks, inserts }: DxfContent, file: string): PlacedBlocks {
  const tree = blockTree(blocks, file);
  const drawn = blocks.filter(({ name }) => !name.startsWith('*'));
  if (inserts.length === 0) {
    const outer = drawn.filter((block) => !tree.isInner(block));
    const all = outer.map((block) => placedOne(block, FLOATING, AS_DRAWN, tree));
    return { placed: all, notes: tree.notes };
  }
  const onSheet = grouped(inserts.filter(tree.isSound), tree.blockOf);
  const beside = besidePieces([...onSheet], tree);
  const all = [...onSheet].filter(([block]) => !beside.includes(block));
  const notes = [
    ...unplaced(drawn, inserts, tree),
    ...beside.map(({ name, row, entities }) =>
      aside(
        entities.some(({ closed }) => closed) ? 'warning' : 'note',
        `block ${name}, row ${row}, which has nothing on the layers of a piece`,
      ),
    ),
    ...all.flatMap(([{ name }, own]) => repeated(name, own, file)),
  ];
  const blocksPlaced = all.flatMap(([block, [first]]) => {
    if (first === undefined) return [];
    const linear = { ...first.placement, e: 0, f: 0 };
    return [placedOne(block, first.layer, linear, tree)];
  });
  return { placed: blocksPlaced, notes: [...notes, ...tree.notes] };
}

/** Blocks of a drawing that are nowhere in it. */
function unplaced(
  drawn: readonly DxfBlock[],
  inserts: readonly DxfInsert[],
  { isInner, isOfPiece }: BlockTree,
): readonly ReadingNote[] {
  const inserted = new Set(inserts.map(({ block }) => block.toUpperCase()));
  return drawn
    .filter((block) => !inserted.has(block.name.toUpperCase()) && !isInner(block))
    .map((block) =>
      aside(
        isOfPiece(block, FLOATING) ? 'fail' : 'note',
        `block ${block.name}, row ${block.row}, not inserted on the sheet`,
      ),
    );
}

/** Frames and legends, which may be blocks too; none where no block is any other. */
function besidePieces(
  onSheet: readonly (readonly [DxfBlock, readonly DxfInsert[]])[],
  { isOfPiece }: BlockTree,
): readonly DxfBlock[] {
  const beside = onSheet.filter(([block, [first]]) => !isOfPiece(block, first?.layer ?? FLOATING));
  return beside.length === onSheet.length ? [] : beside.map(([block]) => block);
}

/** A note on a block that is inserted more than once; refused if it has two sizes. */
function repeated(
  name: string,
  inserts: readonly DxfInsert[],
  file: string,
): readonly ReadingNote[] {
  const [first, ...more] = inserts;
  if (first === undefined || more.length === 0) return [];
  const scale = scaleOf(first.placement);
  const other = more.find(
    ({ placement }) => Math.abs(scaleOf(placement) / scale - 1) > DRAWN_ALIKE,
  );
  if (other !== undefined) {
    const got = `${scale} in row ${first.row}, ${scaleOf(other.placement)}`;
    refusePlacing(file, other.row, `block ${name} is inserted in two scales`, got);
  }
  const isFirst = turnsOver(first.placement);
  const over = more.filter(({ placement }) => turnsOver(placement) !== isFirst).length;
  return [
    {
      severity: 'warning',
      check: 'placed',
      piece: name,
      what:
        `the block is inserted ${inserts.length} times` +
        `${over === 0 ? '' : `, ${over} of them mirrored against the first`}; ` +
        `it is one piece, as row ${first.row} has it`,
    },
  ];
}

function placedOne(
  block: DxfBlock,
  layer: string,
  linear: AffineMap,
  { expanded }: BlockTree,
): PlacedBlock {
  const { name, row } = block;
  const line: DxfEntity = {
    type: 'LINE',
    kind: 'INSERT',
    layer: D6673_LAYERS.gradeReference,
    points: [placed(linear, { x: 0, y: 0 }), placed(linear, { x: 1, y: 0 })],
    closed: false,
    words: '',
    row,
  };
  return {
    name,
    row,
    entities: expanded(block, layer, linear),
    mirrored: turnsOver(linear),
    turned: isUpright(linear) ? undefined : line,
  };
}
