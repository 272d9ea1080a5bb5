/** The page under fingers, on paper, and for those who want no motion. */
import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { describePage } from './browser';

const DEMO = resolve('size-charts/demo.csv');

/** Pixels of the screen of a millimeter, and where the corner of the table is. */
async function eyeOf(page: Page): Promise<{ scale: number; x: number; y: number }> {
  const moved = (await page.locator('.nest > g').getAttribute('transform')) ?? '';
  const [x = NaN, y = NaN, scale = NaN] = [...moved.matchAll(/-?[\d.]+(?:e-?\d+)?/gu)].map(Number);
  return { scale, x, y };
}

describePage('occasions', ({ cli, open }) => {
  it('two fingers bring the nest as much nearer as they part, and what lies between them stays', async () => {
    await cli('page', DEMO, '--base', '12', '--style', 'pencil', '--out', 'page.html');
    const { page } = await open('page.html', { hasTouch: true });
    const session = await page.context().newCDPSession(page);
    const box = await page.locator('.nest').boundingBox();
    if (box === null) throw new Error('no nest');
    const [left, top] = [box.x + 0.5 * box.width, box.y + 0.5 * box.height];
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', apart: number) =>
      session.send('Input.dispatchTouchEvent', {
        type,
        touchPoints:
          type === 'touchEnd'
            ? []
            : [
                { x: left - apart, y: top, id: 1 },
                { x: left + apart, y: top, id: 2 },
              ],
      });
    const before = await eyeOf(page);
    await touch('touchStart', 40);
    for (const apart of [50, 60, 70, 80]) await touch('touchMove', apart);
    await touch('touchEnd', 80);
    await expect.poll(async () => (await eyeOf(page)).scale).toBeCloseTo(2 * before.scale, 6);
    // By the definition of a scaling: the middle of the fingers shows the same place of the table.
    const after = await eyeOf(page);
    const middle = [left - box.x, top - box.y] as const;
    expect((middle[0] - after.x) / after.scale).toBeCloseTo(
      (middle[0] - before.x) / before.scale,
      0,
    );
    expect((middle[1] - after.y) / after.scale).toBeCloseTo(
      (middle[1] - before.y) / before.scale,
      0,
    );
    // One finger moves it, and brings it no nearer.
    const one = (type: 'touchStart' | 'touchMove', x: number) =>
      session.send('Input.dispatchTouchEvent', { type, touchPoints: [{ x, y: top, id: 3 }] });
    await one('touchStart', left);
    await one('touchMove', left + 30);
    await one('touchMove', left + 60);
    await expect.poll(async () => (await eyeOf(page)).x).toBeCloseTo(after.x + 60, 0);
    expect((await eyeOf(page)).scale).toBe(after.scale);
  });

  it('is printed dark on white without what is pressed, also from a dark screen', async () => {
    const { page } = await open('page.html', { colorScheme: 'dark' });
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    // The chips of the sizes stay: they are the legend of the nest.
    for (const hidden of ['.beside', '.lookings', 'button:not(.chip)', '.button'])
      for (const one of await page.locator(hidden).all())
        expect(await one.isVisible(), hidden).toBe(false);
    for (const shown of ['.nest', '.verdict .line', '.laid table'])
      expect(await page.locator(shown).first().isVisible(), shown).toBe(true);
    const light = await page.evaluate(() => {
      const lightness = (color: string): number => {
        const [r = 0, g = 0, b = 0] = (/[\d.,\s]+/u.exec(color)?.[0] ?? '').split(',').map(Number);
        return (r + g + b) / (3 * 255);
      };
      const style = (name: string): CSSStyleDeclaration =>
        getComputedStyle(document.querySelector(name) ?? document.body);
      return {
        paper: lightness(style('html').backgroundColor),
        words: lightness(style('h1').color),
        line: lightness(style('.nest .base .net').stroke),
      };
    });
    expect(light.paper).toBe(1);
    expect(light.words).toBeLessThan(0.3);
    expect(light.line).toBeLessThan(0.5);
    // A4 less the browser's own margins: every cell of twelve sizes stands on it.
    await page.setViewportSize({ width: 718, height: 1000 });
    const cut = await page.evaluate(() =>
      [...document.querySelectorAll('.laid td, .laid th')]
        .filter((cell) => cell.getClientRects().length > 0)
        .filter((cell) => cell.getBoundingClientRect().right > innerWidth)
        .map((cell) => cell.textContent),
    );
    expect(cut).toEqual([]);
  });

  it('nothing moves by itself for those who want no motion', async () => {
    const { page } = await open('page.html', { reducedMotion: 'reduce' });
    const moving = (): Promise<number> =>
      page.evaluate(
        () =>
          [...document.querySelectorAll('*')].filter((element) => {
            const { transitionDuration, animationName, scrollBehavior } = getComputedStyle(element);
            const isStill = transitionDuration.split(', ').every((each) => each === '0s');
            return !isStill || animationName !== 'none' || scrollBehavior === 'smooth';
          }).length,
      );
    expect(await moving()).toBe(0);
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    expect(await moving()).toBeGreaterThan(0);
  });
});
