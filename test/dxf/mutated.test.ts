/** Drawings with slips of all kinds: each is read or refused, in bounded time, and never crashes. */
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors';
import { dxfFiles } from '../../src/files/dxf-files';
import { graded } from '../given/sheets';
import { BODICE, STEPS } from '../seams/bodice';
import {
  MILLIMETERS,
  RECTANGLE,
  SQUARE,
  arc,
  drawing,
  insert,
  line,
  read,
  ruled,
  tags,
} from './foreign';

/** A linear congruence: Numerical Recipes, 2nd edition, section 7.1, the quick and dirty generator. */
function random(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

const parts = drawing({
  header: MILLIMETERS,
  blocks: {
    OUT:
      line('1', [0, 0], [200, 0]) +
      arc('1', [200, 50], 50, 270, 90) +
      line('1', [200, 100], [0, 100]) +
      line('1', [0, 100], [0, 0]) +
      ruled(SQUARE),
    FRONT:
      insert('OUT', { scale: [-1, 1] }) + tags([0, 'CIRCLE'], [8, '8'], [10, 9], [20, 9], [40, 3]),
    BACK: RECTANGLE,
  },
  sheet: insert('FRONT', { turn: 90 }) + insert('BACK'),
});
const files = dxfFiles(graded(BODICE, STEPS)).files;
const own = files.find(({ name }) => name === 'pattern.dxf')?.text ?? '';
const table = files.find(({ name }) => name === 'pattern.rul')?.text ?? '';

const ODD = [
  '',
  '0',
  '-1',
  '1e9',
  '-1e308',
  'NaN',
  '#',
  '# 99',
  'INSERT',
  'ENDBLK',
  '1',
  '14',
  '8',
];

function mutated(text: string, pick: (below: number) => number): string {
  const lines = text.split('\n');
  for (let n = pick(3) + 1; n > 0; n--) {
    const i = pick(lines.length);
    const kind = pick(5);
    if (kind === 0) lines.splice(i, 1 + pick(4));
    else if (kind === 1) lines.splice(i, 0, ...lines.slice(i, i + 2 * (1 + pick(20))));
    else if (kind === 2) lines[i] = ODD[pick(ODD.length)] ?? '';
    else if (kind === 3) lines.splice(i - (i % 2), 2 * (1 + pick(10)));
    else {
      const k = pick(lines.length);
      [lines[i], lines[k]] = [lines[k] ?? '', lines[i] ?? ''];
    }
  }
  return lines.join('\n');
}

describe('a drawing with slips', () => {
  it('is read or refused, 500 times', { timeout: 120_000 }, () => {
    const pick = random(20);
    let [isRead, refused, slowest] = [0, 0, 0];
    for (let n = 0; n < 500; n++) {
      const [text, rul] = n % 2 === 0 ? [parts, undefined] : [own, table];
      const dxf = mutated(text, pick);
      const start = performance.now();
      try {
        const { range } = read(dxf, rul);
        isRead++;
        const places = range.sizes.flatMap(({ pieces }) => pieces.flatMap(({ points }) => points));
        expect(
          places.every(({ x, y }) => Number.isFinite(x + y)),
          `${n} is finite`,
        ).toBe(true);
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        refused++;
      }
      slowest = Math.max(slowest, performance.now() - start);
    }
    expect(isRead).toBeGreaterThan(50);
    expect(refused).toBeGreaterThan(50);
    expect(slowest).toBeLessThan(10_000);
  });
});
