/** The tables of a graded range as CSV text. */
import type { Finding } from '../check/finding';
import type { GradedPattern, SizedPattern } from '../grade/graded-pattern';
import type { RuleTexts } from '../rule-sheet/point-rules';
import { stepsOf } from '../grade/rules';
import { writtenCsv } from '../table/written-csv';
import type { LengthDisplay } from '../units';
import { tableLength, trimmed } from '../units';
import { whatToDo } from '../verdict/what-to-do';

/** `size,piece,point,x_in,y_in`: every point of every graded piece, in texts of a piece each. */
export function* gradedPointsRows(
  sizes: readonly SizedPattern[],
  display: LengthDisplay,
): Generator<string> {
  yield pointsHeader('size', display);
  yield* pointsRows(sizes, display);
}

/** The header of a table of points; `label` is what the labels are of. */
export function pointsHeader(label: string, { unit }: LengthDisplay): string {
  return writtenCsv([[label, 'piece', 'point', `x_${unit}`, `y_${unit}`]]);
}

/** The rows below it, in texts of a piece each. */
export function* pointsRows(
  sizes: readonly Pick<SizedPattern, 'label' | 'pieces'>[],
  display: LengthDisplay,
): Generator<string> {
  for (const { label, pieces } of sizes) {
    for (const { plan, points } of pieces) {
      yield writtenCsv(
        points.map(({ x, y }, i) => [
          label,
          plan.name,
          plan.pointNames[i],
          tableLength(x, display),
          tableLength(y, display),
        ]),
      );
    }
  }
}

/**
 * `piece,point,size,dx_in,dy_in,step_dx_in,step_dy_in,rule_x,rule_y`, in texts of a piece each: the
 * moves from the base, the steps from the neighbor on the base's side, and the rule as a formula,
 * before any rounding.
 */
export function* gradeRulesRows(
  range: GradedPattern,
  formulas: RuleTexts,
  sizes: readonly SizedPattern[],
  display: LengthDisplay,
): Generator<string> {
  const columns = ['dx', 'dy', 'step_dx', 'step_dy'].map((name) => `${name}_${display.unit}`);
  yield writtenCsv([['piece', 'point', 'size', ...columns, 'rule_x', 'rule_y']]);
  const steps = stepsOf(range.rules);
  const shown = range.sizes.flatMap((size, i) => (sizes.includes(size) ? [{ size, i }] : []));
  for (const [p, plan] of range.plans.entries()) {
    const rows = plan.pointNames.flatMap((point, k) => {
      const rule = formulas[p]?.[k];
      const texts = [rule?.x.text, rule?.y.text];
      return shown.map(({ size, i }) => {
        const move = range.rules.moves[i]?.[p]?.[k];
        const step = steps[i]?.[p]?.[k];
        const lengths = [move?.x, move?.y, step?.x, step?.y];
        return [
          plan.name,
          point,
          size.label,
          ...lengths.map((length) => tableLength(length ?? NaN, display)),
          ...texts,
        ];
      });
    });
    yield writtenCsv(rows);
  }
}

/** Stands for the stride of a skirt that does not limit the step. */
export const NO_LIMIT = 'no limit';

/** A finished measurement in mm as a cell; a stride may have no limit. */
export function measureCell(value: number, display: LengthDisplay): string {
  return value === Infinity ? NO_LIMIT : tableLength(value, display);
}

/** `measure,unit,<one column a size>`: the finished measurements. */
export function finishedMeasurementsTable(
  sizes: readonly SizedPattern[],
  display: LengthDisplay,
): string {
  const rows = (sizes[0]?.measures ?? []).map(({ name }, i) => [
    name,
    display.unit,
    ...sizes.map(({ measures }) => measureCell(measures[i]?.value ?? NaN, display)),
  ]);
  return writtenCsv([['measure', 'unit', ...sizes.map(({ label }) => label)], ...rows]);
}

/**
 * `severity,check,size,piece,subject,measured,expected,tolerance,unit,source,message,what_to_do`; `label`
 * is what the labels are of.
 */
export function findingsTable(
  findings: readonly Finding[],
  display: LengthDisplay,
  label = 'size',
): string {
  const number = (finding: Finding, value: number | undefined): string => {
    if (value === undefined) return '';
    return finding.quantity === 'length' ? tableLength(value, display) : trimmed(value, 4);
  };
  const rows = findings.map((finding) => [
    finding.severity,
    finding.check,
    finding.size,
    finding.piece,
    finding.subject,
    number(finding, finding.measured),
    number(finding, finding.expected),
    number(finding, finding.tolerance),
    unitOf(finding, display),
    finding.source,
    finding.message,
    whatToDo([finding], display),
  ]);
  return writtenCsv([
    [
      'severity',
      'check',
      label,
      'piece',
      'subject',
      'measured',
      'expected',
      'tolerance',
      'unit',
      'source',
      'message',
      'what_to_do',
    ],
    ...rows,
  ]);
}

function unitOf(finding: Finding, display: LengthDisplay): string {
  if (finding.measured === undefined && finding.expected === undefined) return '';
  return { length: display.unit, angle: 'deg', number: '' }[finding.quantity];
}
