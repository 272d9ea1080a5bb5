/** How the engine of JavaScript spends its time: a command ends within a second. */
import { setFlagsFromString } from 'node:v8';

/**
 * Bytes of code that a function runs before V8 optimizes it, about seven times as many as V8 would
 * wait. With its own figure a third of the processor time of a command goes into code that is hardly
 * run again; with this one a run of many seconds still has all that it runs often optimized.
 */
const BYTES_BEFORE_OPTIMIZING = 1_000_000;

/** Sets this process up for one command. To be called before anything heavy is loaded. */
export function expectBriefRun(): void {
  setFlagsFromString(`--interrupt-budget=${BYTES_BEFORE_OPTIMIZING}`);
}
