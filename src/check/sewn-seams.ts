/** Every seam walked in every size: lengths, notches, corners, wrong signs. */
import { present } from '../lists/present';
import type { GradedPattern } from '../grade/graded-pattern';
import { meetsItself } from '../pattern/seam-pair';
import type { Graded, RuleChange } from '../seams/closing-change';
import { closingChange } from '../seams/closing-change';
import type { Diagnosis } from '../seams/diagnose';
import { nameOf } from '../seams/slips/sheet-state';
import type { WalkedSeam } from '../seams/walked-seam';
import { SAME_PLACE, SEAM_MATCH, SEAM_WARNING } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import { cornersAcrossSeam } from './corners-across-seam';
import type { Finding } from './finding';
import { found } from './finding';
import { seamSeverity } from './seam-severity';

const WALKED = 'common practice, no source: every seam pair walked in every size';

/**
 * The findings of all seams, seam by seam and size by size; a gap whose cause is known names it.
 * `exact` are the same seams before the rules were rounded.
 */
export function checkSewnSeams(
  range: GradedPattern,
  seams: readonly WalkedSeam[],
  exact: readonly WalkedSeam[],
  graded: Graded,
  display: LengthDisplay,
  diagnoses: readonly Diagnosis[] = [],
): Finding[] {
  const sizes = range.sizes.map(({ pieces }) => pieces);
  const labels = range.sizes.map(({ label }) => label);
  return seams.flatMap((seam, s) => {
    const cause = diagnoses.find(({ seam: told }) => told?.pair === seam.pair)?.cause;
    const words = (i: number): string => {
      if (cause !== undefined) return `; see the rule of ${nameOf(graded.pattern, cause.at)}`;
      return graded.search.actsAlone
        ? changeWords(closingChangesOf(seam, i, sizes[i] ?? [], graded), display)
        : '; the gap alone does not tell which formula or parameter makes it';
    };
    const exactGap = (i: number): number => exact[s]?.walks[i]?.gap ?? NaN;
    return present([
      notchCounts(seam),
      ...range.sizes.flatMap((size, i) => [
        !meetsItself(seam.pair) &&
          lengthFinding(range, seam, i, exactGap(i), display, () => words(i)),
        notchFinding(seam, size.label, i, display),
      ]),
      ...cornersAcrossSeam(seam, piecesOf(seam), labels, range.rules.base),
    ]);
  });
}

/** The smallest change on either side, since a gap does not tell on which side it is made. */
function closingChangesOf(
  { pair, walks, way }: WalkedSeam,
  size: number,
  pieces: GradedPattern['sizes'][number]['pieces'],
  graded: Graded,
): readonly RuleChange[] {
  const walk = walks[size];
  if (walk === undefined) return [];
  const changes = pair.sides.flatMap(
    (side) => closingChange(walk, way, pieces, size, graded, side) ?? [],
  );
  return changes.filter(
    ({ piece, point }, i) =>
      changes.findIndex((own) => own.piece === piece && own.point === point) === i,
  );
}

function piecesOf({ pair }: WalkedSeam): string {
  const sides = pair.sides.map(({ edges }) =>
    [...new Set(edges.map(({ piece }) => piece))].join(' + '),
  );
  return [...new Set(sides)].join(', ');
}

function lengthFinding(
  range: GradedPattern,
  seam: WalkedSeam,
  i: number,
  exactGap: number,
  display: LengthDisplay,
  closing: () => string,
): Finding {
  const { pair, walks } = seam;
  const [first, second] = walks[i]?.walks ?? [];
  const gap = walks[i]?.gap ?? NaN;
  const atBase = walks[range.rules.base]?.gap ?? NaN;
  const [a = NaN, b = NaN] = [first?.length, second?.length];
  const eased = walks[i]?.ease ?? 0;
  const ease = eased === 0 ? '' : `, ${showLength(eased, display)} of it ease`;
  const apart = `the first side is ${showLength(a, display)}, the second ${showLength(b, display)}${ease}`;
  const severity = seamSeverity(Math.abs(gap));
  const isExact = Math.abs(exactGap) <= SEAM_MATCH && Math.abs(gap) > SEAM_MATCH;
  return found({
    severity,
    check: 'seam-lengths',
    size: range.sizes[i]?.label ?? '',
    piece: piecesOf(seam),
    subject: pair.name,
    measured: a,
    expected: b + eased,
    tolerance: SEAM_MATCH,
    source: WALKED,
    message:
      severity === 'ok'
        ? `the sides meet at ${showLength(a, display)}${ease}`
        : `${apart}: ${showLength(gap, display)} off` + causeWords(),
    ...(isExact ? { byRounding: true } : {}),
  });

  /** A gap that is in the base is mended there; only what the grade adds is a matter of rules. */
  function causeWords(): string {
    if (i === range.rules.base) return '';
    const ofBase =
      Math.abs(atBase) > SEAM_MATCH
        ? `, of which ${showLength(atBase, display)} are in the base`
        : '';
    const rounded = gap - exactGap;
    if (Math.abs(rounded) > SEAM_MATCH)
      return `${ofBase}, of which rounding makes ${showLength(rounded, display)}`;
    if (Math.abs(gap - atBase) > SEAM_WARNING) return ofBase + closing();
    return ofBase;
  }
}

function changeWords(changes: readonly RuleChange[], display: LengthDisplay): string {
  if (changes.length === 0) return '; no rule of these pieces would close it';
  const words = changes.map(({ piece, point, change }) => {
    const axes = (['x', 'y'] as const)
      .filter((axis) => Math.abs(change[axis]) > SEAM_MATCH)
      .map((axis) => `d${axis} ${showLength(change[axis], display)}`);
    return `${piece} ${point} ${axes.join(', ')} more`;
  });
  const ways = words.length > 1 ? 'either of two changes would close it' : 'one way to close it';
  return `; ${ways}: ${words.join('; or ')}`;
}

function notchCounts({ pair, walks, ...seam }: WalkedSeam): Finding | undefined {
  const [first, second] = walks[0]?.walks ?? [];
  const counts = [first?.notches.length ?? 0, second?.notches.length ?? 0] as const;
  if (walks[0]?.isMatched !== false) return undefined;
  return found({
    severity: 'warning',
    check: 'notches-match',
    piece: piecesOf({ pair, walks, ...seam }),
    subject: pair.name,
    quantity: 'number',
    measured: counts[0],
    expected: counts[1],
    source: WALKED,
    message: `the sides have ${counts[0]} and ${counts[1]} notches, so they cannot be matched`,
  });
}

/**
 * Between places that meet the ease may lie anywhere, so only what exceeds it counts; where it is
 * spread evenly, every stretch has its share of it, and where a stretch has its own, that.
 */
function notchFinding(
  seam: WalkedSeam,
  size: string,
  i: number,
  display: LengthDisplay,
): Finding | undefined {
  const { pair, walks } = seam;
  const { stretches = [], ease = 0, walks: [first, second] = [] } = walks[i] ?? {};
  if (stretches.length < 2) return undefined;
  const share = (first?.length ?? NaN) / (second?.length ?? NaN);
  const rest = ease - stretches.reduce((sum, own) => sum + (own.ease ?? 0), 0);
  const off = stretches.map(({ lengths: [a, b], ease: own }) => {
    if (own !== undefined) return a - b - own;
    if (pair.spread === 'even') return a - share * b;
    const more = a - b;
    const [least, most] = [Math.min(0, rest), Math.max(0, rest)];
    return more < least ? more - least : more > most ? more - most : 0;
  });
  // Machines differ in the last digits of a number, so among equals the first is told.
  const worst = off.reduce(
    (k, value, j) => (Math.abs(value) > Math.abs(off[k] ?? 0) + SAME_PLACE ? j : k),
    0,
  );
  const stretch = stretches[worst];
  const severity = seamSeverity(Math.abs(off[worst] ?? NaN));
  return found({
    severity,
    check: 'notch-to-notch',
    size,
    piece: piecesOf(seam),
    subject: pair.name,
    measured: stretch?.lengths[0],
    expected: (stretch?.lengths[1] ?? NaN) + (stretch?.ease ?? 0),
    tolerance: SEAM_MATCH,
    source: WALKED,
    message:
      severity === 'ok'
        ? 'the notches meet'
        : `from ${stretch?.from ?? ''} to ${stretch?.to ?? ''} the sides are ` +
          `${showLength(off[worst] ?? NaN, display)} off${easeWords(stretch?.ease, display)}`,
  });
}

function easeWords(ease: number | undefined, display: LengthDisplay): string {
  return ease === undefined
    ? ''
    : `, besides the ease of ${showLength(ease, display)} stated for it`;
}
