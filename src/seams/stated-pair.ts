/** Pairs that a list of seams states, beside those that the pattern itself has. */
import type { Place } from '../errors';
import { InputError } from '../errors';
import type { Pattern } from '../pattern/pattern';
import type { SeamPair, SeamSide } from '../pattern/seam-pair';
import { SAME_PLACE } from '../tolerance';
import type { LengthUnit } from '../units';
import { showLength } from '../units';

/** A pair and where it stands in the list; its ease is in mm. */
export interface StatedPair extends SeamPair {
  readonly ease: number;
  readonly place: Place;
}

interface Known {
  readonly pair: SeamPair;
  /** Where it was stated; undefined for a pair of the pattern. */
  readonly place: Place | undefined;
}

/**
 * The seams of a pattern and those of a list, each once: whichever side is named first, and whether by
 * a seam name or in a list, one pair of edges is one seam. It keeps the name and the direction that it
 * had first. A pattern that gives no ease leaves it to the list. Throws InputError `seam-contradicted`
 * with both places where one seam has two eases or two ways.
 */
export function withStated(
  { seams, file, unit }: Pick<Pattern, 'seams' | 'file' | 'unit'>,
  stated: readonly StatedPair[],
): readonly SeamPair[] {
  const known: Known[] = seams.map((pair) => ({ pair, place: undefined }));
  const at = new Map(seams.map((pair, i) => [keyOf(pair), i]));
  for (const { place, ...pair } of stated) {
    const i = at.get(keyOf(pair)) ?? known.length;
    const before = known[i];
    at.set(keyOf(pair), i);
    known[i] =
      before === undefined
        ? { pair, place }
        : { pair: mergedPair(before, pair, place, file, unit), place: before.place ?? place };
  }
  return known.map(({ pair }) => pair);
}

/** The pair that was known, with what the list adds. */
function mergedPair(
  { pair: first, place: before }: Known,
  second: SeamPair & { readonly ease: number },
  place: Place,
  file: string,
  unit: LengthUnit,
): SeamPair {
  const turned = isTurned(second, first);
  const ease = turned && second.ease !== 0 ? -second.ease : second.ease;
  const elsewhere = before === undefined ? `in ${file}` : `in row ${before.row ?? '?'}`;
  const refuse = (what: string, here: string, there: string): never => {
    throw new InputError('seam-contradicted', {
      what: `one seam has two ${what}, ${here} in this row and ${there} ${elsewhere}`,
      allowed: 'one row a seam, or the same in both',
      got: second.name,
      place,
    });
  };
  const show = (mm: number | string): string =>
    typeof mm === 'number' ? showLength(mm, { unit, fractions: false }) : mm;
  // A seam name and words without an ease state none.
  const isOpen = before === undefined && first.ease === 0;
  if (!isOpen && !(Math.abs(Number(first.ease) - ease) <= SAME_PLACE))
    refuse('eases', show(second.ease), show(turned ? -Number(first.ease) : first.ease));
  if (first.way !== undefined && second.way !== undefined && first.way !== second.way)
    refuse('ways', second.way, first.way);
  const eased = second.eased?.map((own) => (turned ? { ...own, ease: -own.ease } : own));
  return { ...first, ease, way: first.way ?? second.way, eased: first.eased ?? eased };
}

type Sides = Pick<SeamPair, 'sides'>;

/** Whether both are a seam of the same edges, whichever side goes first. */
export function sameSeam(first: Sides, second: Sides): boolean {
  return keyOf(first) === keyOf(second);
}

/** Whether the side that goes first in one of two such pairs goes second in the other. */
export function isTurned(one: Sides, other: Sides): boolean {
  return sideKey(one.sides[0]) !== sideKey(other.sides[0]);
}

/** The same for a pair whichever side goes first. */
function keyOf({ sides }: Sides): string {
  return JSON.stringify(sides.map(sideKey).sort());
}

function sideKey({ edges }: SeamSide): string {
  return JSON.stringify(edges.map(({ piece, edge }) => [piece, edge].join('.')).sort());
}
