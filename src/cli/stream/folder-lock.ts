/** One run a folder at a time: two would write over each other's tables, and each would end well. */
import { mkdirSync, readFileSync, readdirSync, rmSync, rmdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { outputRefusal } from '../output-refusal';

/** Has the number of the process that writes into the folder. */
const LOCK = 'draft-progress.lock';

/**
 * Takes a folder, which is made, for this process. Throws InputError `output-changed` where another that still runs has it; one that
 * was killed has it no more.
 */
export function takeFolder(folder: string, given: string): void {
  const path = join(folder, LOCK);
  mkdirSync(folder, { recursive: true });
  for (;;) {
    try {
      writeFileSync(path, `${process.pid}`, { flag: 'wx' });
      return;
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
    }
    if (isRunning(Number(readFileSync(path, 'utf8')))) refuseTaken(given);
    rmSync(path, { force: true });
  }
}

/** Gives it back, and takes it away if nothing is in it. */
export function leaveFolder(folder: string): void {
  rmSync(join(folder, LOCK), { force: true });
  if (readdirSync(folder).length === 0) rmdirSync(folder);
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
    got: LOCK,
  });
}
