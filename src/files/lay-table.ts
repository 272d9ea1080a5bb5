/** The cloth to buy as CSV text. */
import type { FabricNeed, SizeNeed } from '../fabric/fabric-needs';
import type { NoLay } from '../fabric/lay';
import { isLay } from '../fabric/lay';
import { writtenCsv } from '../table/written-csv';
import type { LengthUnit } from '../units';
import { fromMillimeters, trimmed } from '../units';

/** What is told of every lay; a size that does not go on the cloth has an empty cell. */
const MEASURES: readonly (readonly [
  name: string,
  value: (need: SizeNeed) => number | undefined,
])[] = [
  ['buy_cm', ({ buy }) => buy?.centimeters],
  ['buy_yd', ({ buy }) => buy?.yards],
  ['lay_cm', ({ lay }) => (isLay(lay) ? fromMillimeters(lay.length, 'cm') : undefined)],
  ['bound_cm', ({ lay }) => (isLay(lay) ? fromMillimeters(lay.bounds.best, 'cm') : undefined)],
  ['area_bound_cm', ({ lay }) => (isLay(lay) ? fromMillimeters(lay.bounds.area, 'cm') : undefined)],
  ['utilization', ({ lay }) => (isLay(lay) ? lay.utilization : undefined)],
];

/**
 * `cloth,width,unit,fold,nap,measure,<one column a size>,note`: for every lay the length to buy in
 * both units, the length of the lay, what no lay can go below, and the share of the cloth used.
 */
export function fabricNeedsTable(needs: readonly FabricNeed[]): string {
  const labels = needs[0]?.sizes.map(({ label }) => label) ?? [];
  const header = ['cloth', 'width', 'unit', 'fold', 'nap', 'measure', ...labels, 'note'];
  const rows = needs.flatMap((need) =>
    MEASURES.map(([measure, value], i) => [
      need.cloth,
      trimmed(need.width.value, 3),
      need.width.unit,
      need.fold,
      need.nap,
      measure,
      ...need.sizes.map((size) => {
        const number = value(size);
        return number === undefined ? '' : trimmed(number, DECIMALS);
      }),
      i === 0 ? [raised(need), note(need)].filter((words) => words !== '').join('; ') : '',
    ]),
  );
  return writtenCsv([header, ...rows]);
}

/** An eighth of a yard needs three. */
const DECIMALS = 3;

/** Which sizes buy more than their own lay asks for. */
function raised({ sizes }: FabricNeed): string {
  const labels = sizes.flatMap(({ label, isRaised }) => (isRaised ? [label] : []));
  return labels.length === 0 ? '' : `raised to a smaller size: ${labels.join(' ')}`;
}

/** Why sizes have no lay: each piece that does not go on the cloth, with its sizes. */
function note({ sizes, width: { unit } }: FabricNeed): string {
  const misfits = sizes.flatMap(({ label, lay }) => (isLay(lay) ? [] : [{ label, lay }]));
  const pieces = [...new Set(misfits.map(({ lay }) => lay.piece))];
  return pieces
    .map((piece) => {
      const those = misfits.filter(({ lay }) => lay.piece === piece);
      const labels = those.map(({ label }) => label).join(' ');
      return `not possible in ${labels}: ${misfitTold(
        those.map(({ lay }) => lay),
        unit,
      )}`;
    })
    .join('; ');
}

/** Why pieces of some sizes do not go on a cloth, one piece and one cause; lengths in the unit of its width. */
export function misfitTold(lays: readonly NoLay[], unit: LengthUnit): string {
  const [first] = lays;
  if (first === undefined) return '';
  if (first.cause === 'grain')
    return `the fold edge of ${first.piece} does not run along the grain`;
  const length = (mm: number): string => `${trimmed(fromMillimeters(mm, unit), 1)} ${unit}`;
  const widest = Math.max(...lays.map(({ needed }) => needed));
  return `${first.piece} takes up to ${length(widest)} of the ${length(first.given)} across`;
}
