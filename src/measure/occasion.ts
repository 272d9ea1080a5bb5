/** When a sample was measured: after how many washes, on which day. */
import { InputError } from '../errors';
import { imprintDay } from '../table/imprint';
import { counted } from '../table/counted';
import type { TypedCell } from '../table/typed-table';

/** One time at which a sample was measured; what a list does not tell is undefined. */
export interface Occasion {
  readonly wash: number | undefined;
  /** As `2026-03-01`. */
  readonly date: string | undefined;
}

/** The occasion of a row, of whose columns a list may have none. Throws InputError `bad-option`. */
export function readOccasion(wash: TypedCell | undefined, date: TypedCell | undefined): Occasion {
  return {
    wash:
      wash &&
      Number(shaped(wash, /^\d{1,3}$/u.test(wash.text), 'a number of washes, 0 before the first')),
    date:
      date &&
      shaped(date, imprintDay({ date: date.text }) !== undefined, 'a day such as 2026-03-01'),
  };
}

function shaped({ text, place }: TypedCell, isRight: boolean, allowed: string): string {
  if (isRight) return text;
  throw new InputError('bad-option', {
    what: 'it is not clear when this was measured',
    allowed,
    got: text,
    place,
  });
}

/** `2026-03-01, after 3 washes`; empty where a list tells nothing of it. */
export function occasionWords({ wash, date }: Occasion): string {
  const washed =
    wash === undefined
      ? []
      : [wash === 0 ? 'unwashed' : `after ${counted(wash, 'wash', 'washes')}`];
  return [...(date === undefined ? [] : [date]), ...washed].join(', ');
}

/** By the day, then by washes. */
export function byTime(one: Occasion, other: Occasion): number {
  const days = (one.date ?? '').localeCompare(other.date ?? '');
  return days === 0 ? (one.wash ?? 0) - (other.wash ?? 0) : days;
}
