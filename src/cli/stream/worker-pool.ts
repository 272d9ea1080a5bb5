/** Worker threads that take parts of a list, and give their answers in the order of the parts. */
import { Worker } from 'node:worker_threads';
import { InputError } from '../../errors';
import type { PartAnswer, SentProblem } from './draft-worker';
import type { ListPart } from './list-parts';
import type { StreamOrder } from './stream-order';

/** Parts that a worker has before it, so that it never waits and memory stays as it is. */
const AHEAD = 3;

/** A part with what came of it. */
export interface AnsweredPart {
  readonly part: ListPart;
  readonly answer: PartAnswer;
}

/**
 * Has `count` workers draft the parts, and gives what comes of them in their order, whichever is done
 * first: so the files are the same with any number of workers. Throws what a worker throws.
 */
export async function* answered(
  parts: AsyncGenerator<ListPart>,
  order: StreamOrder,
  count: number,
): AsyncGenerator<AnsweredPart> {
  const workers = Array.from(
    { length: count },
    () => new Worker(new URL('./draft-worker.js', import.meta.url), { workerData: order }),
  );
  const waiting = new Map<number, (answer: PartAnswer) => void>();
  const failed = new Promise<never>((_, reject) => {
    for (const worker of workers) {
      worker.on('message', (answer: PartAnswer | SentProblem) => {
        if ('problem' in answer) {
          reject(new InputError(answer.code, answer.problem));
          return;
        }
        waiting.get(answer.index)?.(answer);
        waiting.delete(answer.index);
      });
      worker.on('error', reject);
    }
  });
  // It is waited for together with each answer.
  failed.catch(() => undefined);
  const before: { readonly part: ListPart; readonly answer: Promise<PartAnswer> }[] = [];
  const next = async (): Promise<AnsweredPart | undefined> => {
    const first = before.shift();
    return first && { part: first.part, answer: await Promise.race([first.answer, failed]) };
  };
  try {
    for await (const part of parts) {
      const answer = new Promise<PartAnswer>((resolve) => waiting.set(part.index, resolve));
      workers[part.index % count]?.postMessage(part);
      before.push({ part, answer });
      if (before.length < AHEAD * count) continue;
      const done = await next();
      if (done !== undefined) yield done;
    }
    for (let done = await next(); done !== undefined; done = await next()) yield done;
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}
