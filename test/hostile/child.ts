/** The process in which the cases run: told which, it tells how each of them ended. */
import { mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { SEED } from '../samples';
import { runIn } from '../cli/run-in';
import type { Case } from './kinds';
import { KINDS, OUT } from './kinds';
import { random } from './random';

/** Which cases are to run, in a folder of their own. */
export interface Order {
  readonly kind: string;
  readonly from: number;
  readonly to: number;
  readonly folder: string;
}

/** How a case ended; `problem` is what it did that no case may do. */
export interface Ended {
  readonly number: number;
  readonly status: number | null;
  readonly problem?: string | undefined;
}

/** s of processor time that no case may take, on any machine that is not far slower than a laptop. */
const LONGEST = 10;
/** Characters of a message; more would hide what is wrong. */
const LONGEST_MESSAGE = 3_000;
/** What a program writes that had no number, or no text, to write. */
const NOTHING = /\bNaN\b|\bInfinity\b|\[object |\bundefined\b/u;

function caseOf(kind: string, number: number): Case {
  const make = KINDS[kind];
  if (make === undefined) throw new RangeError(`no kind ${kind}`);
  // Far apart, since the first numbers of seeds near each other are alike.
  return make(random(SEED + number * 7_919));
}

async function problemOf(folder: string, { files, args }: Case): Promise<Omit<Ended, 'number'>> {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
  const given = Object.values(files).map((content) => Buffer.from(content).toString('latin1'));
  const before = process.cpuUsage();
  let run;
  try {
    run = await runIn(folder, args);
  } catch (error) {
    return { status: null, problem: error instanceof Error ? (error.stack ?? '') : String(error) };
  }
  const { user, system } = process.cpuUsage(before);
  const { status, stdout, stderr } = run;
  const written = new Set(readdirSync(folder));
  for (const [name, content] of Object.entries(files)) {
    written.delete(name);
    if (!readFileSync(join(folder, name)).equals(Buffer.from(content)))
      return { status, problem: `${name} was changed` };
  }
  const hasOut = written.delete(OUT);
  const texts = [
    stdout,
    // A refusal may say that a formula gives no finite number, and which it gives.
    stderr.replace(/\b(?:Infinity|NaN)\b/gu, ''),
    ...(hasOut ? readdirSync(join(folder, OUT)) : []).map((name) =>
      readFileSync(join(folder, OUT, name), 'utf8'),
    ),
  ];
  const nothing = texts.map((text) => NOTHING.exec(text)).find((found) => found !== null);
  const problems = [
    (user + system) / 1e6 > LONGEST && `it took ${(user + system) / 1e6} s`,
    written.size > 0 && `it wrote ${[...written].join(', ')} outside its folder`,
    ![0, 1, 2].includes(status ?? -1) && `it ended with ${status}`,
    status !== 2 && stderr !== '' && `it ended with ${status} and says: ${stderr}`,
    status === 2 && hasOut && 'it wrote files and refused',
    status === 2 && stdout !== '' && 'it refused on the wrong stream',
    status === 2 && !/^skirtgrade: [^\n]{20,}\n$/u.test(stderr) && `it is no one line: ${stderr}`,
    stderr.length > LONGEST_MESSAGE && `its message is long: ${stderr.slice(0, 300)}`,
    texts.some((text) => /\n\s+at \S+ \(/u.test(text)) && 'it shows a stack',
    // Unless it is a word of the files themselves.
    nothing &&
      !given.some((text) => text.includes(nothing[0])) &&
      `it wrote ${nothing.input.slice(Math.max(0, nothing.index - 100), nothing.index + 50)}`,
  ];
  const problem = problems.find((found) => typeof found === 'string');
  return { status, problem };
}

process.on('message', ({ kind, from, to, folder }: Order) => {
  void (async () => {
    for (let number = from; number < to; number++) {
      const ended: Ended = { number, ...(await problemOf(folder, caseOf(kind, number))) };
      await new Promise((resolve) => process.send?.(ended, undefined, {}, resolve));
      // A turn, in which it is seen that nobody hears any more.
      await setImmediate();
    }
  })();
});

// Nobody is left to hear how the rest would end.
process.on('disconnect', () => process.exit());
