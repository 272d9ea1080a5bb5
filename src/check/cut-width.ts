/** Given cut lines: as wide of the sewing line in every size as they were drawn in the base. */
import type { Box } from '../geometry/bounds';
import { controlBounds } from '../geometry/bounds';
import { nearestOn } from '../geometry/nearest';
import type { Point } from '../geometry/point';
import { distance, dot, quarterTurn, scale, subtract, unit } from '../geometry/point';
import { segmentAt, segmentLength, segmentTangent } from '../geometry/segment';
import type { GradedPattern } from '../grade/graded-pattern';
import { clockwise } from '../pattern/clockwise';
import type { Edge, Piece } from '../pattern/piece';
import { cutLineSegments, edgeSegments } from '../pattern/piece';
import { SEAM_FAILURE, SEAM_MATCH, SEAM_WARNING } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { SEVERITIES, found } from './finding';
import { seamSeverity } from './seam-severity';

/**
 * One finding for each size but the base of each piece whose cut line is given: its worst edge. What
 * rounding of the points makes of a width is allowed for.
 */
export function checkCutWidths(
  { plans, sizes, base: baseLabel, roundingStep = 0 }: GradedPattern,
  display: LengthDisplay,
): Finding[] {
  return plans.flatMap(({ cutLine }, p) => {
    const base = sizes.find(({ label }) => label === baseLabel)?.pieces[p];
    if (cutLine === undefined || base === undefined) return [];
    const places = placesOf(base);
    const drawn = widthsOf(base, places);
    return sizes.flatMap(({ label, pieces }): Finding[] => {
      const piece = pieces[p];
      if (label === baseLabel || piece === undefined) return [];
      const widths = widthsOf(piece, places);
      const changes = places.flatMap(({ edge }, i) => {
        const [wanted, width] = [drawn[i], widths[i]];
        return wanted === undefined || width === undefined
          ? []
          : [{ edge: edge.seam, width, wanted }];
      });
      const finding = widthFinding(changes, 2 * roundingStep, display);
      return finding === undefined ? [] : [{ ...finding, size: label, piece: piece.plan.name }];
    });
  });
}

/** A place of the sewing line in a size; mm, negative where the cut line lies inside. */
interface Change {
  readonly edge: string;
  readonly width: number;
  readonly wanted: number;
}

function widthFinding(
  changes: readonly Change[],
  slack: number,
  display: LengthDisplay,
): Omit<Finding, 'size' | 'piece'> | undefined {
  const crosses = ({ width, wanted }: Change): boolean =>
    wanted >= -SEAM_MATCH && width < -SEAM_MATCH - slack;
  const apart = ({ width, wanted }: Change): number => Math.abs(width - wanted);
  const severityOf = (own: Change): Finding['severity'] =>
    crosses(own) ? 'fail' : seamSeverity(Math.max(0, apart(own) - slack));
  const graver = (a: Change, b: Change): number =>
    SEVERITIES.indexOf(severityOf(a)) - SEVERITIES.indexOf(severityOf(b)) || apart(b) - apart(a);
  const [worst] = changes.toSorted(graver);
  if (worst === undefined) return undefined;
  const { edge, width, wanted } = worst;
  const severity = severityOf(worst);
  const others = changes.filter((own) => own.edge !== edge && severityOf(own) === severity);
  const also = [...new Set(others.map((own) => own.edge))];
  const how = crosses(worst)
    ? `the cut line crosses the sewing line: at ${edge} it lies ${showLength(-width, display)} inside`
    : `the cut line lies ${showLength(width, display)} outside the sewing line at ${edge}`;
  return found({
    severity,
    // Told apart, since a size in which it crosses cannot be cut at all.
    check: crosses(worst) ? 'cut-crosses' : 'cut-width',
    subject: edge,
    measured: width,
    expected: wanted,
    tolerance: (severity === 'fail' ? SEAM_FAILURE : SEAM_WARNING) + slack,
    source: "the engine's own rule: the allowance of a given cut line is that of the base",
    message:
      severity === 'ok'
        ? 'the cut line keeps its width from the sewing line as in the base'
        : `${how}, in the base ${showLength(wanted, display)} outside` +
          (also.length === 0 ? '' : `; likewise at ${also.join(', ')}`),
  });
}

/** mm between the places of the sewing line that are measured. */
const STEP = 40;
/** Cosine of 20 degrees. The way to the cut line that is more aslant leads round a corner. */
const SQUARE_TO_EDGE = Math.cos(Math.PI / 9);

/** A share of an edge, which runs clockwise on paper; the same in every size. */
interface EdgeShare {
  readonly edge: Edge;
  readonly t: number;
}

/** At every edge name, and then every STEP of the base. */
function placesOf(base: Piece): readonly EdgeShare[] {
  let since = Infinity;
  let seam: string | undefined;
  return clockwise(base).plan.outline.flatMap((edge) => {
    if (edge.kind === 'dart') return [];
    if (edge.seam !== seam) since = Infinity;
    ({ seam } = edge);
    const long = edgeSegments(base, edge).reduce((sum, part) => sum + segmentLength(part), 0);
    since += long;
    if (since < STEP) return [];
    since = 0;
    const count = Math.max(1, Math.ceil(long / STEP));
    return Array.from({ length: count }, (_, k) => ({ edge, t: (k + 0.5) / count }));
  });
}

/**
 * mm by which the cut line lies outside each place, negative inside; undefined where the nearest of it
 * does not lie square to the edge, as beside corners.
 */
function widthsOf(piece: Piece, places: readonly EdgeShare[]): readonly (number | undefined)[] {
  const cut = (cutLineSegments(piece) ?? []).map((segment) => ({
    segment,
    box: controlBounds(segment),
  }));
  return places.map(({ edge, t }) => {
    const [segment] = edgeSegments(piece, edge);
    if (segment === undefined) return undefined;
    const at = segmentAt(segment, t);
    const outward = scale(quarterTurn(unit(segmentTangent(segment, t))), -1);
    let nearest: Point | undefined;
    let away = Infinity;
    for (const { segment: part, box } of cut) {
      if (beyond(at, box) >= away) continue;
      const found = segmentAt(part, nearestOn(part, at));
      if (distance(found, at) < away) [nearest, away] = [found, distance(found, at)];
    }
    if (nearest === undefined) return undefined;
    if (away <= SEAM_MATCH) return 0;
    const width = dot(subtract(nearest, at), outward);
    return Math.abs(width) < SQUARE_TO_EDGE * away ? undefined : Math.sign(width) * away;
  });
}

/** mm from a place to a box, or less; no more than zero inside it. */
function beyond({ x, y }: Point, { left, right, top, bottom }: Box): number {
  return Math.max(left - x, x - right, top - y, y - bottom);
}
