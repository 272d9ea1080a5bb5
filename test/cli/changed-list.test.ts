/** A list that changes between two runs of one call, or within one, and two runs of one folder. */
import { spawnSync } from 'node:child_process';
import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { headOf, streamList } from '../../src/cli/stream/stream-list';
import type { StreamResult } from '../../src/cli/stream/stream-list';
import { list } from './streamed-bodies';
import { workplace } from './workplace';

const place = workplace();
const FILE = 'bodies.csv';
const RECORD = 'draft-progress.json';
const at = (name: string): string => join(place.path, name);
const text = list(1_500);
const stamp = new Date(2_000_000_000_000);
const put = (content: string): void => {
  writeFileSync(at(FILE), content);
  utimesSync(at(FILE), stamp, stamp);
};

async function run(folder: string): Promise<StreamResult> {
  const order = {
    ...{ file: FILE, ...(await headOf(at(FILE), FILE)), style: 'pencil', project: undefined },
    ...{ request: { set: {} }, anonymous: false, points: false, drawings: [] },
  };
  const places = { list: at(FILE), folder: at(folder), given: folder, replace: false };
  return streamList(order, { ...places, workers: 0, progress: () => undefined });
}

/** Runs, and does something once the first part is recorded. */
async function runWith(folder: string, meanwhile: () => void): Promise<StreamResult> {
  const result = run(folder);
  result.catch(() => undefined);
  while (!existsSync(join(at(folder), RECORD))) await setImmediate();
  meanwhile();
  return result;
}

it('is gone on with as far as it was read, and not where that has changed under the same size and time', async () => {
  put(text);
  await runWith('whole', () => {
    // What a kill would leave.
    cpSync(at('whole'), at('stopped'), { recursive: true });
  });
  const { row } = JSON.parse(place.read(join('stopped', RECORD))) as { row: number };
  expect(row).toBeGreaterThan(3);
  const { size } = statSync(at(FILE));
  put(text.replace(/^("Quill, 1",)\d+\.\d/mu, '$165.0'));
  expect(statSync(at(FILE)).size).toBe(size);
  await expect(run('stopped')).rejects.toMatchObject({ code: 'output-changed' });
  put(text);
  expect((await run('stopped')).goneOnFrom).toBe(row);
  for (const name of ['finished-measurements.csv', 'refused.csv'])
    expect(place.read(`stopped/${name}`)).toBe(place.read(`whole/${name}`));
});

it('may be touched while it is read, and is refused where it is written to', async () => {
  put(text);
  const { drafted } = await runWith('touched', () => {
    utimesSync(at(FILE), new Date(), new Date());
  });
  expect(drafted).toBe(1_470);
  put(text);
  // What stands at the end of a list that grows may be half of a row.
  const longer = runWith('longer', () => {
    appendFileSync(at(FILE), '"late",70,96,20,6');
  });
  await expect(longer).rejects.toMatchObject({ code: 'file-unreadable' });
  expect(existsSync(at('longer'))).toBe(false);
});

it('is refused where another process writes into the folder, but not where that was killed', async () => {
  put(text);
  mkdirSync(at('taken'));
  const lock = join(at('taken'), 'draft-progress.lock');
  writeFileSync(lock, `${process.ppid}`);
  await expect(run('taken')).rejects.toMatchObject({ code: 'output-changed' });
  expect(existsSync(lock)).toBe(true);
  writeFileSync(lock, `${spawnSync(process.execPath, ['-e', '']).pid}`);
  await run('taken');
  expect(place.read('taken/refused.csv')).toBe(place.read('whole/refused.csv'));
  expect(existsSync(lock)).toBe(false);
});
