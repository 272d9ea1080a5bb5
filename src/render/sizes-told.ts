/** Some sizes of a range in few words. */

import { runsOf } from '../lists/runs';

/** Neighbors from here on are told as a stretch. */
const STRETCH = 3;

/**
 * The sizes of these ranks, rising: `8-12` for neighbors, three at least, and `8, 12` else. Where a label
 * has a hyphen of its own, a stretch is told with `to`.
 */
export function sizesTold(labels: readonly string[], ranks: readonly number[]): string {
  const dash = labels.some((label) => label.includes('-')) ? ' to ' : '-';
  return runsOf(ranks, (rank, last) => rank === last + 1)
    .map((stretch) => stretch.map((rank) => labels[rank] ?? ''))
    .map((own) =>
      own.length < STRETCH ? own.join(', ') : [own[0] ?? '', own.at(-1) ?? ''].join(dash),
    )
    .join(', ');
}
