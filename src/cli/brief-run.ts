/** How V8 spends the time of a process that ends within a second, as nearly all commands do. */
import { setFlagsFromString } from 'node:v8';

/** By the calls after which a function is optimized, about seven times as many as V8's own figures. */
const BY_CALLS = [
  '--invocation-count-for-maglev=3000',
  '--invocation-count-for-maglev-osr=1000',
  '--invocation-count-for-turbofan=20000',
  '--invocation-count-for-osr=4000',
];

/**
 * By the major version of Node: what makes V8 optimize a function later than it would. A version that
 * is not here is left as it is, since V8 complains of a flag that it does not know.
 */
const LATER_OPTIMIZING: ReadonlyMap<string, readonly string[]> = new Map([
  // Bytes of code that run in a function first; V8's own figure is 67,584.
  ['20', ['--interrupt-budget=1000000']],
  ['22', BY_CALLS],
  ['24', BY_CALLS],
]);

/**
 * Sets this process up for one command; to be called before anything heavy is loaded. Left to itself
 * V8 spends up to a third of a command's processor time on optimizing code that hardly runs again. A
 * run of many seconds still has all that it runs often optimized.
 */
export function expectBriefRun(): void {
  const [major = ''] = process.versions.node.split('.');
  for (const flag of LATER_OPTIMIZING.get(major) ?? []) setFlagsFromString(flag);
}
