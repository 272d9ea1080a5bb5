/**
 * The page in Debian's Chromium, by its own trace: processor time of the thread that shows and of the one
 * that grades, so that what else the machine does changes little.
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { CDPSession, Page } from 'playwright-core';
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

/** Prints what opening, dragging and moving cost; `write` makes the page of a style at a path. */
export async function page(
  write: (style: string, path: string) => void,
  folder: string,
  steps: number,
): Promise<void> {
  if (!existsSync(CHROMIUM)) {
    console.log(`\nthe page: skipped, for want of ${CHROMIUM}`);
    return;
  }
  const { chromium } = await import('playwright-core');
  const rows: string[][] = [];
  for (const style of ['pencil', 'shared-pencil']) {
    const path = join(folder, `${style}.html`);
    write(style, path);
    const browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox'] });
    const opened = await browser.newPage({ viewport: { width: 1600, height: 1000 } });
    const session = await opened.context().newCDPSession(opened);
    const opening = await traced(session, async () => {
      await opened.goto(pathToFileURL(path).href);
      await opened.locator('.nest .net').first().waitFor();
    });
    // The drawings of the styles come behind the first nest.
    await opened.locator('.style img').first().waitFor();
    const dragging = await traced(session, () => drag(opened, steps));
    const moving = await traced(session, () => move(opened, steps));
    await browser.close();
    const each = (tasks: readonly number[]): string => amount(sum(tasks) / steps);
    rows.push(
      [
        `${style}: opened`,
        amount(sum(opening.shows)),
        amount(sum(opening.grades)),
        longest(opening),
      ],
      [
        `${style}: a step of a slider`,
        each(dragging.shows),
        each(dragging.grades),
        longest(dragging),
      ],
      [`${style}: a move of the nest`, each(moving.shows), each(moving.grades), longest(moving)],
    );
  }
  printTable(
    'the page, 12 sizes: processor ms of the thread that shows, of the one that grades, and of the longest task that shows',
    ['', 'shows', 'grades', 'longest'],
    rows,
  );
}

function sum(tasks: readonly number[]): number {
  return tasks.reduce((so, one) => so + one, 0);
}

function longest({ shows }: Threads): string {
  return amount(Math.max(0, ...shows));
}

/** Steps of the slider of the length, each waited for until its nest is drawn. */
async function drag(opened: Page, steps: number): Promise<void> {
  await opened.evaluate(async (count) => {
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
  }, steps);
}

async function move(opened: Page, steps: number): Promise<void> {
  await opened.mouse.move(500, 400);
  await opened.mouse.down();
  for (let i = 1; i <= steps; i++) await opened.mouse.move(500 + 3 * (i % 40), 400 + 2 * (i % 50));
  await opened.mouse.up();
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
