/** The cloth to buy on the page: the lengths and the lays that the command line writes. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parse } from 'csv-parse/sync';
import { expect, it } from 'vitest';
import { describePage, numberIn, tableOf } from './browser';

const DEMO = resolve('size-charts/demo.csv');

describePage('cloth to buy', ({ folder, cli, open }) => {
  const at = (name: string): string => join(folder, name);

  it('is told by size and width, and each lay is drawn, as the command line does', async () => {
    await cli('grade', DEMO, '--base', '12', '--style', 'pencil', '--fabric', '--out', 'told');
    await cli('page', DEMO, '--base', '12', '--style', 'pencil', '--out', 'page.html');
    const { page, complaints, requests } = await open('page.html');
    const part = page.getByRole('region', { name: 'Cloth to buy', exact: true });
    expect(await part.getByRole('status').count()).toBe(0);
    await part.getByText('Cloth to buy').first().click();
    const lay = part.getByRole('img', { name: /^The pieces as they lie/u });
    await lay.waitFor({ timeout: 60_000 });
    const drawing = async (): Promise<string> =>
      decodeURIComponent(((await lay.getAttribute('src')) ?? '').replace(/^[^,]*,/u, ''));
    expect(await drawing()).toBe(readFileSync(at('told/lay-shell.svg'), 'utf8'));
    // Of every fold the length that is least.
    const rows: (Record<'cloth' | 'nap' | 'width' | 'unit' | 'fold' | 'measure', string> &
      Record<string, string>)[] = parse(readFileSync(at('told/fabric.csv')), {
      columns: true,
    });
    const least = (width: string, size: string): number =>
      Math.min(
        ...rows
          .filter((row) => row.cloth === 'shell' && row.nap === 'with')
          .filter((row) => row.width === width && row.unit === 'in')
          .filter((row) => row.measure === 'buy_yd' && row[size] !== '')
          .map((row) => Number(row[size])),
      );
    await part.getByText('As a table').first().click();
    const [heads = [], ...lines] = await tableOf(
      page,
      /^Cloth to buy, shell with a nap, in yards/u,
    );
    expect(lines.map(([name]) => name)).toEqual(
      [36, 45, 54, 60].map((inches) => `${inches} in wide`),
    );
    for (const [name = '', ...cells] of lines)
      expect(cells.map(numberIn), name).toEqual(
        heads.slice(1).map((size) => least(name.split(' ')[0] ?? '', size)),
      );
    // Another size on narrower cloth, which takes more.
    await part.getByRole('combobox', { name: 'width' }).selectOption('112 cm');
    await part.getByRole('combobox', { name: 'size' }).selectOption('24');
    await part.getByRole('combobox', { name: 'fold' }).selectOption('open');
    const told = rows.find(
      (row) =>
        [row.cloth, row.nap, row.width, row.fold, row.measure].join(' ') ===
        'shell with 112 open buy_cm',
    );
    await expect
      .poll(() => part.getByRole('status').textContent(), { timeout: 30_000 })
      .toContain(`Size 24, shell 112 cm wide, open flat: ${told?.['24']} cm or `);
    expect(await drawing()).toContain('size 24');
    expect([complaints, requests]).toEqual([[], []]);
  });

  it('is refused of a pattern that has no cut lines, and says what is missing', async () => {
    writeFileSync(
      at('base.csv'),
      '# unit: in\n# base: 12\npiece,point,x,y,cut\nband,a,0,0,1\nband,b,9,0\nband,c,9,3\nband,d,0,3\n',
    );
    writeFileSync(
      at('rules.csv'),
      '# unit: in\n# sizes: 10, 12\npiece,point,step_dx,step_dy\nband,a,0,0\nband,b,1,0\nband,c,1,0\nband,d,0,0\n',
    );
    const { page } = await open('page.html');
    await page.getByLabel(/^Pattern/u).setInputFiles(at('base.csv'));
    await page.getByLabel(/^Rules/u).setInputFiles(at('rules.csv'));
    await page.getByRole('region', { name: 'Rules' }).waitFor();
    const part = page.getByRole('region', { name: 'Cloth to buy', exact: true });
    await part.getByText('Cloth to buy').first().click();
    await expect
      .poll(() => part.getByRole('status').textContent(), { timeout: 30_000 })
      .toContain('the pattern has no cut lines');
  });
});
