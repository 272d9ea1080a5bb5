/** What the engine tells a part of the page, asked anew whenever its wish changes. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Refused, Told, Wish, WishOf } from '../wish';
import type { Engine } from './engine-client';

/** The last that was told, even while a newer wish is refused, and why it is. */
export interface LastTold<Kind extends Wish['kind']> {
  readonly told: Told[Kind] | undefined;
  /** The wish that `told` answers. */
  readonly wish: WishOf<Kind> | undefined;
  readonly refused: Refused | undefined;
}

/** Asks for a wish, and again when its text changes; nothing for an undefined one. */
export function useTold<Kind extends Wish['kind']>(
  engine: Engine,
  wish: WishOf<Kind> | undefined,
): LastTold<Kind> {
  const [last, setLast] = useState<LastTold<Kind>>({
    told: undefined,
    wish: undefined,
    refused: undefined,
  });
  const key = JSON.stringify(wish);
  const newest = useRef(key);
  newest.current = key;
  useEffect(() => {
    if (wish === undefined) return;
    engine.ask(wish, (answer) => {
      setLast((before) =>
        'told' in answer
          ? { told: answer.told, wish, refused: undefined }
          : { ...before, refused: answer.refused },
      );
    });
  }, [engine, key]);
  return last;
}
