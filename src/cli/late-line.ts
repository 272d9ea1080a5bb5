/** A line of a terminal that comes up later, though the program is busy until then and takes no turn. */
import { Worker } from 'node:worker_threads';

/** A line that may be shown by now. */
export interface LateLine {
  /** Whether it was shown; if not, it never will be. */
  readonly take: () => boolean;
}

/** What becomes of a line, in the order in which it may. */
const STATES = { dropped: 0, waiting: 1, written: 2, shown: 3 } as const;

/** Waits, and writes unless the line is dropped meanwhile: in a thread of its own, which has a clock. */
const THREAD = `
const { workerData: { state, text, wait, descriptor, states } } = require('node:worker_threads');
Atomics.wait(state, 0, states.waiting, wait);
if (Atomics.compareExchange(state, 0, states.waiting, states.written) === states.waiting) {
  require('node:fs').writeSync(descriptor, text);
  Atomics.store(state, 0, states.shown);
  Atomics.notify(state, 0);
}`;

/** Shows `text` by way of a file descriptor after `wait` ms, the standard error's if none is given. */
export function lateLine(text: string, wait: number, descriptor = 2): LateLine {
  const state = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  state[0] = STATES.waiting;
  const thread = new Worker(THREAD, {
    eval: true,
    workerData: { state, text, wait, descriptor, states: STATES },
  });
  // It holds up neither the end of the program nor, where there can be no thread, its work.
  thread.unref();
  thread.on('error', () => undefined);
  return {
    take: () => {
      const was = Atomics.compareExchange(state, 0, STATES.waiting, STATES.dropped);
      if (was === STATES.waiting) Atomics.notify(state, 0);
      // What is being written is waited for, or it would come after what is said next.
      if (was === STATES.written) Atomics.wait(state, 0, STATES.written);
      return was === STATES.written || was === STATES.shown;
    },
  };
}
