/** Patterns of a size that no body has: their numbers most likely are of another unit. */
import { segmentsBounds } from '../geometry/bounds';
import type { GradedPattern } from '../grade/graded-pattern';
import type { Pattern } from '../pattern/pattern';
import type { Piece } from '../pattern/piece';
import { outlineSegments } from '../pattern/piece';
import type { LengthDisplay, LengthUnit } from '../units';
import { UNIT_WORDS, fromMillimeters, showLength, toMillimeters } from '../units';
import type { Finding, Severity } from './finding';
import { found } from './finding';

/** mm. The waist of a body of 190 cm is some 120 cm above the floor: from memory. */
const LONGEST = 1_300;
/** mm. No piece but a train is longer: from the nape to the floor it is some 155 cm on that body, from memory. */
const LONGEST_WITHOUT_TRAIN = 1_600;
/** mm. A tie or sash, which may be as long as it likes, is narrower: common practice, no source. */
const WIDEST_SASH = 200;
/** mm. A pattern all of whose pieces are shorter and narrower has no skirt: the engine's own figure. */
const SMALLEST = 300;
/** mm. Some 40 in, a skirt to the ankle. */
const LONG = 1_000;
/**
 * mm. No piece so long also grows by more than 3/4 in a size: 3 in over the four quarters is the largest step of
 * a published table (before 1958, sizes 46 to 48).
 */
const GROWS = 20;

/** What somebody has written where the numbers are too large for the unit, and where they are too small. */
const TOO_LARGE: Readonly<Record<LengthUnit, LengthUnit | undefined>> = {
  ...{ in: 'cm', cm: 'mm', mm: undefined },
};
const TOO_SMALL: Readonly<Record<LengthUnit, LengthUnit | undefined>> = {
  ...{ in: undefined, cm: 'in', mm: 'cm' },
};

interface Doubted {
  readonly severity: Severity;
  readonly pieces: readonly Measured[];
  readonly limit: number;
  readonly why: string;
  readonly meant: LengthUnit | undefined;
}

interface Measured {
  readonly name: string;
  readonly length: number;
  readonly width: number;
}

/**
 * At most one finding: a warning, since a coat is longer than a skirt and a pocket smaller, until only a train
 * is as long.
 */
export function checkPatternSize(
  { unit, file }: Pattern,
  { sizes, rules }: Pick<GradedPattern, 'sizes' | 'rules'>,
  display: LengthDisplay,
): Finding[] {
  const all = sizes.map(({ pieces }) => pieces.map(measured));
  const doubt = doubted(all[rules.base] ?? [], all, unit);
  const [first] = doubt?.pieces.toSorted((a, b) => b.length - a.length) ?? [];
  if (doubt === undefined || first === undefined) return [];
  const { severity, pieces, limit, why, meant } = doubt;
  const instead =
    meant === undefined
      ? ''
      : `; if its numbers are ${UNIT_WORDS[meant]}, the unit of the file is wrong, and it is ` +
        showLength(toMillimeters(fromMillimeters(first.length, unit), meant), display);
  return [
    found({
      severity,
      check: 'pattern-size',
      piece: pieces.map(({ name }) => name).join(', '),
      subject: file,
      measured: first.length,
      expected: limit,
      source: 'from memory: the waist of a body of 190 cm is some 120 cm above the floor',
      message: `${first.name} is ${showLength(first.length, display)} long, ${why}${instead}`,
    }),
  ];
}

function measured(piece: Piece): Measured {
  const { left, right, top, bottom } = segmentsBounds(outlineSegments(piece));
  return { name: piece.plan.name, length: bottom - top, width: right - left };
}

function doubted(
  base: readonly Measured[],
  all: readonly (readonly Measured[])[],
  unit: LengthUnit,
): Doubted | undefined {
  const isLong = base.filter(({ length }) => length > LONGEST);
  if (isLong.length > 0) {
    const isGown = ({ length, width }: Measured): boolean =>
      length > LONGEST_WITHOUT_TRAIN && width > WIDEST_SASH;
    const severity = isLong.some(isGown) ? 'fail' : 'warning';
    const why = 'longer than from a waist to the floor';
    return { severity, pieces: isLong, limit: LONGEST, why, meant: TOO_LARGE[unit] };
  }
  const grows = (p: number): boolean =>
    all.some((size, s) => (size[p]?.width ?? 0) - (all[s - 1]?.[p]?.width ?? Infinity) > GROWS);
  const isFast = base.filter(({ length }, p) => length > LONG && grows(p));
  if (unit === 'in' && isFast.length > 0) {
    const why = 'as to the ankle, and grows by more than any published skirt';
    return { severity: 'warning', pieces: isFast, limit: LONG, why, meant: 'cm' };
  }
  if (base.every(({ length, width }) => Math.max(length, width) < SMALLEST)) {
    const why = 'and no piece of the pattern is as large as a skirt';
    return { severity: 'warning', pieces: base, limit: SMALLEST, why, meant: TOO_SMALL[unit] };
  }
  return undefined;
}
