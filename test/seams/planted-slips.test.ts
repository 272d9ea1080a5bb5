/**
 * Slips planted in right rule sheets, one at a time. The wanted shares are the aim of the check, set
 * before it was written; garments, slips and the verdict on the findings know nothing of how it works.
 */
import { describe, expect, it } from 'vitest';
import { LONG, SEED } from '../samples';
import type { Form } from './planted/garment';
import { gradedBy, rightMoves, ruleText } from './planted/garment';
import { GARMENTS } from './planted/garments';
import type { Planted } from './planted/planter';
import { KINDS, slipsOf } from './planted/planter';
import type { Verdict } from './planted/verdict';
import { verdictOn } from './planted/verdict';

const FORMS: readonly Form[] = ['moves', 'steps'];
/** Slips of a kind in a garment and form; the long run takes more of them. */
const FEW = LONG ? 40 : 1;

/** Each garment with its right moves. */
const RIGHT = GARMENTS.map((garment) => ({ garment, right: rightMoves(garment) }));

/** A generator of numbers from 0 to 1 that is the same in every run (Park and Miller's, 1988). */
function numbers(seed: number): () => number {
  let state = seed % 2147483647;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

function sample(all: readonly Planted[], next: () => number): readonly Planted[] {
  return all
    .map((slip) => ({ slip, at: next() }))
    .sort((a, b) => a.at - b.at)
    .slice(0, FEW)
    .map(({ slip }) => slip);
}

describe('slips planted in a rule sheet', () => {
  const counts = new Map<string, Record<Verdict, number>>();
  const count = (group: string, verdict: Verdict): void => {
    const own = counts.get(group) ?? { named: 0, located: 0, false: 0, missed: 0 };
    own[verdict]++;
    counts.set(group, own);
  };
  const unnamed: string[] = [];

  const turns = 2 * FORMS.length;

  it.each(RIGHT)('in a $garment.name are judged', ({ garment, right }) => {
    const next = numbers(SEED);
    const rank = GARMENTS.indexOf(garment);
    FORMS.forEach((form, f) => {
      // In passing each kind is planted in every other garment, in one of the forms.
      const kinds = KINDS.filter((_, k) => LONG || (k + rank) % turns === 2 * f + 1);
      for (const kind of kinds) {
        for (const slip of sample(slipsOf(kind, garment, right, form), next)) {
          const { findings } = gradedBy(garment, ruleText(garment, slip.moves, form));
          const verdict = verdictOn(slip, findings);
          for (const group of ['all', garment.name, kind]) count(group, verdict);
          if (verdict !== 'named')
            unnamed.push(`${verdict}: ${garment.name}, ${form}, ${slip.words} (seed ${SEED})`);
        }
      }
    });
  });

  it('are named, and nobody innocent is', () => {
    console.table(Object.fromEntries(counts));
    console.log(unnamed.join('\n'));
    const {
      named,
      located,
      false: wrong,
      missed,
    } = counts.get('all') ?? {
      named: NaN,
      located: NaN,
      false: NaN,
      missed: NaN,
    };
    const all = named + located + wrong + missed;
    expect(all).toBeGreaterThanOrEqual(
      GARMENTS.length * KINDS.length * (LONG ? FORMS.length : 0.5),
    );
    expect(named / all).toBeGreaterThanOrEqual(0.75);
    expect(wrong / all).toBeLessThanOrEqual(0.01);
    expect(missed / all).toBeLessThanOrEqual(0.1);
  });
});

describe('a right rule sheet', () => {
  const telling = /sign|rule-slip|rule-doubt|step-turns|seam-lengths|notch-to-notch/u;

  it.each(RIGHT)('of a $garment.name has no finding in any habit', ({ garment, right }) => {
    const sheets = FORMS.flatMap((form) => [
      ruleText(garment, right, form),
      // Typed to a tenth of a millimeter, as from a cm table.
      ruleText(garment, right, form, 10),
    ]);
    // In passing one, the next garment's the next.
    for (const sheet of LONG ? sheets : [sheets[GARMENTS.indexOf(garment) % sheets.length]]) {
      const { findings } = gradedBy(garment, sheet ?? '');
      const told = findings.filter(
        ({ severity, check }) => telling.test(check) && ['fail', 'warning'].includes(severity),
      );
      expect(told.map(({ check, message }) => `${check}: ${message}`)).toEqual([]);
    }
  });
});
