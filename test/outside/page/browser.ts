/**
 * Pages opened in Debian's Chromium as a person opens them: from a file, with the network refused. What
 * needs it is skipped, and said to be, where it is missing.
 */
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { afterAll, beforeAll, describe } from 'vitest';
import { runIn } from '../../cli/run-in';

const CHROMIUM = '/usr/bin/chromium';

/** A page that is open, and what it did that no page may do. */
export interface Opened {
  readonly page: Page;
  /** Addresses that it asked for besides files and what it made itself. */
  readonly requests: readonly string[];
  /** Errors and warnings of its console, and exceptions. */
  readonly complaints: readonly string[];
}

/** What tests of pages have: a folder, and the browser. */
export interface Table {
  readonly folder: string;
  /** Runs the command line in the folder; throws with its complaint if it refuses. */
  readonly cli: (...args: readonly string[]) => Promise<string>;
  /** Opens a page of the folder and waits for its nest. */
  readonly open: (name: string, options?: BrowserContextOptions) => Promise<Opened>;
}

/** A group of tests that need the browser; one browser for all of them. */
export function describePage(name: string, tests: (table: Table) => void): void {
  const isMissing = !existsSync(CHROMIUM);
  if (isMissing) console.log(`skipped: ${name}, for want of ${CHROMIUM} (package chromium)`);
  describe.skipIf(isMissing)(name, () => {
    const folder = mkdtempSync(join(tmpdir(), 'skirtgrade-page-'));
    let browser: Browser | undefined;
    beforeAll(async () => {
      browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox'] });
    });
    afterAll(async () => {
      await browser?.close();
      rmSync(folder, { recursive: true });
    });
    tests({
      folder,
      cli: async (...args) => {
        const { status, stdout, stderr } = await runIn(folder, args);
        if (status === 2) throw new Error(stderr);
        return stdout;
      },
      open: async (file, options = {}) => {
        if (browser === undefined) throw new Error('the browser is not there yet');
        return await openIn(browser, join(folder, file), options);
      },
    });
  });
}

async function openIn(
  browser: Browser,
  path: string,
  options: BrowserContextOptions,
): Promise<Opened> {
  const context = await browser.newContext({
    viewport: { width: 1400, height: 900 },
    acceptDownloads: true,
    ...options,
    offline: true,
  });
  const requests: string[] = [];
  const complaints: string[] = [];
  context.on('request', (request) => {
    if (!/^(?:file|blob|data):/u.test(request.url())) requests.push(request.url());
  });
  const page = await context.newPage();
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => {
    complaints.push(error.message);
  });
  await page.goto(pathToFileURL(path).href);
  await page.locator('.nest .net').first().waitFor({ timeout: 60_000 });
  return { page, requests, complaints };
}

/** Waits until the verdict says something that is like `words`. */
export async function saysVerdict(page: Page, words: RegExp): Promise<string> {
  const line = page.locator('.verdict .line');
  await line.filter({ hasText: words }).waitFor({ timeout: 30_000 });
  return (await line.textContent()) ?? '';
}

/** The rows of a table of the page by its caption, cells as text. */
export async function tableOf(page: Page, caption: RegExp): Promise<readonly string[][]> {
  const rows = page.getByRole('region', { name: caption }).locator('tr');
  await rows.first().waitFor();
  return await rows.evaluateAll((lines) =>
    lines.map((line) => [...line.children].map((cell) => cell.textContent)),
  );
}

/** What a cell says as a decimal or as a mixed fraction, `-25 3/8`; NaN for anything else. */
export function numberIn(cell = ''): number {
  const [, sign, whole, over, under] =
    /^([-+\u2212]?)(\d+(?:\.\d+)?)?(?: ?\b(\d+)\/(\d+))?$/u.exec(cell) ?? [];
  if (whole === undefined && over === undefined) return NaN;
  return (
    (sign === '-' || sign === '\u2212' ? -1 : 1) *
    (Number(whole ?? 0) + Number(over ?? 0) / Number(under ?? 1))
  );
}
