/** Tolerances against grade steps, and a measured sample against its spec. */
import { grouped } from '../lists/grouped';
import type { Occasion } from '../measure/occasion';
import { occasionWords } from '../measure/occasion';
import type { Deviation, SampleFit } from '../measure/sample';
import type { Spec, SpecRow } from '../measure/spec';
import { growthOf } from '../rule-sheet/moves-and-steps';
import { NO_STEP, SAME_PLACE } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength, trimmed } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

const OVERLAP =
  'common practice, no source: both tolerances together are smaller than the grade step, or a ' +
  'garment may be smaller than one of the size below';

/** A warning for each point of measure at which neighboring sizes may overlap. */
export function checkTolerances({ rows, sizes }: Spec, display: LengthDisplay): Finding[] {
  return rows.flatMap((row): Finding | [] => {
    const total = row.tolerance.minus + row.tolerance.plus;
    const growths = growthOf(row.values).map(Math.abs);
    const graded = growths.filter((step) => step > NO_STEP);
    if (graded.length === 0) return [];
    const least = Math.min(...graded);
    const held = total < least - SAME_PLACE;
    const at = growths.indexOf(least);
    return found({
      severity: held ? 'ok' : 'warning',
      check: 'tolerance-overlap',
      size: held ? '' : `${sizes[at] ?? ''}-${sizes[at + 1] ?? ''}`,
      subject: subjectOf(row),
      measured: total,
      expected: least,
      source: OVERLAP,
      message: held
        ? `the total tolerance of ${showLength(total, display)} is smaller than every step`
        : `the total tolerance of ${showLength(total, display)} is not smaller than the step of ` +
          `${showLength(least, display)}: neighboring sizes overlap`,
    });
  });
}

function subjectOf({ code, measure }: SpecRow): string {
  return `${code} ${measure}`;
}

const SPEC = 'the spec of this pattern and its tolerances';

/** Each measurement of a sample, then what its deviations say about the base and the grade. */
export function checkSample(
  taken: readonly Deviation[],
  fits: readonly SampleFit[],
  spec: Spec,
  display: LengthDisplay,
): Finding[] {
  return [
    ...taken.map(({ row, size, value, off, beyond, when }): Finding => {
      const { minus, plus } = row.tolerance;
      return found({
        severity: beyond > 0 ? 'fail' : 'ok',
        check: 'sample',
        size: spec.sizes[size] ?? '',
        subject: subjectOf(row),
        measured: value,
        expected: row.values[size],
        tolerance: off < 0 ? minus : plus,
        source: SPEC,
        message:
          heading(when) +
          (beyond > 0
            ? `out of tolerance: ${signed(off, display)} off, ${showLength(beyond, display)} too much`
            : `passed, ${signed(off, display)} off`),
      });
    }),
    ...fits.map((fit) => fitFinding(fit, spec, display)),
    ...changeFindings(fits, spec, display),
  ];
}

/** `after 3 washes: `, where a sample tells when it was measured. */
function heading(when: Occasion): string {
  const words = occasionWords(when);
  return words === '' ? '' : `${words}: `;
}

/** What each point of measure lost or gained from the first time to the last: by washing, or by wear of the grade. */
function changeFindings(
  fits: readonly SampleFit[],
  { base }: Spec,
  display: LengthDisplay,
): Finding[] {
  return [...grouped(fits, ({ row }) => row)].flatMap(([row, own]): Finding[] => {
    const [first, last] = [own[0], own.at(-1)];
    if (first === undefined || last === undefined || own.length < 2) return [];
    const change = last.constant - first.constant;
    const value = row.values[base] ?? NaN;
    const allowed = change < 0 ? row.tolerance.minus : row.tolerance.plus;
    const times = own.map(
      ({ constant, when }) => `${signed(constant, display)} ${occasionWords(when)}`,
    );
    return [
      found({
        severity: Math.abs(change) > allowed ? 'warning' : 'note',
        check: 'sample-change',
        subject: subjectOf(row),
        measured: change,
        expected: 0,
        tolerance: allowed,
        source: 'the lines of least squares of each time, at the base',
        message:
          `from the first time to the last ${signed(change, display)}, ` +
          `${trimmed((100 * change) / (value + first.constant), 1)} % of ${showLength(value + first.constant, display)} ` +
          `in the base: ${times.join('; ')}`,
      }),
    ];
  });
}

function signed(mm: number, display: LengthDisplay): string {
  const shown = showLength(mm, display);
  return shown.startsWith('0 ') || mm <= 0 ? shown : `+${shown}`;
}

function fitFinding(fit: SampleFit, spec: Spec, display: LengthDisplay): Finding {
  const { row, constant, slope, rest, sizes, outlier, when } = fit;
  const [first = 0, last = 0] = [row.values[0], row.values.at(-1)];
  const { minus, plus } = row.tolerance;
  const allowed = (off: number): number => (off < 0 ? minus : plus);
  const baseOff = Math.abs(constant) > allowed(constant);
  const grown = (slope ?? 0) * (last - first);
  const gradeOff = Math.abs(grown) > allowed(grown);
  const certainty =
    sizes === 1 ? 'one size says nothing about the grade' : sizes === 2 ? 'two sizes only' : '';
  const grade =
    slope === undefined
      ? ''
      : `; the grade adds ${signed(grown, display)} from ${spec.sizes[0] ?? ''} to ` +
        `${spec.sizes.at(-1) ?? ''} (${trimmed(100 * slope, 1)} % of the growth)`;
  const blame =
    baseOff && gradeOff
      ? 'base and grade are off'
      : baseOff
        ? 'the base is off'
        : gradeOff
          ? 'the grade is off'
          : 'neither base nor grade is off by more than the tolerance';
  const alone =
    outlier === undefined
      ? ''
      : `size ${spec.sizes[outlier.size] ?? ''} alone is ${signed(outlier.off, display)} off the line of the others, ` +
        'so measure it again, and look how it was cut; without it ';
  return found({
    severity: baseOff || gradeOff || outlier !== undefined ? 'warning' : 'note',
    check: 'sample-fit',
    ...(outlier === undefined ? {} : { size: spec.sizes[outlier.size] ?? '' }),
    subject: subjectOf(row),
    measured: constant,
    expected: 0,
    tolerance: allowed(constant),
    source: 'least squares over the measured sizes',
    message:
      `${heading(when)}${alone}${blame}: all sizes ${signed(constant, display)}${grade}` +
      `; what is left is ${showLength(rest, display)}${certainty === '' ? '' : `; ${certainty}`}`,
  });
}
