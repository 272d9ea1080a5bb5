/** A page that is worked with for long does not grow: what is left after 500 steps of a slider. */
import { resolve } from 'node:path';
import { expect, it } from 'vitest';
import { describePage } from './browser';

const DEMO = resolve('size-charts/demo.csv');

describePage('500 steps of a slider', ({ cli, open }) => {
  it('leave no more behind than the first hundred', async () => {
    await cli('page', DEMO, '--base', '12', '--style', 'pencil', '--out', 'page.html');
    const { page, complaints } = await open('page.html');
    const session = await page.context().newCDPSession(page);
    const slider = page.getByRole('slider', { name: 'skirt length, slider' });
    const drag = async (steps: number): Promise<number> => {
      await slider.evaluate(async (input, count) => {
        const front = () => document.querySelector('[data-size="12"] [data-line="net"]');
        const first = Number((input as HTMLInputElement).value);
        for (let i = 1; i <= count; i++) {
          const before = front()?.getAttribute('d');
          (input as HTMLInputElement).value = `${first + (i % 2 === 0 ? -1 : 1) * (1 + (i % 20))}`;
          input.dispatchEvent(new Event('input', { bubbles: true }));
          while (front()?.getAttribute('d') === before)
            await new Promise((resolved) => setTimeout(resolved, 1));
        }
      }, steps);
      await session.send('HeapProfiler.collectGarbage');
      return (await session.send('Runtime.getHeapUsage')).usedSize;
    };
    const early = await drag(100);
    const late = await drag(400);
    // What one step left behind would be there four hundred times: 3 MB are 7.5 kB a step.
    expect((late - early) / 1e6).toBeLessThan(3);
    expect(complaints).toEqual([]);
  });
});
