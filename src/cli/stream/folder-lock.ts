/** One run a folder at a time: two would write over each other's tables, and each would end well. */
import { existsSync, readFileSync, readdirSync, rmSync, rmdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { makeFolder } from '../make-folder';
import { outputRefusal } from '../output-refusal';

/** Has the number of the process that writes into the folder. */
const LOCK = 'draft-progress.lock';

/** ms between two looks at a process that may be ending, and looks in all. */
const [LOOK, LOOKS] = [50, 60];

/**
 * Takes a folder, which is made, for this process. Throws InputError `output-changed` where another that still runs
 * has it; one that was killed has it no more, once it has ended.
 */
export async function takeFolder(folder: string, given: string): Promise<void> {
  const path = join(folder, LOCK);
  makeFolder(folder);
  for (let looks = 0; ; looks++) {
    try {
      writeFileSync(path, `${process.pid}`, { flag: 'wx' });
      return;
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
    }
    if (!isRunning(holderOf(path))) rmSync(path, { force: true });
    else if (looks < LOOKS) await delay(LOOK);
    else refuseTaken(given);
  }
}

/** Gives it back, and takes it away if nothing is in it. */
export function leaveFolder(folder: string): void {
  rmSync(join(folder, LOCK), { force: true });
  if (readdirSync(folder).length === 0) rmdirSync(folder);
}

/** NaN where the lock is gone meanwhile. */
function holderOf(path: string): number {
  return existsSync(path) ? Number(readFileSync(path, 'utf8')) : NaN;
}

/** Whether a process other than this one has that number. */
function isRunning(id: number): boolean {
  if (!Number.isInteger(id) || id <= 0 || id === process.pid) return false;
  try {
    return process.kill(id, 0);
  } catch (error) {
    // It may belong to somebody else.
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

function refuseTaken(given: string): never {
  throw outputRefusal(given, 'output-changed', {
    what: 'another run writes into this folder',
    allowed: 'another folder for the results, or, where no run is left, that file taken away',
    got: LOCK,
  });
}
