/** One of a thing is told in the singular, wherever things are counted: one size, one body, one piece. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, it } from 'vitest';
import { chartText } from '../skirts';
import { contents, workplace } from './workplace';

const place = workplace();
const BODY = { waist_girth: [27], hip_girth: [37], waist_to_hip: [8] };

beforeAll(async () => {
  place.write('one.csv', chartText('in', BODY, ['10']));
  place.write(
    'two.csv',
    chartText('in', { waist_girth: [27, 28], hip_girth: [37, 38] }, ['8', '10']),
  );
  place.write('body.csv', 'name,waist (in),hip (in),waist_to_hip (in)\nAda,27,37,8\n');
  place.write('three.csv', 'name,waist (in),hip (in)\nAda,27,37\nBea,9,37\n');
  place.write(
    'base.csv',
    '# unit: in\npiece,point,x,y\nflap,a,0,0\nflap,b,4,0\nflap,c,4,3\nflap,d,0,3\n',
  );
  place.write(
    'rules.csv',
    '# unit: in\n# sizes: 8,10\n# base: 8\npiece,point,step_dx,step_dy\nflap,b,1/4,0\n',
  );
  place.write('right.csv', 'point,axis,8,10\nfront.side_waist,dx_in,0,1/4\n');
  place.write('wrong.csv', 'point,axis,8,10\nfront.side_waist,dx_in,0,2\n');
  await place.run('exercise', '--seed', '7', '--out', 'lesson');
});

const PENCIL = ['--style', 'pencil'];
/** Calls that have one of what they count, in their words or in what they write. */
const CALLS: readonly (readonly string[])[] = [
  ['grade', 'one.csv', '--verbose', '--fabric', '--spec'],
  ['grade', 'two.csv', '--base', '8', '--sizes', '10', ...PENCIL, '--verbose', '--fabric'],
  ['grade', 'two.csv', '--base', '8', ...PENCIL, '--set', 'trued=1', '--verbose', '--out', 'two'],
  [
    'grade',
    'two.csv',
    '--base',
    '8',
    ...PENCIL,
    '--set',
    'trued=1',
    '--set',
    'hip_ease=3 in',
    '--out',
    'two',
  ],
  ['grade', '--pattern', 'base.csv', '--rules', 'rules.csv', '--verbose'],
  ['print', 'one.csv', '--booklet', 'none'],
  ['print', 'one.csv', '--paper', 'a0', '--booklet', 'none'],
  ['print', 'one.csv', '--paper', 'projector'],
  ['check', 'one.csv', '--verbose'],
  ['check', 'two.csv', '--verbose'],
  ['chart', 'one.csv'],
  ['draft', 'body.csv'],
  ['draft', 'body.csv', '--nearest', 'two.csv'],
  ['draft', 'three.csv'],
  ['coverage', 'one.csv', '--suggest', '2'],
  ['assess', 'two.csv', 'right.csv', '--base', '8', ...PENCIL],
  ['assess', 'two.csv', 'wrong.csv', '--base', '8', ...PENCIL],
  ['explain', 'two.csv', '--base', '8', ...PENCIL],
  ['explain', 'two.csv', 'front.side_waist', '--base', '8', ...PENCIL],
  ['infer', 'right.csv'],
  ['infer', 'wrong.csv'],
  ['new', 'new.csv', '--unit', 'in', '--sizes', '10'],
  ['styles'],
  ['styles', 'pencil'],
];

/** `1 sizes`, `one sizes`, `2 size`; words that end so and are none, and numbers that go on, are left out. */
const ONE_OF_MANY =
  /(?<![\w./-]|[\d]\/|\d )(?:1|one) (?!is\b|has\b|as\b|was\b|always\b|gives\b|ends\b|lies\b|press\b|less\b|costs\b|keeps\b|axis\b)[a-z]+(?<!s)s\b/giu;
const NOUNS =
  'size|body|file|piece|point|sheet|page|cell|decision|thing|slip|seam|step|dart|row|column|finding';
const MANY_OF_ONE = new RegExp(
  `(?<![\\w./-]|\\d )(?:0|[2-9]|[1-9]\\d+|two|three) (?:${NOUNS})(?![\\w-])`,
  'giu',
);

function wrongCounts(text: string): readonly string[] {
  return [...text.matchAll(ONE_OF_MANY), ...text.matchAll(MANY_OF_ONE)].map(([found, ...rest]) => {
    const index = text.indexOf(found);
    return `${found} in: ${text.slice(Math.max(0, index - 40), index + 60)} ${rest.join('')}`;
  });
}

it('sees what it is to see', () => {
  expect(wrongCounts('and 1 files body-<row>')).toHaveLength(1);
  expect(wrongCounts('one sizes; 2 size; 3 body')).toHaveLength(3);
  expect(wrongCounts('1 size, 2 sizes, 1/2 steps, 3 1 steps, 12 1/2 in, 1 is right')).toEqual([]);
});

it.each(CALLS.map((call) => [call.join(' '), call] as const))('%s', async (_, call) => {
  const { status, stdout, stderr } = await place.run(...call);
  expect(status, stderr).not.toBe(2);
  expect(wrongCounts(stdout.replace(/\s+/gu, ' '))).toEqual([]);
});

it('what they wrote', () => {
  expect(readdirSync(place.path)).toContain('output');
  const texts = [...contents(place.path)].filter(([path]) => /\.(?:md|csv)$/u.test(path));
  expect(texts.length).toBeGreaterThan(20);
  for (const [path, text] of texts) expect(wrongCounts(text), join(path)).toEqual([]);
});
