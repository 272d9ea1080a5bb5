/** The kinds of input, each with files that are right, and the calls that read them. */
import { dxfFiles } from '../../src/files/dxf-files';
import { STYLES } from '../../src/draft/styles';
import { graded, FRONT_AND_BACK } from '../given/sheets';
import { HABITS } from '../rule-sheet/habits';
import { BODICE, STEPS } from '../seams/bodice';
import { chartText, sizeRowsText } from '../skirts';
import { MESSY } from './messy';
import type { Random } from './random';
import { length } from './formulas';
import { saved, slipped, slippedWord } from './slips';

/** The files of a case by their names, and the call made beside them. */
export interface Case {
  readonly files: Readonly<Record<string, string | Uint8Array>>;
  readonly args: readonly string[];
}

/** Where the results go. */
export const OUT = 'out';

const SIZES = ['8', '10', '12', '14'];
const ROWS = {
  waist_girth: [25, 26, 27, 28.5],
  hip_girth: [35, 36, 37, 38.5],
  waist_to_hip: [7.75, 8, 8, 8.25],
  waist_to_knee: [23, 23.25, 23.5, 23.75],
};
const CHART = chartText('in', ROWS, SIZES);
const CHARTS = [
  { text: CHART, base: '10' },
  { text: sizeRowsText('in', ROWS, SIZES), base: '10' },
  {
    text: `# title: Quill\nmeasurement;S;M;L\nwaist (cm);66,5;70;74\nhip (cm);92;96;100\n`,
    base: 'M',
  },
  {
    text: chartText('mm', { waist_girth: [660, 700], hip_girth: [920, 960], note: ['a', 'b'] }),
    base: '2',
  },
];
const MESSY_CHARTS = MESSY.map(({ text }) => ({ text, base: '10' }));
const STYLE_NAMES = STYLES.map(({ name }) => name);

const STYLE_FILES = STYLE_NAMES.map(
  (name) => `# based on: ${name}
# unit: in
parameter,value,note
hip_ease,2,roomier
skirt_length,waist_to_knee - 2 in,
hem_taper,1 1/2 in,
side_allowance,"max(0.5 in, waist_girth / 60)",
`,
);
const LIST = `# unit: cm
name,waist,hip,waist to hip,skirt length,note
"Ada, of Quill",68,96,20,60,
Bea,"74,5",101,21,62.5,late
Cleo,110,118,21,58,
`;
const RULES = Object.values(HABITS);
const SKIRT_RULES = `# unit: in
# sizes: 10, 12, 14
rule,piece,point,step_dx,step_dy
side,,,1/4,0
side,front,side_waist
side,front,side_hip
,front,side_hem,1/4,1/4
,front,center_hem,0,1/4
,front,center_waist,0,0
side,back,side_waist
side,back,side_hip
,back,side_hem,1/4,1/4
,back,center_hem,0,1/4
,back,center_waist,0,0
`;
const SEAMS = `# unit: cm
edge,sewn_to,ease,way,note
front.side,back.side,0,,
front.shoulder,back.shoulder,-0.3,,eased
front.armhole,back.armhole,1,,
`;
const MEASURES = `# unit: in
code,measure,path,of,times,taken,minus,plus
W,waist,along,front.waist + back.waist,2,girth,,
F,flat waist,along,front.waist + back.waist,2,flat,,
H,hip,across,front.side_hip + back.side_hip,2,girth,,
L,length,between,front.center_waist to front.center_hem,,length,1/16,1/16
`;
const SAMPLE = `# unit: in
measure,size,value
W,12,26 3/8
W,14,27 1/2
hip,10,35
L,12,25
`;
const SHEET = `# unit: in
point,axis,8,10,12,14
front.side_waist,dx,-1/4,0,1/4,5/8
front.side_waist,dy,0,0,0,0
front.side_hip,dx,-1/4,0,1/4,5/8
front.side_hip,dy,-1/4,0,0,1/4
`;
const LONG_SHEET = `# unit: in
piece,point,size,dx,dy
front,side_waist,8,-1/4,0
front,side_waist,10,0,0
front,side_waist,12,1/4,0
front,side_waist,14,5/8,0
back,side_waist,12,1/4,0
`;

const drawn = dxfFiles(graded(BODICE, STEPS)).files;
const DRAWING = drawn.find(({ name }) => name === 'pattern.dxf')?.text ?? '';
const TABLE = drawn.find(({ name }) => name === 'pattern.rul')?.text ?? '';

const grade = (...args: readonly string[]): readonly string[] => ['grade', ...args, '--out', OUT];
const chart = (...args: readonly string[]): readonly string[] =>
  grade('chart.csv', '--base', '10', ...args);
const pattern = (...args: readonly string[]): readonly string[] =>
  grade('--pattern', 'base.csv', '--rules', 'rules.csv', ...args);

/** Makes a case of a kind. Mostly one file has slips; the others are right. */
export const KINDS: Readonly<Record<string, (random: Random) => Case>> = {
  charts: (random) => {
    const { text: right, base } = random.of(random.onceIn(3) ? MESSY_CHARTS : CHARTS);
    const text = slipped(right, random);
    const args = random.of([
      ['check', 'chart.csv'],
      ['chart', 'chart.csv'],
      ['chart', 'chart.csv', '--unit', 'cm'],
      grade('chart.csv', '--base', base),
    ]);
    return { files: { 'chart.csv': saved(text, random) }, args };
  },
  lists: (random) => {
    const text = slipped(random.of([LIST, CHART]), random);
    const call = ['draft', 'bodies.csv', '--style', 'pencil', '--out', OUT];
    const streamed = ['--stream', '--workers', '0', '--points'];
    return {
      files: { 'bodies.csv': saved(text, random) },
      args: random.of([call, [...call, ...streamed]]),
    };
  },
  styles: (random) => ({
    files: {
      'chart.csv': CHART,
      'style.csv': saved(slipped(random.of(STYLE_FILES), random), random),
    },
    args: chart('--style', 'style.csv'),
  }),
  formulas: (random) => {
    const name = random.of(['skirt_length', 'hip_ease', 'hem_taper', 'side_allowance']);
    const right = length(random, 4);
    const formula = random.onceIn(2) ? slippedWord(right, random) : right;
    return {
      files: { 'chart.csv': CHART },
      args: chart('--style', random.of(STYLE_NAMES), `--set=${name}=${formula}`),
    };
  },
  patterns: (random) => {
    const [text, rules] = random.of([
      [FRONT_AND_BACK, SKIRT_RULES],
      [BODICE, STEPS],
    ] as const);
    return {
      files: { 'base.csv': saved(slipped(text, random), random), 'rules.csv': rules },
      args: pattern(...random.of([[], ['--fabric'], ['--dxf']])),
    };
  },
  rules: (random) => {
    const [text, rules] = random.of([
      [FRONT_AND_BACK, SKIRT_RULES],
      [BODICE, STEPS],
      [FRONT_AND_BACK, random.of(RULES)],
    ] as const);
    return {
      files: { 'base.csv': text, 'rules.csv': saved(slipped(rules, random), random) },
      args: pattern(...random.of([[], ['--round', '1/16in']])),
    };
  },
  drawings: (random) => ({
    files: { 'base.dxf': saved(slipped(DRAWING, random), random), 'base.rul': TABLE },
    args: grade('--pattern', 'base.dxf', '--rules', 'base.rul'),
  }),
  tables: (random) => ({
    files: { 'base.dxf': DRAWING, 'base.rul': saved(slipped(TABLE, random), random) },
    args: grade('--pattern', 'base.dxf', '--rules', 'base.rul'),
  }),
  seams: (random) => ({
    files: {
      'base.csv': BODICE,
      'rules.csv': STEPS,
      'seams.csv': saved(slipped(SEAMS, random), random),
    },
    args: pattern('--seams', 'seams.csv'),
  }),
  measures: (random) => ({
    files: {
      'base.csv': FRONT_AND_BACK,
      'rules.csv': SKIRT_RULES,
      'measures.csv': saved(slipped(MEASURES, random), random),
    },
    args: pattern('--measures', 'measures.csv'),
  }),
  samples: (random) => ({
    files: {
      'base.csv': FRONT_AND_BACK,
      'rules.csv': SKIRT_RULES,
      'measures.csv': MEASURES,
      'sample.csv': saved(slipped(SAMPLE, random), random),
    },
    args: pattern('--measures', 'measures.csv', '--measured', 'sample.csv'),
  }),
  sheets: (random) => ({
    files: {
      'chart.csv': CHART,
      'sheet.csv': saved(slipped(random.of([SHEET, LONG_SHEET]), random), random),
    },
    args: random.of([
      ['assess', 'chart.csv', 'sheet.csv', '--base', '10'],
      ['infer', 'sheet.csv', '--base', '10'],
    ]),
  }),
  bodies: (random) => {
    // Any two or three bodies, from impossible to usual, in any style: numbers and no slips of typing.
    const body = (least: number, most: number): number =>
      least + ((most - least) * random.below(1000)) / 1000;
    const [first, other] = [body(40, 180), body(40, 190)];
    const count = 2 + random.below(2);
    const growing = (start: number): number[] =>
      Array.from({ length: count }, (_, i) => start + i * body(0, 8));
    const rows = {
      waist_girth: growing(first),
      hip_girth: growing(random.onceIn(3) ? other : first + body(-5, 45)),
      waist_to_hip: growing(body(3, 45)),
      waist_to_knee: growing(body(30, 90)),
      ...(random.onceIn(2) ? {} : { height: growing(body(110, 230)) }),
    };
    const text = random.of([chartText, sizeRowsText])('cm', rows, SIZES.slice(0, count));
    return {
      files: { 'chart.csv': text },
      args: grade('chart.csv', '--base', '8', '--style', random.of(STYLE_NAMES)),
    };
  },
};
