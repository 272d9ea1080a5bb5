import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { markSheet } from '../../../src/study/mark/mark-sheet';
import type { PlantedChart } from './planted-chart';
import { plantedChart, plantedChartText } from './planted-chart';
import type { Planted } from './planted-slips';
import {
  LONELY,
  PLANTED_KINDS,
  differing,
  handedIn,
  isOfUnit,
  plantedSlip,
  sheetText,
  turnsAxis,
} from './planted-slips';
import { PRINTED_SEED, SEED, runs } from '../../samples';

interface Sheet {
  readonly chart: PlantedChart;
  readonly slips: readonly Planted[];
}

function sheets(kinds: readonly (readonly string[])[], numRuns: number): Sheet[] {
  const one = plantedChart.chain((chart) =>
    fc
      .constantFrom(...kinds)
      .chain((chosen) => fc.tuple(...chosen.map((kind) => plantedSlip(chart, kind))))
      .map((slips): Sheet => ({ chart, slips })),
  );
  return fc.sample(one, { seed: SEED, numRuns }).filter(shows);
}

/** Each slip must make a cell wrong, and in company still change the sheet: else nobody can see it. */
function shows({ chart, slips }: Sheet): boolean {
  const cells = handedIn(chart, slips);
  const right = handedIn(chart, []);
  return slips.every((slip) => {
    const others = slips.filter((other) => other !== slip);
    return (
      isOfUnit(chart, slip) &&
      !turnsAxis(chart, slip) &&
      differing(chart, handedIn(chart, [slip]), right) > 0 &&
      differing(chart, handedIn(chart, others), cells) > 0
    );
  });
}

/** Whether exactly the planted slips are found; `loosely` counts a slip named as fitting as well. */
function recognized({ chart, slips }: Sheet): { strictly: boolean; loosely: boolean } {
  const { cause, diagnosis } = markSheet({
    style: 'pencil',
    chart: plantedChartText(chart),
    base: chart.sizes[chart.base] ?? '',
    sheet: sheetText(chart, handedIn(chart, slips)),
  });
  const named = diagnosis.found.map(({ slip, alike }) => [slip, ...alike].map(({ id }) => id));
  const whole =
    cause === undefined && diagnosis.unexplained.length === 0 && named.length === slips.length;
  return {
    strictly: whole && slips.every(({ id }) => named.some(([first]) => first === id)),
    loosely: whole && slips.every(({ id }) => named.some((ids) => ids.includes(id))),
  };
}

function measured(
  title: string,
  all: readonly Sheet[],
): { readonly strictly: number; readonly loosely: number } {
  const results = all.map(recognized);
  const strictly = results.filter((result) => result.strictly).length;
  const loosely = results.filter((result) => result.loosely).length;
  console.log(
    `${title}: ${strictly} of ${all.length} recognized, ${loosely} with those named as alike`,
  );
  return { strictly: strictly / all.length, loosely: loosely / all.length };
}

describe('slips planted in sheets worked out by hand', () => {
  it.each(PLANTED_KINDS)('%s is recognized alone in any chart where it shows', (kind) => {
    const found = sheets([[kind]], runs(3, 60));
    expect(found.length, PRINTED_SEED).toBeGreaterThanOrEqual(runs(1, 10));
    const loosely = found.filter((sheet) => recognized(sheet).loosely).length;
    expect(loosely / found.length, PRINTED_SEED).toBeGreaterThanOrEqual(0.95);
  });

  it('are recognized alone 99 times of 100', () => {
    // The others write what another slip would have written as well, and are told beside it.
    const all = sheets(
      PLANTED_KINDS.filter((kind) => !LONELY.has(kind)).map((kind) => [kind]),
      runs(10, 400),
    );
    expect(all.length).toBeGreaterThan(runs(5, 200));
    const { strictly, loosely } = measured('slips alone', all);
    expect(loosely, PRINTED_SEED).toBeGreaterThanOrEqual(0.99);
    expect(strictly, PRINTED_SEED).toBeGreaterThanOrEqual(0.97);
  });

  it('are recognized in pairs 95 times of 100', () => {
    const social = PLANTED_KINDS.filter((kind) => !LONELY.has(kind));
    const pairs = social.flatMap((first, i) =>
      social.slice(i + 1).map((second) => [first, second]),
    );
    const all = sheets(pairs, runs(10, 400));
    expect(all.length).toBeGreaterThan(runs(5, 200));
    const { strictly, loosely } = measured('slips in pairs', all);
    // One break left out and another on its wrong side often write the same numbers.
    expect(loosely, PRINTED_SEED).toBeGreaterThanOrEqual(0.95);
    expect(strictly, PRINTED_SEED).toBeGreaterThanOrEqual(0.9);
  });

  it('are not seen where there are none', () => {
    for (const chart of fc.sample(plantedChart, { seed: SEED, numRuns: runs(2, 80) })) {
      const { cells, cause, decisions, diagnosis } = markSheet({
        style: 'pencil',
        chart: plantedChartText(chart),
        base: chart.sizes[chart.base] ?? '',
        sheet: sheetText(chart, handedIn(chart, [])),
      });
      expect(
        cells.filter(({ verdict }) => verdict !== 'right'),
        PRINTED_SEED,
      ).toEqual([]);
      expect(cause, PRINTED_SEED).toBeUndefined();
      expect(decisions.right, PRINTED_SEED).toBe(decisions.asked);
      expect(diagnosis, PRINTED_SEED).toEqual({ found: [], unexplained: [] });
    }
  });
});
