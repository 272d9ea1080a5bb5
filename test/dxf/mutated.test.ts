/** Drawings with slips of all kinds: each is read or refused, and never crashes. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors';
import { dxfFiles } from '../../src/files/dxf-files';
import { graded } from '../given/sheets';
import { runs } from '../samples';
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

/** A slip of the pen at a line of a drawing, or between two. */
interface DrawnSlip {
  readonly kind: 'cut' | 'repeat' | 'odd' | 'cut tags' | 'exchange';
  /** Share of the way down the file. */
  readonly at: number;
  readonly other: number;
  readonly count: number;
}

const share = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });
const slips: fc.Arbitrary<DrawnSlip[]> = fc.array(
  fc.record({
    kind: fc.constantFrom('cut', 'repeat', 'odd', 'cut tags', 'exchange'),
    at: share,
    other: share,
    count: fc.integer({ min: 1, max: 20 }),
  }),
  { minLength: 1, maxLength: 3 },
);

function mutated(text: string, all: readonly DrawnSlip[]): string {
  const lines = text.split('\n');
  for (const { kind, at, other, count } of all) {
    const [i, k] = [Math.floor(at * lines.length), Math.floor(other * lines.length)];
    if (kind === 'cut') lines.splice(i, 1 + (count % 4));
    else if (kind === 'repeat') lines.splice(i, 0, ...lines.slice(i, i + 2 * count));
    else if (kind === 'odd') lines[i] = ODD[Math.floor(other * ODD.length)] ?? '';
    else if (kind === 'cut tags') lines.splice(i - (i % 2), 2 * count);
    else [lines[i], lines[k]] = [lines[k] ?? '', lines[i] ?? ''];
  }
  return lines.join('\n');
}

describe('a drawing with slips', () => {
  // How many of the cases are read, the rest being refused. The seed is fixed, so each number moves only
  // with the reader: look at what is read now and was not, or the other way, before writing it anew.
  it.each([
    { name: 'of parts', text: parts, rul: undefined, cases: 100, wanted: 14, wantedOfMany: 174 },
    { name: 'of our own', text: own, rul: table, cases: 12, wanted: 5, wantedOfMany: 576 },
  ])('$name is read or refused', ({ text, rul, cases, wanted, wantedOfMany }) => {
    let [isRead, refused] = [0, 0];
    const numRuns = runs(cases, 1000);
    fc.assert(
      fc.property(slips, (all) => {
        try {
          const { range } = read(mutated(text, all), rul);
          isRead++;
          for (const { pieces } of range.sizes)
            for (const { points } of pieces)
              expect(points.every(({ x, y }) => Number.isFinite(x + y))).toBe(true);
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
          refused++;
        }
      }),
      { numRuns },
    );
    expect({ isRead, refused }).toEqual({
      isRead: runs(wanted, wantedOfMany),
      refused: numRuns - runs(wanted, wantedOfMany),
    });
  });
});
