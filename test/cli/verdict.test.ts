import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rowsOf } from '../csv-tables';
import { runIn, workplace, typed } from './workplace';

const place = workplace();
const DEMO = resolve('size-charts/demo.csv');
const FOLDER = typed('--base 12 --style pencil --replace');

/** The verdict, its decisions and counts: what stands between the first two empty lines. */
function told(stdout: string): string {
  return (stdout.split('\n\n')[1] ?? '').replace(
    /, (?:in findings\.csv|which --verbose)[^]*$/u,
    '',
  );
}

describe('what grade, print and check say first', () => {
  const first = place.run('grade', DEMO, ...FOLDER, '--out', 'graded');

  it('is the verdict and at most five decisions, in 25 lines of 80 columns', async () => {
    const { stdout } = await first;
    const lines = stdout.trimEnd().split('\n');
    expect(lines.length).toBeLessThanOrEqual(25);
    expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(80);
    expect(told(stdout)).toMatch(
      /^Decide first: nothing failed, 2 decisions to make\.\n {2}1\. Set trued=1, which/u,
    );
  });

  it('is the same of grade and print, and counts the rows of findings.csv', async () => {
    const graded = await first;
    const printed = await place.run('print', DEMO, ...FOLDER, '--out', 'printed');
    expect(told(printed.stdout)).toBe(told(graded.stdout));
    const rows = rowsOf(place.read('graded/findings.csv'));
    const count = (severity: string): number =>
      rows.filter((row) => row.severity === severity).length;
    expect(told(graded.stdout)).toContain(
      `Findings: ${['fail', 'warning', 'note', 'ok'].map((one) => `${count(one)} ${one}`).join(', ')}`,
    );
    // The column what_to_do is the last.
    for (const line of place.read('graded/findings.csv').trimEnd().split('\n').slice(1))
      expect(line).toMatch(/^ok,.*,$|^(?:fail|warning|note),.*[^,]$/u);
  });

  it('of check is a decision where a cell of a known row is blank, which a style may need', async () => {
    place.write('blank.csv', '# unit: cm\nmeasurement,me\nwaist,72\nhip,98\nwaist_to_hip,\n');
    const { stdout } = await place.run('check', 'blank.csv');
    expect(told(stdout)).toContain('1. Fill in the missing cells of waist_to_hip, or take the');
    // The default style does need it.
    const { status } = await place.run('grade', 'blank.csv', '--out', 'blank');
    expect(status).toBe(2);
  });

  it('is of the chart alone where check reads one, in the numbers of grade', async () => {
    const chart =
      '# unit: in\nsize,8,10,12,14,16\nwaist,26,27,28,29,30\nhip,37,37.5,38,38.5,39\n' +
      'waist_to_hip,8,8,8,8,8\n';
    place.write('chart.csv', chart);
    const checked = await place.run('check', 'chart.csv');
    expect(checked.status).toBe(0);
    expect(told(checked.stdout)).toMatch(
      /^Decide first: nothing failed, 1 decision to make\.\n {2}1\. All sizes: decide whether your/u,
    );
    await place.run('grade', 'chart.csv', '--base', '12', '--out', 'of-chart');
    const rows = rowsOf(place.read('of-chart/findings.csv')).filter(
      ({ check, severity }) => severity === 'warning' && (check ?? '').includes('standard'),
    );
    expect(checked.stdout).toContain(`${rows.length} warning`);
    expect((await place.run('check', DEMO, '--quiet')).stdout).toBe(
      'Can be graded: nothing failed, and nothing is left to decide.\n',
    );
  });
});

describe('how much is told', () => {
  it('is the files alone with --quiet, and every finding with --verbose', async () => {
    const quiet = await place.run('print', DEMO, ...FOLDER, '--out', 'printed', '--quiet');
    expect(quiet.stdout).toBe('printed/print-a4.pdf\n');
    const graded = await place.run('grade', DEMO, ...FOLDER, '--out', 'graded', '--quiet');
    expect(graded.stdout.split('\n')).toContain('graded/findings.csv');
    expect(graded.stdout).not.toMatch(/Decide|Finished/u);
    const { stdout } = await place.run('grade', DEMO, ...FOLDER, '--out', 'graded', '--verbose');
    expect(stdout).toContain('note edge-over-dart (size 2, back, dart)');
    expect(stdout).toContain('note drop-changes');
    expect(stdout).not.toContain('more of');
    const both = await place.run('check', DEMO, '--quiet', '--verbose');
    expect([both.status, both.stdout]).toEqual([2, '']);
  });

  it('colors the verdict only on a terminal that wants it', async () => {
    const call = ['grade', DEMO, ...FOLDER, '--out', 'graded'];
    const { stdout } = await runIn(place.path, call, { color: true });
    expect(stdout).toContain('\u001b[33mDecide first\u001b[0m: ');
    expect((await runIn(place.path, call)).stdout).not.toContain('\u001b');
  });
});

describe('report.md', () => {
  it('has the verdict in three lines, the style, the decisions, and body, garment and cloth by size', async () => {
    const call = ['grade', DEMO, ...FOLDER, '--sizes', '12,14', '--fabric'];
    const { stdout } = await place.run(...call, '--out', 'reported');
    const report = place.read('reported/report.md');
    const [title, verdict, made, heading, decisions] = report.split('\n\n');
    expect(title).toMatch(/^# \S/u);
    expect(verdict?.split('\n')).toHaveLength(3);
    expect(made).toMatch(/^Style \S+, .*; stacked on /u);
    expect(heading).toBe('## To decide');
    expect(decisions).toMatch(/^1\. Set trued=1, which .*\n2\. All sizes: the hem allows/u);
    expect(stdout.replace(/\s+/gu, ' ')).toContain(verdict?.split('  \n')[0]);
    // The chart's waist of 12 and 14, and as much of the finished one, which has no ease in this style: 78.74 and 82.55 cm.
    expect(report).toContain('| waist girth | in | 31 | 32 1/2 |\n|  | cm | 78.7 | 82.5 |');
    expect(report).toContain('| waist | in | 31 | 32 1/2 |\n|  | cm | 78.7 | 82.5 |');
    expect(report).toContain('## Cloth to buy, shell, in yards and centimeters');
  });

  it('tells what changed since the last run into the folder', async () => {
    const call = ['grade', DEMO, ...FOLDER, '--sizes', '12,14', '--fabric', '--out', 'again'];
    await place.run(...call);
    expect(place.read('again/report.md')).not.toContain('last run');
    await place.run(...call);
    expect(changed()).toBe('- Nothing changed that is drawn, measured, warned of or bought.');
    // A skirt two inches longer, told in centimeters, whose hem lets a leg step no farther.
    await place.run(...call, '--set', 'skirt_length=28in', '--unit', 'cm');
    expect(changed()).toContain('| center front length | cm | +5.08 | +4.76 |');
    expect(changed()).toContain('|  | in | +2 | +1 7/8 |');
    expect(changed()).toMatch(
      /- front: \d+ points moved, most \S+ of 12 by 5\.\d+ cm \(2\.\d+ in\)\./u,
    );
    expect(changed()).toMatch(
      /- Cloth to buy, shell: \d+ lengths changed by \S+ to \S+ cm; most /u,
    );
    expect(changed()).not.toContain('waist |');
    // One size less, and a hem that lets the leg step.
    await place.run(...call, '--set', 'hem_taper=-5in', '--sizes', '12');
    expect(changed()).toContain('- Sizes gone: 14.');
    expect(changed()).toMatch(/- No longer: .*warning stride \(sizes? 12/u);
    // What somebody changed says nothing of the last run.
    place.write('again/graded-points.csv', 'size,piece,point,x_in,y_in\n');
    await place.run(...call, '--sizes', '12', '--replace');
    expect(changed()).not.toContain('points moved');
  });

  const changed = (): string =>
    /## What changed since the last run\n\n(.*?)\n\n## /su.exec(
      place.read('again/report.md'),
    )?.[1] ?? '';
});
