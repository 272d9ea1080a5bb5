import { describe, expect, it } from 'vitest';
import { patternDxf, skirtDxf } from '../../src/dxf-files';
import { readDxf } from '../../src/dxf/read';
import { readRuleTable } from '../../src/dxf/rule-table';
import { distanceToCubic } from '../../src/geometry/nearest';
import type { Point } from '../../src/geometry/point';
import { distance } from '../../src/geometry/point';
import type { Segment } from '../../src/geometry/segment';
import { segmentAt } from '../../src/geometry/segment';
import { gradePattern } from '../../src/grade-pattern';
import type { SizedPieces } from '../../src/grade/graded-range';
import { outlineSegments } from '../../src/pattern/piece';
import type { ResultFile } from '../../src/result-files';
import { gradeChart } from '../../src/pipeline';
import { EXCHANGED } from '../../src/tolerance';
import { expectRefusal, graded } from '../given/sheets';
import { BODICE, STEPS } from '../sewn/bodice';
import { chartText } from '../skirts';

const CHART = chartText(
  'in',
  {
    waist_girth: ['26', '28', '30', '33'],
    hip_girth: ['36', '38', '40', '43'],
    waist_to_hip: ['8', '8', '8 1/8', '8 1/4'],
  },
  ['8', '10', '12', '14'],
);

function textOf(files: readonly ResultFile[], name: string): string {
  return files.find((file) => file.name === name)?.text ?? '';
}

function readBack(files: readonly ResultFile[]): readonly SizedPieces[] {
  return gradePattern({
    pattern: { text: textOf(files, 'pattern.dxf'), file: 'pattern.dxf' },
    rules: { text: textOf(files, 'pattern.rul'), file: 'pattern.rul' },
  }).range.sizes;
}

/** mm from a point to the nearest of some segments. */
function away(p: Point, segments: readonly Segment[]): number {
  return Math.min(
    ...segments.map((segment) => {
      if (segment.kind === 'cubic') return distanceToCubic(segment, p);
      const { from, to } = segment;
      const along = { x: to.x - from.x, y: to.y - from.y };
      const square = along.x ** 2 + along.y ** 2;
      const t = square === 0 ? 0 : ((p.x - from.x) * along.x + (p.y - from.y) * along.y) / square;
      return distance(p, segmentAt(segment, Math.min(1, Math.max(0, t))));
    }),
  );
}

/** The farthest that any place on the outlines of one nest lies from those of the other. */
function apart(one: readonly SizedPieces[], other: readonly SizedPieces[]): number {
  let worst = 0;
  one.forEach(({ pieces }, size) => {
    pieces.forEach((piece, p) => {
      const counterpart = other[size]?.pieces[p];
      if (counterpart === undefined) throw new Error('a piece is missing');
      const outline = outlineSegments(counterpart);
      for (const segment of outlineSegments(piece)) {
        for (const t of [0, 0.1, 0.25, 0.5, 0.75, 0.9, 1])
          worst = Math.max(worst, away(segmentAt(segment, t), outline));
      }
    });
  });
  return worst;
}

describe('a pattern for exchange', () => {
  it.each(['pencil', 'fixed-dart', 'shared-pencil', 'shared-a-line'])(
    'brings the nest of %s back',
    (style) => {
      const result = gradeChart({ chart: CHART, base: '10', style });
      const back = readBack(skirtDxf(result));
      expect(back.map(({ label }) => label)).toEqual(['8', '10', '12', '14']);
      expect(apart(result.range.sizes, back)).toBeLessThanOrEqual(EXCHANGED);
      expect(apart(back, result.range.sizes)).toBeLessThanOrEqual(EXCHANGED);
    },
  );

  it('brings a bodice back with its curves through points, notches and folds', () => {
    const result = graded(BODICE, STEPS);
    const files = patternDxf(result);
    const back = readBack(files);
    expect(apart(result.range.sizes, back)).toBeLessThanOrEqual(1e-3);
    expect(back[0]?.pieces.map(({ plan }) => plan.notches?.length)).toEqual([2, 1]);
    expect(
      back[0]?.pieces.map(({ plan }) => plan.outline.filter(({ kind }) => kind === 'fold').length),
    ).toEqual([1, 1]);
    expect(back[0]?.pieces[0]?.plan.cuttings).toEqual([{ cloth: 'shell', count: 1, onFold: true }]);
  });

  it('is the same every time', () => {
    const result = graded(BODICE, STEPS);
    expect(patternDxf(result)).toEqual(patternDxf(graded(BODICE, STEPS)));
  });

  it('has one layer a size in the nested drawing', () => {
    const { entities } = readDxf(textOf(patternDxf(graded(BODICE, STEPS)), 'nest.dxf'), 'nest.dxf');
    const outlines = entities.filter(({ type, closed }) => type === 'POLYLINE' && closed);
    expect(outlines.map(({ layer }) => layer)).toEqual(
      ['XS', 'S', 'M', 'L', 'XL'].flatMap((size) => [`SIZE_${size}`, `SIZE_${size}`]),
    );
  });
});

describe('a drawing that cannot be read', () => {
  const files = patternDxf(graded(BODICE, STEPS));
  const drawing = textOf(files, 'pattern.dxf');
  const table = textOf(files, 'pattern.rul');
  const read =
    (dxf: string, rul = table) =>
    () =>
      gradePattern({ pattern: { text: dxf, file: 'a.dxf' }, rules: { text: rul, file: 'a.rul' } });

  it('is cut off', () => {
    const lines = drawing.split('\n').slice(0, 101);
    expectRefusal(read(lines.join('\n')), 'dxf-malformed', { file: 'a.dxf', row: 101 });
  });

  it('is no DXF', () => {
    expectRefusal(read('piece,point\nfront,a\n'), 'dxf-malformed', { file: 'a.dxf', row: 1 });
  });

  it('has no blocks', () => {
    expectRefusal(read('0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n'), 'dxf-malformed', {
      file: 'a.dxf',
    });
  });

  it('uses a rule that the table does not have', () => {
    const fewer = table.replace(/RULE: DELTA 3\n(?:.*,.*\n)+/u, '');
    expectRefusal(read(drawing, fewer), 'rule-unknown', { file: 'a.dxf' });
  });

  it.each([
    ['a sample size that is no size', table.replace('SAMPLE SIZE: M', 'SAMPLE SIZE: Q'), 1],
    ['an unknown unit', table.replace('METRIC', 'ELLS'), 1],
    ['a line that is no move', table.replace(/DELTA 1\n.*\n/u, 'DELTA 1\na, b\n'), 7],
    ['a move too few', table.replace('0, 0\n', ''), 6],
  ])('comes with %s', (_, rul, row) => {
    expectRefusal(read(drawing, rul), 'rule-table-malformed', { file: 'a.rul', row });
  });

  it('counts inches where the table says so', () => {
    const english = readRuleTable(
      table.replace('METRIC', 'ENGLISH').replace(/DELTA 1\n.*\n/u, 'DELTA 1\n1, -1\n'),
      'a.rul',
    );
    expect(english.rules.get(1)?.[0]).toEqual({ x: 25.4, y: 25.4 });
  });
});
