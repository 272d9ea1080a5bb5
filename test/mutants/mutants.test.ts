/** Every mutant still has its place in src; in the long run, the tests it is for find it. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LONG } from '../samples';
import { MUTANTS, NO_MUTANT } from './mutants';
import { planted } from './planted';

it.each(MUTANTS)('$name: its place is there once', (mutant) => {
  const text = readFileSync(join('src', mutant.file), 'utf8');
  expect(planted(text, mutant)).not.toBe(text);
});

describe.runIf(LONG)('planted in the engine', () => {
  let place = '';
  beforeAll(() => {
    place = mkdtempSync(join(tmpdir(), 'skirtgrade-mutants-'));
  });
  afterAll(() => {
    rmSync(place, { recursive: true });
  });

  /** How many tests passed and failed with the mutant in place; a file that cannot be loaded is no such test. */
  function tested(name: string, tests: readonly string[]): { passed: number; failed: number } {
    const report = join(place, 'report.json');
    rmSync(report, { force: true });
    const files = tests.map((file) => join('test', file));
    const config = ['--config', 'test/mutants/vitest.config.ts'];
    const reporter = ['--reporter=json', `--outputFile=${report}`];
    spawnSync(
      process.execPath,
      ['node_modules/vitest/vitest.mjs', 'run', '--update=none', ...config, ...reporter, ...files],
      { env: { ...process.env, MUTANT: name }, encoding: 'utf8' },
    );
    const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(report, 'utf8')) as {
      numPassedTests: number;
      numFailedTests: number;
    };
    return { passed: numPassedTests, failed: numFailedTests };
  }

  it('where there is none, all tests pass', () => {
    const all = [...new Set(MUTANTS.flatMap(({ tests }) => tests))];
    const { passed, failed } = tested(NO_MUTANT, all);
    expect(failed).toBe(0);
    expect(passed).toBeGreaterThan(all.length);
  });

  it.each(MUTANTS)('$name: a test fails', ({ name, tests }) => {
    expect(tested(name, tests).failed).toBeGreaterThan(0);
  });
});
