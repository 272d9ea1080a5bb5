/** Work in one process that is warm: a range redrawn after a change, and body after body. */
import { readFileSync } from 'node:fs';
import { bodyDrafter } from '../../src/bodies/body-drafter';
import { bodyChart, readBodyList } from '../../src/bodies/body-list';
import { needValues } from '../../src/chart/need-values';
import { readChart } from '../../src/chart/read-chart';
import type { SizeChart } from '../../src/chart/size-chart';
import { drawingOf } from '../../src/files/drawing-files';
import { applyRules, deriveRules } from '../../src/grade/rules';
import { CENTER_WAIST, stackOn } from '../../src/grade/stack';
import { draftRange } from '../../src/jobs/draft-range';
import { gradeChart } from '../../src/jobs/grade-chart';
import { finishedMeasures } from '../../src/measure/finished';
import { skirtPoints } from '../../src/measure/skirt-points';
import { nestSheet } from '../../src/render/nest-sheet';
import { svg } from '../../src/render/svg';
import type { Run } from './cost';
import { besideNothing, costOf, median, spread, usualNothing } from './cost';
import { gradedSteps, untimed } from './graded-steps';
import { SPREAD_HEADS, amount, printTable, ratioText, spreadCells } from './printed-table';
import { straightSkirt } from './straight-skirt';

const DEMO = 'size-charts/demo.csv';
const STYLES = ['pencil', 'shared-pencil'];

/** Ten runs first, so that what is measured is compiled. */
const WARMING = 10;

/** A changed parameter to a redrawn nest of 12 sizes with its findings. */
export function regrade(run: Run, rounds: number): void {
  const chart = readFileSync(DEMO, 'utf8');
  let change = 0;
  const cases = STYLES.map((style) => () => {
    const set = { hip_ease: `${(5 + 0.01 * change++).toFixed(2)} cm` };
    const result = gradeChart({ chart, base: '12', style, set });
    if (result.findings.length === 0) throw new Error('a grade without findings was not checked');
    svg(nestSheet(drawingOf(result)));
  });
  for (const work of cases) for (let k = 0; k < WARMING; k++) work();
  const found = besideNothing(
    run,
    rounds,
    cases.map((work) => () => costOf(work)),
  );
  printTable(
    `warm: a changed parameter to a redrawn nest of 12 sizes with findings; median of ${rounds} pairs`,
    ['', ...SPREAD_HEADS, 'processor ms', 'clock ms'],
    found.map(({ ratio, cpu, wall }, i) => [
      STYLES[i] ?? '',
      ...spreadCells(ratio),
      amount(cpu),
      amount(wall),
    ]),
  );
}

/**
 * One compiled block drafts, cuts, walks, measures and checks `count` bodies, one after another. The
 * heap is what is left of it after a collection, once after a tenth of the bodies and once after all.
 */
export function bodies(run: Run, count: number): void {
  const rows = STYLES.map((style) => {
    const work = bodyWork(style);
    const from = count / 10;
    for (let k = 0; k < from; k++) work(k);
    const first = heap();
    const plain = usualNothing(run);
    const { cpu } = costOf(() => {
      for (let k = from; k < count; k++) work(k);
    });
    const each = cpu / (count - from);
    return [
      style,
      amount(1000 / each),
      ratioText(each / plain),
      amount(each),
      first.toFixed(1),
      heap().toFixed(1),
    ];
  });
  printTable(
    `body after body with one compiled block: drafted, cut, walked, measured, checked; ${count} bodies`,
    ['', 'a second', 'ratio', 'processor ms', `MB after ${count / 10}`, `after ${count}`],
    rows,
  );
}

function bodyWork(style: string): (k: number) => void {
  const chart = readChart(readFileSync(DEMO, 'utf8'), DEMO);
  const base = chart.sizes.indexOf('12');
  const drafted = draftRange(chart, base, { style });
  const first = drafted.sizes[base];
  if (first === undefined) throw new RangeError('the demo chart has a size 12');
  return (k) => {
    // Within 5 % of the base, so that no body is refused.
    const factor = 0.95 + 0.1 * ((k * 0.618034) % 1);
    const measured = first.measured.map((mm) => mm * factor);
    const body = new Map([...first.body].map(([name, mm]) => [name, mm * factor]));
    const label = `${k}`;
    const draft = drafted.drafter.draft(measured, label, first.draft);
    const own = { ...drafted, sizes: [{ label, body, measured, draft }] };
    const { findings } = gradedSteps(own, 0, () => [], undefined, untimed);
    if (findings.length === 0) throw new Error('a body without findings was not checked');
  };
}

/** MB in use after a collection, for which node is started with `--expose-gc`. */
function heap(): number {
  if (globalThis.gc === undefined) throw new Error('node has to be started with --expose-gc');
  globalThis.gc();
  return process.memoryUsage().heapUsed / 2 ** 20;
}

/** Ranges drafted by each of the two in one round; a single one is too short to be told. */
const REPEAT = 500;

/** The formulas of `pencil` beside the same skirt written out by hand as one straight function. */
export function byHand(rounds: number): void {
  const chart = readChart(readFileSync(DEMO, 'utf8'), DEMO);
  const base = chart.sizes.indexOf('12');
  const { drafter, sizes } = draftRange(chart, base, { style: 'pencil' });
  const points = skirtPoints(drafter.plans);
  const ours = (): void => {
    const drafts = sizes.map(({ label, measured }) =>
      drafter.draft(measured, label).pieces.map((piece) => stackOn(piece, CENTER_WAIST)),
    );
    const graded = applyRules(drafts[base] ?? [], deriveRules(drafts, base));
    for (const pieces of graded) finishedMeasures(points, pieces);
  };
  const row = (name: string): readonly number[] => needValues(chart, name);
  const [waist, hip] = [row('waist_girth'), row('hip_girth')];
  const [depth, length] = [row('waist_to_hip'), row('skirt_length')];
  const own = chart.sizes.map((_, i) => ({
    waist: waist[i] ?? NaN,
    hip: hip[i] ?? NaN,
    depth: depth[i] ?? NaN,
    length: length[i] ?? NaN,
  }));
  const plain = (): void => void straightSkirt(own, base);
  const repeated = (work: () => void): number =>
    costOf(() => {
      for (let k = 0; k < REPEAT; k++) work();
    }).cpu;
  repeated(ours);
  repeated(plain);
  const pairs = Array.from({ length: rounds }, () => [repeated(ours), repeated(plain)] as const);
  const ratio = spread(pairs.map(([a, b]) => a / b));
  const perSize = (ms: readonly number[]): string =>
    ((1000 * median(ms)) / (REPEAT * chart.sizes.length)).toFixed(1);
  printTable(
    `drafted, graded and measured, pencil; median of ${rounds} pairs`,
    ['', ...SPREAD_HEADS, 'processor us a size'],
    [
      ['formulas of the style', ...spreadCells(ratio), perSize(pairs.map(([a]) => a))],
      ['one straight function', '1', '', '', perSize(pairs.map(([, b]) => b))],
    ],
  );
}

/** Bodies drafted and measured one after another, as a streamed list has them, beside the hand's function. */
export function measuredBodies(count: number): void {
  const list = readBodyList(
    '# unit: cm\nwaist,hip,waist_to_hip,skirt_length\n70,98,20,60\n',
    'list',
  );
  const [entry] = list.entries;
  if (entry === undefined) throw new RangeError('the list has a body');
  const chart = bodyChart(list, entry);
  // Within 5 % of one body, each another one.
  const factorOf = (k: number): number => 0.95 + 0.1 * ((k * 0.618034) % 1);
  const bodyAt = (k: number): SizeChart => ({
    ...chart,
    rows: chart.rows.map((row) => ({
      ...row,
      values: row.values.map((mm) => (mm === null ? null : mm * factorOf(k))),
    })),
  });
  const works = [
    ...STYLES.map((style) => {
      const draft = bodyDrafter(list, { style });
      return { name: style, work: (k: number): void => void draft(bodyAt(k)) };
    }),
    {
      name: 'pencil by one straight function',
      work: (k: number): void => {
        const [waist, hip, depth, length] = [700, 980, 200, 600].map((mm) => mm * factorOf(k));
        straightSkirt(
          [{ waist: waist ?? NaN, hip: hip ?? NaN, depth: depth ?? NaN, length: length ?? NaN }],
          0,
        );
      },
    },
  ];
  const rows = works.map(({ name, work }) => {
    for (let k = 0; k < count / 2; k++) work(k);
    const { cpu } = costOf(() => {
      for (let k = 0; k < count; k++) work(k);
    });
    return [name, amount((1000 * count) / cpu), amount((1000 * cpu) / count)];
  });
  printTable(
    `bodies drafted and measured as a streamed list has them, one processor; ${count} bodies`,
    ['', 'a second', 'processor us'],
    rows,
  );
}
