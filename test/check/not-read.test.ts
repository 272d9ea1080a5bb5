/** What stands beside a table and has no word that is known is told, whatever it says. Invented lines. */
import { expect, it } from 'vitest';
import { readStyle } from '../../src/draft/style-file';
import { gradeSpec } from '../../src/jobs/grade-spec';
import { gradeChart, inferIncrements, markSheet } from '../../src/index';
import { CANONICAL } from '../chart/charts';
import { FRONT_AND_BACK, evenRules, graded } from '../given/sheets';

const RULES = evenRules('10,12,14');
const LIST = '# unit: in\ncode,measure,path,of,note\nW,waist,along,front.waist,flat\n';
const SEAMS = 'edge,sewn_to,remark\nfront.side,back.side,steamed\n';
const FILES = { pattern: FRONT_AND_BACK, rules: RULES, seams: SEAMS, chart: CANONICAL };

/** Subject and message of each finding for one more line above one of the files. */
function unread(file: keyof typeof FILES, line: string): readonly string[] {
  const text = (name: keyof typeof FILES): string =>
    name === file ? `${line}\n${FILES[name]}` : FILES[name];
  const seams = { text: text('seams'), file: 'seams.csv' };
  const { findings } =
    file === 'chart'
      ? gradeChart({ chart: text(file), file: 'chart.csv', base: '12' })
      : graded(text('pattern'), text('rules'), { seams });
  return findings
    .filter(({ check }) => check === 'not-read')
    .map(({ severity, subject, message }) => `${severity} ${subject}: ${message}`);
}
/** What the list of seams has anyhow. */
const NOTED = (row: number) => `note seams.csv: not read in row ${row}, column 3: "steamed"`;

it.each([
  ['rules', '# north is plus'],
  ['rules', '# first column is for size 16'],
  ['rules', '# unit: in, first column is for size 16'],
  ['pattern', '# mirror image'],
  ['pattern', '# sizes: 10, 12, 14'],
  ['pattern', 'Sorrel block, third card'],
  ['seams', '# every seam is eased'],
  ['chart', '# measured over a thick coat'],
  ['chart', 'Waist taken 2 cm below'],
  ['chart', '12.03'],
  ['chart', '# source: hips 2 cm lower'],
] as const)('a line of %s: %s', (file, line) => {
  const told = line.replace(/^# (?:unit: in, )?/u, '');
  const name = { pattern: 'base.csv', rules: 'rules.csv', seams: 'seams.csv', chart: 'chart.csv' };
  const own = `note ${name[file]}: not read in row 1: "${told}"`;
  const seams = file === 'chart' ? [] : [NOTED(file === 'seams' ? 3 : 2)];
  expect(unread(file, line).toSorted()).toEqual([own, ...seams].toSorted());
});

it.each([
  ...['# ---', '# title: Sorrel', '# not read: north is plus', '# version: 3', '2024-03-12'],
  ...['Checked: M. Kern 12.3.24', '# Season: SS25', 'Spring 2025', 'Version 2', 'Size chart'],
  ...[
    '# Source: own survey of 40 women, 2021',
    "# Women's size chart",
    '# revised 3 May 2024, page 1 of 2',
  ],
])('%s states nothing of the cells, or is read', (line) => {
  for (const file of ['pattern', 'rules'] as const) expect(unread(file, line)).toEqual([NOTED(2)]);
  expect(unread('chart', line)).toEqual([]);
});

it('the same note in several rows is told once, and a unit that agrees is read', () => {
  const rules = RULES.replace('step_dy\n', 'step_dy,Remarks\n')
    .replaceAll(/(?<=,0)$/gmu, ',up')
    .replace(',up', ',in');
  const { findings } = graded(FRONT_AND_BACK, rules);
  const told = findings.filter(({ check }) => check === 'not-read').map(({ message }) => message);
  expect(told).toEqual(['not read in row 5, column 5 and in 4 more rows: "up"']);
});

it('points of measure and samples have notes of their own', () => {
  const result = graded(FRONT_AND_BACK, RULES);
  const measured = { text: '# pinned\nmeasure,size,value in\nW,12,7\n', file: 'sample.csv' };
  const { findings } = gradeSpec(result, { measures: { text: LIST, file: 'list.csv' }, measured });
  const told = findings.filter(({ check }) => check === 'not-read');
  expect(told.map(({ subject, facts }) => [subject, facts?.text])).toEqual([
    ['list.csv', '"flat"'],
    ['sample.csv', '"pinned"'],
  ]);
});

it('a line of a style file is told of all that it is drafted for', () => {
  const text = '# based on: pencil\n# for the window\nparameter,value\nhip_ease,2 in\n';
  const { findings } = gradeChart({
    ...{ chart: CANONICAL, base: '12', style: readStyle(text, 'mine.csv') },
  });
  const told = findings.filter(({ check }) => check === 'not-read');
  expect(told.map(({ subject, facts }) => `${subject} ${facts?.text}`)).toEqual([
    'mine.csv "for the window"',
  ]);
});

it('who assesses and infers tells the same', () => {
  const sheet =
    '# unit: in\n# zero: center_waist\n# by the window\npoint,axis,8,10,12\nfront.side_hip,x,-1/4,0,1/4\n';
  const asked = { chart: CANONICAL, base: '10', style: 'pencil', pieces: ['front'] };
  const text = 'by the window';
  expect(markSheet({ ...asked, sheet }).unread).toMatchObject([{ text, place: { row: 3 } }]);
  expect(inferIncrements({ sheet, style: 'pencil' }).unread).toMatchObject([{ text }]);
});
