/** The legs of a dart are sewn together: in the base, and in every size that is graded from it. */
import { distance } from '../geometry/point';
import type { GradedPattern } from '../grade/graded-pattern';
import { applyRules } from '../grade/rules';
import type { DartEdge, Piece } from '../pattern/piece';
import { pointOf } from '../pattern/piece';
import { DART_LEGS } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { found } from './finding';
import { seamSeverity } from './seam-severity';

/**
 * A finding for each dart of each size, as grave as a seam that is as far apart. Legs that the base
 * itself has apart are told there; another size is told of only where its rules change that.
 */
export function checkDartLegs(range: GradedPattern, display: LengthDisplay): Finding[] {
  const base = range.sizes[range.rules.base]?.pieces ?? [];
  const exact = applyRules(base, range.exactRules);
  return range.sizes.flatMap((size, i) =>
    size.pieces.flatMap((piece, p) =>
      piece.plan.darts.map((dart): Finding => {
        const [first, second] = dartLegs(piece, dart);
        const [inBase, exactly] = [base[p], exact[i]?.[p]].map((own) => legsApart(own, dart));
        const apart = { now: first - second, inBase: inBase ?? NaN, exactly: exactly ?? NaN };
        const isBase = i === range.rules.base;
        const isKept = !isBase && Math.abs(apart.now - apart.inBase) <= DART_LEGS;
        return found({
          severity: isKept ? 'ok' : seamSeverity(Math.abs(apart.now)),
          check: 'dart-legs',
          size: size.label,
          piece: piece.plan.name,
          subject: dart.name,
          measured: first,
          expected: isKept ? second + apart.inBase : second,
          tolerance: DART_LEGS,
          source: 'common practice, no source: the two legs are sewn together',
          message:
            `the legs are ${showLength(first, display)} and ${showLength(second, display)} long` +
            (isBase ? baseWords(apart, display) : sizeWords(apart, display)),
        });
      }),
    ),
  );
}

/** mm by which the first leg is longer than the second: in this size, in the base, before rounding. */
interface Apart {
  readonly now: number;
  readonly inBase: number;
  readonly exactly: number;
}

function baseWords({ now }: Apart, display: LengthDisplay): string {
  if (Math.abs(now) <= DART_LEGS) return '';
  return (
    ` in the base, ${showLength(Math.abs(now), display)} apart: they are sewn together, so make ` +
    'them equal in the pattern; no rule does it'
  );
}

function sizeWords({ now, inBase, exactly }: Apart, display: LengthDisplay): string {
  if (Math.abs(now) <= DART_LEGS) return '';
  if (Math.abs(now - inBase) <= DART_LEGS) return ', as far apart as in the base';
  const show = (mm: number): string => showLength(Math.sign(now) * mm, display);
  const parts = [
    Math.abs(inBase) > DART_LEGS ? `${show(inBase)} are in the base` : '',
    Math.abs(exactly - inBase) > DART_LEGS
      ? `the rules of ends and tip make ${show(exactly - inBase)}`
      : '',
    Math.abs(now - exactly) > DART_LEGS ? `rounding makes ${show(now - exactly)}` : '',
  ].filter((part) => part !== '');
  return `, ${show(now)} apart` + (parts.length === 0 ? '' : `: ${parts.join(', ')}`);
}

/** Lengths in mm of the legs, the first in the order of the outline first. */
function dartLegs(piece: Piece, dart: DartEdge): readonly [number, number] {
  const tip = pointOf(piece, dart.tip);
  return [distance(pointOf(piece, dart.from), tip), distance(pointOf(piece, dart.to), tip)];
}

function legsApart(piece: Piece | undefined, dart: DartEdge): number {
  if (piece === undefined) return NaN;
  const [first, second] = dartLegs(piece, dart);
  return first - second;
}
