/**
 * Messy and malicious files: every one is read or refused in one line, in bounded time and memory, and
 * leaves nothing where it should not. The cases run in a process of their own, so that one that never
 * ends, or takes all memory, is a failure and not the end of the tests.
 */
import type { ChildProcess } from 'node:child_process';
import { fork } from 'node:child_process';
import { join, resolve } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { workplace } from '../cli/workplace';
import { LONG, PRINTED_SEED } from '../samples';
import type { Ended, Order } from '../hostile/child';
import { KINDS } from '../hostile/kinds';

const place = workplace();
const CHILD = join(place.path, 'child.mjs');

/** Cases of each kind. */
const CASES = LONG ? 2_000 : 6;
/** MB of the heap of the process in which they run. */
const MEMORY = 200;
/** ms without a word before the process is ended: far more than its own limit of processor time. */
const SILENCE = 120_000;
/** One case again, such as `HOSTILE=charts:137`. */
const [ONLY = '', NUMBER = ''] = (process.env.HOSTILE ?? '').split(':');

beforeAll(async () => {
  await build({
    entryPoints: [resolve('test/hostile/child.ts')],
    outfile: CHILD,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    mainFields: ['module', 'main'],
    loader: { '.csv': 'text', '.ttf': 'binary' },
    logLevel: 'warning',
    banner: {
      js: "import{createRequire as makeRequire}from'node:module';const require=makeRequire(import.meta.url);",
    },
  });
});

let worker: ChildProcess | undefined;

/** The process in which the cases run, as long as none of them ends it. */
function running(): ChildProcess {
  if (worker?.exitCode === null && worker.signalCode === null) return worker;
  worker = fork(CHILD, [], {
    execArgv: [`--max-old-space-size=${MEMORY}`],
    stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
    env: { ...process.env, LONG: '' },
  });
  return worker;
}

afterAll(() => {
  worker?.kill();
});

/** Runs cases up to the first that ends the process; gives how those before ended, and why it did. */
async function endings(order: Order): Promise<{ readonly ended: Ended[]; readonly why: string }> {
  const child = running();
  const ended: Ended[] = [];
  let [last, why] = [Date.now(), ''];
  const listen = (data: Buffer): void => {
    why = (why + data.toString()).slice(-2_000);
  };
  const note = (message: Ended): void => {
    ended.push(message);
    last = Date.now();
  };
  child.stderr?.on('data', listen);
  child.on('message', note);
  child.send(order);
  while (ended.length < order.to - order.from && child.exitCode === null) {
    if (child.signalCode !== null) break;
    await delay(20);
    if (Date.now() - last < SILENCE) continue;
    why = `it said nothing for ${SILENCE / 1000} s`;
    child.kill('SIGKILL');
    break;
  }
  child.stderr?.off('data', listen);
  child.off('message', note);
  return { ended, why };
}

describe('slips and malice', () => {
  it.each(Object.keys(KINDS).filter((kind) => ONLY === '' || kind === ONLY))(
    'in %s are read or refused',
    async (kind) => {
      const counts = { 0: 0, 1: 0, 2: 0 };
      const problems: string[] = [];
      const first = Number(NUMBER);
      const to = NUMBER === '' ? CASES : first + 1;
      for (let from = first; from < to;) {
        const { ended, why } = await endings({ kind, from, to, folder: join(place.path, kind) });
        for (const { number, status, problem } of ended) {
          if (problem === undefined) counts[status as 0 | 1 | 2]++;
          else problems.push(`${kind}:${number}: ${problem}`);
        }
        from += ended.length;
        if (from < to) problems.push(`${kind}:${from++}: the process ended: ${why}`);
      }
      if (LONG) console.log(kind, PRINTED_SEED, counts, problems.length);
      expect(problems, `${PRINTED_SEED}; again by HOSTILE=kind:number`).toEqual([]);
      // Neither is rare, so that both ways are really gone.
      if (!LONG || NUMBER !== '') return;
      expect(counts[0] + counts[1]).toBeGreaterThan(CASES / 50);
      expect(counts[2]).toBeGreaterThan(CASES / 50);
    },
  );
});
