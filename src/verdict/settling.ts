/** The one setting that would settle a decision, where there is one. */
import type { Decision } from './verdict';
import type { LengthUnit } from '../units';

/** A parameter and the value it would take, as somebody would type it. */
export interface Settling {
  readonly parameter: string;
  readonly value: string;
}

/** In the unit of the chart; undefined for what no single parameter settles. */
export function settlingOf(
  { findings }: Pick<Decision, 'findings'>,
  unit: LengthUnit,
): Settling | undefined {
  const [first] = findings;
  if (first === undefined) return undefined;
  const { check, piece, facts } = first;
  switch (check) {
    case 'dart-number': {
      // Where the range is to be split no one number serves, and 0 lets the base decide.
      if (facts?.number === undefined || facts.number === '0') return undefined;
      if (facts.breaks !== undefined) return undefined;
      return { parameter: `${piece}_darts`, value: String(facts.number) };
    }
    case 'band-ease':
      return { parameter: 'waist_ease', value: unit === 'in' ? '3/8 in' : '1 cm' };
    default:
      return undefined;
  }
}
