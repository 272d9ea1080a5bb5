/** The outline of a piece cut into spans: from each point that it passes to the next. */
import { distanceToSegment } from '../geometry/nearest';
import { NOTCH_OFF } from '../tolerance';
import type { RawPoint } from './raw-point';
import { outlineError } from './raw-point';

/** How the outline runs from one of its points to the next. */
export interface Span {
  readonly from: RawPoint;
  readonly to: RawPoint;
  readonly by:
    | { readonly kind: 'line' }
    | { readonly kind: 'spline' }
    | { readonly kind: 'handles'; readonly leave: RawPoint; readonly arrive: RawPoint }
    | { readonly kind: 'dart'; readonly tip: RawPoint };
}

const PASSED: ReadonlySet<RawPoint['kind']> = new Set(['corner', 'curve', 'notch']);
const BETWEEN: ReadonlySet<RawPoint['kind']> = new Set(['handle', 'dart']);

/**
 * The spans in order, the last one back to the start. From corner to corner the outline is a spline
 * if any curve point lies between, and straight otherwise; a notch is a place on either. Throws
 * InputError `outline-malformed`.
 */
export function spansOf(points: readonly RawPoint[]): readonly Span[] {
  const outline = points.filter(({ kind }) => PASSED.has(kind) || BETWEEN.has(kind));
  const [first] = outline;
  if (first === undefined) return [];
  if (first.kind !== 'corner') {
    throw outlineError(first, 'the outline of a piece starts with a corner', 'a corner first');
  }
  const passed = outline.filter(({ kind }) => PASSED.has(kind));
  if (passed.length < 3) {
    throw outlineError(first, 'the outline of a piece has too few points', 'three points or more');
  }
  const spans: Span[] = passed.map((from, i) => {
    const to = passed[i + 1] ?? first;
    const start = outline.indexOf(from) + 1;
    const end = i + 1 < passed.length ? outline.indexOf(to) : outline.length;
    return { from, to, by: spanBy(outline.slice(start, end)) };
  });
  return bent(spans);
}

function spanBy(between: readonly RawPoint[]): Span['by'] {
  const [a, b, ...more] = between;
  if (a === undefined) return { kind: 'line' };
  if (a.kind === 'dart' && b === undefined) return { kind: 'dart', tip: a };
  if (a.kind === 'handle' && b?.kind === 'handle' && more.length === 0) {
    return { kind: 'handles', leave: a, arrive: b };
  }
  throw outlineError(
    a,
    'between two points of an outline there is something that makes no edge',
    'nothing, two handles, or the tip of a dart',
  );
}

/** Makes splines of the straight spans that a curve point is on. */
function bent(spans: readonly Span[]): readonly Span[] {
  const result = [...spans];
  let start = 0;
  for (let i = 0; i < spans.length; i++) {
    const { from, to, by } = spans[i] as Span;
    const next = spans[i + 1];
    const goesOn = by.kind === 'line' && next?.by.kind === 'line' && to.kind !== 'corner';
    if (goesOn) continue;
    const run = spans.slice(start, i + 1);
    const isCurved = run.slice(1).some((span) => span.from.kind === 'curve');
    if (by.kind === 'line' && !isCurved) refuseBent(run);
    if (isCurved && by.kind === 'line') {
      run.forEach((span, k) => (result[start + k] = { ...span, by: { kind: 'spline' } }));
    } else if (by.kind === 'handles' && from.kind === 'notch') {
      throw outlineError(
        from,
        'a notch is on a curve that has handles',
        'notches on straight edges and on curves through points',
      );
    }
    start = i + 1;
  }
  return result;
}

/** A notch on a straight edge lies on the line from corner to corner, or it would bend the edge. */
function refuseBent(run: readonly Span[]): void {
  const [from, to] = [run[0]?.from, run.at(-1)?.to];
  if (from === undefined || to === undefined) return;
  for (const { from: notch } of run.slice(1)) {
    if (distanceToSegment({ kind: 'line', from: from.at, to: to.at }, notch.at) <= NOTCH_OFF)
      continue;
    throw outlineError(
      notch,
      `a notch lies beside the straight edge from ${from.name} to ${to.name}`,
      'a notch on the edge; a corner where the edge bends, or curve points on a curve',
    );
  }
}
