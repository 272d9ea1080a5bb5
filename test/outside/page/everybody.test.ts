/** The page for everybody: what axe-core finds, in both schemes and on a small screen. */
import { resolve } from 'node:path';
import axe from 'axe-core';
import { expect, it } from 'vitest';
import { describePage } from './browser';

const DEMO = resolve('size-charts/demo.csv');

describePage('axe-core (WCAG 2.2 AA)', ({ cli, open }) => {
  it.each([
    ['light', 1400],
    ['dark', 1400],
    ['light', 360],
  ] as const)('finds nothing in the %s scheme at %i pixels', async (colorScheme, width) => {
    await cli('page', DEMO, '--base', '12', '--out', 'page.html', '--replace');
    const { page } = await open('page.html', { colorScheme, viewport: { width, height: 900 } });
    await page.locator('.style img').first().waitFor();
    await page.getByRole('combobox', { name: 'look at' }).selectOption({ index: 1 });
    await page.locator('.spot table').waitFor();
    await page.getByText('Whom the sizes fit').first().click();
    await page.locator('img.cloud').waitFor();
    await page.getByText('Cloth to buy', { exact: true }).click();
    await page.locator('img.lay').waitFor({ timeout: 60_000 });
    await page.getByText('Every width and fold').click();
    await page.getByText('An exercise', { exact: true }).click();
    await page.getByRole('button', { name: 'Set the exercise' }).click();
    for (const hint of ['How many are wrong', 'Which rows', 'Which question to ask', 'The answer'])
      await page.getByRole('button', { name: hint }).click();
    await page.locator('svg.outlines').waitFor({ timeout: 60_000 });
    await page
      .getByRole('combobox', { name: 'derive step by step' })
      .selectOption('front.side_waist');
    await page.locator('.board table').first().waitFor({ timeout: 60_000 });
    // The policy of the page lets no other script in, so the checker is handed over by the driver.
    const violations = await page.evaluate(async (source) => {
      (0, eval)(source);
      const checker = (globalThis as unknown as { axe: typeof axe }).axe;
      const { violations: found } = await checker.run(document, {
        runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
      });
      return found;
    }, axe.source);
    expect(
      violations.map(({ id, help, nodes }) => ({
        id,
        help,
        html: nodes
          .map(({ html, failureSummary }) => `${html} ${failureSummary ?? ''}`)
          .slice(0, 3),
      })),
    ).toEqual([]);
  });
});
