/**
 * A garment is data: a trouser goes through grade, nest, seams, spec, cloth, exchange and print, as a
 * block and as a pattern sheet, with nothing edited for it anywhere.
 */
import { describe, expect, it } from 'vitest';
import { exportFiles, gradeChart, gradePattern, printFiles, resultFiles } from '../../src/index';
import type { GradeResult, ResultFile } from '../../src/index';
import { rowsOf } from '../csv-tables';
import { chartText } from '../skirts';
import { TROUSER } from './trouser';

/** Invented bodies, cm; every girth and height grows, not evenly. */
const WAISTS = [66, 70, 74, 79];
const HIPS = [92, 96, 100, 105];
const CHART = chartText(
  'cm',
  {
    waist_girth: WAISTS,
    hip_girth: HIPS,
    waist_height: [103, 104, 105, 106],
    crotch_height: [77, 77.5, 78, 78.5],
  },
  ['S', 'M', 'L', 'XL'],
);
const DRAFTED = gradeChart({ chart: CHART, base: 'M', style: TROUSER });

const text = (files: readonly ResultFile[], name: string): string =>
  files.find((file) => file.name === name)?.text ?? '';

/** The same trouser as somebody would type it: the base as a pattern sheet, the moves as rules. */
function typed(): GradeResult {
  const kinds = new Map<string, string>();
  for (const { plan } of DRAFTED.range.sizes[1]?.pieces ?? [])
    for (const edge of plan.outline) {
      kinds.set(`${plan.name}.${edge.from}`, edge.seam);
      if (edge.kind === 'dart') kinds.set(`${plan.name}.${edge.tip}`, 'dart');
    }
  const rows = (DRAFTED.range.sizes[1]?.pieces ?? []).flatMap(({ plan, points }) =>
    // In the order of the outline, handles and tips between the ends of their edge.
    plan.outline
      .flatMap((edge) => [
        [edge.from, 'corner', edge.seam],
        ...(edge.kind === 'cubic' ? [edge.leave, edge.arrive] : []).map((own) => [
          own,
          'handle',
          '',
        ]),
        ...(edge.kind === 'dart' ? [[edge.tip, 'dart', '']] : []),
      ])
      .map(([point = '', kind = '', edge = '']) => {
        const at = points[plan.index.get(point) ?? -1];
        const allowance = { waist: 1, side: 1.5, hem: 4, inseam: 1.5, crotch: 1.2 }[edge] ?? '';
        return [plan.name, point, kind, (at?.x ?? NaN) / 10, (at?.y ?? NaN) / 10, edge, allowance];
      }),
  );
  const pattern = [
    ...['# unit: cm', '# base: M', '# title: trouser'],
    'piece,point,kind,x,y,edge,allowance,cut',
    ...rows.map((row, i) => `${row.join(',')},${rows[i - 1]?.[0] === row[0] ? '' : '2'}`),
  ].join('\n');
  const seams = 'edge,sewn_to\nfront.side,back.side\nfront.inseam,back.inseam\n';
  return gradePattern({
    pattern: { text: pattern, file: 'trouser.csv' },
    rules: { text: text(resultFiles(DRAFTED), 'grade-rules.csv'), file: 'rules.csv' },
    seams: { text: seams, file: 'seams.csv' },
  });
}

const RESULTS: readonly (readonly [string, GradeResult])[] = [
  ['drafted', DRAFTED],
  ['given', typed()],
];

describe.each(RESULTS)('a trouser that is %s', (_, result) => {
  it('is graded, without a finding that fails', () => {
    expect(result.range.sizes.map(({ label }) => label)).toEqual(['S', 'M', 'L', 'XL']);
    expect(result.findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
    result.range.sizes.forEach(({ pieces }, i) => {
      const [front] = pieces;
      const at = (name: string) => front?.points[front.plan.index.get(name) ?? -1];
      // A quarter of the waist and a dart of 2.5 cm; a quarter of the hip and its ease of 4 cm.
      expect(at('waist_side')?.x).toBeCloseTo((WAISTS[i] ?? NaN) * 2.5 + 25, 6);
      expect(at('hip_side')?.x).toBeCloseTo((HIPS[i] ?? NaN) * 2.5 + 10, 6);
    });
  });

  it('has seams that meet in every size, in seams.csv too', () => {
    for (const { walks } of result.seams)
      for (const { gap } of walks) expect(gap).toBeCloseTo(0, 4);
    const rows = rowsOf(text(resultFiles(result), 'seams.csv'));
    expect(new Set(rows.map(({ size }) => size))).toEqual(new Set(['S', 'M', 'L', 'XL']));
    for (const { off_cm } of rows) expect(Number(off_cm)).toBeCloseTo(0, 4);
  });

  it('has the legs of its darts held against each other in every size', () => {
    const legs = result.findings.filter(({ check }) => check === 'dart-legs');
    expect(legs.map(({ size, piece, severity }) => `${size} ${piece} ${severity}`)).toEqual(
      ['S', 'M', 'L', 'XL'].flatMap((size) => [`${size} front ok`, `${size} back ok`]),
    );
  });

  it('is drawn, cut line and all', () => {
    const nest = text(resultFiles(result), 'nest.svg');
    for (const words of ['FRONT', 'BACK', 'trouser', 'Cut 2']) expect(nest).toContain(words);
    expect(nest.match(/data-part="cut-line"/gu)?.length).toBe(2 * 4);
  });

  it('has a spec by points of measure of its own', async () => {
    const list = 'code,measure,path,of,times\nW,waist,along,front.waist + back.waist,2\n';
    const measures = { text: list, file: 'measures.csv' };
    const { files } = await exportFiles(result, ['spec'], { measures });
    expect(rowsOf(text(files, 'spec.csv')).map(({ size, cm }) => [size, Number(cm)])).toEqual(
      ['S', 'M', 'L', 'XL'].map((size, i) => [size, WAISTS[i]]),
    );
  });

  it('is laid on cloth', async () => {
    const { files } = await exportFiles(result, ['fabric']);
    expect(files.map(({ name }) => name)).toEqual(['fabric.csv', 'lay-shell.svg']);
  });

  it('goes out for exchange and comes back as it was', async () => {
    const { files, findings } = await exportFiles(result, ['dxf']);
    expect(findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
    const named = (name: string) => ({ text: text(files, name), file: name });
    const back = gradePattern({ pattern: named('pattern.dxf'), rules: named('pattern.rul') });
    const lengths = ({ seams }: GradeResult) =>
      seams
        .filter(({ pair }) => pair.sides[0].edges[0]?.piece !== pair.sides[1].edges[0]?.piece)
        .map(({ walks }) => walks.map(({ walks: [first] }) => first.length));
    lengths(back).forEach((sizes, seam) =>
      sizes.forEach((length, i) =>
        expect(length).toBeCloseTo(lengths(result)[seam]?.[i] ?? NaN, 1),
      ),
    );
    expect(lengths(back)).toHaveLength(2);
  });

  it('is printed', async () => {
    const [file] = await printFiles(result, { paper: ['a4'], booklet: 'none' });
    expect(Buffer.from(file?.bytes.subarray(0, 5) ?? []).toString()).toBe('%PDF-');
    expect(file?.summary).toMatch(/^\d+ sheets after/u);
  });
});
