/** The cut line: the sewing line with its allowances, joined at the corners and free of loops. */
import { outerBoundary } from '../geometry/outer-boundary';
import type { Point } from '../geometry/point';
import { distance, quarterTurn, scale, unit } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { reversed, segmentTangent } from '../geometry/segment';
import { CUT_GAP, SAME_PLACE } from '../tolerance';
import type { Arm, CornerShape } from './corner-join';
import { joinAt } from './corner-join';
import type { Strip } from './strip';
import { outerEdge } from './strip';

/** The line that is cut round a piece. */
export interface CutLine {
  /** Closed, clockwise on paper. */
  readonly segments: readonly Segment[];
  /** For each named corner of the sewing line the farthest point of the cut line that it makes. */
  readonly corners: ReadonlyMap<string, Point>;
}

/** Ways to shape corners, by the value of `corner_style`. */
const STYLES = ['squared', 'mitered', 'stepped'] as const;

/** The cut line round the strips of a piece. `cornerStyle` is 0, 1 or 2; see `corner_style`. */
export function cutLine(strips: readonly Strip[], cornerStyle: number): CutLine {
  const style = STYLES[cornerStyle] ?? 'squared';
  const chains = strips.map(outerEdge);
  const paths: (readonly Point[])[] = strips.map(() => []);
  const corners = new Map<string, Point>();
  strips.forEach((before, i) => {
    const k = (i + 1) % strips.length;
    const after = strips[k] ?? before;
    const arriving = armOf(before, chains[i] ?? [], 'end');
    const leaving = armOf(after, chains[k] ?? [], 'start');
    const { shape, swap } = shapeBetween(before, after, style);
    const { first, path, second } = swap
      ? joinAt(leaving, arriving, shape)
      : joinAt(arriving, leaving, shape);
    chains[i] = swap ? second : first;
    chains[k] = (swap ? first : second).toReversed().map(reversed);
    paths[i] = swap ? path.toReversed() : path;
    const reached = [...(chains[i] ?? []).slice(-1).map(({ to }) => to), ...path];
    corners.set(before.end, farthest(arriving.corner, reached));
  });
  const loop = chains.flatMap((chain, i) => [...chain, ...pathAfter(chain, paths[i] ?? [])]);
  return { segments: outerBoundary(closed(loop)), corners };
}

function armOf({ net, width }: Strip, chain: readonly Segment[], at: 'start' | 'end'): Arm {
  const along = unit(segmentTangent(net, at === 'end' ? 1 : 0));
  const outward = scale(quarterTurn(along), -1);
  return at === 'end'
    ? { corner: net.to, ahead: along, outward, width, chain }
    : {
        corner: net.from,
        ahead: scale(along, -1),
        outward,
        width,
        chain: chain.toReversed().map(reversed),
      };
}

/** How a corner is shaped; `swap` where the strip after it is the first arm of the join. */
function shapeBetween(
  before: Strip,
  after: Strip,
  style: (typeof STYLES)[number],
): { readonly shape: CornerShape; readonly swap: boolean } {
  const [first, second] = [before.finish, after.finish];
  if (before.isFold || after.isFold) return { shape: 'fold', swap: false };
  if ((first === 'hem') !== (second === 'hem')) return { shape: 'mirrored', swap: first === 'hem' };
  if (before.seam === after.seam || first === 'hem') return { shape: 'mitered', swap: false };
  if (style !== 'squared') return { shape: style, swap: false };
  if ((first === 'pressed-open') === (second === 'pressed-open'))
    return { shape: 'mitered', swap: false };
  return { shape: 'squared', swap: second === 'pressed-open' };
}

function farthest(corner: Point, points: readonly Point[]): Point {
  return points.reduce((far, p) => (distance(p, corner) > distance(far, corner) ? p : far), corner);
}

function pathAfter(chain: readonly Segment[], path: readonly Point[]): readonly Segment[] {
  let from = chain.at(-1)?.to;
  return path.flatMap((to): readonly Segment[] => {
    const line = from === undefined ? [] : [{ kind: 'line' as const, from, to }];
    from = to;
    return line;
  });
}

/** The loop without stretches of no length, each starting exactly where the one before ends. */
function closed(loop: readonly Segment[]): readonly Segment[] {
  const long = loop.filter(
    (segment) =>
      distance(segment.from, segment.to) > SAME_PLACE ||
      (segment.kind === 'cubic' && distance(segment.from, segment.leave) > CUT_GAP),
  );
  let end = long.at(-1)?.to;
  return long.flatMap((segment): readonly Segment[] => {
    const from = end ?? segment.from;
    end = segment.to;
    const gap = distance(from, segment.from);
    if (gap === 0) return [segment];
    if (gap <= CUT_GAP) return [{ ...segment, from }];
    return [{ kind: 'line', from, to: segment.from }, segment];
  });
}
