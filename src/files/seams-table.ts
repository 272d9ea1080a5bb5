/** The walk of every seam in every size as CSV text. */
import type { GradedPattern } from '../grade/graded-pattern';
import type { WalkedSeam } from '../seams/walked-seam';
import type { LengthDisplay } from '../units';
import { writtenCsv } from '../table/written-csv';
import { tableLength, trimmed } from '../units';

/**
 * `seam,size,from,to,first_in,second_in,ease_in,off_in,corners_start,corners_end`: a row for the
 * whole seam, and where it has notches one for each stretch between them.
 */
export function seamsTable(
  range: GradedPattern,
  seams: readonly WalkedSeam[],
  display: LengthDisplay,
): string {
  const show = (mm: number): string => tableLength(mm, display);
  const degrees = (angle: number): string => (Number.isNaN(angle) ? '' : trimmed(angle, 2));
  const rows = seams.flatMap(({ pair, walks }) =>
    walks.flatMap(({ walks: [a, b], ease, gap, stretches, angleSums }, i) => [
      [
        pair.name,
        range.sizes[i]?.label ?? '',
        a.ends[0],
        a.ends[1],
        show(a.length),
        show(b.length),
        show(ease),
        show(gap),
        degrees(angleSums[0]),
        degrees(angleSums[1]),
      ],
      ...(stretches.length < 2 ? [] : stretches).map(({ from, to, lengths: [c, d] }) => [
        pair.name,
        range.sizes[i]?.label ?? '',
        from,
        to,
        show(c),
        show(d),
        '',
        show(c - d),
        '',
        '',
      ]),
    ]),
  );
  const lengths = ['first', 'second', 'ease', 'off'].map((name) => `${name}_${display.unit}`);
  return writtenCsv([
    ['seam', 'size', 'from', 'to', ...lengths, 'corners_start', 'corners_end'],
    ...rows,
  ]);
}
