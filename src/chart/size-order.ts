/** The order of the sizes of a chart: from the smallest body to the largest, without turning back. */
import { InputError } from '../errors';
import { fromMillimeters, trimmed } from '../units';
import { needValues } from './need-values';
import type { MeasurementRow, SizeChart } from './size-chart';

/**
 * The chart with its sizes from small to large. A file that lists them from large to small is
 * turned as a whole, by the girths of its last size against those of its first.
 */
export function smallestFirst(chart: SizeChart): SizeChart {
  const sums = girths(chart).map(({ waist, hip }) => waist + hip);
  if ((sums.at(-1) ?? 0) >= (sums[0] ?? 0)) return chart;
  return {
    ...chart,
    sizes: chart.sizes.toReversed(),
    rows: chart.rows.map(reversed),
    largestFirst: true,
  };
}

/**
 * Throws `range-turns` at a size, or several with equal girths, whose waist and hip are both
 * smaller, or both larger, than those of its two neighbors. Only one girth turning is a shape of
 * body and no error.
 */
export function checkRange(chart: SizeChart): void {
  const steps = girths(chart).filter(
    (body, index, all) => index === 0 || compare(body, all[index - 1] ?? body) !== 'equal',
  );
  for (const [index, body] of steps.entries()) {
    const [before, after] = [steps[index - 1], steps[index + 1]];
    if (before === undefined || after === undefined) continue;
    const turn = compare(body, before);
    if (turn === 'mixed' || turn !== compare(body, after)) continue;
    throw turnError(chart, turn, body, [before, after]);
  }
}

interface Body {
  readonly index: number;
  readonly size: string;
  readonly waist: number;
  readonly hip: number;
}

function girths(chart: SizeChart): Body[] {
  const waists = needValues(chart, 'waist_girth');
  const hips = needValues(chart, 'hip_girth');
  return chart.sizes.map((size, index) => ({
    index,
    size,
    waist: waists[index] ?? 0,
    hip: hips[index] ?? 0,
  }));
}

function compare(body: Body, other: Body): 'smaller' | 'larger' | 'equal' | 'mixed' {
  const waist = Math.sign(body.waist - other.waist);
  const hip = Math.sign(body.hip - other.hip);
  if (waist === 0 && hip === 0) return 'equal';
  if (waist < 0 && hip < 0) return 'smaller';
  return waist > 0 && hip > 0 ? 'larger' : 'mixed';
}

function turnError(
  chart: SizeChart,
  turn: string,
  body: Body,
  neighbors: readonly Body[],
): InputError {
  const show = ({ waist, hip, size }: Body) =>
    `size ${size} with waist ${number(waist)} and hip ${number(hip)} ${chart.unit}`;
  const number = (mm: number) => trimmed(fromMillimeters(mm, chart.unit), 3);
  const waistRow = chart.rows.find(({ name }) => name === 'waist_girth');
  return new InputError('range-turns', {
    what: `a size is ${turn} than both its neighbors, ${neighbors.map(show).join(', and ')}`,
    allowed: 'sizes from the smallest to the largest, or the other way around',
    got: show(body),
    place: {
      file: chart.file,
      ...waistRow?.places[body.index],
      size: body.size,
      measurement: 'waist_girth',
    },
  });
}

function reversed(row: MeasurementRow): MeasurementRow {
  return {
    ...row,
    values: row.values.toReversed(),
    cells: row.cells.toReversed(),
    places: row.places.toReversed(),
  };
}
