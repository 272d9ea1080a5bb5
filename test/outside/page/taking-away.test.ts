/** What leaves the page: the same bytes that the command line writes, and a page that opens as it was left. */
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { runIn } from '../../cli/run-in';
import { describePage } from './browser';

const DEMO = resolve('size-charts/demo.csv');

/** What a click on a button gives to save. */
async function saved(page: Page, button: string | RegExp): Promise<Uint8Array> {
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 120_000 }),
    page.getByRole('button', { name: button }).click(),
  ]);
  return readFileSync(await download.path());
}

describePage('what is taken away', ({ folder, cli, open }) => {
  it('is what the command line writes from the chart and the project in the same zip', async () => {
    await cli('page', DEMO, '--base', '12', '--out', 'page.html');
    const { page, complaints, requests } = await open('page.html');
    await page.getByRole('textbox', { name: 'hem taper', exact: true }).fill('1/2 in');
    await page.getByRole('textbox', { name: 'hip_girth, 8', exact: true }).fill('38 3/4');
    for (const name of ['DXF and rule table', 'spec and grade sheet', 'a4', 'projector'])
      await page.getByRole('checkbox', { name, exact: true }).check();
    await page.getByRole('combobox', { name: 'booklet' }).selectOption('short');
    // A roll that is too narrow is refused in the words of the command line.
    const roll = page.getByRole('textbox', { name: 'roll, as wide as' });
    await roll.fill('2 in');
    await page.getByRole('button', { name: 'Take all as one zip' }).click();
    await page.getByText(/such as roll=36in\. Got: roll=2 in\./u).waitFor({ timeout: 60_000 });
    await roll.fill('42 in');
    const files = Object.entries(unzipSync(await saved(page, 'Take all as one zip')));
    const there = join(folder, 'again');
    mkdirSync(there);
    for (const [name, bytes] of files)
      if (['demo.csv', 'skirt.csv'].includes(name)) writeFileSync(join(there, name), bytes);
    const { status } = await runIn(there, ['grade', '--out', 'out']);
    expect(status).toBe(0);
    const written = readdirSync(join(there, 'out')).filter((name) => !name.startsWith('.'));
    const taken = files
      .map(([name]) => name)
      .filter((name) => !/^(?:demo|skirt)\.csv$/u.test(name));
    expect(taken.toSorted()).toEqual(written.toSorted());
    expect(taken).toEqual(
      expect.arrayContaining([
        'nest.svg',
        'size-12.svg',
        'pattern.dxf',
        'spec.csv',
        'print-a4.pdf',
        'print-roll.pdf',
      ]),
    );
    for (const [name, bytes] of files)
      if (taken.includes(name))
        expect(Buffer.from(bytes).equals(readFileSync(join(there, 'out', name))), name).toBe(true);
    expect(complaints).toEqual([]);
    expect(requests).toEqual([]);
  });

  it('is the page itself, which opens with the state in which it was saved', async () => {
    const { page } = await open('page.html');
    await page.getByRole('textbox', { name: 'hem taper', exact: true }).fill('1 in');
    await page.getByRole('button', { name: 'Size 4', exact: true }).click();
    await page.getByRole('checkbox', { name: 'folded out' }).check();
    const bytes = await saved(page, 'Save this page as it is');
    writeFileSync(join(folder, 'left.html'), bytes);
    const again = await open('left.html');
    const field = again.page.getByRole('textbox', { name: 'hem taper', exact: true });
    expect(await field.inputValue()).toBe('1 in');
    expect(await again.page.locator('.nest [data-size="4"]').count()).toBe(0);
    expect(await again.page.getByRole('checkbox', { name: 'folded out' }).isChecked()).toBe(true);
    expect(again.complaints).toEqual([]);
    // Nothing is lost or added from one saving to the next.
    const twice = await saved(again.page, 'Save this page as it is');
    expect(Buffer.from(twice).equals(bytes)).toBe(true);
  });
});
