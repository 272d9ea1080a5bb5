/** A range that outgrows its base: what one base carries to sizes that are far from it. */
import type { SizeChart } from '../chart/size-chart';
import { findRow } from '../chart/size-chart';
import type { GradedPattern } from '../grade/graded-pattern';
import type { GivenRules } from '../rule-sheet/point-rules';
import { SAME_PLACE } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength, toMillimeters } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

/** mm of hip to either side: three sizes of 2 in. */
const REACH = toMillimeters(6, 'in');
/** Sizes to either side where no hip is known. */
const SIZES = 3;

const SOURCE =
  'common practice, no source: two or three sizes to either side of a base, the fewer the better; ' +
  'plus ranges have a base of their own';

/**
 * One finding for a range with sizes beyond the reach of its base, a note where rules are derived
 * from the measurements of each size, a warning where typed ones carry the base to where its hip is known to be far.
 */
export function checkFarFromBase(
  { sizes, rules }: Pick<GradedPattern, 'sizes' | 'rules'>,
  { typed }: Pick<GivenRules, 'typed'>,
  chart: SizeChart | undefined,
  display: LengthDisplay,
): Finding[] {
  const hips = chart && findRow(chart, 'hip_girth')?.values;
  const hipOf = (i: number): number => {
    const column = chart?.sizes.indexOf(sizes[i]?.label ?? '') ?? -1;
    return hips?.[column] ?? NaN;
  };
  const own = hipOf(rules.base);
  const isKnown = sizes.every((_, i) => Number.isFinite(hipOf(i)));
  const apart = sizes.map((_, i) => (isKnown ? hipOf(i) - own : i - rules.base));
  const reach = isKnown ? REACH : SIZES;
  const sides = [-1, 1].map((way) =>
    [...apart.entries()].filter(([, by]) => way * by > reach + SAME_PLACE).map(([i]) => i),
  );
  const beyond = sides.flat();
  if (beyond.length === 0) return [];
  const named = (i: number | undefined): string => sizes[i ?? -1]?.label ?? '';
  const farthest = Math.max(...beyond.map((i) => Math.abs(apart[i] ?? NaN)));
  const bases = sides.filter((side) => side.length > 0).map((side) => named(middle(side)));
  const far = isKnown
    ? `${showLength(farthest, display)} of hip from the base ${named(rules.base)}, where one base ` +
      `usually serves ${showLength(REACH, display)} to either side`
    : `${farthest} sizes from the base ${named(rules.base)}, where one base usually serves ` +
      `${SIZES} to either side`;
  return [
    found({
      severity: isKnown && typed ? 'warning' : 'note',
      check: 'far-from-base',
      subject: 'base',
      quantity: isKnown ? 'length' : 'number',
      measured: farthest,
      expected: reach,
      source: SOURCE,
      message: `${beyond.map(named).join(', ')}: up to ${far}; ${meaning(typed, named(rules.base))}; ${advice(bases)}`,
      facts: { far: beyond.map(named).join(', '), base: bases.join(' and ') },
    }),
  ];
}

function middle(side: readonly number[]): number | undefined {
  return side[Math.floor(side.length / 2)];
}

function meaning(typed: boolean, base: string): string {
  return typed
    ? `the rules carry the shape of ${base} out to them, whatever their figures are`
    : 'each size is drafted from its own measurements, so nothing is stretched, but the number of ' +
        `darts and their direction are those of ${base}, and lengths of darts, rises and ease are ` +
        'the same for every figure';
}

function advice(bases: readonly string[]): string {
  return (
    `grade them from a base of their own too, such as ${bases.join(' and ')}, compare what differs, ` +
    'and sew a toile there'
  );
}
