/** What stands beside the tables of the files and was not understood. */
import type { SizeChart } from '../chart/size-chart';
import { counted } from '../table/counted';
import { excerpt } from '../table/tidy-text';
import type { UnreadText } from '../table/unread';
import { unreadIn } from '../table/unread';
import type { Finding } from './finding';
import { ruleFinding } from './finding';

/** The name of the check, by which its findings are told on their own. */
export const NOT_READ = 'not-read';

/**
 * A note for each text, since nothing tells whether it changes how the cells count. With `isTold` false
 * the texts stay untold, where they may name a person.
 */
export function notReadFindings(unread: readonly UnreadText[], isTold = true): readonly Finding[] {
  return unread.map(({ text, place: { file = '', row, column }, others }) => {
    const where = [`row ${row ?? '?'}`, ...(column === undefined ? [] : [`column ${column}`])];
    const also = others === 0 ? '' : ` and in ${counted(others, 'more row')}`;
    const quoted = `"${excerpt(text)}"`;
    return {
      ...ruleFinding(
        'note',
        NOT_READ,
        { subject: file },
        `not read in ${where.join(', ')}${also}${isTold ? `: ${quoted}` : ''}`,
      ),
      facts: { place: `${file} ${where.join(', ')}`, ...(isTold ? { text: quoted } : {}) },
    };
  });
}

/** What a chart, or a list of bodies, has beside its table; a statement of a style is no such thing. */
export function unreadInChart(chart: Pick<SizeChart, 'comments'>): readonly UnreadText[] {
  return unreadIn(chart, ['base', 'based on']);
}
