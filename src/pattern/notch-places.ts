/** Where the notches of a piece stand on its sewing line, so that matching edges match. */
import type { Point } from '../geometry/point';
import { point, scale, subtract, unit } from '../geometry/point';
import type { SeamPlace } from './along-seam';
import { lengthToEnd, outwardAt, placeBeforeEnd } from './along-seam';
import type { Edge, Piece } from './piece';
import { edgeSegments, pointOf } from './piece';
import { zipOf } from './zip';

/** A place for a notch, before the cut line is known. */
export interface NotchPlace extends SeamPlace {
  /** What it marks. */
  readonly name: string;
  /** Single on the front, double on the back (common practice: apparel wikis and home patterns). */
  readonly marks: 1 | 2;
}

/**
 * The notches of a piece among the pieces of its size: the hip level on side seams, the end of the
 * zip, the top of a vent, the legs of darts and tucks, centers, and on a waistband or facing every
 * place that meets a dart or seam of the skirt. Places on a seam are measured along it from the end
 * that both sides start from: side seams from the hem, the center back from the waist.
 */
export function notchPlaces(
  piece: Piece,
  pieces: readonly Piece[],
  parameters: ReadonlyMap<string, number>,
): readonly NotchPlace[] {
  const { part, name } = piece.plan;
  const marks = name.startsWith('back') ? 2 : 1;
  const own = (named: string, place: SeamPlace | undefined): readonly NotchPlace[] =>
    place === undefined ? [] : [{ ...place, name: named, marks }];
  const joints = waistJoints(piece);
  if (part === 'waistband') return joints.map((joint) => ({ ...joint, marks: bandMarks(joint) }));
  const waist = [
    ...centers(piece).flatMap((place) => own('center', place)),
    ...joints.flatMap((joint) => own('dart', joint)),
  ];
  if (part === 'facing') return waist;
  const zip = zipOf(pieces, parameters);
  const zipEnd = zip && placeBeforeEnd(piece, 'center_back', zip.length ?? zip.opening);
  return [
    ...waist,
    ...legs(piece).flatMap((place) => own(part === 'lining' ? 'tuck' : 'dart', place)),
    ...own('hip-line', hipLevel(piece, pieces)),
    ...own('zip-end', zipEnd),
    ...own('vent-top', ventTop(piece)),
  ];
}

/** On the back as far from the hem as on the front, whatever rounding does to either. */
function hipLevel(piece: Piece, pieces: readonly Piece[]): SeamPlace | undefined {
  const front = pieces.find(
    ({ plan }) => plan.part === piece.plan.part && plan.name.startsWith('front'),
  );
  const length = lengthToEnd(front ?? piece, 'side', 'side_hip');
  return length === undefined ? undefined : placeBeforeEnd(piece, 'side', length);
}

/** The center at the waist, and on a fold, which no seam marks, at the lower edge too. */
function centers(piece: Piece): readonly SeamPlace[] {
  const { outline, index } = piece.plan;
  if (!index.has('center_waist')) return [];
  const at = pointOf(piece, 'center_waist');
  const fold = outline.find(({ kind }) => kind === 'fold');
  if (fold === undefined) return startOf(piece, outline, 'center_waist');
  const low = pointOf(piece, fold.from);
  const up = unit(subtract(at, low));
  return [
    { at, outward: up },
    { at: low, outward: scale(up, -1) },
  ];
}

function startOf(piece: Piece, outline: readonly Edge[], name: string): readonly SeamPlace[] {
  const edge = outline.find(({ from }) => from === name);
  return edge === undefined
    ? []
    : edgeSegments(piece, edge)
        .slice(0, 1)
        .map((segment) => ({ at: segment.from, outward: outwardAt(segment, 0) }));
}

/** Along the legs of darts and tucks, as they are folded. */
function legs(piece: Piece): readonly SeamPlace[] {
  const { darts, marks } = piece.plan;
  const leg = (end: string, tip: string): SeamPlace => {
    const at = pointOf(piece, end);
    return { at, outward: unit(subtract(at, pointOf(piece, tip))) };
  };
  return [
    ...darts.flatMap(({ from, tip, to }) => [leg(from, tip), leg(to, tip)]),
    ...marks
      .filter((mark) => mark.name === 'tuck')
      .map(({ through: [end = '', tip = ''] }) => leg(end, tip)),
  ];
}

function ventTop(piece: Piece): SeamPlace | undefined {
  if (!piece.plan.index.has('vent_top')) return undefined;
  return startOf(
    piece,
    piece.plan.outline.filter(({ seam }) => seam === 'center_back'),
    'vent_top',
  )[0];
}

/**
 * On a facing or band the joints along the waist edge, which stand where darts and seams of the
 * skirt meet it; on a band its two center-back ends as well.
 */
function waistJoints(piece: Piece): readonly (SeamPlace & { readonly name: string })[] {
  const { part, outline } = piece.plan;
  if (part !== 'waistband' && part !== 'facing') return [];
  const waist = outline.filter(({ seam }) => seam === 'waist');
  const [first] = waist;
  const ends = waist.flatMap((edge, i) =>
    part === 'facing' && i === waist.length - 1
      ? []
      : edgeSegments(piece, edge).map((segment) => ({
          name: edge.to,
          at: segment.to,
          outward: outwardAt(segment, 1),
        })),
  );
  if (part === 'facing' || first === undefined) return ends;
  return [{ name: first.from, at: pointOf(piece, first.from), outward: point(0, 1) }, ...ends];
}

/** Back darts and center back are double on the band, as on the back; sides and front single. */
function bandMarks({ name }: { readonly name: string }): 1 | 2 {
  return name.includes('back') ? 2 : 1;
}

/** A place of a drill hole: `short` mm before the tip of a dart, on its axis. */
export function drillHole(piece: Piece, tip: string, legEnds: readonly string[]): Point {
  const end = pointOf(piece, tip);
  const [a = end, b = a] = legEnds.map((name) => pointOf(piece, name));
  const mouth = scale(point(a.x + b.x, a.y + b.y), 0.5);
  const up = subtract(mouth, end);
  const long = Math.hypot(up.x, up.y);
  const share = long === 0 ? 0 : Math.min(DRILL_SHORT / long, 0.5);
  return point(end.x + share * up.x, end.y + share * up.y);
}

/** mm, 9/16 in: the hole must not show beyond the stitching (common practice, no source). */
const DRILL_SHORT = 15;
