/** Whom the sizes fit, asked on the page: the numbers of the command line, and the range that it proposes. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, it } from 'vitest';
import { describePage, saysVerdict, tableOf } from './browser';

const DEMO = resolve('size-charts/demo.csv');

interface Told {
  readonly result: {
    readonly coverage: { readonly served: number };
    readonly suggested?: { readonly served: number };
  };
}

describePage('whom the sizes fit', ({ folder, cli, open }) => {
  const coverage = async (...args: readonly string[]): Promise<Told['result']> =>
    (JSON.parse(await cli('coverage', DEMO, '--json', ...args)) as Told).result;
  const percent = (share: number): string => `${Number((100 * share).toFixed(1))} %`;

  it('is told in the shares of the command line, once it is asked for', async () => {
    await cli('page', DEMO, '--base', '12', '--out', 'page.html');
    const { page, complaints, requests } = await open('page.html');
    const part = page.getByRole('region', { name: 'Whom the sizes fit' });
    expect(await part.getByRole('status').count()).toBe(0);
    await part.getByText('Whom the sizes fit').first().click();
    const expected = await coverage();
    await expect
      .poll(() => part.getByRole('status').textContent())
      .toContain(percent(expected.coverage.served));
    const [heads, ...rows] = await tableOf(page, /^Share that each size serves, in inches$/u);
    expect(heads).toEqual(['size', 'waist', 'hip', 'share']);
    const words = await cli('coverage', DEMO);
    const shares = [...words.matchAll(/^(\d+) .*?((?:under )?[\d.]+ %)$/gmu)];
    expect(rows.map(([size, , , share]) => [size, share])).toEqual(
      shares.map(([, size, share]) => [size, share]),
    );
    const picture = part.getByRole('img', { name: /^Bodies by waist and hip/u });
    expect(await picture.evaluate((img) => (img as HTMLImageElement).naturalWidth)).toBeGreaterThan(
      100,
    );
    // Another population, and a cloth that gives.
    await part.getByRole('combobox').selectOption('us-women-2017');
    await part.getByRole('textbox', { name: 'cloth gives' }).fill('5%');
    await part.getByRole('textbox', { name: 'cloth gives' }).blur();
    const given = await coverage('--population', 'us-women-2017', '--give', '5%');
    await expect
      .poll(() => part.getByRole('status').textContent())
      .toContain(percent(given.coverage.served));
    await part.getByRole('textbox', { name: 'cloth gives' }).fill('much');
    await part.getByRole('textbox', { name: 'cloth gives' }).blur();
    await expect.poll(() => part.getByRole('status').textContent()).toContain('such as 5%');
    expect([complaints, requests]).toEqual([[], []]);
  });

  it('proposes a range, which is graded once it is taken as the chart', async () => {
    const { page } = await open('page.html');
    const part = page.getByRole('region', { name: 'Whom the sizes fit' });
    await part.getByText('Whom the sizes fit').first().click();
    await part.getByRole('spinbutton', { name: 'propose sizes' }).fill('5');
    await part.getByRole('spinbutton', { name: 'propose sizes' }).blur();
    const { suggested } = await coverage('--suggest', '5');
    await part.getByRole('button', { name: 'Take them as the chart' }).click();
    await expect
      .poll(() => part.getByRole('status').textContent())
      .toContain(`${percent(suggested?.served ?? NaN)} find one of its 5 sizes`);
    await saysVerdict(page, /^(?!Not graded)/u);
    expect(await page.locator('.chart .file').textContent()).toBe('suggested-chart.csv');
  });

  it("counts the bodies of a list of one's own", async () => {
    const list = join(folder, 'list.csv');
    // By hand: of four bodies the demo's size 12 (31 and 41.5 in) fits the first two.
    writeFileSync(
      list,
      '# unit: in\nname,waist,hip\nAsa,31,41.5\nBo,31.25,41.75\nCy,24,52\nDi,58,60\n',
    );
    const { page } = await open('page.html');
    const part = page.getByRole('region', { name: 'Whom the sizes fit' });
    await part.getByText('Whom the sizes fit').first().click();
    await part.getByLabel('A list of your own').setInputFiles(list);
    await expect.poll(() => part.getByRole('status').textContent()).toContain(': 50 % find one');
    expect(await part.getByRole('button', { name: 'Without list.csv' }).isVisible()).toBe(true);
    expect(readFileSync(list, 'utf8')).toContain('Asa');
  });
});
