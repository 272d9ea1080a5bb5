/** The cloth to buy as a table among those of a printed pattern. */
import type { FabricNeed } from '../fabric/fabric-needs';
import { leastNeed } from '../fabric/fabric-needs';
import { inchFraction, toMillimeters } from '../units';
import type { SizeRow, SizeTable } from '../print/size-table';

/**
 * One row a cloth and width with the shorter of the lays that the needs hold for it, folded or open.
 * A dash stands where the pieces do not go on the cloth.
 */
export function fabricTable(needs: readonly FabricNeed[]): SizeTable {
  const rows = new Map<string, readonly FabricNeed[]>();
  for (const need of needs) {
    const name = `${need.cloth}, ${need.width.value} ${need.width.unit}`;
    rows.set(name, [...(rows.get(name) ?? []), need]);
  }
  return {
    heading: 'Cloth to buy in centimeters and yards, by its width, for cloth with a nap',
    sizes: needs[0]?.sizes.map(({ label }) => label) ?? [],
    rows: [...rows].map(([name, choices]) => row(name, choices)),
  };
}

function row(name: string, choices: readonly FabricNeed[]): SizeRow {
  const buys = (choices[0]?.sizes ?? []).map(
    (_, i) => leastNeed(choices.flatMap(({ sizes }) => sizes[i] ?? []))?.buy,
  );
  return {
    name,
    lines: [
      { unit: 'cm', cells: buys.map((buy) => (buy === undefined ? '-' : `${buy.centimeters}`)) },
      { unit: 'yd', cells: buys.map((buy) => (buy === undefined ? '-' : eighths(buy.yards))) },
    ],
  };
}

/** A number of eighths as a mixed fraction, which is written for yards as it is for inches. */
function eighths(value: number): string {
  return inchFraction(toMillimeters(value, 'in'), 8);
}
