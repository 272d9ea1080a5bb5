/** What must hold when a pattern is sewn, as sums of lengths along its lines. */
import type { Edge, Piece, PiecePlan } from '../pattern/piece';
import type { SeamEdge, SeamPair } from '../pattern/seam-pair';
import { meetsItself } from '../pattern/seam-pair';
import { DART_LEGS, MEETS_TARGET, SAME_PLACE, SEAM_MATCH } from '../tolerance';
import type { LengthedLine } from './lengthed-line';
import { lineLength } from './lengthed-line';
import { edgesInOrder } from './seam-walk';
import type { AreSewn } from './seam-way';
import { sewnEdges, wayOf } from './seam-way';
import { walkPair } from './walk-pair';

/** A sum of lengths that rounding should leave as it is. */
export interface SewnSum {
  /** Each line counts `times`; a line of the other side of a seam counts less than nothing. */
  readonly terms: readonly { readonly line: number; readonly times: number }[];
  /** mm that nobody sees. */
  readonly tolerance: number;
  /** How much a millimeter beyond the tolerance counts beside one of a seam. */
  readonly weight: number;
}

/** The lines of a pattern that are sewn or measured, each once, and the sums over them. */
export interface SewnSums {
  readonly lines: readonly LengthedLine[];
  readonly sums: readonly SewnSum[];
}

/** A girth is twice a front and a back, so half of what it is off by stands beside a seam. */
const GIRTH_WEIGHT = 1;
/** The legs of a dart are short and lie on each other, so that there is nowhere to ease them in. */
const LEGS_WEIGHT = 4;
/** Between notches a sewer shifts cloth more easily than along a whole seam. */
const STRETCH_WEIGHT = 1 / 4;
/** An edge by itself may shift its neighbors, as a side seam does, if only the whole holds. */
const EDGE_WEIGHT = 1 / 100;

/**
 * The sums of a pattern with these pieces in its base: both sides of every seam and of its stretches
 * from notch to notch, the legs of every dart, waist and hip where panels make them, and every edge
 * that is walked by name, with its darts closed. Throws a RangeError if a seam has a piece that is not
 * there.
 */
export function sewnSums(base: readonly Piece[], pairs: readonly SeamPair[]): SewnSums {
  const lines: LengthedLine[] = [];
  const places = new Map<string, number>();
  const lineOf = (piece: number, from: string, to: string, edge?: Edge): number => {
    const key = `${piece}/${from}/${to}`;
    const known = places.get(key);
    if (known !== undefined) return known;
    const at = (name: string): number => base[piece]?.plan.index.get(name) ?? -1;
    const handles =
      edge?.kind === 'cubic' ? { leave: at(edge.leave), arrive: at(edge.arrive) } : undefined;
    places.set(key, lines.length);
    return lines.push({ piece, from: at(from), to: at(to), handles }) - 1;
  };
  const walked = ({ piece: name, edge, back }: SeamEdge): readonly number[] => {
    const piece = base.findIndex(({ plan }) => plan.name === name);
    const plan = base[piece]?.plan;
    if (plan === undefined) throw new RangeError(`there is no piece ${name}`);
    const along = edgesSewn(plan, edge).map((own) => lineOf(piece, own.from, own.to, own));
    return back ? along.toReversed() : along;
  };
  const areSewn = sewnEdges(pairs);
  return {
    sums: [
      ...pairs
        .filter((pair) => !meetsItself(pair))
        .flatMap((pair) => seamSums(base, pair, areSewn, walked, lines)),
      ...base.flatMap(({ plan }, p) =>
        plan.darts.map(({ from, tip, to }) =>
          sewnSum([lineOf(p, from, tip)], [lineOf(p, to, tip)], DART_LEGS, LEGS_WEIGHT),
        ),
      ),
      ...girthSums(base, walked, lineOf),
      ...base.flatMap(({ plan }) =>
        [...new Set(plan.outline.map(({ seam }) => seam))].map((edge) =>
          sewnSum(walked({ piece: plan.name, edge }), [], MEETS_TARGET, EDGE_WEIGHT),
        ),
      ),
    ],
    lines,
  };
}

function edgesSewn(plan: PiecePlan, seam: string): readonly Edge[] {
  return edgesInOrder(plan.outline, seam).filter(({ kind }) => kind !== 'dart');
}

function sewnSum(
  more: readonly number[],
  less: readonly number[],
  tolerance: number,
  weight = 1,
  times: readonly [number, number] = [1, 1],
): SewnSum {
  return {
    terms: [
      ...more.map((line) => ({ line, times: times[0] })),
      ...less.map((line) => ({ line, times: -times[1] })),
    ],
    tolerance,
    weight,
  };
}

/** The whole seam, and every stretch of it between places that meet. */
function seamSums(
  base: readonly Piece[],
  pair: SeamPair,
  areSewn: AreSewn,
  walked: (edge: SeamEdge) => readonly number[],
  lines: readonly LengthedLine[],
): readonly SewnSum[] {
  const way = wayOf(base, pair, areSewn);
  const [first, other] = pair.sides.map(({ edges }) => edges.flatMap(walked));
  if (first === undefined || other === undefined) return [];
  const second = way === 'same' ? other : other.toReversed();
  const whole = sewnSum(first, second, SEAM_MATCH);
  // Only where places meet matters here, not the ease that a size has.
  const { stretches, walks } = walkPair(base, { ...pair, ease: 0 }, way);
  if (stretches.length < 2) return [whole];
  const share = pair.spread === 'even' ? walks[0].length / walks[1].length : 1;
  const parts = [first, second].map((side, i) =>
    cutAt(
      side,
      stretches.map(({ lengths }) => lengths[i] ?? NaN),
      (line) => lineLength(base, lines[line]),
    ),
  );
  return [
    whole,
    ...stretches.map((_, j) =>
      sewnSum(parts[0]?.[j] ?? [], parts[1]?.[j] ?? [], SEAM_MATCH, STRETCH_WEIGHT, [1, share]),
    ),
  ];
}

/** The lines of a side, stretch by stretch; all places that meet are ends of lines. */
function cutAt(
  side: readonly number[],
  lengths: readonly number[],
  lengthOf: (line: number) => number,
): readonly (readonly number[])[] {
  let next = 0;
  return lengths.map((length) => {
    const own: number[] = [];
    for (let left = length; left > SAME_PLACE && next < side.length; next++) {
      const line = side[next] as number;
      own.push(line);
      left -= lengthOf(line);
    }
    return own;
  });
}

/** Waist and hip of a skirt: every panel is half of a front or of a back. */
function girthSums(
  base: readonly Piece[],
  walked: (edge: SeamEdge) => readonly number[],
  lineOf: (piece: number, from: string, to: string) => number,
): readonly SewnSum[] {
  const panels = base.flatMap(({ plan }, p) => (plan.part === 'panel' ? [{ plan, p }] : []));
  if (panels.length === 0) return [];
  const waist = panels.flatMap(({ plan }) => walked({ piece: plan.name, edge: 'waist' }));
  const hip = panels.flatMap(({ plan, p }) =>
    plan.marks
      .filter(({ name }) => name === 'hip-line')
      .map(({ through }) => lineOf(p, through[0] ?? '', through.at(-1) ?? '')),
  );
  return [waist, hip].map((lines) => sewnSum(lines, [], MEETS_TARGET, GIRTH_WEIGHT, [2, 2]));
}
