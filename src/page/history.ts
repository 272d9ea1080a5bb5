/** What was, what is, and what was undone. */

/** A value with its earlier values, the last first to be undone, and those that were undone. */
export interface History<Value> {
  readonly past: readonly Value[];
  readonly now: Value;
  readonly future: readonly Value[];
  /** What the last change was about; a change about the same is one with it. */
  readonly about: string;
}

/** Values that are remembered. */
const REMEMBERED = 200;

/** A history that begins. */
export function historyOf<Value>(now: Value): History<Value> {
  return { past: [], now, future: [], about: '' };
}

/** A change; one about the same thing as the last, such as the next place of a slider, joins it. */
export function changed<Value>(
  { past, now, about: last }: History<Value>,
  next: Value,
  about: string,
): History<Value> {
  const joins = about !== '' && about === last;
  return {
    past: joins ? past : [...past, now].slice(-REMEMBERED),
    now: next,
    future: [],
    about,
  };
}

/** The value before the last change; the same history where there is none. */
export function undone<Value>(history: History<Value>): History<Value> {
  const { past, now, future } = history;
  const before = past.at(-1);
  if (before === undefined) return history;
  return { past: past.slice(0, -1), now: before, future: [now, ...future], about: '' };
}

/** The value that was undone last; the same history where there is none. */
export function redone<Value>(history: History<Value>): History<Value> {
  const { past, now, future } = history;
  const [next, ...rest] = future;
  if (next === undefined) return history;
  return { past: [...past, now], now: next, future: rest, about: '' };
}
