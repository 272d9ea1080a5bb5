/** The grade as arrows: how far every point moves, as a drawing. */
import { InputError } from '../errors';
import type { GradeResult } from '../jobs/grade-result';
import { moveSheet } from '../render/move-sheet';
import { svg } from '../render/svg';
import { parseNumberCell } from '../table/number-cell';
import type { Exported } from './exports';

/** How many times as long as it is a move is drawn at most: a tenth of a millimeter is a palm wide then. */
const MOST_TIMES = 1000;

/**
 * `moves.svg` of all sizes of the range, whichever are shown; `enlarged` is a number of times as it was
 * typed. Throws InputError `bad-option` for one that is none, or for a single size.
 */
export function moveFiles({ title, range }: GradeResult, enlarged?: string): Exported {
  const { rules, sizes: all, blend, plans } = range;
  const sizes = all.filter(({ label }) => label !== blend).map(({ label }) => label);
  if (sizes.length < 2)
    throw new InputError('bad-option', {
      what: 'one size alone has no moves to be drawn',
      allowed: 'two sizes or more',
      got: sizes.join(', '),
      place: { field: 'moves' },
    });
  const pieces = plans.flatMap((_, p) => {
    const piece = all[rules.base]?.pieces[p];
    const moves = sizes.map((_label, size) => rules.moves[size]?.[p] ?? []);
    return piece === undefined ? [] : [{ piece, moves, base: rules.base }];
  });
  const times = enlarged === undefined ? undefined : timesOf(enlarged);
  const scene = moveSheet({ title, sizes, base: rules.base, pieces, times });
  return { files: [{ name: 'moves.svg', text: svg(scene) }], findings: [] };
}

function timesOf(typed: string): number {
  const read = parseNumberCell(typed);
  const times = read.kind === 'number' && read.unit === undefined ? read.value : 0;
  if (times > 0 && times <= MOST_TIMES) return times;
  throw new InputError('bad-option', {
    what: 'how many times as long moves are drawn is no such number',
    allowed: `a number above 0, up to ${MOST_TIMES}`,
    got: typed,
    place: { field: 'enlarge' },
  });
}
