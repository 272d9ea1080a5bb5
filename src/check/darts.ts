/** Darts that can be sewn: wide enough, not too wide, apart from each other, clear of the hip. */
import type { Point } from '../geometry/point';
import { distance, subtract } from '../geometry/point';
import type { GradedPattern, SizedPattern } from '../grade/graded-pattern';
import type { Piece } from '../pattern/piece';
import type { PiecePlan } from '../pattern/piece';
import { panelsOf, pointOf } from '../pattern/piece';
import { DART_INTAKE_LEAST, DART_INTAKE_MOST, SAME_PLACE } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import { DEFAULT_STYLE } from '../draft/default-style';
import { dartSetting, dartsWanted } from './dart-number';
import type { Finding } from './finding';
import { OWN_RULE } from './finding';

const COMMON_PRACTICE = 'common practice, no source';
/** The limits as the trade says them in either unit. */
const LEAST = '1 cm (3/8 in)';
const MOST = '3.5 cm (1 3/8 in)';

/**
 * Findings for what is wrong with the darts of a panel, or one that all is well: darts that touch and
 * tips at the hip line fail, odd intakes warn.
 */
export function checkDarts(range: GradedPattern, display: LengthDisplay): Finding[] {
  return range.sizes.flatMap((size) =>
    panelsOf(size.pieces).flatMap((piece) => {
      const found = [
        ...checkIntakes(size, piece, display),
        ...checkSpacing(size, piece),
        ...checkTips(size, piece, display),
      ];
      const isNumberTold = dartsWanted(size, piece.plan) !== piece.plan.darts.length;
      return found.length > 0 || piece.plan.darts.length === 0 || isNumberTold
        ? found
        : [allWell(size, piece)];
    }),
  );
}

type Partial = Pick<Finding, 'severity' | 'check' | 'subject' | 'source' | 'message'> &
  Pick<Finding, 'measured' | 'expected' | 'tolerance' | 'facts'>;

function finding(size: SizedPattern, piece: Piece, rest: Partial): Finding {
  return { size: size.label, piece: piece.plan.name, quantity: 'length', ...rest };
}

function allWell(size: SizedPattern, piece: Piece): Finding {
  return finding(size, piece, {
    severity: 'ok',
    check: 'darts',
    subject: piece.plan.darts.map((dart) => dart.name).join(', '),
    source: COMMON_PRACTICE,
    message: 'each dart is wide enough, not too wide, apart from its neighbors and above the hip',
  });
}

/** A panel that would rather have another number of darts is told of by that number alone. */
function checkIntakes(size: SizedPattern, piece: Piece, display: LengthDisplay): Finding[] {
  const { plan } = piece;
  if (dartsWanted(size, plan) !== plan.darts.length) return [];
  const limit = size.parameters.get(`${plan.name}_dart_limit`) ?? DART_INTAKE_MOST;
  return plan.darts.flatMap(({ name, from, to }) => {
    const measured = distance(pointOf(piece, from), pointOf(piece, to));
    const narrow = measured < DART_INTAKE_LEAST - SAME_PLACE;
    if (!narrow && measured <= limit + SAME_PLACE) return [];
    return finding(size, piece, {
      severity: 'warning',
      check: 'dart-intake',
      subject: name,
      measured,
      expected: narrow ? DART_INTAKE_LEAST : limit,
      source: COMMON_PRACTICE,
      message:
        `the dart takes in ${showLength(measured, display)}; ` +
        (narrow
          ? `under ${LEAST} it is not worth sewing, leave it out`
          : `over ${showLength(limit, display)} it stands off at the tip, split it in two`),
      facts: { setting: intakeSetting(size, plan, narrow) },
    });
  });
}

/** What can be set about a dart too narrow or too wide, by what the size has parameters for. */
function intakeSetting(size: SizedPattern, plan: PiecePlan, narrow: boolean): string {
  const { parameters } = size;
  const { name, darts } = plan;
  if (parameters.has(`${name}_dart_limit`))
    return dartSetting(size, plan, darts.length + (narrow ? -1 : 1));
  const intake = `${name}_dart_intake`;
  if (!parameters.has(intake))
    return narrow
      ? 'leave it out and take its width in at the side'
      : 'split it in two, or take part of its width in at the side';
  return narrow
    ? `set ${intake} to ${LEAST} or more`
    : `set ${intake} to ${MOST} or less, or take a style that splits it, such as ${DEFAULT_STYLE}`;
}

/** Along the waist edge each dart must begin after the corner or dart before it has ended. */
function checkSpacing(size: SizedPattern, piece: Piece): Finding[] {
  const waist = piece.plan.outline.filter((edge) => edge.seam === 'waist');
  const start = waist[0];
  const end = waist.at(-1);
  if (start === undefined || end === undefined) return [];
  const first = pointOf(piece, start.from);
  const along = subtract(pointOf(piece, end.to), first);
  const position = (name: string): number => {
    const p = subtract(pointOf(piece, name), first);
    return (p.x * along.x + p.y * along.y) / Math.hypot(along.x, along.y);
  };
  return waist.flatMap((edge) => {
    const room = position(edge.to) - position(edge.from);
    const needed = edge.kind === 'dart' ? -SAME_PLACE : SAME_PLACE;
    if (room > needed) return [];
    return finding(size, piece, {
      severity: 'fail',
      check: 'darts-apart',
      subject: `${edge.from} to ${edge.to}`,
      measured: room,
      expected: 0,
      source: OWN_RULE,
      message: `the waist edge from ${edge.from} to ${edge.to} has no length: darts touch or cross`,
    });
  });
}

function checkTips(size: SizedPattern, piece: Piece, display: LengthDisplay): Finding[] {
  const level = pointOf(piece, 'center_hip').y;
  return piece.plan.darts.flatMap(({ name, tip, from }) => {
    const at: Point = pointOf(piece, tip);
    const waist = pointOf(piece, from);
    if (at.y < level - SAME_PLACE) return [];
    return finding(size, piece, {
      severity: 'fail',
      check: 'dart-above-hip',
      subject: name,
      measured: at.y - waist.y,
      expected: level - waist.y,
      source: COMMON_PRACTICE,
      message:
        `the dart is ${showLength(at.y - waist.y, display)} deep and reaches the hip line at ` +
        showLength(level - waist.y, display),
    });
  });
}
