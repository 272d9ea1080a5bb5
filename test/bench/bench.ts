/**
 * Speed beside plain baselines, in one run on one machine. Ratios are of processor time to that of
 * `node -e 0` run in turn, since a clock also tells what else the machine does; nothing is asserted.
 * `--short` runs fewer rounds and leaves out the largest steps.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expectBriefRun } from '../../src/cli/brief-run';
import { commands } from './commands';
import { runner } from './cost';
import { growth } from './growth';
import { page } from './page';
import { TELL_PHASES, phases, tellPhases } from './phases';
import { bodies, byHand, measuredBodies, regrade } from './warm';

async function all(isShort: boolean): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'skirtgrade-bench-'));
  process.on('exit', () => rmSync(folder, { recursive: true }));
  const run = runner(folder);
  const start = performance.now();
  console.log(`Node ${process.version} on ${process.platform}, ${cpus().length} processors`);
  console.log('ratio: processor time to that of node -e 0 beside it');
  commands(run, folder, isShort ? 3 : 7);
  phases(run, fileURLToPath(import.meta.url), isShort ? 3 : 7);
  regrade(run, isShort ? 5 : 21);
  bodies(run, isShort ? 100 : 1000);
  measuredBodies(isShort ? 500 : 5000);
  byHand(isShort ? 5 : 11);
  growth(run, folder, isShort);
  await page(writePage, folder, isShort ? 20 : 100);
  console.log(`\n${((performance.now() - start) / 1000).toFixed(0)} s in all`);
}

/** The page of a chart, or of the demo, as the command writes it. */
function writePage(named: string, path: string, chart: readonly string[] = []): void {
  const call = ['dist/cli.js', 'page', ...chart, '--base', '12', '--style', named, '--out', path];
  execFileSync(process.execPath, call);
}

/** The page alone, in a folder of its own. */
async function pageAlone(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'skirtgrade-bench-'));
  await page(writePage, folder, 100);
  rmSync(folder, { recursive: true });
}

const [first, style = ''] = process.argv.slice(2);
if (first === TELL_PHASES) {
  expectBriefRun();
  tellPhases(style);
} else if (first === '--page') await pageAlone();
else await all(first === '--short');
