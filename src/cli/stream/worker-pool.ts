/** Worker threads that take parts of a list, and give their answers in the order of the parts. */
import { Worker } from 'node:worker_threads';
import { InputError } from '../../errors';
import type { PartAnswer, SentProblem, WorkerTask } from './draft-worker';
import type { ListPart } from './list-parts';

/** Parts that a worker has before it, so that it never waits and memory stays as it is. */
const AHEAD = 3;

/** How an answer that is waited for ends. */
interface Waiting {
  readonly resolve: (answer: PartAnswer) => void;
  readonly reject: (error: Error) => void;
}

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
  task: WorkerTask,
  count: number,
): AsyncGenerator<AnsweredPart> {
  const workers = Array.from(
    { length: count },
    () => new Worker(new URL('./draft-worker.js', import.meta.url), { workerData: task }),
  );
  const waiting = new Map<number, Waiting>();
  let failure: Error | undefined;
  const fail = (error: Error): void => {
    failure ??= error;
    for (const { reject } of waiting.values()) reject(failure);
    waiting.clear();
  };
  for (const worker of workers) {
    worker.on('message', (answer: PartAnswer | SentProblem) => {
      if ('problem' in answer) {
        fail(new InputError(answer.code, answer.problem));
        return;
      }
      waiting.get(answer.index)?.resolve(answer);
      waiting.delete(answer.index);
    });
    worker.on('error', fail);
  }
  const answerTo = (index: number): Promise<PartAnswer> => {
    const answer = new Promise<PartAnswer>((resolve, reject) => {
      if (failure === undefined) waiting.set(index, { resolve, reject });
      else reject(failure);
    });
    // It is waited for in its turn, and a failure is told then.
    answer.catch(() => undefined);
    return answer;
  };
  const before: { readonly part: ListPart; readonly answer: Promise<PartAnswer> }[] = [];
  const next = async (): Promise<AnsweredPart | undefined> => {
    const first = before.shift();
    return first && { part: first.part, answer: await first.answer };
  };
  try {
    for await (const part of parts) {
      const answer = answerTo(part.index);
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
