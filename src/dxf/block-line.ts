/** A closed line of a block as points of a piece: corners, curve points, notches, tips of darts. */
import type { Point } from '../geometry/point';
import { RULED, isAt, isSmooth, liesOn, outlineFrom } from './block-places';
import type { BlockContent, BlockPoint } from './block-point';
import { blockPoint, entitiesOn } from './block-point';
import { D6673_LAYERS } from './d6673-layers';
import type { DxfEntity } from './read';
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
    const curve = notches.some(isAt(at)) ? 'notch' : 'curve';
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
  at: Point,
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
  const folds = entitiesOn(block, D6673_LAYERS.mirrorLine, 'LINE');
  const places = vertices(block, line);
  const counts = new Map<string, number>();
  let corners = 0;
  return places.map((at, i) => {
    const next = places[(i + 1) % places.length] ?? at;
    const isCorner = !isSmooth(block.entities, at, line.row);
    if (isCorner) corners++;
    const { kind, edge } = traits(at, isCorner, corners, i);
    const count = (counts.get(kind) ?? 0) + 1;
    counts.set(kind, count);
    const fold = folds.some(
      ({ points: [a, b] }) => a && b && liesOn(at, a, b) && liesOn(next, a, b),
    );
    const name = `${prefix}${kind}_${count}`;
    return blockPoint(block, at, { name, kind, row: line.row, edge, fold, layers: RULED });
  });
}

function vertices({ entities }: BlockContent, { points, row }: DxfEntity): readonly Point[] {
  return outlineFrom(points, (at) => !isSmooth(entities, at, row));
}

/** What an annotation of our own at a place names. */
function told(block: BlockContent, kind: 'EDGE' | 'DART', at: Point): string | undefined {
  const text = entitiesOn(block, D6673_LAYERS.annotation, 'TEXT').find(
    (own) => own.words.startsWith(`${kind}: `) && isAt(at)(own),
  );
  return text === undefined ? undefined : joinless(text.words.slice(kind.length + 2));
}
