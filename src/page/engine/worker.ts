/** The engine in a worker of its own, so that nothing it does keeps the page from moving. */
import type { Answer, Wish } from '../wish';
import { answerer } from './answer';

/** A wish with the number by which its answer is known. */
export interface Asking {
  readonly number: number;
  readonly wish: Wish;
}

/** An answer to the wish of that number, or the words of a fault of the engine. */
export type Answering = { readonly number: number } & (
  | { readonly answer: Answer }
  | { readonly fault: string }
);

/** What this file needs of the worker that it runs in. */
interface Post {
  onmessage: ((event: { readonly data: Asking }) => void) | null;
  readonly postMessage: (message: Answering) => void;
}

const post = globalThis as unknown as Post;
const answer = answerer();

post.onmessage = ({ data: { number, wish } }) => {
  answer(wish).then(
    (told) => {
      post.postMessage({ number, answer: told });
    },
    (error: unknown) => {
      post.postMessage({ number, fault: error instanceof Error ? error.message : String(error) });
    },
  );
};
