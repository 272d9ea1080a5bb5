/** Moves that run against those beside them, where no seam may tell. */
import { besidePoints } from '../given/beside';
import type { Pattern } from '../pattern/pattern';
import type { GivenRule, GivenRules } from '../rule-sheet/point-rules';
import { GOES_WITH, SEAM_MATCH } from '../tolerance';
import type { Finding } from './finding';

/**
 * A warning for each rule that in every size goes against the points beside it, and with its sign
 * turned round would go with them, unless a point of the same name on another piece, with a rule of
 * its own, moves the same way. `told` are points of which something is told already, as
 * `piece point`.
 */
export function checkOddSigns(
  pattern: Pattern,
  rules: GivenRules,
  told: ReadonlySet<string>,
): Finding[] {
  return pattern.pieces.flatMap((piece, p) => {
    const { plan } = piece.base;
    const own = rules.ruled[p] ?? new Map<number, GivenRule>();
    return [...own].flatMap(([i, rule]) => {
      const point = plan.pointNames[i] ?? '';
      const beside = besidePoints(piece, own, i);
      if (beside.length < 2 || told.has(`${plan.name} ${point}`)) return [];
      const others = beside.map((other) => own.get(other)?.moves ?? []);
      return (['x', 'y'] as const).flatMap((axis): Finding[] => {
        const shows = oddSizes(rule, others, axis);
        if (shows.length === 0 || isShared(point, rule, shows, axis, pattern, rules)) return [];
        const names = beside.map((other) => plan.pointNames[other] ?? '').join(' and ');
        const from = [
          shows.find((size) => size > rules.base),
          shows.findLast((size) => size < rules.base),
        ].flatMap((size) => (size === undefined ? [] : (rules.sizes[size] ?? [])));
        return [
          {
            severity: 'warning',
            check: 'odd-sign',
            size: from[0] ?? '',
            piece: plan.name,
            subject: point,
            quantity: 'number',
            source: "the engine's own rule",
            message:
              `d${axis} goes against ${names} beside it, and turned round would go with them: ` +
              `its sign may be wrong; it shows from size ${from.join(' and from size ')}`,
          },
        ];
      });
    });
  });
}

type Axis = 'x' | 'y';

/** The sizes in which a rule moves its point, if it goes against the others in all of them. */
function oddSizes(
  { moves }: GivenRule,
  others: readonly GivenRule['moves'][],
  axis: Axis,
): readonly number[] {
  const moved = moves.flatMap((move, size) => (Math.abs(move[axis]) > SEAM_MATCH ? [size] : []));
  const isOdd = moved.every((size) =>
    isAgainst(
      moves[size]?.[axis] ?? 0,
      others.map((other) => other[size]?.[axis] ?? 0),
    ),
  );
  return isOdd ? moved : [];
}

/** Whether a rule of its own moves a point of the same name on another piece the same way. */
function isShared(
  name: string,
  rule: GivenRule,
  shows: readonly number[],
  axis: Axis,
  { pieces }: Pattern,
  { ruled }: GivenRules,
): boolean {
  return pieces.some(({ base: { plan } }, p) => {
    const other = ruled[p]?.get(plan.index.get(name) ?? -1);
    // A rule that both points use would be wrong on both.
    if (other === undefined || other === rule) return false;
    return shows.every(
      (size) => (other.moves[size]?.[axis] ?? 0) * (rule.moves[size]?.[axis] ?? 0) > 0,
    );
  });
}

function isAgainst(own: number, beside: readonly number[]): boolean {
  const [least, most] = [Math.min(...beside), Math.max(...beside)];
  const spare = GOES_WITH * Math.abs(own);
  const goesWith = (value: number): boolean => value >= least - spare && value <= most + spare;
  return goesWith(-own) && !goesWith(own) && beside.some((other) => other * own < 0);
}
