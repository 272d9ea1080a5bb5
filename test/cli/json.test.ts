/** What programs read: one document a call, the same in its frame, and as true as the words. */
import { describe, expect, it } from 'vitest';
import { VERSION } from '../../src/render/version';
import { runIn, workplace, typed } from './workplace';

const place = workplace();
const CHART = [
  '# title: Sedge skirt',
  '# unit: cm',
  'measurement,36,38,40,42,44',
  'waist_girth,66,70,74,78,82',
  'hip_girth,92,96,100,104,108',
  'waist_to_hip,20,20,20.5,20.5,21',
].join('\n');
place.write('sedge.csv', CHART);
place.write('bodies.csv', '# unit: cm\nname,waist,hip\nAda,68,96\n');
const SHEET = '# unit: cm\npoint,axis,38,40,42\nfront.side_waist,dx,-1,0,1\n';
place.write('sheet.csv', SHEET);

interface Finding {
  readonly severity: string;
  readonly check: string;
  readonly message: string;
}
interface Document {
  readonly exit_code: number;
  readonly result: Readonly<Record<string, unknown>> & {
    readonly verdict: { readonly counts: object; readonly line: string };
    readonly findings: readonly Finding[];
  };
}

const BASE = ['--base', '40', '--style', 'pencil'];
const GRADED = [
  ...['title', 'chart', 'style', 'base', 'sizes', 'unit', 'verdict', 'finished', 'seams'],
  ...['findings', 'folder', 'files', 'gone_with_earlier_run', 'left_by_earlier_run'],
  'of_another_skirt',
];

/** Each call with the fields of its result: they may become more, and none may go. */
const CALLS: readonly (readonly [call: readonly string[], fields: readonly string[]])[] = [
  [['grade', 'sedge.csv', ...BASE], GRADED],
  [
    ['print', 'sedge.csv', ...BASE, '--sizes', '40', '--booklet', 'none'],
    [...GRADED, 'printed'],
  ],
  [
    ['check', 'sedge.csv'],
    ['chart', 'sizes', 'unit', 'verdict', 'against', 'findings'],
  ],
  [
    ['chart', 'sedge.csv'],
    ['chart', 'comments', 'unit', 'sizes', 'measurements'],
  ],
  [
    ['draft', 'bodies.csv'],
    ['bodies', 'style', 'unit', 'drafted', 'refused', 'folder', 'files'],
  ],
  [
    ['coverage', 'sedge.csv'],
    ['chart', 'style', 'crowd', 'rules', 'coverage', 'changes', 'published'],
  ],
  [
    typed('new begun.csv --unit cm --sizes 38,40'),
    ['chart', 'unit', 'sizes', 'filled', 'to_fill', 'left_to_style', 'folder', 'files'],
  ],
  [['styles'], ['styles']],
  [['styles', 'pencil'], ['styles']],
  [
    ['assess', 'sedge.csv', 'sheet.csv', ...BASE, '--pieces', 'front'],
    ['sheet', 'chart', 'decisions', 'cause', 'slips', 'unexplained', 'cells'],
  ],
  [
    ['explain', 'sedge.csv', 'front.side_waist', ...BASE],
    ['point', 'base', 'zero', 'ruler', 'axes'],
  ],
  [
    ['infer', 'sheet.csv', '--style', 'pencil'],
    ['sheet', 'style', 'base', 'cannot_tell', 'sizes'],
  ],
  [
    ['exercise', '--seed', '7'],
    ['seed', 'difficulty', 'unit', 'base', 'sizes', 'folder', 'files'],
  ],
  [
    ['help', 'words'],
    ['topic', 'text'],
  ],
];

describe('--json', () => {
  it.each(CALLS)('of %j is a document with its fields, and nothing else', async (call, fields) => {
    const { status, stdout, stderr } = await place.run(...call, '--json');
    const { result, ...frame } = JSON.parse(stdout) as Document;
    expect(stderr).toBe('');
    expect(frame).toEqual({
      document_version: 1,
      program: `skirtgrade ${VERSION}`,
      command: call[0],
      exit_code: status,
    });
    expect(Object.keys(result)).toEqual(expect.arrayContaining([...fields]));
  });

  it('tells the rule of a point in millimeters', async () => {
    const call = ['explain', 'sedge.csv', 'front.side_waist', ...BASE, '--size', '42', '--json'];
    const { result } = JSON.parse((await place.run(...call)).stdout) as Document;
    // A quarter of 4 cm of waist.
    expect(result.axes).toMatchObject([
      { shares: { waist_girth: 0.25 }, steps: [{ move: 10 }] },
      {},
    ]);
  });

  const REFUSED: readonly (readonly [readonly string[], object])[] = [
    [['grade', 'sedge.csv', '--base', '41'], { code: 'size-unknown', place: { field: 'base' } }],
    [['check', 'sege.csv'], { code: 'file-unreadable', did_you_mean: ['sedge.csv'] }],
    [['grade', 'sedge.csv', '--bse', '40'], { code: 'call' }],
    [['print'], { code: 'bad-option', message: expect.stringContaining('chart.csv') as string }],
    [['chart', 'a\u0007'], { code: 'character-unseen' }],
  ];
  it.each(REFUSED)('of the refused %j has its error and exit code', async (call, error) => {
    const { status, stdout, stderr } = await place.run(...call, '--json');
    expect(status).toBe(2);
    expect(JSON.parse(stdout)).toMatchObject({ exit_code: 2, command: call[0], error });
    expect(stderr).not.toBe('');
  });

  it('goes with no option that chooses words', async () => {
    for (const option of ['--quiet', '--verbose'])
      expect((await place.run('check', 'sedge.csv', '--json', option)).status).toBe(2);
  });
});

describe('the standard input', () => {
  const from = (input: string, ...call: readonly string[]) => runIn(place.path, call, { input });

  it('is a file of any kind, and named stdin', async () => {
    const chart = await place.run('chart', 'sedge.csv');
    expect(await from(CHART, 'chart', '-')).toEqual(chart);
    expect((await from('nothing', 'chart', '-')).stderr).toContain('stdin');
    const graded = await from(CHART, 'grade', '-', ...BASE, '--quiet');
    expect(graded.stdout).toContain('output/stdin/nest.svg');
    expect((await from(SHEET, 'infer', '-', '--style', 'pencil')).status).toBe(0);
    const style = '# based on: pencil\nparameter,value\nhip_ease,5 cm\n';
    const styled = await from(
      style,
      'explain',
      'sedge.csv',
      'front.side_hip',
      '--base',
      '40',
      '--style',
      '-',
    );
    expect(styled.stdout).toContain('hip_ease = 5 cm');
  });

  it('is read once in a call', async () => {
    const { status, stderr } = await from(CHART, 'assess', '-', '-', '--base', '40');
    expect(status).toBe(2);
    expect(stderr).toContain('the standard input can be read once');
  });
});

describe('grade, print and check', () => {
  it('say the same of one chart', async () => {
    // The hip of 42 stands still while its waist grows.
    place.write('still.csv', CHART.replace('96,100,104', '96,100,100'));
    const told = async (...call: readonly string[]): Promise<Document['result']> =>
      (JSON.parse((await place.run(...call, '--json')).stdout) as Document).result;
    const grade = await told('grade', 'still.csv', ...BASE);
    const print = await told('print', 'still.csv', ...BASE, '--booklet', 'none');
    const check = await told('check', 'still.csv');
    expect(print.verdict).toEqual(grade.verdict);
    expect(print.findings).toEqual(grade.findings);
    expect(check.findings.some(({ severity }) => severity === 'warning')).toBe(true);
    expect(grade.findings).toEqual(expect.arrayContaining([...check.findings]));
    // What is told in words are the same numbers.
    const words = await Promise.all(
      ['grade', 'print'].map((name) => place.run(name, 'still.csv', ...BASE)),
    );
    for (const { stdout } of words) {
      expect(stdout).toContain(grade.verdict.line);
      for (const [severity, count] of Object.entries(grade.verdict.counts))
        expect(stdout).toContain(`${count as number} ${severity}`);
    }
    const rows = place.read('output/still/findings.csv').trimEnd().split('\n');
    expect(rows.length - 1).toBe(grade.findings.length);
  });
});
