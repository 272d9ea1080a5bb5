/** What a designer does on the page: she types, slides, decides, looks and takes back. */
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parse } from 'csv-parse/sync';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { describePage, numberIn, saysVerdict, tableOf } from './browser';

const DEMO = resolve('size-charts/demo.csv');

/** The finished measure of a size as the page has it now. */
async function finished(page: Page, measure: string, size: string): Promise<number> {
  const rows = await tableOf(page, /^Finished measurements in inches$/u);
  const column = rows[0]?.indexOf(size) ?? -1;
  return numberIn(rows.find(([name]) => name === measure)?.[column]);
}

/** Where a point of the base is on the screen. */
async function placeOf(page: Page, piece: string, point: string): Promise<[number, number]> {
  const dot = page.locator(`.dot[data-piece="${piece}"][data-point="${point}"]`);
  return await dot.evaluate((path) => {
    const { x, y } = (path as SVGPathElement).getPointAtLength(0);
    const matrix = (path as SVGPathElement).getScreenCTM();
    const place = new DOMPoint(x, y).matrixTransform(matrix ?? undefined);
    return [place.x, place.y];
  });
}

describePage('on the page', ({ folder, cli, open }) => {
  it('is made', async () => {
    const style = ['--base', '12', '--style', 'pencil'];
    await cli('page', DEMO, ...style, '--out', 'page.html');
    await cli('grade', DEMO, ...style, '--out', 'demo');
  });

  it('a cell that is typed grades anew, and is taken back by undo', async () => {
    const { page } = await open('page.html');
    const before = await finished(page, 'hip', '12');
    const cell = page.getByRole('textbox', { name: 'hip_girth, 12', exact: true });
    await cell.fill('42');
    await expect.poll(() => finished(page, 'hip', '12')).toBeCloseTo(before + 0.5, 3);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => finished(page, 'hip', '12')).toBeCloseTo(before, 3);
    expect(await cell.inputValue()).toBe('41 1/2');
    await page.getByRole('button', { name: 'Redo' }).click();
    await expect.poll(() => finished(page, 'hip', '12')).toBeCloseTo(before + 0.5, 3);
  });

  it('a cell that is refused is marked where it stands, with its sentence', async () => {
    const { page } = await open('page.html');
    const cell = page.getByRole('textbox', { name: 'waist_girth, 14', exact: true });
    await cell.fill('thirty');
    const line = await saysVerdict(page, /^Not graded/u);
    expect(await cell.getAttribute('aria-invalid')).toBe('true');
    const described = (await cell.getAttribute('aria-describedby')) ?? '';
    const sentence = await page.locator(`[id="${described}"]`).textContent();
    expect(line).toContain(sentence);
    expect(sentence).toMatch(/waist_girth, size 14/u);
    expect(await page.locator('.nest .net').count()).toBeGreaterThan(0);
    await cell.fill('32 1/2');
    await saysVerdict(page, /nothing failed/u);
    expect(await cell.getAttribute('aria-invalid')).toBe('false');
  });

  it('cells are pasted from a spreadsheet', async () => {
    const { page } = await open('page.html');
    const before = await finished(page, 'hip', '2');
    const cell = page.getByRole('textbox', { name: 'hip_girth, 2', exact: true });
    await cell.evaluate((input) => {
      const data = new DataTransfer();
      data.setData('text/plain', '35\t36\r\n7.5\t7.75\r\n');
      input.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
      );
    });
    await expect.poll(() => cell.inputValue()).toBe('35');
    const value = (name: string) => page.getByRole('textbox', { name, exact: true }).inputValue();
    expect(await value('hip_girth, 4')).toBe('36');
    expect(await value('waist_to_hip, 2')).toBe('7.5');
    expect(await value('waist_to_hip, 4')).toBe('7.75');
    await expect.poll(() => finished(page, 'hip', '2')).toBeCloseTo(before - 0.5, 3);
  });

  it('a chart is opened and dropped, in its own unit, whatever its letters', async () => {
    const { page } = await open('page.html');
    const chart = Buffer.from(
      'unit;cm\nmeasurement;Größe 1;Größe 2;Größe 3\nwaist;68;72;76\nhip;92,5;96;100\n',
    );
    await page
      .getByLabel('Open a chart')
      .setInputFiles({ name: 'Maße.csv', mimeType: 'text/csv', buffer: chart });
    await expect
      .poll(() => page.locator('.chip .label').allTextContents())
      .toEqual(['Größe 1', 'Größe 2', 'Größe 3']);
    const rows = await tableOf(page, /^Finished measurements in centimeters$/u);
    expect(rows[0]).toEqual(['size', 'Größe 1', 'Größe 2', 'Größe 3']);
    expect(await page.getByRole('combobox', { name: 'base' }).inputValue()).toBe('Größe 2');
    await page.getByRole('region', { name: 'Chart of body measurements' }).evaluate((sheet) => {
      const data = new DataTransfer();
      const text = '# unit: in\nmeasurement,XS,S\nwaist_girth,25,26\nhip_girth,36,37\n';
      data.items.add(new File([text], 'two.csv'));
      sheet.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
    });
    await expect.poll(() => page.locator('.chip .label').allTextContents()).toEqual(['XS', 'S']);
    expect(await page.locator('.chart .file').textContent()).toBe('two.csv');
  });

  it('says why a file that is chosen or dropped cannot be read, and keeps the chart', async () => {
    const { page } = await open('page.html');
    const header = '0\nSECTION\n2\nHEADER\n9\n$DWGCODEPAGE\n3\nNOWHERE\n';
    const buffer = Buffer.concat([Buffer.from(header), Buffer.from([0xff])]);
    const troubles = page.locator('.chart').getByRole('alert');
    await page
      .getByLabel('Open a chart')
      .setInputFiles({ name: 'odd.dxf', mimeType: 'image/vnd.dxf', buffer });
    await expect.poll(() => troubles.allTextContents()).toHaveLength(1);
    expect(await troubles.first().textContent()).toMatch(/code page.*NOWHERE/su);
    await page.getByRole('region', { name: 'Chart of body measurements' }).evaluate(
      (sheet, bytes) => {
        const data = new DataTransfer();
        data.items.add(new File([Uint8Array.from(bytes)], 'odd.dxf'));
        sheet.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
      },
      [...buffer],
    );
    await expect.poll(() => troubles.allTextContents()).toHaveLength(2);
    expect(await page.locator('.chart .file').textContent()).toBe('demo.csv');
  });

  it('sizes are added and removed', async () => {
    const { page } = await open('page.html');
    await page.getByRole('button', { name: 'Remove size 24' }).click();
    await expect.poll(() => page.locator('.chip').count()).toBe(11);
    await page.getByRole('button', { name: 'Add a size' }).click();
    await page.locator('.grid tr:first-child input').last().fill('24');
    await saysVerdict(page, /^Not graded/u);
    const column = ['65', '43 1/2', '53 1/2', '8 3/8', '23 5/8', '26 3/4'];
    const cells = page.locator('.grid tr:not(:first-child)');
    for (const [i, text] of column.entries()) await cells.nth(i).locator('input').last().fill(text);
    await expect.poll(() => page.locator('.chip').count()).toBe(12);
  });

  it('a parameter is slid, typed and put back', async () => {
    const { page } = await open('page.html');
    const before = await finished(page, 'center front length', '12');
    const slider = page.getByRole('slider', { name: 'skirt length, slider' });
    await slider.focus();
    await slider.press('ArrowRight');
    const field = page.getByRole('textbox', { name: 'skirt length', exact: true });
    await expect.poll(() => field.inputValue()).toBe(`${before} 1/8 in`);
    await expect
      .poll(() => finished(page, 'center front length', '12'))
      .toBeCloseTo(before + 1 / 8, 3);
    await field.fill('waist_to_knee + 1 in');
    await expect.poll(() => finished(page, 'center front length', '12')).toBeCloseTo(24.25, 3);
    await field.fill('waist_to_knee +');
    await saysVerdict(page, /^Not graded/u);
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    await page.getByRole('button', { name: 'skirt length as the style has it' }).click();
    await expect.poll(() => finished(page, 'center front length', '12')).toBeCloseTo(before, 3);
  });

  it('a style is chosen by its line drawing', async () => {
    const { page } = await open('page.html');
    const chosen = page.getByRole('radio', { name: /flared at the side/u });
    await chosen.waitFor();
    expect(await page.locator('.style img').count()).toBe(6);
    await chosen.focus();
    await chosen.press('Space');
    await expect
      .poll(() => page.locator('.parameter label').allTextContents())
      .toContain('dart closing');
    expect(await chosen.isChecked()).toBe(true);
  });

  it('a point shows its ladder and rule, a seam its length in every size', async () => {
    const { page } = await open('page.html');
    await page.mouse.move(...(await placeOf(page, 'front', 'side_hip')));
    const shown = await tableOf(page, /^Moves of side hip, front/u);
    const rules = parse<Record<string, string>>(
      readFileSync(join(folder, 'demo/grade-rules.csv'), 'utf8'),
      {
        columns: true,
      },
    );
    const own = rules.filter(({ piece, point }) => piece === 'front' && point === 'side_hip');
    expect(own.length).toBe(12);
    own.forEach(({ size, dx_in: dx, step_dx_in: step }, i) => {
      expect(shown[0]?.[i + 1]).toBe(size);
      const number = (row: number) => numberIn(shown[row]?.[i + 1]);
      expect(number(1)).toBeCloseTo(Number(dx), 2);
      expect(number(3)).toBeCloseTo(Number(step), 2);
    });
    expect(await page.locator('.rule dd').first().textContent()).toBe(own[0]?.rule_x);

    await page.getByRole('combobox', { name: 'look at' }).selectOption({ label: 'seam side' });
    const lengths = await tableOf(page, /^Length of side, front/u);
    const rows = await tableOf(page, /^Finished measurements in inches$/u);
    expect(lengths[1]?.slice(1)).toEqual(
      rows.find(([name]) => name === 'side seam front')?.slice(1),
    );
  });

  it('the zero moves, and every size lies on it', async () => {
    const { page } = await open('page.html');
    await page.getByRole('combobox', { name: 'sizes lie on' }).selectOption('side_hip');
    await page.getByRole('combobox', { name: 'look at' }).selectOption({ label: 'side hip' });
    await expect
      .poll(async () => (await tableOf(page, /^Moves of side hip, front/u))[1]?.slice(1))
      .toEqual(Array<string>(12).fill('0'));
  });

  it('sizes are put away, and half pieces folded out', async () => {
    const { page } = await open('page.html');
    const lines = (size: string) =>
      page.locator(`.nest [data-size="${size}"] [data-line="cut"]`).count();
    expect(await lines('2')).toBe(2);
    await page.getByRole('button', { name: 'Size 2', exact: true }).click();
    await expect.poll(() => lines('2')).toBe(0);
    await page.getByRole('button', { name: 'All', exact: true }).click();
    await expect.poll(() => lines('2')).toBe(2);
    await page.getByRole('checkbox', { name: 'folded out' }).check();
    // The front is cut on the fold, the back is not.
    await expect.poll(() => lines('2')).toBe(3);
    await page.getByRole('checkbox', { name: 'cut lines' }).uncheck();
    await expect.poll(() => lines('2')).toBe(0);
  });

  it('two sizes are laid over each other with what lies between them', async () => {
    const { page } = await open('page.html');
    await page.getByRole('checkbox', { name: 'one over another:' }).check();
    await page.getByRole('combobox', { name: 'First size' }).selectOption('2');
    await page.getByRole('combobox', { name: 'Second size' }).selectOption('24');
    const told = page.locator('.nest [data-piece-drawn="front"] [data-apart="side_hip"]');
    const rules = parse<Record<string, string>>(
      readFileSync(join(folder, 'demo/grade-rules.csv'), 'utf8'),
      {
        columns: true,
      },
    );
    const at = (label: string) =>
      rules.find(
        ({ piece, point, size }) => piece === 'front' && point === 'side_hip' && size === label,
      );
    const apart = Math.hypot(
      Number(at('24')?.dx_in) - Number(at('2')?.dx_in),
      Number(at('24')?.dy_in) - Number(at('2')?.dy_in),
    );
    await expect.poll(async () => numberIn((await told.textContent()) ?? '')).toBeCloseTo(apart, 2);
    expect(await page.locator('.nest .difference').count()).toBe(2);
  });

  it('a slider runs from the smallest to the largest over the ghost of the base', async () => {
    const { page } = await open('page.html');
    const slider = page.getByRole('slider', { name: /^from 2 to 24/u });
    const outline = page.locator('.nest [data-piece-drawn="front"] .between');
    await slider.fill('0');
    const smallest = await outline.getAttribute('d');
    await slider.fill('11');
    const largest = await outline.getAttribute('d');
    await slider.fill('10.5');
    expect(await page.locator('.nest .ghost').count()).toBe(2);
    const widths = await page.evaluate(
      (paths) =>
        paths.map((d) => {
          const path = document.createElementNS('http://www.w3.org/2000/svg', 'path');
          path.setAttribute('d', d ?? '');
          document.querySelector('.nest')?.append(path);
          const { width } = path.getBBox();
          path.remove();
          return width;
        }),
      [smallest, largest, await outline.getAttribute('d')],
    );
    // A quarter of the finished hip, front and back alike in the quarter method.
    expect(widths[0]).toBeCloseTo(((await finished(page, 'hip', '2')) * 25.4) / 4, 1);
    expect(widths[1]).toBeCloseTo(((await finished(page, 'hip', '24')) * 25.4) / 4, 1);
    const before = (await finished(page, 'hip', '22')) * 25.4;
    const after = (await finished(page, 'hip', '24')) * 25.4;
    expect(widths[2]).toBeCloseTo((before + after) / 8, 1);
  });

  it('wheel, keys and the bank card bring the nest nearer', async () => {
    const { page } = await open('page.html');
    const scale = async (): Promise<number> =>
      Number(
        /scale\(([\d.]+)\)/u.exec(
          (await page.locator('.nest > g').getAttribute('transform')) ?? '',
        )?.[1],
      );
    const whole = await scale();
    const nest = page.locator('.nest');
    await nest.hover();
    await page.mouse.wheel(0, -300);
    await expect.poll(scale).toBeGreaterThan(whole * 1.3);
    await nest.focus();
    await nest.press('0');
    await expect.poll(scale).toBeCloseTo(whole, 6);
    await nest.press('+');
    await expect.poll(scale).toBeCloseTo(whole * 1.25, 6);
    await page.getByRole('button', { name: 'True size' }).click();
    await page.getByRole('slider', { name: 'Size of the card on the screen' }).fill('4');
    // 85.60 mm by 53.98 mm: ISO/IEC 7810, ID-1.
    const card = await page.locator('.card').boundingBox();
    expect(card?.width).toBeCloseTo(85.6 * 4, 0);
    expect(card?.height).toBeCloseTo(53.98 * 4, 0);
    await page.getByRole('button', { name: /^The card fits/u }).click();
    await expect.poll(scale).toBeCloseTo(4, 6);
  });
});
