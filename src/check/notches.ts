/** Notches of seams that are sewn together: as far along the one as along the other. */
import type { GradedRange, GradedSize } from '../grade/graded-range';
import { lengthToEnd } from '../pattern/along-seam';
import type { Part } from '../pattern/piece';
import { SEAM_MATCH } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { seamSeverity } from './seams-match';

/**
 * Hip notches of front and back go by the length from the hem to the hip line of the front, so they
 * always meet; what is held here is that the hip line of the back is there too.
 */
export function checkNotches(range: GradedRange, display: LengthDisplay): Finding[] {
  return range.sizes.flatMap((size) =>
    (['panel', 'lining'] as const).flatMap((part) => hipNotches(size, part, display)),
  );
}

function hipNotches(size: GradedSize, part: Part, display: LengthDisplay): readonly Finding[] {
  const [front, back] = size.pieces.filter(({ plan }) => plan.part === part);
  if (front === undefined || back === undefined) return [];
  const measured = lengthToEnd(front, 'side', 'side_hip');
  const expected = lengthToEnd(back, 'side', 'side_hip');
  if (measured === undefined || expected === undefined) return [];
  const gap = Math.abs(measured - expected);
  return [
    {
      severity: seamSeverity(gap),
      check: 'notches-match',
      size: size.label,
      piece: `${front.plan.name}, ${back.plan.name}`,
      subject: 'side_hip',
      quantity: 'length',
      measured,
      expected,
      tolerance: SEAM_MATCH,
      source: 'common practice, no source: notches at the same length of both seams',
      message:
        gap <= SEAM_MATCH
          ? `the hip notches are ${showLength(measured, display)} from the hem on both side seams`
          : `from hem to hip line the side seams differ by ${showLength(gap, display)}; ` +
            'the notches of both go by the front',
    },
  ];
}
