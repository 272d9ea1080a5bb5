/** A chart to begin with: what `new` asks, writes, and leaves alone. */
import { readFileSync, readdirSync } from 'node:fs';
import { PassThrough } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { conversation } from '../../src/cli/conversation';
import { CATALOG } from '../../src/standards/catalog';
import { publishedTable } from '../../src/standards/published-tables';
import { argumentsOf } from './typed-blocks';
import { runIn, workplace } from './workplace';

const place = workplace();
const run = (call: string) => place.run(...argumentsOf(`skirtgrade ${call}`));

/** Rows of a chart or a table without its comments, by their first cell. */
function rowsOf(text: string): ReadonlyMap<string, readonly string[]> {
  const lines = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  return new Map(
    lines.map((line) => line.split(',')).map(([name = '', ...cells]) => [name, cells]),
  );
}

/** `26 1/2` as 26.5. */
function lengthOf(cell: string): number {
  return cell.split(' ').reduce((sum, part) => {
    const [over = NaN, under = 1] = part.split('/').map(Number);
    return sum + over / under;
  }, 0);
}

describe('a table to begin with', () => {
  const TABLES = CATALOG.filter(({ table }) => !('unusable' in table)).map(({ id }) => id);
  const CASES = TABLES.flatMap((id) => (['in', 'cm'] as const).map((unit) => [id, unit] as const));

  it.each(CASES)('%s in %s is graded as it was written', async (id, unit) => {
    const name = `${id}-${unit}.csv`;
    expect(
      await run(`new ${name} --like ${id} --unit ${unit} --title "Quill skirt"`),
    ).toMatchObject({
      status: 0,
      stderr: '',
    });
    const table = publishedTable(id);
    const text = place.read(name);
    expect(text).toContain('# title: Quill skirt\n');
    expect(text).toContain(`# unit: ${unit}\n`);
    for (const words of [table.title, `of ${table.year}`, table.waist.certainty, 'not garments'])
      expect(text).toContain(words);
    // Half of an eighth of an inch, or of half a centimeter, beside the published figures.
    const [half, mm] = unit === 'in' ? [1 / 16, 25.4] : [1 / 4, 10];
    const rows = rowsOf(text);
    expect(rows.get('measurement')).toEqual(table.sizes);
    for (const [row, { values }] of [
      ['waist_girth', table.waist],
      ['hip_girth', table.hip],
    ] as const) {
      const cells = rows.get(row) ?? [];
      expect(cells).toHaveLength(values.length);
      for (const [i, cell] of cells.entries())
        expect(Math.abs(lengthOf(cell) - (values[i] ?? NaN) / mm)).toBeLessThanOrEqual(half + 1e-9);
    }
    const sizes = table.sizes.slice(0, 3).join(',');
    const base = table.sizes[1] ?? '';
    const graded = await run(
      `grade ${name} --base ${base} --sizes ${sizes} --style pencil --out out-${name}`,
    );
    expect(graded).toMatchObject({ status: 0, stderr: '' });
  });

  it('has the figures of its source where the unit is its own', async () => {
    await run('new own.csv --like jis-l-4005 --sizes 5,7');
    const source = readFileSync('size-charts/standards/jis-l-4005-women-a-type.csv', 'utf8');
    const published = rowsOf(source);
    const rows = rowsOf(place.read('own.csv'));
    for (const row of ['waist_girth', 'hip_girth'])
      expect(rows.get(row)).toEqual(published.get(row)?.slice(1, 3));
  });
});

describe('a chart to fill in', () => {
  it('says how each row is measured, and is refused until it is filled in', async () => {
    const { status, stdout } = await run('new fill.csv --unit cm --sizes 38,40,42');
    expect(status).toBe(0);
    expect(stdout).toContain('skirtgrade grade fill.csv --base 40');
    const text = place.read('fill.csv');
    const names = ['waist_girth', 'hip_girth', 'waist_to_hip', 'skirt_length'];
    expect([...rowsOf(text).keys()]).toEqual(['measurement', ...names]);
    for (const name of names) expect(text).toMatch(new RegExp(`^# not read: ${name}: \\w`, 'mu'));
    const fill = (row: string, cells: string): void => {
      place.write(
        'fill.csv',
        place.read('fill.csv').replace(`\n${row},,,\n`, `\n${row},${cells}\n`),
      );
    };
    const refused = async (words: string): Promise<void> => {
      const { status: code, stderr } = await run('grade fill.csv --base 40');
      expect(code).toBe(2);
      expect(stderr).toContain(`${words}): a measurement is missing, and is to be filled in`);
    };
    await refused('row 9, column 2 (waist_girth, size 38');
    fill('waist_girth', '70,74,');
    await refused('row 9, column 4 (waist_girth, size 42');
    place.write('fill.csv', place.read('fill.csv').replace('70,74,', '70,74,78'));
    await refused('row 10, column 2 (hip_girth, size 38');
    fill('hip_girth', '96,100,104');
    await refused('row 11, column 2 (waist_to_hip, size 38');
    expect((await run('grade fill.csv --base 40')).stderr).toContain(
      'row 12, column 2 (skirt_length',
    );
    // Taken away, as the file says.
    place.write('fill.csv', place.read('fill.csv').replace('skirt_length,,,\n', ''));
    fill('waist_to_hip', '20,20,20.5');
    expect(await run('grade fill.csv --base 40')).toMatchObject({ status: 0, stderr: '' });
  });
});

describe('a file that is there', () => {
  it('is left as it is, whoever wrote it, unless it may be replaced', async () => {
    await run('new kept.csv --unit in --sizes 8,10');
    place.write('typed.csv', 'mine\n');
    const before = place.read('kept.csv');
    for (const name of ['kept.csv', 'typed.csv'])
      expect(await run(`new ${name} --unit cm --sizes 40`)).toMatchObject({
        status: 2,
        stdout: '',
      });
    expect(place.read('kept.csv')).toBe(before);
    expect(place.read('typed.csv')).toBe('mine\n');
    expect((await run('new typed.csv --unit cm --sizes 40 --replace')).status).toBe(0);
    expect(place.read('typed.csv')).toContain('# unit: cm');
    // One chart does not go with another.
    expect(place.read('kept.csv')).toBe(before);
  });
});

describe('at a terminal', () => {
  /** What is typed, all at once, as somebody pastes it. */
  const typing = async (text: string, ...call: readonly string[]) => {
    const [input, output] = [new PassThrough(), new PassThrough()];
    let shown = '';
    output.on('data', (part: Buffer) => void (shown += part.toString()));
    input.end(text);
    const told = await runIn(place.path, ['new', ...call], {
      converse: conversation(input, output),
    });
    return { ...told, shown };
  };

  it('asks for what is missing, a question at a time, again where the answer will not do', async () => {
    const answers = ['fill.csv', 'asked', 'Sorrel skirt', '', '', 'inches', '8,8', '8, 10'];
    const { status, shown, stderr } = await typing(`${answers.join('\n')}\n`);
    expect(status).toBe(0);
    expect(shown).toBe(
      'File (my-chart.csv): '.repeat(2) +
        'Title (none): Sizes like a table, such as jis-l-4005 (none): ' +
        'Unit, in or cm: '.repeat(2) +
        'Sizes (6,8,10,12,14): '.repeat(2),
    );
    expect(stderr.trimEnd().split('\n')).toEqual([
      expect.stringContaining('there is a file of this name'),
      expect.stringContaining('Allowed: in or cm'),
      expect.stringContaining('two sizes have one name'),
    ]);
    for (const word of ['--', 'replace', 'sizes:']) expect(stderr).not.toContain(word);
    const text = place.read('asked.csv');
    expect(text).toContain('# title: Sorrel skirt\n# unit: in\n');
    expect(rowsOf(text).get('measurement')).toEqual(['8', '10']);
  });

  it('takes the defaults of a table, and of a call what it says', async () => {
    const { status, shown } = await typing('\njis\n\n\n', 'like.csv');
    expect(status).toBe(0);
    expect(shown).toBe(
      'Title (none): Sizes like a table, such as jis-l-4005 (none): Unit, in or cm (cm): Sizes (3,5,7,9): ',
    );
    expect(rowsOf(place.read('like.csv')).get('waist_girth')).toEqual(['56', '58', '61', '64']);
  });

  it('writes nothing where the answers end, and asks nothing for a document', async () => {
    const before = readdirSync(place.path);
    const { status, stderr } = await typing('ended.csv\n');
    expect(status).toBe(2);
    expect(stderr).toContain('a question has no answer');
    const document = await typing('', 'document.csv', '--json');
    expect(document).toMatchObject({ status: 2, shown: '' });
    expect(document.stderr).toContain(
      'new lacks --unit <unit>, and --sizes <a,b,c> or --like <table>',
    );
    expect(readdirSync(place.path)).toEqual(before);
  });
});
