/** A skirt as its sewer has it in hand: which parts it has, and its lengths in the sizes at hand. */
import type { PiecePlan } from '../pattern/piece';
import type { Piece } from '../pattern/piece';
import { shopLength, shopZip } from '../pattern/shop-length';
import { zipOf } from '../pattern/zip';
import { SAME_PLACE } from '../tolerance';
import type { LengthDisplay } from '../units';

/** One size that may be sewn. */
export interface SewnSize {
  readonly pieces: readonly Piece[];
  /** What allowances and ease are named by, in mm or plain numbers. */
  readonly parameters: ReadonlyMap<string, number>;
}

/** The parts of a skirt, and its lengths in words. */
export interface SewnSkirt {
  readonly front: PiecePlan;
  readonly back: PiecePlan;
  readonly band: PiecePlan | undefined;
  /** Front and back, or none. */
  readonly facings: readonly PiecePlan[];
  /** Front and back, the back maybe as a right and a left one; or none. */
  readonly linings: readonly PiecePlan[];
  readonly opening: 'none' | 'slit' | 'vent';
  /** A length of all sizes in words, from the least to the most where they differ. */
  readonly told: (lengthOf: (size: SewnSize) => number | undefined) => string;
  /** A parameter in words, such as `side_allowance`. */
  readonly width: (parameter: string) => string;
  /** A plain number of the base of the style, such as `press_to_side`; undefined if it has none. */
  readonly number: (parameter: string) => number | undefined;
  /** The zip to buy in words; undefined for a style that names none. */
  readonly zip: string | undefined;
}

/** The skirt that some sizes of a pattern make; undefined for pieces that are no front and back. */
export function sewnSkirt(
  sizes: readonly SewnSize[],
  display: Pick<LengthDisplay, 'unit'>,
): SewnSkirt | undefined {
  const plans = sizes[0]?.pieces.map(({ plan }) => plan) ?? [];
  const ofPart = (part: PiecePlan['part']): readonly PiecePlan[] =>
    plans.filter((plan) => plan.part === part);
  const [front, back] = ['front', 'back'].map((name) =>
    ofPart('panel').find((plan) => plan.name === name),
  );
  if (front === undefined || back === undefined) return undefined;
  const told = (
    lengthOf: (size: SewnSize) => number | undefined,
    words: typeof shopLength = shopLength,
  ): string => {
    const lengths = sizes.map(lengthOf).filter((length) => length !== undefined);
    const [least, most] = [Math.min(...lengths), Math.max(...lengths)];
    return most - least <= SAME_PLACE
      ? words(most, display)
      : `${span(words(least, display), words(most, display))}, by size`;
  };
  const zipLength = ({ pieces, parameters }: SewnSize): number | undefined =>
    zipOf(pieces, parameters)?.length;
  return {
    front,
    back,
    band: ofPart('waistband')[0],
    facings: ofPart('facing'),
    linings: ofPart('lining'),
    opening: openingOf(back),
    told,
    width: (parameter) => told(({ parameters }) => parameters.get(parameter)),
    number: (parameter) => sizes[0]?.parameters.get(parameter),
    zip: sizes.every((size) => zipLength(size) !== undefined)
      ? told(zipLength, shopZip)
      : undefined,
  };
}

function openingOf({ outline }: PiecePlan): SewnSkirt['opening'] {
  if (outline.some(({ seam }) => seam === 'vent')) return 'vent';
  return outline.some(({ seam }) => seam === 'slit') ? 'slit' : 'none';
}

/** Whether any panel has a dart. */
export function hasDarts({ front, back }: Pick<SewnSkirt, 'front' | 'back'>): boolean {
  return front.darts.length + back.darts.length > 0;
}

/** Whether a piece has an edge of that name. */
export function hasEdge({ outline }: PiecePlan, edge: string): boolean {
  return outline.some(({ seam }) => seam === edge);
}

/** From a length to another; the other market's, in parentheses, once where it is the same. */
function span(from: string, to: string): string {
  const [, one, same] = /^(.*) (\(.*\))$/u.exec(from) ?? [];
  return one !== undefined && same !== undefined && to.endsWith(same)
    ? `${one} to ${to}`
    : `${from} to ${to}`;
}
