/**
 * The page in Debian's Chromium, by its own trace: processor time of the thread that shows and of the one
 * that grades, so that what else the machine does changes little.
 */
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { evenChart } from './even-chart';
import { amount, printTable } from './printed-table';

const CHROMIUM = '/usr/bin/chromium';

/** An event of a trace, its times in microseconds. */
interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly tdur?: number;
  readonly args: { readonly name?: string };
}

/** Processor milliseconds of the tasks of the two threads of a page. */
interface Threads {
  readonly shows: readonly number[];
  readonly grades: readonly number[];
}

/** Sizes of the nest that is moved and brought nearer. */
const MANY = 20;

/** Prints what opening, dragging and moving cost; `write` makes the page of a style at a path. */
export async function page(
  write: (style: string, path: string, chart?: readonly string[]) => void,
  folder: string,
  steps: number,
): Promise<void> {
  if (!existsSync(CHROMIUM)) {
    console.log(`\nthe page: skipped, for want of ${CHROMIUM}`);
    return;
  }
  const { chromium } = await import('playwright-core');
  const chart = join(folder, 'many.csv');
  writeFileSync(chart, evenChart(MANY));
  const rows: string[][] = [];
  for (const style of ['pencil', 'shared-pencil']) {
    const [few, many] = [join(folder, `${style}.html`), join(folder, `${style}-many.html`)];
    write(style, few);
    write(style, many, [chart]);
    const browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox'] });
    const { opened, opening, firstNest } = await openedAt(browser, few);
    const session = await opened.context().newCDPSession(opened);
    let nests = NaN;
    const dragging = await traced(session, async () => {
      nests = await drag(opened, steps);
    });
    const other = await openedAt(browser, many);
    let frames = NaN;
    const moving = await traced(
      await other.opened.context().newCDPSession(other.opened),
      async () => {
        frames = await framesOf(other.opened, () => move(other.opened, steps));
      },
    );
    await browser.close();
    const each = ({ shows, grades }: Threads): string[] => {
      const of = [sum(shows) / steps, sum(grades) / steps];
      return [...of.map(amount), (1000 / Math.max(...of)).toFixed(0)];
    };
    rows.push(
      [
        `${style}: opened`,
        ...[amount(sum(opening.shows)), amount(sum(opening.grades)), '', longest(opening)],
        `${amount(firstNest)} ms`,
      ],
      [
        `${style}: a step of a slider`,
        ...each(dragging),
        longest(dragging),
        `${nests.toFixed(0)} nests a second`,
      ],
      [
        `${style}, ${MANY} sizes: moved and nearer`,
        ...each(moving),
        longest(moving),
        `${frames.toFixed(0)} frames a second`,
      ],
    );
  }
  printTable(
    'the page, 12 sizes where no other number stands: processor ms of the thread that shows and of the one that\n' +
      'grades, how many such fit in a second of the busier, the longest task that shows, and what the clock says,\n' +
      'of which whatever else the machine does takes its part (opened: to the first nest)',
    ['', 'shows', 'grades', 'a second', 'longest', 'by the clock'],
    rows,
  );
}

/** A page that was opened while it was traced. */
async function openedAt(browser: Browser, path: string) {
  const opened = await browser.newPage({ viewport: { width: 1600, height: 1000 } });
  await opened.addInitScript(() => {
    new MutationObserver((_, observer) => {
      if (document.querySelector('.nest .net') === null) return;
      document.documentElement.dataset.firstNest = `${performance.now()}`;
      observer.disconnect();
    }).observe(document, { childList: true, subtree: true });
  });
  const opening = await traced(await opened.context().newCDPSession(opened), async () => {
    await opened.goto(pathToFileURL(path).href);
    await opened.locator('.nest .net').first().waitFor();
  });
  // The drawings of the styles come behind the first nest.
  await opened.locator('.style img').first().waitFor();
  const firstNest = await opened.evaluate(() => Number(document.documentElement.dataset.firstNest));
  return { opened, opening, firstNest };
}

/** Frames a second that the page was shown in while something is done. */
async function framesOf(opened: Page, doing: () => Promise<void>): Promise<number> {
  await opened.evaluate(() => {
    const seen = { frames: 0, from: performance.now() };
    const next = (): void => {
      seen.frames++;
      const { dataset } = document.documentElement;
      dataset.frames = `${(1000 * seen.frames) / (performance.now() - seen.from)}`;
      requestAnimationFrame(next);
    };
    requestAnimationFrame(next);
  });
  await doing();
  return await opened.evaluate(() => Number(document.documentElement.dataset.frames));
}

function sum(tasks: readonly number[]): number {
  return tasks.reduce((so, one) => so + one, 0);
}

function longest({ shows }: Threads): string {
  return amount(Math.max(0, ...shows));
}

/** Steps of the slider of the length, each waited for until its nest is drawn; nests a second. */
async function drag(opened: Page, steps: number): Promise<number> {
  return await opened.evaluate(async (count) => {
    const from = performance.now();
    const slider = document.querySelector<HTMLInputElement>('#set-skirt_length ~ [type="range"]');
    const front = () => document.querySelector('[data-size="12"] [data-line="net"]');
    if (slider === null) throw new Error('no slider');
    const first = Number(slider.value);
    for (let i = 1; i <= count; i++) {
      const before = front()?.getAttribute('d');
      slider.value = `${first + (i % 2 === 0 ? -1 : 1) * (1 + (i % 20))}`;
      slider.dispatchEvent(new Event('input', { bubbles: true }));
      while (front()?.getAttribute('d') === before)
        await new Promise((resolve) => setTimeout(resolve, 1));
    }
    return (1000 * count) / (performance.now() - from);
  }, steps);
}

/** Moved by the mouse in the first half of the steps, nearer and farther by the wheel in the others. */
async function move(opened: Page, steps: number): Promise<void> {
  await opened.mouse.move(500, 400);
  await opened.mouse.down();
  const half = Math.ceil(steps / 2);
  for (let i = 1; i <= half; i++) await opened.mouse.move(500 + 3 * (i % 40), 400 + 2 * (i % 50));
  await opened.mouse.up();
  for (let i = half + 1; i <= steps; i++) await opened.mouse.wheel(0, i % 20 < 10 ? -60 : 60);
}

/** The tasks of the page's threads while something is done. */
async function traced(session: CDPSession, doing: () => Promise<void>): Promise<Threads> {
  const events: TraceEvent[] = [];
  const collect = ({ value }: { readonly value: object[] }): void => {
    events.push(...(value as TraceEvent[]));
  };
  session.on('Tracing.dataCollected', collect);
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['toplevel', 'devtools.timeline', '__metadata'] },
  });
  await doing();
  const complete = new Promise<void>((resolve) => {
    session.once('Tracing.tracingComplete', () => {
      resolve();
    });
  });
  await session.send('Tracing.end');
  await complete;
  session.off('Tracing.dataCollected', collect);
  const threads = new Map(
    events
      .filter(({ name }) => name === 'thread_name')
      .map(({ pid, tid, args }) => [`${pid} ${tid}`, args.name ?? '']),
  );
  const tasks = (thread: RegExp): number[] =>
    events
      .filter(({ name, pid, tid }) => {
        const isTask = name === 'ThreadControllerImpl::RunTask' || name === 'RunTask';
        return isTask && thread.test(threads.get(`${pid} ${tid}`) ?? '');
      })
      .map(({ tdur = 0 }) => tdur / 1000);
  return { shows: tasks(/^CrRendererMain$/u), grades: tasks(/^DedicatedWorker/u) };
}
