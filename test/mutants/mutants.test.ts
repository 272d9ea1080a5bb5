/** Every mutant still has its place in src; in the long run, the tests it is for find it. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LONG } from '../samples';
import { MUTANTS } from './mutants';
import type { Mutant } from './mutants';
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

  /** How many tests fail with the mutant in place; a file that cannot be loaded is no such test. */
  function failing({ name, tests }: Mutant): number {
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
    const { numFailedTests } = JSON.parse(readFileSync(report, 'utf8')) as {
      numFailedTests: number;
    };
    return numFailedTests;
  }

  it.each(MUTANTS)('$name: a test fails', (mutant) => {
    expect(failing(mutant)).toBeGreaterThan(0);
  });
});
