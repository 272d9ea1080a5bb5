/** Signs of a rule sheet that are probably wrong, as the seams tell. */
import type { GradedPattern } from '../grade/graded-pattern';
import type { WalkedSeam } from '../seams/walked-seam';
import type { WrongSign } from '../seams/wrong-sign';
import type { Finding } from './finding';

/** A failure for each seam that a wrong sign would explain; each sign is told of once. */
export function signFindings(
  range: GradedPattern,
  seams: readonly WalkedSeam[],
  signs: readonly (readonly WrongSign[])[],
  source: string,
): Finding[] {
  const told = new Set<string>();
  return seams.flatMap((seam, s) => {
    const [likeliest, ...others] = signs[s] ?? [];
    if (likeliest === undefined) return [];
    const { piece, point, axis, shows } = likeliest;
    const key = `${piece}.${point}.${axis}`;
    if (told.has(key)) return [];
    told.add(key);
    const from = shows.map((i) => range.sizes[i]?.label ?? '');
    const also = others.map((sign) => `${sign.piece} ${sign.point} d${sign.axis}`);
    return [
      {
        severity: 'fail' as const,
        check: 'wrong-sign',
        size: from[0] ?? '',
        piece,
        subject: point,
        quantity: 'number' as const,
        source,
        message:
          `the sign of d${axis} at ${piece} ${point} is probably wrong${EXTENT[likeliest.extent]}: ` +
          `turned round, the seam ${seam.pair.name} meets; it shows from size ` +
          from.join(' and from size ') +
          (also.length === 0 ? '' : `; nearly as likely: ${[...new Set(also)].join(', ')}`),
      },
    ];
  });
}

const EXTENT: Readonly<Record<WrongSign['extent'], string>> = {
  all: '',
  step: ' in one step',
  size: ' in one size',
};
