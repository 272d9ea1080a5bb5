/** Help: topics, and every example in them run as it is written. */
import { copyFileSync, cpSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { EXAMPLES } from '../../src/cli/examples';
import { SCREENS } from '../../src/cli/grading-course';
import { TOPICS } from '../../src/cli/help-topics';
import { publishedTables } from '../../src/standards/published-tables';
import { LONG } from '../samples';
import { STYLE_NAMES } from '../styles';
import { callsIn, fencedBlocks, indentedBlocks } from './typed-blocks';
import { runIn, workplace } from './workplace';

const place = workplace();
const FOLDER = 'src/cli/help';
const README = fencedBlocks(readFileSync('README.md', 'utf8')).map(({ text }) => text);
const starting = (texts: readonly string[], first: string): string =>
  texts.find((text) => text.startsWith(first)) ?? '';
const typedIn = (topic: string, first: string): string =>
  starting(
    indentedBlocks(TOPICS.get(topic) ?? '').map(({ text }) => text),
    first,
  );

/** Sizes 10 to 14 alone, which take less time. */
const CHART = fewerSizes(starting(README, '# title: Quill skirt'), [3, 4, 5]);

function fewerSizes(chart: string, columns: readonly number[]): string {
  return chart
    .trimEnd()
    .split('\n')
    .map((line) => {
      const cells = line.split(',');
      const isRow = cells.length > 1;
      return `${isRow ? [0, ...columns].map((column) => cells[column]).join(',') : line}\n`;
    })
    .join('');
}

/** The files that the examples name: those that README and help have typed, and an exercise. */
beforeAll(async () => {
  place.write('my-chart.csv', CHART);
  // Calls that name no file are those of a folder with a project.
  mkdirSync(join(place.path, 'kept'));
  place.write('kept/my-chart.csv', CHART);
  place.write('kept/skirt.csv', typedIn('projects', 'parameter,value'));
  place.write('room.csv', fewerSizes(starting(README, '# unit: cm'), [2, 3, 4]));
  place.write('bodies.csv', typedIn('bodies', '# unit: cm'));
  place.write('my-style.csv', typedIn('style-files', '# based on: shared-pencil'));
  place.write('base.csv', typedIn('own-pattern', '# title: Sorrel skirt'));
  place.write('rules.csv', typedIn('own-pattern', '# sizes: 8, 10, 12, 14, 16'));
  place.write('list.csv', typedIn('spec', '# unit: in'));
  place.write('sample.csv', '# unit: in\nmeasure,size,value\nwaist,10,29\n');
  place.write('sheet.csv', starting(README, '# unit: in\npoint,axis'));
  mkdirSync(join(place.path, 'sheets'));
  place.write('sheets/ana.csv', place.read('sheet.csv'));
  await place.run('exercise', '--seed', '7', '--out', 'lesson');
  place.write('chart.csv', place.read('lesson/chart.csv'));
  await place.run('grade', 'my-chart.csv', '--base', '10', '--dxf', '--out', 'handed');
  for (const name of ['pattern.dxf', 'pattern.rul'])
    copyFileSync(join(place.path, 'handed', name), join(place.path, name));
  // Two versions to hold against each other.
  for (const version of ['my-chart', 'rules'])
    copyFileSync(join(place.path, `${version}.csv`), join(place.path, `${version}-2.csv`));
  for (const version of ['my-chart', 'my-chart-2'])
    cpSync(join(place.path, 'handed'), join(place.path, 'output', version), { recursive: true });
});

const CALLS = [...EXAMPLES.values(), ...TOPICS.values(), ...SCREENS].flatMap((text) =>
  indentedBlocks(text.replace('Examples:\n', 'Examples:\n\n')).flatMap(callsIn),
);
const ALL = [...new Map(CALLS.map((call) => [call.join(' '), call])).values()];

/** In passing those with a command, an option or a kind of file that no call before them has. */
const RUN = ALL.filter((call, i) => {
  const before = new Set(ALL.slice(0, i).flatMap(said));
  return LONG || said(call).some((word) => !before.has(word));
});

/** What a call asks for, whatever its values: its command, and with it each option, and each file that it reads. */
function said([command = '', ...words]: readonly string[]): readonly string[] {
  const asked = words.filter((word) => word.startsWith('--') || /\.\w+$/u.test(word));
  return [command, ...asked.map((word) => `${command} ${word}`)];
}

describe('the examples of help', () => {
  it.each(RUN.map((call) => [call.join(' '), call] as const))('%s', async (_, call) => {
    // Such calls leave the chart to the project.
    const isKept =
      call.join(' ') === 'explain front.side_waist' ||
      (call.length === 1 && ['grade', 'print', 'check'].includes(call[0] ?? ''));
    const folder = isKept ? join(place.path, 'kept') : place.path;
    const { status, stdout, stderr } = await runIn(folder, call, { input: CHART });
    expect(stderr).toBe('');
    // A sheet that is filled in for one point alone has cells missing.
    expect(status).toBe(call[0] === 'assess' ? 1 : 0);
    expect(stdout).not.toBe('');
    if (call.includes('--json')) return;
    for (const line of stdout.split('\n'))
      if (/\S\s+\S/u.test(line.slice(8))) expect(line.length, line).toBeLessThanOrEqual(80);
  });

  it('are all that the files have', () => {
    const written = readdirSync(FOLDER)
      .map((name) => readFileSync(join(FOLDER, name), 'utf8'))
      .flatMap((text) => text.match(/^ {2}skirtgrade .*$/gmu) ?? []);
    expect(CALLS).toHaveLength(written.length);
  });
});

describe('help', () => {
  it.each([...TOPICS])('%s is within 80 columns, without tabs', async (topic, text) => {
    expect(await place.run('help', topic)).toMatchObject({ status: 0, stdout: text, stderr: '' });
    expect(text).toMatch(/^[A-Z][^\n]{5,62}\n\n/u);
    for (const line of text.split('\n')) {
      expect(line.length, line).toBeLessThanOrEqual(80);
      expect(line).not.toMatch(/\t|\s$/u);
    }
    expect(text.endsWith('\n')).toBe(true);
  });

  it('lists commands and topics, each in a line of 80 columns', async () => {
    const { stdout } = await place.run('help');
    for (const topic of [...TOPICS.keys(), 'points'])
      expect(stdout).toMatch(new RegExp(`^  ${topic} `, 'mu'));
    for (const line of stdout.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
  });

  it('names every published table', () => {
    for (const { id, unusable } of publishedTables())
      if (unusable === undefined) expect(TOPICS.get('tables')).toContain(`  ${id} `);
  });

  it.each(STYLE_NAMES)('tells the points of %s as explain takes them', async (style) => {
    const { status, stdout } = await place.run('help', 'points', style);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^front\n {2}center_waist, /mu);
    expect(stdout).toContain('side_hip');
  });

  it('of a command is its own', async () => {
    expect(await place.run('help', 'check')).toEqual(await place.run('check', '--help'));
  });

  it('refuses what it does not know', async () => {
    const wrong = async (...call: readonly string[]) => (await place.run('help', ...call)).stderr;
    expect(await wrong('printin')).toContain('Did you mean printing?');
    expect(await wrong('words', 'pencil')).toContain('only points are those of a style');
    expect(await wrong('points', 'pencli')).toContain('Did you mean pencil?');
  });

  it('of every command tells --json, and --quiet where files are written', async () => {
    const { stdout } = await place.run('--help');
    const names = [...stdout.matchAll(/^ {2}([a-z]+) {2,}\S/gmu)].map(([, name = '']) => name);
    expect(names).toContain('styles');
    for (const name of names) {
      const { stdout: text } = await place.run(name, '--help');
      expect(text, name).toContain('  --json ');
      expect(text.includes('  --quiet '), name).toBe(/--replace|--quiet/u.test(text));
    }
  });

  it('of a command has no option that the command refuses', async () => {
    for (const option of ['--fabric', '--spec', '--dxf', '--pattern'])
      expect((await place.run('print', '--help')).stdout).not.toContain(`${option} `);
    expect((await place.run('grade', '--help')).stdout).not.toContain('none)');
  });
});
