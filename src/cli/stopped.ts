/** Signals that ask the program to stop while it writes. */

/** Exit codes of a shell for a program that a signal ended: 128 and the number of the signal. */
export const STOP_CODES = { SIGHUP: 129, SIGINT: 130, SIGTERM: 143 } as const;

type StopSignal = keyof typeof STOP_CODES;

/** Thrown where a signal came before anything was written. */
export class Stopped extends Error {
  readonly signal: StopSignal;

  constructor(signal: StopSignal) {
    super(`stopped by ${signal}; nothing was written`);
    this.name = 'Stopped';
    this.signal = signal;
  }
}

/** Lets a signal pass: what was written is still to be told, which takes a moment. */
function pass(): void {
  // Without any listener the signal would end the program before it has said a word.
}

/**
 * Does a job during which signals do not end the program. It is given a pause to take between its
 * steps, which throws Stopped where a signal has come. Without one a signal changes nothing, nor once
 * the job is done, since the program has only to say so.
 */
export async function stoppable<Result>(
  job: (pause: () => Promise<void>) => Promise<Result>,
): Promise<Result> {
  let came: StopSignal | undefined;
  const handlers = (Object.keys(STOP_CODES) as StopSignal[]).map((signal) => {
    const note = (): void => {
      came = signal;
    };
    return { signal, note };
  });
  for (const { signal, note } of handlers) process.on(signal, note);
  try {
    const result = await job(async () => {
      // Signals are told in the next turn.
      await new Promise((resolve) => setImmediate(resolve));
      if (came !== undefined) throw new Stopped(came);
    });
    for (const { signal } of handlers)
      if (!process.listeners(signal).includes(pass)) process.on(signal, pass);
    return result;
  } finally {
    for (const { signal, note } of handlers) process.off(signal, note);
  }
}
