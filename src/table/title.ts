/** The title that a chart or a pattern states for itself, which stands on every sheet. */
import type { Place } from '../errors';
import { InputError } from '../errors';
import { excerpt } from './tidy-text';

/** Characters, as of a size label. The engine's own figure. */
const LONGEST = 100;

/** Throws InputError `file-too-large` for a title that is too long. */
export function checkTitle(title: string, place: Place): void {
  if (title.length <= LONGEST) return;
  throw new InputError('file-too-large', {
    what: 'the title has too many characters',
    allowed: `${LONGEST} characters`,
    got: `${title.length}, which begin with ${excerpt(title)}`,
    place,
  });
}
