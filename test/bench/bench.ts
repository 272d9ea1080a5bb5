/**
 * Speed beside plain baselines, in one run on one machine: the whole `grade` as a process against
 * `node -e 0`, drafting, grading and measuring against the same skirt written out by hand, and
 * printing against a bare loop that writes the same pages. Ratios are printed; nothing is asserted.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { needValues } from '../../src/chart/need-values';
import { readChart } from '../../src/chart/read-chart';
import { compileBlock } from '../../src/draft/compile-block';
import { resolveParameters } from '../../src/draft/parameters';
import { findStyle } from '../../src/draft/styles';
import { applyRules, deriveRules } from '../../src/grade/rules';
import { stackOn } from '../../src/grade/stack';
import { CENTER_WAIST } from '../../src/grade/stack';
import { gradeChart } from '../../src/jobs/grade-chart';
import { readPaper } from '../../src/print/paper';
import { drawingOf } from '../../src/files/drawing-files';
import { printWith } from '../../src/files/print-files';
import { printTables } from '../../src/files/print-tables';
import { finishedMeasures } from '../../src/measure/finished';
import { skirtPoints } from '../../src/measure/skirt-points';
import { printedDrawing } from '../../src/print/print-drawing';
import { readPrintOptions } from '../../src/print/print-options';
import { barePages, writeBare } from './bare-pages';
import { sampleRoom } from './sample-room';
import { straightSkirt } from './straight-skirt';

/** The quarter method decides nothing by the range. */
const noFacts = { atBase: () => 0, alwaysZero: () => false };

const CHART = 'size-charts/demo.csv';

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;
}

function milliseconds(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** Runs both in turn, so that a machine that slows down slows both. */
function compare(rounds: number, ours: () => void, plain: () => void) {
  ours();
  plain();
  const pairs = Array.from({ length: rounds }, () => [milliseconds(ours), milliseconds(plain)]);
  const a = median(pairs.map(([first]) => first ?? NaN));
  const b = median(pairs.map(([, second]) => second ?? NaN));
  return { ours: a, plain: b, ratio: a / b };
}

function processes(): void {
  const out = mkdtempSync(join(tmpdir(), 'skirtgrade-bench-'));
  const run =
    (...args: string[]) =>
    () =>
      void spawnSync(process.execPath, args);
  const grade = run('dist/cli.js', 'grade', CHART, '--base', '12', '--out', out);
  const { ours, plain, ratio } = compare(21, grade, run('-e', '0'));
  rmSync(out, { recursive: true });
  console.log('whole process, median of 21 pairs');
  console.log(`  skirtgrade grade, 12 sizes   ${ours.toFixed(0)} ms`);
  console.log(`  node -e 0                    ${plain.toFixed(0)} ms`);
  console.log(`  ratio ${ratio.toFixed(2)} (goal at most 1.6)`);
}

function drafting(): void {
  const chart = readChart(readFileSync(CHART, 'utf8'), CHART);
  const rows = chart.rows.map(({ name }) => name);
  const style = findStyle('pencil');
  const parameters = resolveParameters(style, [], new Set(rows), chart.unit);
  const drafter = compileBlock(style.block, style.block.layout(noFacts), parameters, rows);
  const columns = drafter.measurements.map((name) => needValues(chart, name));
  const base = chart.sizes.indexOf('12');
  const repeat = 500;

  const points = skirtPoints(drafter.plans);
  const ours = (): void => {
    for (let k = 0; k < repeat; k++) {
      const sizes = chart.sizes.map((label, i) => {
        const body = columns.map((column) => column[i] as number);
        const { pieces } = drafter.draft(body, label);
        return pieces.map((piece) => stackOn(piece, CENTER_WAIST));
      });
      const graded = applyRules(sizes[base] ?? [], deriveRules(sizes, base));
      for (const pieces of graded) finishedMeasures(points, pieces);
    }
  };
  const [waist, hip, depth, length] = [
    'waist_girth',
    'hip_girth',
    'waist_to_hip',
    'skirt_length',
  ].map((name) => needValues(chart, name)) as [number[], number[], number[], number[]];
  const bodies = chart.sizes.map((_, i) => ({
    waist: waist[i] as number,
    hip: hip[i] as number,
    depth: depth[i] as number,
    length: length[i] as number,
  }));
  const plain = (): void => {
    for (let k = 0; k < repeat; k++) straightSkirt(bodies, base);
  };
  const result = compare(11, ours, plain);
  const perSecond = (ms: number): string => ((repeat * chart.sizes.length * 1000) / ms).toFixed(0);
  console.log('draft, grade and measure, sizes per second, median of 11 pairs');
  console.log(`  formulas of the style        ${perSecond(result.ours)}`);
  console.log(`  one straight function        ${perSecond(result.plain)}`);
  console.log(`  ratio ${result.ratio.toFixed(2)} (goal at most 3)`);
}

async function printing(): Promise<void> {
  const result = gradeChart({
    chart: readFileSync(CHART, 'utf8'),
    base: '12',
    style: 'shared-pencil',
  });
  const request = { paper: ['a4'] };
  const { pages } = printedDrawing(
    drawingOf(result),
    printTables(result),
    readPaper('a4'),
    readPrintOptions(request),
  );
  const planned = barePages(pages);
  const timed = async (work: () => Promise<unknown>): Promise<number> => {
    const start = performance.now();
    await work();
    return performance.now() - start;
  };
  const ours = (): Promise<unknown> => printWith(result, request, printTables(result));
  const plain = (): Promise<unknown> => writeBare(planned);
  await ours();
  await plain();
  const times: [number, number][] = [];
  for (let k = 0; k < 11; k++) times.push([await timed(ours), await timed(plain)]);
  const [a, b] = [median(times.map(([first]) => first)), median(times.map(([, second]) => second))];
  console.log(`print 12 sizes to A4, ${pages.length} pages, median of 11 pairs`);
  console.log(`  laid out, tiled and written  ${a.toFixed(0)} ms`);
  console.log(`  bare loop, pages planned     ${b.toFixed(0)} ms`);
  console.log(`  ratio ${(a / b).toFixed(2)} (goal at most 3)`);
}

processes();
drafting();
await printing();
await sampleRoom(compare);
