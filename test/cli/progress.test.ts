/** What somebody at a terminal sees while a step takes its time. */
import { openSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { LateLine } from '../../src/cli/late-line';
import { lateLine } from '../../src/cli/late-line';
import { progressLine } from '../../src/cli/progress';
import { runIn, workplace } from './workplace';

const place = workplace();
place.write('one.csv', '# unit: cm\nsize,waist_girth,hip_girth,waist_to_hip\n40,74,100,20\n');

const ERASE = '\r\u001b[K';

it('is one line that is erased, on a terminal alone', () => {
  for (const isTerminal of [true, false]) {
    let text = '';
    const write = (part: string): void => void (text += part);
    const atOnce = (part: string): LateLine => {
      write(part);
      return { take: () => true };
    };
    const { show, clear } = progressLine(write, isTerminal, atOnce);
    clear();
    show('drafting');
    show('writing');
    clear();
    clear();
    expect(text).toBe(isTerminal ? `${ERASE}drafting ...${ERASE}writing ...${ERASE}` : '');
  }
});

it('says nothing of what is done before a second is over', () => {
  let text = '';
  const waits: number[] = [];
  const never = (_: string, wait: number): LateLine => {
    waits.push(wait);
    return { take: () => false };
  };
  const { show, clear } = progressLine((part) => void (text += part), true, never);
  for (const step of ['drafting', 'writing']) show(step);
  clear();
  expect(text).toBe('');
  // The second is that of the call, not of each step.
  const [first = NaN, second = NaN] = waits;
  expect(first).toBeLessThanOrEqual(1000);
  expect(second).toBeLessThanOrEqual(first);
});

describe('a late line', () => {
  const lineInto = (name: string, wait: number): LateLine =>
    lateLine('drafting ...', wait, openSync(join(place.path, name), 'w'));
  /** This thread does nothing else meanwhile, as while it grades. */
  const busy = (): void => void Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);

  it('comes up while the program is busy', () => {
    const line = lineInto('late.txt', 1);
    for (let i = 0; i < 500 && place.read('late.txt') === ''; i++) busy();
    expect(place.read('late.txt')).toBe('drafting ...');
    expect(line.take()).toBe(true);
  });

  it('that is taken before does not come up', () => {
    expect(lineInto('dropped.txt', 60_000).take()).toBe(false);
    busy();
    expect(place.read('dropped.txt')).toBe('');
  });
});

it('tells the steps of grade and print, and none of a refused call', async () => {
  const steps = async (...call: readonly string[]): Promise<readonly string[]> => {
    const told: string[] = [];
    await runIn(place.path, call, { progress: (words) => void told.push(words) });
    return told;
  };
  expect(await steps('grade', 'one.csv', '--spec')).toEqual([
    'drafting and grading',
    'making spec',
    'writing the files',
  ]);
  expect(await steps('print', 'one.csv', '--booklet', 'none')).toEqual([
    'drafting and grading',
    'laying out the sheets',
  ]);
  expect(await steps('grade', 'none.csv')).toEqual([]);
});
