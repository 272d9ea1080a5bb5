/** Where the time of one `grade` goes: each phase in a fresh process, cold as a command is. */
import { readFileSync } from 'node:fs';
import { readChart } from '../../src/chart/read-chart';
import { drawingOf } from '../../src/files/drawing-files';
import { seamsTable } from '../../src/files/seams-table';
import {
  findingsTable,
  finishedMeasurementsTable,
  gradeRulesRows,
  gradedPointsRows,
} from '../../src/files/tables';
import { ruleFormulas } from '../../src/grade/rule-formula';
import { CENTER_WAIST } from '../../src/grade/stack';
import { draftRange } from '../../src/jobs/draft-range';
import { nestSheet } from '../../src/render/nest-sheet';
import { sizeSheet } from '../../src/render/size-sheet';
import { svg } from '../../src/render/svg';
import type { Run } from './cost';
import { costOf, median, nothing } from './cost';
import type { Timed } from './graded-steps';
import { gradedSteps } from './graded-steps';
import { amount, printTable, ratioText } from './printed-table';

const DEMO = 'size-charts/demo.csv';
const STYLES = ['pencil', 'shared-pencil'];

/** Argument with which this program is one process that tells the phases of a style. */
export const TELL_PHASES = '--tell-phases';

/** ms of processor time by phase, the rules as formulas among measuring, checking and texts. */
type Phases = Readonly<Record<string, number>>;

/** Runs the phases once in this process and writes them as JSON. */
export function tellPhases(style: string): void {
  const phases: Record<string, number> = {};
  const timed: Timed = (phase, work) => {
    const done: ReturnType<typeof work>[] = [];
    phases[phase] = costOf(() => void done.push(work())).cpu;
    return done[0] as ReturnType<typeof work>;
  };
  const chart = timed('read', () => readChart(readFileSync(DEMO, 'utf8'), DEMO));
  const base = chart.sizes.indexOf('12');
  const drafted = timed('draft', () => draftRange(chart, base, { style }));
  const formulas = () => {
    const first = drafted.sizes[base];
    if (first === undefined) throw new RangeError('the demo chart has a size 12');
    return ruleFormulas(drafted.drafter, first.measured, first.draft, CENTER_WAIST);
  };
  const result = gradedSteps(drafted, base, formulas, chart, timed);
  const { range, shown, display, seams, findings, ruleTexts } = result;
  const scenes = timed('draw', () => {
    const drawing = drawingOf(result);
    return [nestSheet(drawing), ...shown.map(({ label }) => sizeSheet(drawing, label))];
  });
  timed('write drawings', () => scenes.map(svg));
  timed('write tables', () => [
    ...gradedPointsRows(shown, display),
    ...gradeRulesRows(range, ruleTexts, shown, display),
    finishedMeasurementsTable(shown, display),
    seamsTable(range, seams, display),
    findingsTable(findings, display),
  ]);
  console.log(JSON.stringify(phases));
}

/** The phases of both styles, medians of `rounds` processes each, against `node -e 0`. */
export function phases(run: Run, program: string, rounds: number): void {
  const found = Array.from({ length: rounds }, () => ({
    plain: nothing(run).cpu,
    styles: STYLES.map((style) => JSON.parse(run([program, TELL_PHASES, style]).said) as Phases),
  }));
  const names = Object.keys(found[0]?.styles[0] ?? {});
  printTable(
    `phases of grade in a fresh process; median of ${rounds}`,
    ['', ...STYLES.flatMap((style) => [style, 'ms'])],
    names.map((name) => [
      name,
      ...STYLES.flatMap((_, s) => {
        const own = found.map(({ plain, styles }) => ({ plain, ms: styles[s]?.[name] ?? NaN }));
        return [
          ratioText(median(own.map(({ plain, ms }) => ms / plain))),
          amount(median(own.map(({ ms }) => ms))),
        ];
      }),
    ]),
  );
}
