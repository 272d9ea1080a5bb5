/** The outline and the cut line of a block. */
import { InputError } from '../errors';
import type { Box } from '../geometry/bounds';
import { boxHolds, grownBox, pointBounds } from '../geometry/bounds';
import type { ReadingNote } from '../pattern/pattern';
import { EXCHANGED, JOIN_GAP } from '../tolerance';
import { RULED, isSmooth, marksOf, placeSet } from './block-places';
import type { ClosedLine } from './closed-lines';
import { closedLines, gapText } from './closed-lines';
import { D6673_LAYERS } from './d6673-layers';
import type { PlacedBlock } from './placed-blocks';
import type { PlaceIndex } from './place-index';
import type { DxfEntity } from './entity';
import { RULE_WORDS } from './rule-words';
import { notchesOnto, snapped } from './snap';

/** The closed lines of a block: what is cut, what is sewn, and what is to be said of them. */
export interface BlockOutlines {
  /** The line that is walked and graded. */
  readonly outline: ClosedLine;
  /** The boundary, where the sew line is the outline. */
  readonly cut: ClosedLine | undefined;
  /** The entities of the block, marks and words on the points that they belong to. */
  readonly entities: readonly DxfEntity[];
  /** Its marks of turn and curve points. */
  readonly marks: PlaceIndex<DxfEntity>;
  readonly notes: readonly ReadingNote[];
}

/**
 * The largest closed lines on the layers of boundary and sew line. Throws InputError `dxf-malformed`
 * with the place of the gap where the boundary is open.
 */
export function blockOutlines(block: PlacedBlock, piece: string, file: string): BlockOutlines {
  const boundary = largest(block, D6673_LAYERS.boundary, file);
  const sewLine = largest(block, D6673_LAYERS.sewLine, file);
  const [corners, sewn] = [boundary?.line.points ?? [], sewLine?.line.points ?? []];
  const { entities, notes } = snapped(block.entities, [...corners, ...sewn], piece);
  const words = entities.filter(
    ({ type, layer, words: text }) =>
      type === 'TEXT' && RULED.includes(layer) && RULE_WORDS.test(text),
  );
  // Words at a corner of both lines do not say of which they are.
  const [onCut, onSewn] = [placeSet(corners), placeSet(sewn)];
  const isRuled = words.some(({ points: [at] }) => at && onSewn(at) && !onCut(at));
  const outline = isRuled || boundary === undefined ? sewLine : boundary;
  if (outline === undefined) {
    const unread = block.entities.find(
      ({ type, layer }) => type === 'UNREAD' && layer === D6673_LAYERS.boundary,
    );
    if (unread !== undefined)
      throw new InputError('dxf-malformed', {
        what: `the boundary of the block ${block.name} is of a kind that is not read`,
        allowed: 'polylines, lines, arcs, and splines with knots and control points',
        got: unread.kind,
        place: { file, row: unread.row },
      });
    throw new InputError('dxf-malformed', {
      what: `the block ${block.name} has no boundary`,
      allowed: `a closed line on layer ${D6673_LAYERS.boundary}`,
      place: { file, row: block.row },
    });
  }
  const { points, row } = outline.line;
  const marks = marksOf(entities);
  const smooth = points.filter((at) => isSmooth(marks, at, row));
  return {
    outline,
    cut: outline === boundary ? undefined : boundary,
    entities: notchesOnto(entities, smooth),
    marks,
    notes,
  };
}

function largest(block: PlacedBlock, layer: string, file: string): ClosedLine | undefined {
  const lines = block.entities.filter(
    (own) => own.layer === layer && (own.type === 'POLYLINE' || own.type === 'LINE'),
  );
  const { loops, open } = closedLines(lines, file);
  const [first, ...more] = loops;
  const parts = open.flatMap((line) => line.parts);
  if (first === undefined && parts[0] !== undefined && layer === D6673_LAYERS.boundary) {
    throw new InputError('dxf-malformed', {
      what: `the boundary of block ${block.name} is open`,
      allowed: `lines of which each end meets another, within ${JOIN_GAP} mm`,
      got: gapText(open),
      place: { file, row: parts[0].row },
    });
  }
  if (layer === D6673_LAYERS.boundary) refuseNested(block, loops, file);
  return first && more.reduce((a, b) => (sizeOf(b) > sizeOf(a) ? b : a), first);
}

/**
 * Share of the box about a boundary that one within it has at least both ways, if it is its size.
 * No tolerance: what is cut out of a piece is smaller.
 */
const NEXT_SIZE = 0.5;

/** Boundaries that lie one in the next, and are no cut-outs by their size, are sizes of one piece. */
function refuseNested({ name }: PlacedBlock, loops: readonly ClosedLine[], file: string): void {
  const nest = loops.toSorted((a, b) => aroundOf(a) - aroundOf(b));
  const boxes = nest.map(boxOf);
  const pairs = boxes.slice(1).map((outer, i) => [boxes[i] ?? outer, outer] as const);
  const [first, second] = nest.map(({ line }) => line.row).toSorted((a, b) => a - b);
  if (first === undefined || second === undefined || !pairs.every(isNextSize)) return;
  throw new InputError('dxf-malformed', {
    what: `the block ${name} is a nest: ${nest.length} boundaries of which each lies in the next`,
    allowed: 'one boundary, of the sample size; what is cut out of a piece on a layer of its own',
    got: `closed lines of rows ${nest.map(({ line }) => line.row).join(', ')}`,
    place: { file, row: second },
  });
}

function isNextSize([inner, outer]: readonly [Box, Box]): boolean {
  const within = boxHolds(grownBox(outer, EXCHANGED), inner);
  const wide = (inner.right - inner.left) / (outer.right - outer.left);
  const high = (inner.bottom - inner.top) / (outer.bottom - outer.top);
  // A boundary that is there twice is no other size.
  const isSmaller = !boxHolds(grownBox(inner, EXCHANGED), outer);
  return within && isSmaller && wide >= NEXT_SIZE && high >= NEXT_SIZE;
}

/** mm; the longer side of the box about a closed line. */
export function sizeOf(loop: ClosedLine): number {
  const { left, right, top, bottom } = boxOf(loop);
  return Math.max(right - left, bottom - top);
}

/** mm; half the way round the box. */
function aroundOf(loop: ClosedLine): number {
  const { left, right, top, bottom } = boxOf(loop);
  return right - left + bottom - top;
}

function boxOf({ line: { points } }: ClosedLine): Box {
  return pointBounds(points.flatMap((at) => [at, ...(at.bend ?? [])]));
}
