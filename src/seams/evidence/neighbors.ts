/** Whether a rule goes with its neighbors: points beside it, and its namesakes on other pieces. */
import { besidePoints } from '../../given/beside';
import type { Point } from '../../geometry/point';
import type { Pattern } from '../../pattern/pattern';
import type { SheetMoves } from '../slips/sheet-moves';
import type { RuledPoint } from '../regrade';
import { misfit } from './misfit';

/** mm outside those beside it that nobody wonders at; the sizes of one rule tell nearly the same. */
const BESIDE = { usual: 1, weight: 1.5 };
/** mm by which namesakes may differ. */
const NAMESAKE = { usual: 1, weight: 2 };

/** What speaks against the moves of a point, in nats; nothing where it has no neighbors. */
export function oddness(pattern: Pattern, sheet: SheetMoves, at: RuledPoint): number {
  return besideOddness(pattern, sheet, at) + namesakeOddness(pattern, sheet, at);
}

function besideOddness({ pieces }: Pattern, sheet: SheetMoves, at: RuledPoint): number {
  const [given, own] = [pieces[at.piece], sheet[at.piece]];
  const moves = own?.get(at.point);
  if (given === undefined || own === undefined || moves === undefined) return 0;
  const beside = besidePoints(given, own, at.point).map((other) => own.get(other) ?? []);
  const [before, after] = beside;
  if (before === undefined || after === undefined) return 0;
  const sum = (['x', 'y'] as const).reduce((all, axis) => {
    return moves.reduce((one, move, size) => {
      const [a, b] = [before[size]?.[axis] ?? 0, after[size]?.[axis] ?? 0];
      const value = move[axis];
      const outside = Math.max(0, Math.min(a, b) - value, value - Math.max(a, b));
      return one + misfit(outside, BESIDE.usual);
    }, all);
  }, 0);
  return (BESIDE.weight * sum) / Math.max(1, moves.length - 1);
}

function namesakeOddness(pattern: Pattern, sheet: SheetMoves, at: RuledPoint): number {
  const moves = sheet[at.piece]?.get(at.point);
  if (moves === undefined) return 0;
  const apart = namesakeMoves(pattern, sheet, at).map((other) =>
    Math.max(...moves.map((move, size) => differ(move, other[size]))),
  );
  return apart.length === 0 ? 0 : NAMESAKE.weight * misfit(Math.min(...apart), NAMESAKE.usual);
}

function differ(a: Point, b: Point | undefined): number {
  return Math.max(Math.abs(a.x - (b?.x ?? NaN)), Math.abs(a.y - (b?.y ?? NaN)));
}

/** The moves that each point of its name on another piece would give it, mirrored as the pieces are. */
export function namesakeMoves(
  { pieces }: Pattern,
  sheet: SheetMoves,
  { piece, point }: RuledPoint,
): readonly (readonly Point[])[] {
  const name = pieces[piece]?.base.plan.pointNames[point] ?? '';
  return pieces.flatMap(({ base: { plan } }, p) => {
    const i = plan.index.get(name);
    if (p === piece || i === undefined) return [];
    const moves = sheet[p]?.get(i);
    if (moves === undefined) return [];
    const isMirrored = runsAgainst(pieces[piece]?.base, pieces[p]?.base);
    return [isMirrored ? moves.map(({ x, y }) => ({ x: -x, y })) : moves];
  });
}

/** Whether the points that two pieces share lie the other way round in x. */
function runsAgainst(
  a: Pattern['pieces'][number]['base'] | undefined,
  b: Pattern['pieces'][number]['base'] | undefined,
): boolean {
  if (a === undefined || b === undefined) return false;
  const shared = a.plan.pointNames.flatMap((name, i) => {
    const [own, other] = [a.points[i], b.points[b.plan.index.get(name) ?? -1]];
    return own === undefined || other === undefined ? [] : [[own.x, other.x] as const];
  });
  const mean = (k: 0 | 1): number =>
    shared.reduce((sum, pair) => sum + pair[k], 0) / Math.max(1, shared.length);
  const [m, n] = [mean(0), mean(1)];
  return shared.reduce((sum, [x, z]) => sum + (x - m) * (z - n), 0) < 0;
}
