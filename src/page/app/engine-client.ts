/** Asks the engine in its worker; of wishes of one kind the newest wins, and older ones are dropped. */
import type { Answering, Asking } from '../engine/worker';
import { PART_IDS } from '../page-file';
import type { Answer, Wish, WishOf } from '../wish';

/** What a kind of wish is asked with, and what gets its answer. */
interface Pending {
  readonly wish: Wish;
  readonly tell: (answer: Answer) => void;
}

/** The engine as the page knows it. */
export interface Engine {
  /**
   * Asks. The answer comes to `tell`, unless a newer wish of the kind is asked before this one is
   * begun; a fault comes to what the engine was made with.
   */
  readonly ask: <Kind extends Wish['kind']>(
    wish: WishOf<Kind>,
    tell: (answer: Answer<Kind>) => void,
  ) => void;
}

/** The engine of this page, made from what stands in its file; `onFault` gets the words of a fault. */
export function engineOfPage(onFault: (words: string) => void): Engine {
  const waiting = new Map<Wish['kind'], Pending>();
  const busy = new Map<number, Pending>();
  let worker: Worker | undefined;
  let count = 0;
  const isBusy = (kind: Wish['kind']): boolean =>
    [...busy.values()].some(({ wish }) => wish.kind === kind);
  const send = (): void => {
    if (worker === undefined) return;
    for (const [kind, pending] of waiting) {
      if (isBusy(kind)) continue;
      waiting.delete(kind);
      busy.set(++count, pending);
      worker.postMessage({ number: count, wish: pending.wish } satisfies Asking);
    }
  };
  const receive = ({ data }: MessageEvent<Answering>): void => {
    const pending = busy.get(data.number);
    busy.delete(data.number);
    if ('fault' in data) onFault(data.fault);
    else pending?.tell(data.answer);
    send();
  };
  startWorker().then(
    (started) => {
      worker = started;
      worker.addEventListener('message', receive);
      worker.addEventListener('error', ({ message }) => {
        onFault(message);
      });
      send();
    },
    (error: unknown) => {
      onFault(String(error));
    },
  );
  return {
    ask: (wish, tell) => {
      waiting.set(wish.kind, { wish, tell: tell as Pending['tell'] });
      send();
    },
  };
}

async function startWorker(): Promise<Worker> {
  const packed = document.getElementById(PART_IDS.engine)?.textContent ?? '';
  const bytes = Uint8Array.from(atob(packed), (character) => character.charCodeAt(0));
  const unpacked = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  const code = new Blob([await new Response(unpacked).arrayBuffer()], { type: 'text/javascript' });
  const address = URL.createObjectURL(code);
  const worker = new Worker(address);
  URL.revokeObjectURL(address);
  return worker;
}
