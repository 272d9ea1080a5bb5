/** Checks that a measurement lies where an adult's can lie; a wrong unit shows up here. */
import type { SizeChart } from '../chart/size-chart';
import { findRow } from '../chart/size-chart';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

/** Bounds of a measurement, in millimeters, both still plausible. */
export interface PlausibleRange {
  /** The measurement's name in the chart. */
  readonly measurement: string;
  readonly least: number;
  readonly greatest: number;
  readonly source: string;
}

/** One warning that names every size out of the range; nothing where there is none. */
export function checkMeasurementRange(
  chart: SizeChart,
  { measurement, least, greatest, source }: PlausibleRange,
  display: LengthDisplay,
): Finding[] {
  const outside = (findRow(chart, measurement)?.values ?? []).flatMap((value, index) => {
    if (value === null) return [];
    const excess = Math.max(least - value, value - greatest);
    return excess > 0 ? [{ size: chart.sizes[index] ?? '', value, excess }] : [];
  });
  const [worst] = outside.toSorted((a, b) => b.excess - a.excess);
  if (worst === undefined) return [];
  const show = (mm: number) => showLength(mm, display);
  return [
    found({
      severity: 'warning',
      check: 'measurement-range',
      size: outside.length === 1 ? worst.size : '',
      subject: measurement,
      measured: worst.value,
      expected: worst.value < least ? least : greatest,
      source,
      message:
        `${measurement} is outside ${show(least)} to ${show(greatest)} at ` +
        `${outside.map(({ size }) => size).join(', ')} (farthest: ${show(worst.value)} at ` +
        `${worst.size}); is the unit of the chart right?`,
    }),
  ];
}
