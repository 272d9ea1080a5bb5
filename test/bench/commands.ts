/** Whole commands as processes, from files to files, as anybody calls them. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Run } from './cost';
import { besideNothing, nothing } from './cost';
import { SPREAD_HEADS, amount, printTable, spreadCells } from './printed-table';

const CLI = 'dist/cli.js';
const DEMO = 'size-charts/demo.csv';

/** Each command beside `node -e 0`, in `rounds` rounds; what they write goes to `folder`. */
export function commands(run: Run, folder: string, rounds: number): void {
  const out = join(folder, 'out');
  const drafted = (style: string): readonly string[] => [DEMO, '--base', '12', '--style', style];
  const handout = join(folder, 'exercise');
  const exercise = ['exercise', '--seed', '7', '--difficulty', 'break', '--out'];
  run([CLI, ...exercise, handout]);
  run([CLI, ...exercise, handout, '--key']);
  const [chart, key] = [join(handout, 'chart.csv'), join(handout, 'key.csv')];

  const calls: readonly (readonly [string, readonly string[]])[] = [
    ['check', ['check', DEMO]],
    ...['pencil', 'shared-pencil'].flatMap((style): (readonly [string, readonly string[]])[] => [
      [`grade ${style}`, ['grade', ...drafted(style), '--out', out]],
      [`grade ${style} --fabric`, ['grade', ...drafted(style), '--fabric', '--out', out]],
      [`print ${style} --paper a4`, ['print', ...drafted(style), '--paper', 'a4', '--out', out]],
    ]),
    ['exercise', [...exercise, out]],
    ['assess', ['assess', chart, key, '--style', 'pencil', '--base', '12']],
    ['explain', ['explain', chart, 'front.side_waist', '--style', 'pencil', '--base', '12']],
    ['infer', ['infer', key]],
    ['styles', ['styles', 'shared-pencil']],
    ['chart', ['chart', DEMO, '--unit', 'cm']],
  ];
  const found = besideNothing(run, rounds, [
    () => nothing(run),
    ...calls.map(([, args]) => () => {
      // Nobody's first run has files to replace.
      rmSync(out, { recursive: true, force: true });
      return run([CLI, ...args]);
    }),
  ]);
  printTable(
    `whole commands, demo chart of 12 sizes; median of ${rounds} pairs`,
    ['', ...SPREAD_HEADS, 'processor ms', 'clock ms', 'MB'],
    found.map(({ ratio, cpu, wall, memory }, i) => [
      calls[i - 1]?.[0] ?? 'node -e 0 itself',
      ...spreadCells(ratio),
      amount(cpu),
      amount(wall),
      amount(memory),
    ]),
  );
}
