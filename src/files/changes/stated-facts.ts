/** What a file says of itself beside its table, as single facts. */
import type { Imprint } from '../../table/imprint';
import { IMPRINT_NAMES } from '../../table/imprint';
import type { UnreadText } from '../../table/unread';
import type { Fact } from './facts';

/** A file without its table. */
export interface StatedFile {
  readonly title: string | undefined;
  readonly base: string | undefined;
  readonly imprint: Imprint;
  readonly sizes: readonly string[];
  /** Lines that nothing read; a change in them is for people to judge. */
  readonly unread: readonly UnreadText[];
}

/** Title, base, imprint, sizes and lines that were not read. */
export function statedFacts(file: StatedFile): readonly Fact[] {
  return [
    wordFact('title', '', 'title', file.title),
    wordFact('base', '', 'size', file.base),
    ...IMPRINT_NAMES.map((name) => wordFact(name, '', name, file.imprint[name])),
    ...file.sizes.map((size) => wordFact('size', size, 'label', size)),
    ...file.unread.map(({ text }) => wordFact('line', text, 'text', text)),
  ].flat();
}

/** A fact in words of a thing of no size; none where nothing is said. */
export function wordFact(
  of: string,
  name: string,
  value: string,
  text: string | undefined,
): readonly Fact[] {
  return text === undefined || text === '' ? [] : [{ of, name, size: '', value, text, unit: '' }];
}
