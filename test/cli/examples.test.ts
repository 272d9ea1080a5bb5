/** The examples of help: every command has two, and says yes to every option that they use. */
import { expect, it } from 'vitest';
import { EXAMPLES } from '../../src/cli/examples';
import { workplace } from './workplace';

const place = workplace();

const COMMANDS = [...EXAMPLES.keys()].filter((name) => name !== 'help');

it.each(COMMANDS)(
  '%s --help is two screens of 24 lines, and help has all options',
  async (name) => {
    const lines = async (...call: readonly string[]): Promise<readonly string[]> =>
      (await place.run(...call)).stdout.trimEnd().split('\n');
    const [short, whole] = [await lines(name, '--help'), await lines('help', name)];
    expect(short.length).toBeLessThanOrEqual(48);
    const flags = (all: readonly string[]): readonly string[] =>
      all.flatMap((line) => /^  (?:-\w, )?(--[\w-]+)/u.exec(line)?.[1] ?? []);
    expect(flags(whole)).toEqual(expect.arrayContaining([...flags(short)]));
    if (whole.length > short.length)
      expect(short.join('\n')).toContain(`All options: skirtgrade help ${name}`);
  },
);

it.each(COMMANDS)('%s --help has two examples, within 80 columns', async (command) => {
  const { status, stdout } = await place.run(command, '--help');
  expect(status).toBe(0);
  const [options = '', examples = ''] = stdout.split('Examples:');
  const calls = examples.split('\n').filter((line) => line.startsWith('  skirtgrade '));
  expect(calls).toHaveLength(2);
  for (const call of calls) {
    expect(call).toMatch(new RegExp(`^  skirtgrade ${command}( |$)`));
    for (const [option] of call.matchAll(/--[a-z-]+/gu)) expect(options).toContain(option);
  }
  expect(examples).toMatch(/^(Writes|Measures?) /mu);
  for (const line of stdout.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
  expect(EXAMPLES.get(command)).toBeDefined();
});
