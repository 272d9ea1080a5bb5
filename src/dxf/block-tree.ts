/** The blocks of a drawing with the blocks in them. */
import { InputError } from '../errors';
import type { ReadingNote } from '../pattern/pattern';
import { D6673_LAYERS } from './d6673-layers';
import { mapped } from './line-point';
import type { DxfInsert, AffineMap } from './affine-map';
import { after, fromBase, placed } from './affine-map';
import type { DxfEntity } from './entity';
import type { DxfBlock } from './read';

/** The blocks of a drawing with those that are put into them, each in its place. */
export interface BlockTree {
  /** The block of an insert. Throws InputError `dxf-malformed` if there is none. */
  readonly blockOf: (insert: DxfInsert) => DxfBlock;
  /** The entities of a block and of those in it, put where `placement` has its base point. */
  readonly expanded: (block: DxfBlock, layer: string, placement: AffineMap) => readonly DxfEntity[];
  /** Whether a block, or one in it, has anything on the layers of a piece. */
  readonly isOfPiece: (block: DxfBlock, layer: string) => boolean;
  /** Whether an insert can be read. Throws its fault if it is of a piece; otherwise it is noted. */
  readonly isSound: (insert: DxfInsert) => boolean;
  /** Whether a block is in another. */
  readonly isInner: (block: DxfBlock) => boolean;
  /** What is left out; it grows as blocks are expanded. */
  readonly notes: readonly ReadingNote[];
}

/** Blocks in blocks go no deeper, and a drawing has no more entities when they are all put in. */
const DEEPEST = 16;
const MOST = 500_000;
/** The layer whose entities are on that of the insert. */
export const FLOATING = '0';
const LAYERS: ReadonlySet<string> = new Set(Object.values(D6673_LAYERS));

/** Every function of it throws InputError `dxf-malformed` for a block that is not there or in itself. */
export function blockTree(blocks: readonly DxfBlock[], file: string): BlockTree {
  const byName = new Map(blocks.map((block) => [block.name.toUpperCase(), block]));
  const inner = new Set(
    blocks.flatMap((own) => own.inserts.map(({ block }) => block.toUpperCase())),
  );
  const notes: ReadingNote[] = [];
  const decided = new Map<string, boolean>();
  let count = 0;
  const blockOf = ({ block, row }: DxfInsert): DxfBlock =>
    byName.get(block.toUpperCase()) ??
    refusePlacing(file, row, 'a block is inserted that the drawing does not have', block);
  const isOfPiece = (block: DxfBlock, layer: string): boolean => {
    const key = `${block.name}\n${layer}`;
    const known = decided.get(key);
    if (known !== undefined) return known;
    // A block in itself is no more of a piece by that.
    decided.set(key, false);
    const is =
      block.entities.some((own) => LAYERS.has(inherited(own.layer, layer))) ||
      block.inserts.some((own) => isOfPiece(blockOf(own), inherited(own.layer, layer)));
    decided.set(key, is);
    return is;
  };
  const isSound = (insert: DxfInsert): boolean => {
    if (insert.fault === undefined) return true;
    if (isOfPiece(blockOf(insert), insert.layer)) throw insert.fault;
    notes.push(aside('note', `block ${insert.block}, inserted in row ${insert.row}`));
    return false;
  };
  const expanded = (
    block: DxfBlock,
    layer: string,
    placement: AffineMap,
    depth = 0,
  ): DxfEntity[] => {
    const refuse = (what: string): never => refusePlacing(file, block.row, what, block.name);
    if (depth > DEEPEST) refuse('a block is in itself, or too deep in others');
    count += block.entities.length + 1;
    if (count > MOST) refuse('blocks in blocks are too many');
    const own = after(placement, fromBase(block.base));
    return [
      ...block.entities.map((entity) => moved(entity, layer, own)),
      ...block.inserts
        .filter(isSound)
        .flatMap((insert) =>
          expanded(
            blockOf(insert),
            inherited(insert.layer, layer),
            after(own, insert.placement),
            depth + 1,
          ),
        ),
    ];
  };
  const isInner = ({ name }: DxfBlock): boolean => inner.has(name.toUpperCase());
  return { blockOf, expanded, isOfPiece, isSound, isInner, notes };
}

function inherited(layer: string, outer: string): string {
  return layer === FLOATING ? outer : layer;
}

function moved(entity: DxfEntity, layer: string, placement: AffineMap): DxfEntity {
  const { points, center } = entity;
  const to = (at: { readonly x: number; readonly y: number }) => placed(placement, at);
  return {
    ...entity,
    layer: inherited(entity.layer, layer),
    points: mapped(points, to),
    ...(center && { center: to(center) }),
  };
}

/** A note on what is beside the pieces of a drawing. */
export function aside(severity: ReadingNote['severity'], what: string): ReadingNote {
  return { severity, check: 'left-out', piece: '', what };
}

/** Refuses how blocks are put together: throws InputError `dxf-malformed` at a row. */
export function refusePlacing(file: string, row: number, what: string, got: string): never {
  throw new InputError('dxf-malformed', {
    what,
    allowed: 'a block for each piece, inserted as it is',
    got,
    place: { file, row },
  });
}
