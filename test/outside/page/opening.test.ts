/** A page opened from the disk: what it asks for, what it shows first, and what a chart may not do to it. */
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parse } from 'csv-parse/sync';
import { expect, it } from 'vitest';
import { chartText } from '../../skirts';
import { describePage, numberIn, saysVerdict, tableOf } from './browser';

const DEMO = resolve('size-charts/demo.csv');

describePage('a page', ({ folder, cli, open }) => {
  it('is one file of at most 2 MB that asks for nothing and says what grade says', async () => {
    const said = await cli('grade', DEMO, '--base', '12', '--out', 'demo', '--page');
    const path = join(folder, 'demo/page.html');
    expect(statSync(path).size).toBeLessThan(2_000_000);
    const { page, requests, complaints } = await open('demo/page.html');
    const line = await saysVerdict(page, /decide|mend|cut/iu);
    expect(said.replace(/\s+/gu, ' ')).toContain(line);
    expect(requests).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it('may do nothing but what its policy names', () => {
    const text = readFileSync(join(folder, 'demo/page.html'), 'utf8');
    const policy = /Content-Security-Policy" content="([^"]*)"/u.exec(text)?.[1] ?? '';
    expect(policy).toMatch(
      /^default-src &#39;none&#39;; script-src &#39;sha256-[^;]*&#39;; style/u,
    );
    expect(policy).not.toMatch(/unsafe|https?:|\*/u);
    expect(text).not.toMatch(/(?:src|href)="(?!data:)/u);
  });

  it('shows the finished measurements that grade writes', async () => {
    const { page } = await open('demo/page.html');
    const shown = await tableOf(page, /^Finished measurements in inches$/u);
    const written: string[][] = parse(
      readFileSync(join(folder, 'demo/finished-measurements.csv'), 'utf8'),
    );
    expect(shown).toHaveLength(written.length);
    written.slice(1).forEach(([measure = '', , ...values], i) => {
      expect(shown[i + 1]?.[0]).toBe(measure.replaceAll('_', ' '));
      values.forEach((value, k) => {
        const cell = shown[i + 1]?.[k + 1] ?? '';
        if (value === 'no limit') expect(cell).toBe(value);
        else expect(numberIn(cell)).toBeCloseTo(Number(value), 2);
      });
    });
  });

  it('draws edges as long as they are measured', async () => {
    const { page } = await open('demo/page.html');
    const lengthOf = (piece: string, seam: string) =>
      page
        .locator(`.reach[data-piece="${piece}"][data-seam="${seam}"]`)
        .evaluateAll((paths) =>
          paths.reduce((sum, path) => sum + (path as SVGPathElement).getTotalLength(), 0),
        );
    const written: string[][] = parse(
      readFileSync(join(folder, 'demo/finished-measurements.csv'), 'utf8'),
    );
    const column = written[0]?.indexOf('12') ?? -1;
    const measured = (name: string): number =>
      Number(written.find(([measure]) => measure === name)?.[column]) * 25.4;
    // Chromium measures curves by chords, to about a hundredth of a millimeter in a side seam.
    expect(await lengthOf('front', 'side')).toBeCloseTo(measured('side_seam_front'), 1);
    expect(await lengthOf('back', 'side')).toBeCloseTo(measured('side_seam_back'), 1);
    expect(await lengthOf('front', 'center_front')).toBeCloseTo(measured('center_front_length'), 2);
  });

  it('takes names in a chart for what they are typed as, never for markup', async () => {
    const hostile = '<img src=x onerror=document.title=1>';
    const labels = [hostile, 'Größe Ж 日本', '</script><script>document.title=2</script>'];
    const chart =
      '# title: <b onclick=alert(1)>Łódź & "skirt"</b>\n' +
      chartText(
        'cm',
        { waist_girth: [68, 72, 76], hip_girth: [92, 96, 100], waist_to_hip: [20, 20, 20] },
        labels,
      );
    writeFileSync(join(folder, 'hostile.csv'), chart);
    await cli('page', 'hostile.csv', '--base', 'Größe Ж 日本', '--out', 'hostile.html');
    const { page, complaints } = await open('hostile.html');
    expect(await page.locator('.chip .label').allTextContents()).toEqual(labels);
    expect(await page.locator('h1').textContent()).toBe('<b onclick=alert(1)>Łódź & "skirt"</b>');
    expect(await page.title()).toBe('hostile.csv, graded');
    expect(await page.locator('img[src="x"], h1 b').count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  it('reads a chart of a hundred sizes', async () => {
    const sizes = Array.from({ length: 100 }, (_, i) => i);
    const chart = chartText(
      'cm',
      { waist_girth: sizes.map((i) => 60 + i), hip_girth: sizes.map((i) => 85 + i) },
      sizes.map((i) => `S${i}`),
    );
    writeFileSync(join(folder, 'hundred.csv'), chart);
    await cli('page', 'hundred.csv', '--base', 'S40', '--style', 'pencil', '--out', 'hundred.html');
    const { page, complaints } = await open('hundred.html');
    expect(await page.locator('.chip').count()).toBe(100);
    expect(await page.locator('.nest g[data-size="S99"] [data-line="net"]').count()).toBe(2);
    expect(complaints).toEqual([]);
  });
});
