/** A pattern that somebody has already, graded on the page by its rules. */
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { TOPICS } from '../../../src/cli/help-topics';
import { runIn } from '../../cli/run-in';
import { indentedBlocks } from '../../cli/typed-blocks';
import { describePage, saysVerdict, tableOf } from './browser';

const DEMO = resolve('size-charts/demo.csv');

/** A sheet as `help own-pattern` has typed it. */
const typedIn = (first: string): string =>
  indentedBlocks(TOPICS.get('own-pattern') ?? '')
    .map(({ text }) => text)
    .find((text) => text.startsWith(first)) ?? '';

describePage("a pattern of one's own", ({ folder, cli, open }) => {
  const at = (name: string): string => join(folder, name);
  const choose = async (page: Page, name: RegExp, file: string): Promise<void> => {
    await page.getByLabel(name).setInputFiles(at(file));
  };

  it('is graded by its rules in the place of the chart, and anew when a rule is edited', async () => {
    writeFileSync(at('base.csv'), typedIn('# title: Sorrel skirt'));
    writeFileSync(at('rules.csv'), typedIn('# sizes: 8, 10, 12, 14, 16'));
    await cli('page', DEMO, '--base', '12', '--style', 'pencil', '--out', 'page.html');
    const { page, complaints, requests } = await open('page.html');
    await choose(page, /^Pattern/u, 'base.csv');
    expect(await page.getByRole('heading', { level: 1 }).textContent()).not.toContain('Sorrel');
    await choose(page, /^Rules/u, 'rules.csv');
    await expect
      .poll(() => page.getByRole('heading', { level: 1 }).textContent())
      .toBe('Sorrel skirt');
    expect(await page.getByRole('region', { name: /^Chart of body/u }).count()).toBe(0);
    const told = await cli(
      'grade',
      '--pattern',
      'base.csv',
      '--rules',
      'rules.csv',
      '--out',
      'told',
    );
    const line = await page.locator('.verdict .line').textContent();
    expect(told.replace(/\s+/gu, ' ')).toContain(line);
    const sizes = await page.getByRole('button', { name: /^Size /u }).count();
    expect(sizes).toBe(5);
    const gaps = await tableOf(page, /^Seams: how much longer/u);
    const rules = page.getByRole('textbox', { name: 'rules.csv' });
    const typed = await rules.inputValue();
    // One step of the side on one piece alone: the side seams part by it.
    await rules.fill(typed.replace(/^(,back,side_hem,.*),[^,\n]+$/mu, '$1,1'));
    await expect
      .poll(async () => JSON.stringify(await tableOf(page, /^Seams: how much longer/u)))
      .not.toBe(JSON.stringify(gaps));
    await rules.fill(`${typed},front,nowhere,,,,1,1\n`);
    await saysVerdict(page, /^Not graded.*nowhere/u);
    await rules.fill(typed);
    await saysVerdict(page, /^(?!Not graded)/u);
    expect([complaints, requests]).toEqual([[], []]);
  });

  it('is taken away as the command line writes it, from a drawing too', async () => {
    await cli('grade', '--pattern', 'base.csv', '--rules', 'rules.csv', '--dxf', '--out', 'drawn');
    const { page } = await open('page.html');
    await choose(page, /^Pattern/u, 'drawn/pattern.dxf');
    await choose(page, /^Rules/u, 'drawn/pattern.rul');
    await saysVerdict(page, /^(?!Grading)/u);
    await expect.poll(() => page.getByRole('region', { name: 'Rules' }).count()).toBe(1);
    const [download] = await Promise.all([
      page.waitForEvent('download', { timeout: 120_000 }),
      page.getByRole('button', { name: 'Take all as one zip' }).click(),
    ]);
    const files = Object.entries(unzipSync(readFileSync(await download.path())));
    const there = at('again');
    mkdirSync(there);
    for (const [name, bytes] of files)
      if (name.startsWith('given/')) writeFileSync(join(there, name.slice(6)), bytes);
    await runIn(there, [
      'grade',
      '--pattern',
      'pattern.dxf',
      '--rules',
      'pattern.rul',
      '--out',
      'out',
    ]);
    const written = readdirSync(join(there, 'out')).filter((name) => !name.startsWith('.'));
    const taken = files.filter(([name]) => !name.startsWith('given/'));
    expect(taken.map(([name]) => name).toSorted()).toEqual(written.toSorted());
    for (const [name, bytes] of taken)
      expect(Buffer.from(bytes).equals(readFileSync(join(there, 'out', name))), name).toBe(true);
    await page.getByRole('button', { name: 'Back to the chart' }).click();
    await expect.poll(() => page.getByRole('region', { name: /^Chart of body/u }).count()).toBe(1);
  });
});
