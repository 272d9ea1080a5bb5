/** Names as people write them, found among those that there are. */
import type { InputErrorCode, Place } from '../errors';
import { InputError } from '../errors';
import { labelKey } from './label';
import { wantedNames } from './near-names';
import { excerpt } from './tidy-text';

/**
 * The names that `text` can mean: itself if it is one, or else all that have its letters and digits
 * in their order, whatever the case, blanks, hyphens and underscores.
 */
export function namesMeant(text: string, names: readonly string[]): readonly string[] {
  if (names.includes(text)) return [text];
  const key = labelKey(text);
  return key === '' ? [] : names.filter((name) => labelKey(name) === key);
}

/** The only name that `text` can mean; undefined for none or several. */
export function matchName(text: string, names: readonly string[]): string | undefined {
  const [found, ...others] = namesMeant(text, names);
  return others.length === 0 ? found : undefined;
}

/**
 * The size that `text` is, in letters of either case: `10.5` is not 105, but `m` is M, and `Size 8`, `8.0`
 * and `US 8` are 8, unless there are sizes of several systems.
 */
export function matchSize(text: string, sizes: readonly string[]): string | undefined {
  const typed = text.trim();
  if (sizes.includes(typed)) return typed;
  for (const spelled of [(label: string) => label.toLowerCase(), plainSize]) {
    const [found, ...others] = sizes.filter((size) => spelled(size) === spelled(typed));
    if (found !== undefined) return others.length === 0 ? found : undefined;
  }
  return undefined;
}

/** Without the word that a hand puts before a number, and the zeros that a spreadsheet puts behind it. */
function plainSize(label: string): string {
  return label
    .toLowerCase()
    .replace(/^(?:size\s+)?(?:(?:us|uk|eu)\s*(?=\d))?(?:size\s+)?/u, '')
    .replace(/^(\d+)\.0+$/u, '$1');
}

/** How a name that is not there is refused. */
export interface NameRefusal {
  readonly code: InputErrorCode;
  readonly what: string;
  /** What is allowed where no name fits or is near; the names themselves if not given. */
  readonly allowed?: string;
}

/** The only name that a cell can mean. Throws InputError: as told for none, with them for several. */
export function meantName<Name extends string>(
  { text, place }: { readonly text: string; readonly place: Place },
  names: readonly Name[],
  { code, what, allowed }: NameRefusal,
): Name {
  const meant = namesMeant(text, names);
  const found = names.find((name) => name === meant[0]);
  if (found !== undefined && meant.length === 1) return found;
  throw new InputError(code, {
    what: meant.length > 1 ? 'more than one name can be meant' : what,
    ...(meant.length > 1 ? { allowed: meant.join(', ') } : wantedNames(text, names, allowed)),
    got: excerpt(text),
    place,
  });
}
