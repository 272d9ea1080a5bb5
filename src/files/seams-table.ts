/** The walk of every seam in every size as CSV text. */
import type { GradedPattern } from '../grade/graded-pattern';
import type { WalkedSeam } from '../seams/walked-seam';
import type { LengthDisplay } from '../units';
import { writtenCsv } from '../table/written-csv';
import { tableLength, trimmed } from '../units';

/**
 * `seam,size,from,to,second_from,second_to,first_in,second_in,ease_in,off_in,corners_start,corners_end`:
 * a row for the whole seam, and where it has notches one for each stretch between them. `from` and `to`
 * are points of the first side, `second_from` and `second_to` those of the second that meet them.
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
        ...b.ends,
        show(a.length),
        show(b.length),
        show(ease),
        show(gap),
        degrees(angleSums[0]),
        degrees(angleSums[1]),
      ],
      ...(stretches.length < 2 ? [] : stretches).map(
        ({ from, to, meets, lengths: [c, d], ease: own }) => [
          pair.name,
          range.sizes[i]?.label ?? '',
          from,
          to,
          ...meets,
          show(c),
          show(d),
          own === undefined ? '' : show(own),
          show(c - d - (own ?? 0)),
          '',
          '',
        ],
      ),
    ]),
  );
  const lengths = ['first', 'second', 'ease', 'off'].map((name) => `${name}_${display.unit}`);
  return writtenCsv([
    [
      ...['seam', 'size', 'from', 'to', 'second_from', 'second_to'],
      ...lengths,
      ...['corners_start', 'corners_end'],
    ],
    ...rows,
  ]);
}
