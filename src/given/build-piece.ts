/** Points as a file lists them, joined into a piece that can be graded. */
import type { Point } from '../geometry/point';
import { distance, point, subtract, unit } from '../geometry/point';
import { segmentLength } from '../geometry/segment';
import { splineHandles } from '../geometry/spline';
import type { Cutting, Edge, MarkedLine, Piece } from '../pattern/piece';
import { edgeSegments, piecePlan } from '../pattern/piece';
import type { Follower, GivenPiece, PathStop, SplineRun } from './pattern';
import type { RawPoint } from './raw-point';
import { outlineError } from './raw-point';
import type { Span } from './spans';
import { spansOf } from './spans';

/**
 * Builds one piece. Throws InputError `outline-malformed` if its points make no outline, or a line
 * of two points has another number of them.
 */
export function buildPiece(
  name: string,
  points: readonly RawPoint[],
  cuttings: readonly Cutting[],
): GivenPiece {
  const reference = pair(points, 'reference');
  const grain = pair(points, 'grain');
  const kept = points.filter(({ kind }) => kind !== 'reference');
  const index = new Map(kept.map((raw, i) => [raw.name, i]));
  const at = (raw: RawPoint): number => index.get(raw.name) ?? -1;
  const spans = spansOf(points);
  const splines: SplineRun[] = [];
  const names = kept.map((raw) => raw.name);
  const places: Point[] = kept.map((raw) => raw.at);
  for (const run of splineRuns(spans)) {
    const through = [...run.map(({ from }) => from), ...run.slice(-1).map(({ to }) => to)];
    const lengths = run.map(({ from, to }) => distance(from.at, to.at));
    const handles = splineHandles(
      through.map((raw) => raw.at),
      lengths,
    );
    const first = names.length;
    names.push(...run.flatMap(({ from, to }) => handleNames(from.name, to.name)));
    places.push(...handles);
    splines.push({
      points: through.map(at),
      handles: handles.map((_, i) => first + i),
      spans: lengths,
    });
  }
  const named = (kind: RawPoint['kind']): readonly string[] =>
    kept.filter((raw) => raw.kind === kind).map((raw) => raw.name);
  const generated = names.slice(kept.length);
  const plan = piecePlan({
    name,
    part: 'piece',
    cuttings,
    pointNames: names,
    handles: new Set([...named('handle'), ...generated]),
    outline: spans.map(edgeOf),
    marks: [
      ...insideLines(kept),
      ...(grain === undefined
        ? []
        : [{ name: 'grainline' as const, through: grain.map((raw) => raw.name) }]),
    ],
    notches: named('notch'),
    drillHoles: named('drill'),
  });
  const base: Piece = { plan, points: places };
  const { path, around } = pathOf(base);
  const ruleX = reference && unit(subtract(reference[1].at, reference[0].at));
  return {
    base,
    splines,
    path,
    around,
    followers: [...handleFollowers(spans, at), ...insideFollowers(kept, places, path)],
    ruleX: ruleX ?? point(1, 0),
    ruleNames: new Map(
      kept
        .filter(({ rule }) => rule.text !== '')
        .map(({ name: own, rule: { text, place } }) => [own, { rule: text, place }]),
    ),
  };
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
  const runs: Span[][] = [];
  spans.forEach((span, i) => {
    if (span.by.kind !== 'spline') return;
    const goesOn = spans[i - 1]?.by.kind === 'spline' && span.from.kind !== 'corner';
    if (goesOn) runs.at(-1)?.push(span);
    else runs.push([span]);
  });
  return runs;
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

function insideLines(points: readonly RawPoint[]): readonly MarkedLine[] {
  const lines = new Map<string, string[]>();
  for (const { kind, edge, name } of points) {
    if (kind !== 'inside') continue;
    lines.set(edge, [...(lines.get(edge) ?? []), name]);
  }
  return [...lines.values()].map((through) => ({ name: 'internal-line', through }));
}

function pathOf(piece: Piece): { readonly path: readonly PathStop[]; readonly around: number } {
  const { index, outline } = piece.plan;
  const path: PathStop[] = [];
  let at = 0;
  for (const edge of outline) {
    path.push({ point: index.get(edge.from) ?? -1, at });
    if (edge.kind === 'dart') path.push({ point: index.get(edge.tip) ?? -1, at });
    else at += edgeSegments(piece, edge).reduce((sum, part) => sum + segmentLength(part), 0);
  }
  return { path, around: at };
}

/** Handles stand between the ends of their edge by their share of the way over both handles. */
function handleFollowers(
  spans: readonly Span[],
  at: (raw: RawPoint) => number,
): readonly Follower[] {
  return spans.flatMap(({ from, to, by }) => {
    if (by.kind !== 'handles') return [];
    const first = distance(from.at, by.leave.at);
    const second = first + distance(by.leave.at, by.arrive.at);
    const whole = second + distance(by.arrive.at, to.at);
    const ends = { from: at(from), to: at(to) };
    return [
      { ...ends, point: at(by.leave), share: whole === 0 ? 0 : first / whole },
      { ...ends, point: at(by.arrive), share: whole === 0 ? 0 : second / whole },
    ];
  });
}

/**
 * What lies inside moves with the point of the outline that is nearest to it; a grainline as a
 * whole, so that it never turns.
 */
function insideFollowers(
  points: readonly RawPoint[],
  places: readonly Point[],
  path: readonly PathStop[],
): readonly Follower[] {
  const grain = points.find(({ kind }) => kind === 'grain');
  return points.flatMap((raw, i) => {
    if (raw.kind !== 'inside' && raw.kind !== 'grain' && raw.kind !== 'drill') return [];
    const from = raw.kind === 'grain' ? (grain ?? raw) : raw;
    const away = (stop: PathStop): number => distance(from.at, places[stop.point] ?? from.at);
    const [first] = path;
    if (first === undefined) return [];
    const { point: nearest } = path.reduce((best, s) => (away(s) < away(best) ? s : best), first);
    return [{ point: i, from: nearest, to: nearest, share: 0 }];
  });
}
