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
    const cell = (name: string) => page.getByRole('textbox', { name, exact: true });
    const step = cell('back, side_hem, step_dx');
    // One step of the side on one piece alone: the side seams part by it.
    await step.fill('1');
    await expect
      .poll(async () => JSON.stringify(await tableOf(page, /^Seams: how much longer/u)))
      .not.toBe(JSON.stringify(gaps));
    // Each cell that is refused is marked where it stands, and told by a sentence of its own.
    await step.fill('wide');
    await cell('front, side_hem, step_dy').fill('long');
    await saysVerdict(page, /^Not graded.*wide.*long|^Not graded.*long.*wide/u);
    const said = page.getByRole('region', { name: 'Rules' }).locator('.troubles .refused');
    expect(await said.count()).toBe(2);
    for (const [name, words] of [
      ['back, side_hem, step_dx', 'wide'],
      ['front, side_hem, step_dy', 'long'],
    ] as const) {
      expect(await cell(name).getAttribute('aria-invalid')).toBe('true');
      const id = await cell(name).getAttribute('aria-describedby');
      expect(await page.locator(`[id="${id}"]`).textContent()).toContain(`Got: ${words}`);
    }
    await step.fill('1/4');
    await cell('front, side_hem, step_dy').fill('1/4');
    await saysVerdict(page, /^(?!Not graded)/u);
    expect(await said.count()).toBe(0);
    await expect
      .poll(async () => JSON.stringify(await tableOf(page, /^Seams: how much longer/u)))
      .toBe(JSON.stringify(gaps));
    // A row is added blank, and says something once it is typed into.
    const rows = page.getByRole('region', { name: 'Cells of the rule sheet' }).locator('tr');
    const before = await rows.count();
    await page.getByRole('button', { name: 'Add a row' }).click();
    expect(await rows.count()).toBe(before + 1);
    await rows.last().getByRole('textbox').nth(1).fill('front');
    await rows.last().getByRole('textbox').nth(2).fill('nowhere');
    await rows.last().getByRole('textbox').nth(4).fill('1');
    await saysVerdict(page, /^Not graded.*nowhere/u);
    expect(await rows.last().getByRole('textbox').nth(2).getAttribute('aria-invalid')).toBe('true');
    await page.getByRole('button', { name: /^Remove row front nowhere/u }).click();
    await saysVerdict(page, /^(?!Not graded)/u);
    // The lines above the table, and all else, as text.
    await page.getByText('rules.csv as text').click();
    const text = page.getByRole('textbox', { name: 'rules.csv' });
    await text.fill((await text.inputValue()).replace(/^# sizes: 8, /mu, '# sizes: '));
    await saysVerdict(page, /^Not graded.*\b8\b/u);
    expect([complaints, requests]).toEqual([[], []]);
  });

  it('is taken away as the command line writes it, from a drawing too', async () => {
    await cli('grade', '--pattern', 'base.csv', '--rules', 'rules.csv', '--dxf', '--out', 'drawn');
    const { page } = await open('page.html');
    await choose(page, /^Pattern/u, 'drawn/pattern.dxf');
    await choose(page, /^Rules/u, 'drawn/pattern.rul');
    await saysVerdict(page, /^(?!Grading)/u);
    // A rule table is no sheet of cells.
    await page.getByRole('textbox', { name: 'pattern.rul' }).waitFor({ timeout: 60_000 });
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
