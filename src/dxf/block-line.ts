/** A closed line of a block as points of a piece: corners, curve points, notches, tips of darts. */
import type { Point } from '../geometry/point';
import { RULED, isAt, isSmooth, liesOn, outlineFrom } from './block-places';
import type { BlockContent, BlockPoint } from './block-point';
import { blockPoint, entitiesOn, strokesOn } from './block-point';
import { D6673_LAYERS } from './d6673-layers';
import type { LinePoint } from './line-point';
import type { DxfEntity } from './entity';
import { joinless } from './seam-words';

/**
 * The outline of a piece. Edges have the names that annotations give them, else a number from corner
 * to corner.
 */
export function outlinePoints(block: BlockContent, line: DxfEntity): readonly BlockPoint[] {
  const notches = entitiesOn(block, D6673_LAYERS.notch, 'POINT');
  const names = vertices(block, line).map((at) => told(block, 'EDGE', at));
  // The outline is closed: before the first name the last one goes on.
  let edge = names.findLast((name) => name !== undefined);
  const isNamed = edge !== undefined;
  return linePoints(block, line, '', (at, isCorner, corners, i) => {
    edge = isNamed ? (names[i] ?? edge) : `edge_${corners}`;
    // A notch does not part a curve that has handles; it is read beside the line then.
    const isNotch = at.bend === undefined && notches.some(isAt(at));
    const curve = isNotch ? 'notch' : 'curve';
    const isTip = told(block, 'DART', at) !== undefined;
    return { kind: isTip ? 'dart' : isCorner ? 'corner' : curve, edge: edge ?? '' };
  });
}

/** The cut line beside an outline. */
export function cutLinePoints(block: BlockContent, line: DxfEntity): readonly BlockPoint[] {
  return linePoints(block, line, 'cut_', (_, isCorner, corners) => ({
    kind: isCorner ? 'corner' : 'curve',
    edge: `edge_${corners}`,
  }));
}

type Traits = (
  at: LinePoint,
  isCorner: boolean,
  /** Corners so far, this one included. */
  corners: number,
  index: number,
) => { readonly kind: 'corner' | 'curve' | 'notch' | 'dart'; readonly edge: string };

function linePoints(
  block: BlockContent,
  line: DxfEntity,
  prefix: string,
  traits: Traits,
): readonly BlockPoint[] {
  const folds = strokesOn(block, D6673_LAYERS.mirrorLine);
  const places = vertices(block, line);
  const counts = new Map<string, number>();
  const { row } = line;
  let corners = 0;
  return places.flatMap((at, i) => {
    const next = places[(i + 1) % places.length] ?? at;
    const isCorner = !isSmooth(block.marks, at, row);
    if (isCorner) corners++;
    const { kind, edge } = traits(at, isCorner, corners, i);
    const count = (counts.get(kind) ?? 0) + 1;
    counts.set(kind, count);
    const fold =
      at.bend === undefined &&
      folds.some(({ points: [a, b] }) => a && b && liesOn(at, a, b) && liesOn(next, a, b));
    const name = `${prefix}${kind}_${count}`;
    const layers = [
      ...RULED,
      D6673_LAYERS.mirrorLine,
      ...(kind === 'notch' ? [D6673_LAYERS.notch] : []),
    ];
    return [
      blockPoint(block, at, { name, kind, row, edge, fold, layers }),
      ...(at.bend ?? []).map((handle, k) => {
        const own = `${prefix}${kind}_${count}_${k === 0 ? 'leave' : 'arrive'}`;
        return blockPoint(block, handle, { name: own, kind: 'handle', row, edge, layers: [] });
      }),
    ];
  });
}

function vertices({ marks }: BlockContent, { points, row }: DxfEntity): readonly LinePoint[] {
  return outlineFrom(points, (at) => !isSmooth(marks, at, row));
}

/** What an annotation of our own at a place names. */
function told(block: BlockContent, kind: 'EDGE' | 'DART', at: Point): string | undefined {
  const text = entitiesOn(block, D6673_LAYERS.annotation, 'TEXT').find(
    (own) => own.words.startsWith(`${kind}: `) && isAt(at)(own),
  );
  return text === undefined ? undefined : joinless(text.words.slice(kind.length + 2));
}
