/** What somebody at a terminal sees while a step takes its time. */
import { expect, it } from 'vitest';
import { progressLine } from '../../src/cli/progress';
import { runIn, workplace } from './workplace';

const place = workplace();
place.write('one.csv', '# unit: cm\nsize,waist_girth,hip_girth,waist_to_hip\n40,74,100,20\n');

it('is one line that is erased, on a terminal alone', () => {
  for (const isTerminal of [true, false]) {
    let text = '';
    const { show, clear } = progressLine((part) => void (text += part), isTerminal);
    clear();
    show('drafting');
    show('writing');
    clear();
    clear();
    const erase = '\r\u001b[K';
    expect(text).toBe(isTerminal ? `${erase}drafting ...${erase}writing ...${erase}` : '');
  }
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
