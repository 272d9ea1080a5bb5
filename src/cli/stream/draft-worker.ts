/** A worker of a streamed run: parts of the list in, parts of the tables out, in the order they come. */
import { parentPort, workerData } from 'node:worker_threads';
import type { InputErrorCode, InputProblem } from '../../errors';
import { InputError } from '../../errors';
import { decodedLines } from '../../table/table-text';
import type { ListPart } from './list-parts';
import { putInto } from './put-drawings';
import type { StreamOrder } from './stream-order';
import { workOf } from './stream-order';

/** Wrong input as it is sent between threads. */
export interface SentProblem {
  readonly index: number;
  readonly code: InputErrorCode;
  readonly problem: InputProblem;
}

/** What a worker gives back of a part. */
export interface PartAnswer {
  readonly index: number;
  readonly texts: readonly string[];
  readonly drafted: number;
  readonly refused: number;
  readonly turned: number;
}

/** What a worker is told at its beginning. */
export interface WorkerTask {
  readonly order: StreamOrder;
  /** Where its drawings go. */
  readonly drawings: string;
}

const { order, drawings } = workerData as WorkerTask;
const work = workOf(order);
const put = putInto(drawings);

parentPort?.on('message', ({ index, row, bytes }: ListPart) => {
  parentPort?.postMessage(answerOf(index, row, bytes));
});

function answerOf(index: number, row: number, bytes: Uint8Array): PartAnswer | SentProblem {
  try {
    return { index, ...work.part(decodedLines(bytes), row, put) };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { index, code: error.code, problem: error.problem };
  }
}
