/** Given cut lines beside a sewing line that is graded; all figures are plain differences. */
import { describe, expect, it } from 'vitest';
import { MILLIMETERS, drawing, polyline, read, told, words } from '../dxf/foreign';

type XY = readonly [number, number];

const SEWN: readonly XY[] = [
  [0, 0],
  [200, 0],
  [200, -300],
  [0, -300],
];
/** 10 mm outside all round. */
const CUT: readonly XY[] = [
  [-10, 10],
  [210, 10],
  [210, -310],
  [-10, -310],
];

/** Rule 1 stays; rule 2 moves 40 mm a size to the side, rule 3 so much. */
const table = (other: number): string =>
  ['UNITS: METRIC', 'SIZE LIST: S M L', 'SAMPLE SIZE: M']
    .concat([0, 40, other].map((by, i) => `RULE: DELTA ${i + 1}\n${-by} 0\n0 0\n${by} 0`))
    .join('\n');

const ruled = (corners: readonly XY[], side: number): string =>
  corners.map((at, i) => words('2', at, `# ${i === 1 || i === 2 ? side : 1}`)).join('');

const graded = (cutRules: string, other = 40) =>
  read(
    drawing({
      header: MILLIMETERS,
      blocks: {
        FRONT: polyline('1', CUT) + cutRules + polyline('14', SEWN) + ruled(SEWN, 2),
      },
    }),
    table(other),
  );

const widths = ({ findings }: ReturnType<typeof graded>) =>
  findings
    .filter(({ check }) => check === 'cut-width' || check === 'cut-crosses')
    .map(({ check, severity, size, subject, measured, expected }) => ({
      ...{ check, severity, size, subject },
      ...{ measured: Math.round((measured ?? NaN) * 1000) / 1000, expected },
    }));

describe('a given cut line', () => {
  it('without rules fails where the sewing line leaves it or crosses it', () => {
    const result = graded('');
    expect(widths(result)).toEqual([
      // 200 - 40 = 160 sewn, 210 cut.
      {
        check: 'cut-width',
        severity: 'fail',
        size: 'S',
        subject: 'edge_2',
        measured: 50,
        expected: 10,
      },
      // 200 + 40 = 240 sewn, 210 cut.
      {
        check: 'cut-crosses',
        severity: 'fail',
        size: 'L',
        subject: 'edge_2',
        measured: -30,
        expected: 10,
      },
    ]);
    expect(told(result, 'cut-crosses')).toEqual([
      expect.stringMatching(
        /crosses the sewing line: at edge_2 it lies 3 cm inside, in the base 1 cm outside/u,
      ),
    ]);
    expect(told(result, 'cut-unruled')).toEqual([
      expect.stringMatching(/^warning: the sewing line has rules and the boundary has none/u),
    ]);
  });

  it('that is graded alike keeps its width', () => {
    const result = graded(ruled(CUT, 2));
    expect(widths(result).map(({ severity, size }) => `${size} ${severity}`)).toEqual([
      'S ok',
      'L ok',
    ]);
    expect(told(result, 'cut-unruled')).toEqual([]);
  });

  it.each([
    [0.05, 'ok'],
    [0.5, 'note'],
    [2, 'warning'],
    [2.9, 'warning'],
    [3.1, 'fail'],
  ])('that grows by %d mm more is told as %s', (more, severity) => {
    const found = widths(graded(ruled(CUT, 3), 40 + more));
    // The gravest first, so that the order of sizes holds.
    expect(found.map((own) => own.severity)).toEqual([severity, severity]);
    expect(found.map(({ measured }) => measured)).toEqual([10 - more, 10 + more]);
  });
});
