/** Whether every size is content with the number of darts that the range was given. */
import { runsOf } from '../lists/runs';
import type { GradedPattern, SizedPattern } from '../grade/graded-pattern';
import { panelsOf } from '../pattern/piece';
import type { PiecePlan } from '../pattern/piece';
import { DART_INTAKE_LEAST, SAME_PLACE } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

/**
 * One finding for each stretch of sizes that would rather have another number of darts than all
 * sizes were given, with the size break to make. Says nothing of blocks without a dart limit.
 */
export function checkDartNumber(range: GradedPattern, display: LengthDisplay): Finding[] {
  const panels = panelsOf(range.sizes[0]?.pieces ?? []);
  return panels.flatMap(({ plan }) =>
    runsOf(
      range.sizes,
      (size, last) => dartsWanted(size, plan) === dartsWanted(last, plan),
    ).flatMap((sizes) => findingOf(range, sizes, plan, display) ?? []),
  );
}

/** Darts that this size would have in a panel if it were alone. */
export function dartsWanted({ parameters }: SizedPattern, plan: PiecePlan): number {
  const given = plan.darts.length;
  const intake = parameters.get(`${plan.name}_intake`) ?? NaN;
  const limit = parameters.get(`${plan.name}_dart_limit`) ?? NaN;
  if (Number.isNaN(limit)) return given;
  // A number that the style asks for is only doubted where its darts cannot be sewn.
  if (parameters.get(`${plan.name}_darts`) !== 0) {
    if (intake / given > limit + SAME_PLACE) return given + 1;
    return intake / given < DART_INTAKE_LEAST - SAME_PLACE ? given - 1 : given;
  }
  if (intake < DART_INTAKE_LEAST - SAME_PLACE) return 0;
  return intake > limit + SAME_PLACE ? 2 : 1;
}

const NUMBERS = ['no dart', 'one dart', 'two darts', 'three darts'];

function findingOf(
  range: GradedPattern,
  sizes: readonly SizedPattern[],
  plan: PiecePlan,
  display: LengthDisplay,
): Finding | undefined {
  const [first, last] = [sizes[0], sizes.at(-1)];
  const given = plan.darts.length;
  if (first === undefined || last === undefined || dartsWanted(first, plan) === given)
    return undefined;
  // A body between sizes is alone; the base beside it is none of a range to be split.
  const beside = range.blend === undefined ? range.sizes : [];
  const before = beside[beside.indexOf(first) - 1];
  const after = beside.includes(last) ? beside[beside.indexOf(last) + 1] : undefined;
  const breaks = [
    before === undefined ? undefined : `between ${before.label} and ${first.label}`,
    after === undefined ? undefined : `between ${last.label} and ${after.label}`,
  ].filter((text) => text !== undefined);
  const intake = `${plan.name}_intake`;
  const wanted = dartsWanted(first, plan);
  const setting =
    breaks.length === 0 ? dartSetting(first, plan, wanted) : rangeSetting(range, first, plan);
  const span = first === last ? first.label : `${first.label}-${last.label}`;
  const show = (size: SizedPattern): string =>
    showLength(size.parameters.get(intake) ?? NaN, display);
  return found({
    severity: 'warning',
    check: 'dart-number',
    size: span,
    piece: plan.name,
    subject: intake,
    measured: first.parameters.get(intake),
    expected: first.parameters.get(`${plan.name}_dart_limit`),
    source: 'common practice, no source: a dart too wide is split, one too narrow left out',
    message:
      `with ${show(first)}${first === last ? '' : ` to ${show(last)}`} to take in, ${span} would ` +
      `rather have ${wanted} than ${given} in the half ${plan.name}: ` +
      (breaks.length === 0 ? (setting ?? '') : `break the range ${breaks.join(' and ')}`),
    facts: {
      darts: NUMBERS[wanted] ?? `${wanted} darts`,
      ...(setting === undefined ? {} : { setting }),
      ...(isSettable(wanted) ? { number: String(wanted) } : {}),
      ...(breaks.length === 0 ? {} : { breaks: breaks.join(' and ') }),
    },
  });
}

/**
 * What settles it for a whole range: the number that some sizes want or the one that all have, where its darts
 * can be sewn in every size; undefined where only two ranges serve.
 */
function rangeSetting(
  { sizes }: GradedPattern,
  wanting: SizedPattern,
  plan: PiecePlan,
): string | undefined {
  const wanted = dartsWanted(wanting, plan);
  const given = plan.darts.length;
  // No number but a smaller intake, which is that of all sizes.
  if (wanted > 2) return dartSetting(wanting, plan, wanted);
  const isSewn = (darts: number): boolean =>
    isSettable(darts) && sizes.every((size) => canBeSewn(size, plan, darts));
  if (isSewn(wanted)) return dartSetting(wanting, plan, wanted);
  return isSewn(given)
    ? `keep ${NUMBERS[given] ?? ''} with ${plan.name}_darts=${given}`
    : undefined;
}

/** Whether so many darts of a size are neither too wide nor too narrow. */
function canBeSewn({ parameters }: SizedPattern, { name }: PiecePlan, darts: number): boolean {
  const each = (parameters.get(`${name}_intake`) ?? NaN) / darts;
  const limit = parameters.get(`${name}_dart_limit`) ?? NaN;
  return each <= limit + SAME_PLACE && each >= DART_INTAKE_LEAST - SAME_PLACE;
}

/** What gives a panel so many darts. */
export function dartSetting(
  { parameters }: SizedPattern,
  { name }: PiecePlan,
  darts: number,
): string {
  if (darts === 0) return leftOut(parameters, name);
  return isSettable(darts)
    ? `set ${name}_darts=${darts}`
    : `set a smaller ${name}_intake, and the side takes in more for it`;
}

/**
 * Without an intake there is no dart. Where the panels take theirs by their shares, the sides get the share
 * of this one, front and back alike; else the style says who takes in the rest.
 */
function leftOut(parameters: SizedPattern['parameters'], name: string): string {
  const of = (parameter: string): number => parameters.get(parameter) ?? NaN;
  const other = name === 'front' ? 'back' : 'front';
  const [share, otherShare] = [of(`${name}_dart_share`), of(`${other}_dart_share`)];
  // Both are the same share of one drop.
  const apart = of(`${name}_intake`) * otherShare - of(`${other}_intake`) * share;
  if (share > 0 && Math.abs(apart) <= SAME_PLACE)
    return `leave the dart out with ${name}_dart_share=0 and side_share=${shown(of('side_share') + share)}`;
  return `leave the dart out with ${name}_intake=0; the side of the back takes in the rest`;
}

/** A share without what adding leaves behind its digits. */
function shown(share: number): string {
  return String(Number(share.toPrecision(6)));
}

/** A half panel that takes in something has one dart or two. */
function isSettable(darts: number): boolean {
  return darts === 1 || darts === 2;
}
