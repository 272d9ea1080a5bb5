/** How the time of `grade` grows with the sizes of a chart and with the points of a given pattern. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Run } from './cost';
import { usualNothing } from './cost';
import { evenChart } from './even-chart';
import { givenRings } from './given-rings';
import { amount, printTable, ratioText } from './printed-table';

/** One thing that grows, in steps, and the call of `grade` for each. */
interface Series {
  readonly name: string;
  readonly steps: readonly number[];
  readonly call: (folder: string, count: number) => readonly string[];
}

const SIZES = [10, 100];
const POINTS = [100, 300, 1000, 3000, 10_000];

/** Sizes of the given pattern. */
const GIVEN_SIZES = 6;

/** ms of processor time; a step that the two before it let expect more is not run. */
const LONGEST = 30_000;

/** Every series, one run a step; `isShort` leaves out the last step of each. */
export function growth(run: Run, folder: string, isShort: boolean): void {
  const series: readonly Series[] = [
    ...['pencil', 'shared-pencil'].map((style) => ({
      name: `sizes, ${style}`,
      steps: SIZES,
      call: draftedCall(style),
    })),
    { name: 'points, net', steps: POINTS, call: givenCall(undefined) },
    { name: 'points, with allowances', steps: POINTS, call: givenCall('10 mm') },
  ];
  const plain = usualNothing(run);
  const rows = series.flatMap(({ name, steps, call }, s) => {
    let last: { readonly count: number; readonly own: number; readonly power: number } | undefined;
    return (isShort ? steps.slice(0, -1) : steps).map((count) => {
      const title = `${name}: ${count.toLocaleString('en-US')}`;
      const times = count / (last?.count ?? count);
      const expected = last === undefined ? undefined : last.own * times ** Math.max(1, last.power);
      if (expected !== undefined && expected > LONGEST)
        return [title, `not run: ${(expected / 1000).toFixed(0)} s expected`];
      const inputs = join(folder, `growth-${s}-${count}`);
      mkdirSync(inputs);
      const { cpu, wall, memory } = run(['dist/cli.js', 'grade', ...call(inputs, count)]);
      const own = cpu - plain;
      const power = last === undefined ? NaN : Math.log(own / last.own) / Math.log(times);
      last = { count, own, power: Number.isNaN(power) ? 1 : power };
      return [
        title,
        ratioText(cpu / plain),
        Number.isNaN(power) ? '' : power.toFixed(2),
        amount(cpu),
        amount(wall),
        amount(memory),
      ];
    });
  });
  printTable(
    `growth of grade, one run each; the points of two sewn pieces in ${GIVEN_SIZES} sizes.\n` +
      'power 1: as fast as the count, 2: as its square; told from the row before, less node -e 0',
    ['', 'ratio', 'power', 'processor ms', 'clock ms', 'MB'],
    rows,
  );
}

/** A chart of `count` sizes that grow by 5 mm, drafted in a style. */
function draftedCall(style: string): Series['call'] {
  return (folder, count) => {
    const chart = join(folder, 'sizes.csv');
    writeFileSync(chart, evenChart(count));
    const base = `${Math.ceil(count / 2)}`;
    return [chart, '--base', base, '--style', style, '--out', join(folder, 'out')];
  };
}

function givenCall(allowance: string | undefined): Series['call'] {
  return (folder, count) => {
    const [pattern, rules] = ['pattern.csv', 'rules.csv'].map((name) => join(folder, name)) as [
      string,
      string,
    ];
    const sheets = givenRings(count, GIVEN_SIZES, allowance);
    writeFileSync(pattern, sheets.pattern);
    writeFileSync(rules, sheets.rules);
    return ['--pattern', pattern, '--rules', rules, '--out', join(folder, 'out')];
  };
}
