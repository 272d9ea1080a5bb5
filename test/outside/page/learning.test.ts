/** Exercises on the page: the exercise, the hints and the derivations of the command line. */
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { describePage, tableOf } from './browser';

const DEMO = resolve('size-charts/demo.csv');

describePage('learning', ({ folder, cli, open }) => {
  const read = (name: string): string => readFileSync(join(folder, name), 'utf8');
  const cells = (csv: string): readonly string[][] =>
    csv
      .split('\n')
      .filter((line) => line !== '' && !line.startsWith('#'))
      .map((line) => line.split(','));
  const lessonOf = async (page: Page): Promise<Locator> => {
    const part = page.getByRole('region', { name: 'An exercise', exact: true });
    await part.getByText('An exercise').first().click();
    await part.getByRole('spinbutton', { name: 'number' }).fill('7');
    await part.getByRole('combobox', { name: 'practices' }).selectOption('break');
    await part.getByRole('button', { name: 'Set the exercise' }).click();
    await part
      .getByRole('textbox', { name: 'heading 1', exact: true })
      .waitFor({ timeout: 60_000 });
    return part;
  };
  /** Puts cells into the sheet as a spreadsheet does. */
  const paste = async (part: Locator, rows: readonly (readonly string[])[]): Promise<void> => {
    const text = rows.map((row) => row.join('\t')).join('\n');
    await part.getByRole('textbox', { name: 'heading 1', exact: true }).evaluate((field, words) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text/plain', words);
      field.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true }));
    }, text);
  };

  it('sets the exercise of a seed, and gives hints one after another before the answer', async () => {
    const calls = ['exercise', '--seed', '7', '--difficulty', 'break'];
    await cli(...calls, '--out', 'lesson');
    await cli(...calls, '--key', '--out', 'key');
    await cli('page', DEMO, '--base', '12', '--style', 'pencil', '--out', 'page.html');
    const { page, complaints, requests } = await open('page.html');
    const part = await lessonOf(page);
    expect(await tableOf(page, /^The chart of the exercise/u)).toEqual(
      cells(read('lesson/chart.csv')),
    );
    const hint = (name: string): Locator => part.getByRole('button', { name, exact: true });
    const line = part.getByRole('status').first();
    expect(await hint('Which rows').isDisabled()).toBe(true);
    expect(await hint('The answer').isDisabled()).toBe(true);
    // The key, but for one cell that is off by an inch.
    const key = cells(read('key/key.csv'));
    const place = key.findIndex(
      ([point, axis]) => point === 'front.side_waist' && axis === 'dx_in',
    );
    const wrong = key.map((row, i) => (i === place ? [...row.slice(0, -1), '9 7/8'] : row));
    await paste(part, wrong);
    await hint('How many are wrong').click();
    await expect
      .poll(() => line.textContent(), { timeout: 30_000 })
      .toMatch(/^1 of \d+ cells is wrong\./u);
    expect(await part.textContent()).not.toMatch(/Wrong: |Ask yourself/u);
    await hint('Which rows').click();
    await part.getByText('Wrong: front.side_waist dx').waitFor({ timeout: 30_000 });
    expect(await part.textContent()).not.toContain('Ask yourself');
    await hint('Which question to ask').click();
    await part
      .getByText(/^Ask yourself of front\.side_waist dx: .*\?$/u)
      .waitFor({ timeout: 30_000 });
    const right = key[place]?.at(-1) ?? '';
    expect(await part.locator('svg.outlines').count()).toBe(0);
    await hint('The answer').click();
    const told = await tableOf(page, /^What is right, in inches/u);
    expect(told.find(([row]) => row === 'front.side_waist dx')?.at(-1)).toBe(`${right}, not 9 7/8`);
    // The corner lies off by as much on the outline that the sheet makes.
    const size = key[0]?.at(-1) ?? '';
    const outline = part.getByRole('img', { name: `The front of size ${size} as your sheet` });
    const off = outline.locator('[data-apart="side_waist"]');
    const inches = (mixed: string): number =>
      mixed.split(' ').reduce((sum, one) => {
        const [over = NaN, under = 1] = one.split('/').map(Number);
        return sum + over / under;
      }, 0);
    expect(inches((await off.textContent()) ?? '')).toBeCloseTo(9.875 - inches(right), 6);
    // What was told stays while the sheet is mended, and says of which sheet it is.
    await paste(part, key);
    await expect.poll(() => line.textContent()).toContain('has changed since');
    await hint('How many are wrong').click();
    await expect.poll(() => line.textContent(), { timeout: 30_000 }).toBe('Every cell is right.');
    // A cell that is no number is marked where it stands.
    const cell = part.getByRole('textbox', { name: `front.side_waist, dx_in, ${size}` });
    await cell.fill('wide');
    await hint('How many are wrong').click();
    await expect.poll(() => line.textContent(), { timeout: 30_000 }).toContain('wide');
    expect(await cell.getAttribute('aria-invalid')).toBe('true');
    expect([complaints, requests]).toEqual([[], []]);
  });

  it('derives the rule of a point of the skirt as explain does', async () => {
    const { page } = await open('page.html');
    const nest = page.getByRole('region', { name: 'Nest', exact: true });
    await nest.getByRole('combobox', { name: 'look at' }).selectOption({ label: 'side waist' });
    await nest.getByText('Its rule step by step').click();
    const board = nest.locator('.board');
    await board.waitFor({ timeout: 60_000 });
    const flat = (words: string): string => words.replace(/\s+/gu, ' ');
    const told = flat(
      await cli('explain', DEMO, 'front.side_waist', '--base', '12', '--style', 'pencil'),
    );
    const lines = await board.locator('> p').allTextContents();
    expect(lines.length).toBeGreaterThan(8);
    for (const words of lines) expect(told).toContain(flat(words));
    // In the quarter method one inch of waist moves the side by a quarter.
    expect(lines).toContain("dx is a quarter of the waist's step.");
  });
});
