import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hintFacts, hintReport } from '../../../src/cli/assess-hint';
import type { HintBefore } from '../../../src/cli/assess-hint';
import { hintOf } from '../../../src/study/mark/hints';
import type { Marking } from '../../../src/study/mark/mark-sheet';
import { markSheet } from '../../../src/study/mark/mark-sheet';
import { PRINTED_SEED, SEED, runs } from '../../samples';
import type { PlantedChart } from './planted-chart';
import { WAYS, plantedChart, plantedChartText } from './planted-chart';
import type { Planted } from './planted-slips';
import {
  COLUMNS,
  PLANTED_KINDS,
  handedIn,
  isOfUnit,
  plantedSlip,
  sheetText,
} from './planted-slips';

function markingOf(chart: PlantedChart, slips: readonly Planted[]): Marking {
  return markSheet({
    style: 'pencil',
    chart: plantedChartText(chart),
    base: chart.sizes[chart.base] ?? '',
    sheet: sheetText(chart, handedIn(chart, slips)),
  });
}

/** By hand: rows and their wrong cells. */
function wrongByHand(chart: PlantedChart, slips: readonly Planted[]) {
  const [cells, right] = [handedIn(chart, slips), handedIn(chart, [])];
  const off = WAYS[chart.unit].tolerance + 1e-6;
  return COLUMNS.flatMap(({ name, axis }, c) => {
    const wrong = chart.sizes.filter(
      (_, i) => Math.abs((cells[c]?.[i] ?? NaN) - (right[c]?.[i] ?? NaN)) > off,
    );
    return wrong.length === 0 ? [] : [{ row: `${name} d${axis}`, wrong }];
  });
}

/** What a level tells, each way. */
const told = (marking: Marking, level: HintBefore) => ({
  words: hintReport(marking, level),
  facts: JSON.stringify(hintFacts(marking, level)),
});

const COUNTS = /^\d+ of \d+ cells (is|are) wrong(, \d+ (is|are) blank)?\.$/;
const lines = (text: string): readonly string[] => text.replace(/\n +/g, ' ').trim().split('\n');

const anySheet = plantedChart.chain((chart) =>
  fc
    .constantFrom(...PLANTED_KINDS)
    .chain((kind) => plantedSlip(chart, kind))
    .map((slip) => ({ chart, slip })),
);

/** Sheets in numbers, each with one slip that shows, read as they stand. */
const sheets = fc
  .sample(anySheet, { seed: SEED, numRuns: runs(12, 300) })
  .filter(({ chart, slip }) => isOfUnit(chart, slip) && wrongByHand(chart, [slip]).length > 0)
  .map(({ chart, slip }) => ({ chart, slip, marking: markingOf(chart, [slip]) }))
  // Where another zero or direction makes all right again there is nothing to hint at.
  .filter(({ marking }) => marking.cells.some(({ verdict }) => verdict === 'wrong'));

describe('a hint', () => {
  it('of level 1 is a count, and of level 2 the rows that are wrong by hand', () => {
    expect(sheets.length, PRINTED_SEED).toBeGreaterThan(runs(6, 150));
    for (const { chart, slip, marking } of sheets) {
      if (marking.convention.up || marking.convention.zeros.size > 0) continue;
      const rows = wrongByHand(chart, [slip]);
      const count = rows.reduce((sum, { wrong }) => sum + wrong.length, 0);
      const [first, more, ...others] = lines(told(marking, 1).words);
      expect(first, slip.id).toMatch(COUNTS);
      expect(Number(first?.split(' ', 1)[0]), `${slip.id}, ${PRINTED_SEED}`).toBe(count);
      expect([more, others]).toEqual(['Which rows: the same call with --hint 2', []]);
      const [same, wrong, next, ...rest] = lines(told(marking, 2).words);
      expect(same).toBe(first);
      expect(wrong, slip.id).toBe(`Wrong: ${rows.map(({ row }) => row).join(', ')}`);
      expect([next, rest]).toEqual(['Which question to ask: the same call with --hint 3', []]);
    }
  });

  it('never contains what a later level tells', () => {
    for (const { marking, slip } of sheets) {
      const { cause, diagnosis } = marking;
      const slips = diagnosis.found.flatMap((one) => [one.slip, ...one.alike]);
      const causes = cause === undefined ? [] : [cause.cause, ...cause.alike];
      const answers = [...slips, ...causes].flatMap(({ id, words, advice }) => [id, words, advice]);
      const questions = (hintOf(marking, 3).asks ?? []).map(({ question }) => question);
      expect(questions.length, slip.id).toBeGreaterThan(0);
      const names = COLUMNS.map(({ name }) => name);
      for (const level of [1, 2, 3] as const) {
        const { words, facts } = told(marking, level);
        const plain = words.replace(/\s+/g, ' ');
        const later = [
          ...(level < 2 ? names : []),
          ...(level < 3 ? questions : []),
          ...answers.filter((text) => text.includes(' ')),
        ];
        for (const text of later) {
          expect(plain, `${slip.id}, level ${level}`).not.toContain(text);
          expect(facts, `${slip.id}, level ${level}`).not.toContain(text);
        }
        // No number but the counts and the next level: what is right cannot stand there.
        expect(lines(words).slice(1, -1).join(), slip.id).not.toMatch(/\d/);
      }
    }
  });

  /** Sheets that differ by what a level tells, and by nothing that those before it tell. */
  it.each<[HintBefore, readonly (readonly [kind: string, turned?: true])[]]>([
    // The sign of one row, and of the next.
    [1, [['sign'], ['sign', true]]],
    // The share, or the sign.
    [2, [['whole'], ['sign']]],
    // Four times, or twice the share.
    [3, [['whole'], ['half']]],
  ])('of level %i is the same for sheets that differ in what follows', (level, kinds) => {
    const charts = fc.sample(plantedChart, { seed: SEED, numRuns: runs(6, 60) });
    let compared = 0;
    for (const chart of charts) {
      const markings = kinds.map(([kind, isOther]) => {
        const row = isOther ? 'front.side_hem' : 'front.side_hip';
        const slip = {
          ...{ id: kind, kind },
          at: ({ name, axis }: (typeof COLUMNS)[number]) => name === row && axis === 'x',
        };
        return markingOf(chart, [slip]);
      });
      const [one, other] = markings as [Marking, Marking];
      compared++;
      expect(told(other, level), PRINTED_SEED).toEqual(told(one, level));
      // They do differ, and the next level tells it.
      if (level < 3)
        expect(told(other, (level + 1) as HintBefore)).not.toEqual(
          told(one, (level + 1) as HintBefore),
        );
      else expect(other.diagnosis.found[0]?.slip.id).not.toBe(one.diagnosis.found[0]?.slip.id);
    }
    expect(compared).toBe(charts.length);
  });
});
