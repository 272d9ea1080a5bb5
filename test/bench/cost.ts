/** What work costs: processor time, time on the clock, memory; and how to tell it beside `node -e 0`. */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Processor time (user and system) and time on the clock in ms; the most memory in MB. */
export interface Cost {
  readonly cpu: number;
  readonly wall: number;
  readonly memory: number;
}

/** What a process cost, and what it said. */
export interface ProcessCost extends Cost {
  readonly said: string;
}

/** Runs node with arguments. */
export type Run = (args: readonly string[]) => ProcessCost;

/**
 * Node does not tell what a child has used, so that the child tells it as its last act. The few ms in
 * which a process then ends are left out of both sides of a ratio.
 */
const TELL =
  "process.on('exit',()=>require('fs').writeSync(3,JSON.stringify(process.resourceUsage())))";

/**
 * Runs node in turn, with a hook that it keeps in `folder`. A hook that is required costs the plain
 * process next to nothing; an imported one would start the loader of modules. Throws where a command
 * ends with anything but 0 or 1, so that no refusal is ever measured.
 */
export function runner(folder: string): Run {
  const hook = join(folder, 'tell.cjs');
  writeFileSync(hook, TELL);
  return (args) => {
    const start = performance.now();
    const { status, output } = spawnSync(process.execPath, ['--require', hook, ...args], {
      stdio: ['ignore', 'pipe', 'pipe', 'pipe'],
      encoding: 'utf8',
    });
    const wall = performance.now() - start;
    const [, said = '', complaint, told] = output.map((text) => text ?? '');
    if (status !== 0 && status !== 1) throw new Error(`${args.join(' ')}: ${complaint}`);
    const used = JSON.parse(told ?? '') as NodeJS.ResourceUsage;
    const cpu = (used.userCPUTime + used.systemCPUTime) / 1e3;
    return { cpu, wall, memory: used.maxRSS / 1024, said };
  };
}

/** The cost of work in this process; its memory is that of all that ran here before as well. */
export function costOf(work: () => void): Cost {
  const start = performance.now();
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  const memory = process.resourceUsage().maxRSS / 1024;
  return { cpu: (user + system) / 1e3, wall: performance.now() - start, memory };
}

/** The least, the middle and the most of some numbers. */
export interface Spread {
  readonly least: number;
  readonly median: number;
  readonly most: number;
}

export function spread(values: readonly number[]): Spread {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))] ?? NaN;
  return { least: at(0), median: at(0.5), most: at(1) };
}

export function median(values: readonly number[]): number {
  return spread(values).median;
}

/** The plain baseline: a process that does nothing. */
export function nothing(run: Run): Cost {
  return run(['-e', '0']);
}

/** Its processor time in ms, as the median of five, for what is too long to be run in rounds. */
export function usualNothing(run: Run): number {
  return median(Array.from({ length: 5 }, () => nothing(run).cpu));
}

/** What a case cost, and how often the processor time of the plain process beside it went into that. */
export interface Compared extends Cost {
  readonly ratio: Spread;
}

/**
 * Runs every case in every round, each beside a plain process of its own, so that a machine that slows
 * down slows both. Costs are medians, and so is the ratio, of the ratios of the pairs.
 */
export function besideNothing(
  run: Run,
  rounds: number,
  cases: readonly (() => Cost)[],
): readonly Compared[] {
  const pairs = Array.from({ length: rounds }, () =>
    cases.map((work) => ({ plain: nothing(run), ours: work() })),
  );
  return cases.map((_, i) => {
    const own = pairs.flatMap((round) => round[i] ?? []);
    return {
      ratio: spread(own.map(({ plain, ours }) => ours.cpu / plain.cpu)),
      cpu: median(own.map(({ ours }) => ours.cpu)),
      wall: median(own.map(({ ours }) => ours.wall)),
      memory: median(own.map(({ ours }) => ours.memory)),
    };
  });
}
