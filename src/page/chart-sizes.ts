/** The sizes of a chart, as far as it can be read. */
import { readChart } from '../chart/read-chart';
import { InputError } from '../errors';
import type { NamedText } from '../jobs/requests';
import type { Asked } from './state';

/** Labels from the smallest to the largest; none of a chart that is refused. */
export function sizesOf({ text, file }: NamedText): readonly string[] {
  try {
    return readChart(text, file).sizes;
  } catch (error) {
    if (error instanceof InputError) return [];
    throw error;
  }
}

/** The size that rules start from where nobody says: the one in the middle, of an even number the smaller. */
export function middleSize(sizes: readonly string[]): string | undefined {
  return sizes[Math.floor((sizes.length - 1) / 2)];
}

/** What is asked of another chart: its middle size is the base where the one before has no equal. */
export function withKnownBase(asked: Asked, chart: NamedText): Asked {
  const sizes = sizesOf(chart);
  const base = sizes.includes(asked.base ?? '') ? asked.base : middleSize(sizes);
  return base === undefined ? asked : { ...asked, base };
}
