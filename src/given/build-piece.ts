/** Points as a file lists them, joined into a piece that can be graded. */
import { runsOf } from '../lists/runs';
import { grouped } from '../lists/grouped';
import type { Point } from '../geometry/point';
import { distance, point, subtract, unit } from '../geometry/point';
import { splineHandles } from '../geometry/spline';
import { usualFinish } from '../pattern/allowance';
import type { Edge, MarkedLine, NotchRule, Piece } from '../pattern/piece';
import { piecePlan } from '../pattern/piece';
import type { PatternPiece, SplineRun } from '../pattern/pattern';
import { pathAlong } from '../pattern/pattern';
import { besideFollowers, handleFollowers, notchFollowers } from './followers';
import type { RawPiece, RawPoint } from './raw-point';
import { outlineError } from './raw-point';
import type { Span } from './spans';
import { spansOf } from './spans';

const BESIDE: ReadonlySet<RawPoint['kind']> = new Set(['inside', 'grain', 'drill']);

/** mm. No piece is longer, and drawing one that is could take forever. The engine's own figure. */
const LONGEST_PIECE = 10_000;

function checkExtent(points: readonly RawPoint[]): void {
  const [first] = points;
  const far = points.find((own) => {
    const { x, y } = subtract(own.at, first?.at ?? own.at);
    return !(Math.max(Math.abs(x), Math.abs(y)) <= LONGEST_PIECE);
  });
  if (far === undefined) return;
  const what = 'a point lies farther from the first of its piece than any piece is long';
  throw outlineError(far, what, `up to ${LONGEST_PIECE} mm along each axis`);
}

/**
 * Builds one piece. Throws InputError `outline-malformed` if its points make no outline, lie apart
 * as no piece's do, or a line of two points has another number of them.
 */
export function buildPiece(raw: RawPiece): PatternPiece {
  const { points, cutLine, cutNotches, sewnNotches = new Map<string, RawPoint>() } = raw;
  const reference = pair(points, 'reference');
  const grain = pair(points, 'grain');
  const kept = [
    ...points.filter(({ kind }) => kind !== 'reference'),
    ...cutLine,
    ...cutNotches,
    ...sewnNotches.values(),
  ];
  checkExtent(kept);
  const index = new Map(kept.map((own, i) => [own.name, i]));
  const at = (own: RawPoint): number => index.get(own.name) ?? -1;
  const spans = spansOf(points);
  const cutSpans = spansOf(cutLine);
  const curves = splinesThrough([...splineRuns(spans), ...splineRuns(cutSpans)], kept.length, at);
  const places = [...kept.map((own) => own.at), ...curves.places];
  const plan = piecePlan({
    name: raw.name,
    part: 'piece',
    cuttings: raw.cuttings,
    pointNames: [...kept.map((own) => own.name), ...curves.names],
    handles: new Set([...namesOf(kept, 'handle'), ...curves.names]),
    outline: spans.map(edgeOf),
    ...(cutLine.length === 0 ? {} : { cutLine: cutSpans.map(edgeOf) }),
    marks: [...insideLines(kept), ...(grain === undefined ? [] : [grainMark(grain)])],
    edges: new Map(
      spans.map(({ from: { edge } }) => [
        edge,
        { allowance: raw.allowances.get(edge), finish: usualFinish(edge) },
      ]),
    ),
    notches: notchRules(kept, raw),
    drillHoles: namesOf(kept, 'drill').map((name) => ({ point: name })),
  });
  const base: Piece = { plan, points: places };
  const path = pathAlong(base, plan.outline);
  const cutPath = plan.cutLine && pathAlong(base, plan.cutLine);
  const beside = points.filter(({ kind }) => BESIDE.has(kind));
  return {
    base,
    splines: curves.splines,
    path,
    cutPath,
    followers: [
      ...handleFollowers(spans, at),
      ...besideFollowers(beside, at, places, path),
      ...notchFollowers(cutNotches, at, base, [
        ...(plan.cutLine ? [plan.cutLine] : []),
        plan.outline,
      ]),
      ...notchFollowers([...sewnNotches.values()], at, base, [plan.outline]),
    ],
    ruleX: reference ? unit(subtract(reference[1].at, reference[0].at)) : point(1, 0),
    ruleNames: ruleNames(kept),
  };
}

function namesOf(points: readonly RawPoint[], kind: RawPoint['kind']): readonly string[] {
  return points.filter((own) => own.kind === kind).map((own) => own.name);
}

/** Notches of the sewing line first, then those of the cut line, each with the one it is sewn at. */
function notchRules(
  kept: readonly RawPoint[],
  { cutNotches, sewnNotches, doubleNotches }: RawPiece,
): readonly NotchRule[] {
  const notch = (name: string, place: NotchRule['place']): NotchRule => ({
    name,
    marks: doubleNotches.has(name) ? 2 : 1,
    place,
  });
  return [
    ...namesOf(kept, 'notch')
      .filter((name) => !cutNotches.some((own) => own.name === name))
      .map((name) => notch(name, { by: 'joint', point: name, beside: 'after' })),
    ...cutNotches.map(({ name }) => {
      const sewn = sewnNotches?.get(name)?.name;
      return notch(name, { by: 'cut', point: name, ...(sewn === undefined ? {} : { sewn }) });
    }),
  ];
}

function pair(
  points: readonly RawPoint[],
  kind: 'reference' | 'grain',
): readonly [RawPoint, RawPoint] | undefined {
  const line = points.filter((raw) => raw.kind === kind);
  const [from, to] = line;
  if (from === undefined) return undefined;
  if (to !== undefined && line.length === 2 && distance(from.at, to.at) > 0) return [from, to];
  throw outlineError(from, `a ${kind} line has two points`, 'two rows, apart from each other');
}

function splineRuns(spans: readonly Span[]): readonly (readonly Span[])[] {
  const isSpline = ({ by }: Span): boolean => by.kind === 'spline';
  return runsOf(
    spans,
    (span, last) => isSpline(span) && isSpline(last) && span.from.kind !== 'corner',
  ).filter((run) => run.every(isSpline));
}

/** The curves, and the handles that they put after the first `count` points of the piece. */
function splinesThrough(
  runs: readonly (readonly Span[])[],
  count: number,
  at: (raw: RawPoint) => number,
) {
  const splines: SplineRun[] = [];
  const names: string[] = [];
  const places: Point[] = [];
  for (const run of runs) {
    const through = [...run.map(({ from }) => from), ...run.slice(-1).map(({ to }) => to)];
    const lengths = run.map(({ from, to }) => distance(from.at, to.at));
    const handles = splineHandles(
      through.map((raw) => raw.at),
      lengths,
    );
    const first = count + names.length;
    names.push(...run.flatMap(({ from, to }) => handleNames(from.name, to.name)));
    places.push(...handles);
    splines.push({
      points: through.map(at),
      handles: handles.map((_, i) => first + i),
      spans: lengths,
    });
  }
  return { splines, names, places };
}

/** Names that no file can have given, since a point's name has no dot. */
function handleNames(from: string, to: string): readonly [string, string] {
  return [`${from}.leave`, `${to}.arrive`];
}

function edgeOf({ from, to, by }: Span): Edge {
  const ends = { from: from.name, to: to.name, seam: from.edge };
  if (from.fold && by.kind !== 'line') {
    throw outlineError(from, 'an edge on the fold is not straight', 'a straight edge');
  }
  switch (by.kind) {
    case 'line':
      return { kind: from.fold ? 'fold' : 'line', ...ends };
    case 'dart':
      return { kind: 'dart', name: by.tip.name, tip: by.tip.name, ...ends };
    case 'handles':
      return { kind: 'cubic', leave: by.leave.name, arrive: by.arrive.name, ...ends };
    case 'spline': {
      const [leave, arrive] = handleNames(from.name, to.name);
      return { kind: 'cubic', leave, arrive, ...ends };
    }
  }
}

function ruleNames(kept: readonly RawPoint[]): PatternPiece['ruleNames'] {
  return new Map(
    kept
      .filter(({ rule }) => rule.text !== '')
      .map(({ name, rule: { text, place } }) => [name, { rule: text, place }]),
  );
}

function grainMark(ends: readonly RawPoint[]): MarkedLine {
  return { name: 'grainline', through: ends.map(({ name }) => name) };
}

function insideLines(points: readonly RawPoint[]): readonly MarkedLine[] {
  const inside = points.filter(({ kind }) => kind === 'inside');
  return [...grouped(inside, ({ edge }) => edge).values()].map((line) => ({
    name: 'internal-line',
    through: line.map(({ name }) => name),
  }));
}
