/** A drafter of many bodies drafts and measures each as a chart of that body alone does. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { bodyDrafter } from '../../src/bodies/body-drafter';
import { bodyChart, readBodyList } from '../../src/bodies/body-list';
import { InputError } from '../../src/errors';
import { gradeReadChart } from '../../src/jobs/grade-chart';
import { runs } from '../samples';
import { STYLE_NAMES } from '../styles';

const HEADER = '# unit: cm\nname,waist,hip,waist_to_hip,skirt_length,stature\n';
/** From slim to full, short to tall, with more and less of a waist. */
const BODY = fc
  .tuple(
    fc.integer({ min: 560, max: 1300 }),
    fc.integer({ min: -20, max: 420 }),
    fc.integer({ min: 170, max: 250 }),
    fc.integer({ min: 450, max: 900 }),
    fc.integer({ min: 1450, max: 1850 }),
  )
  .map(([waist, drop, ...lengths]) => [waist, waist + drop, ...lengths].map((mm) => mm / 10));

/** What a draft gives, or the code by which it is refused. */
function outcome<Result>(draft: () => Result): Result | string {
  try {
    return draft();
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
}

it.each(STYLE_NAMES)('in %s, point by point and measure by measure', (style) => {
  let drafted = 0;
  fc.assert(
    fc.property(fc.array(BODY, { minLength: 3, maxLength: 6 }), (bodies) => {
      const list = readBodyList(
        HEADER + bodies.map((body) => `x,${body.join(',')}\n`).join(''),
        'b',
      );
      const drafter = bodyDrafter(list, { style });
      for (const entry of list.entries) {
        const chart = bodyChart(list, entry);
        const alone = outcome(() => gradeReadChart(chart, { style }, []).shown[0]);
        const quick = outcome(() => drafter(chart));
        if (typeof alone === 'string' || typeof quick === 'string' || alone === undefined) {
          expect(quick).toBe(alone);
          continue;
        }
        drafted++;
        expect(quick.label).toBe(alone.label);
        expect(quick.measures).toEqual(alone.measures);
        const placed = ({ pieces }: Pick<typeof alone, 'pieces'>) =>
          pieces.map(({ plan, points }) => [plan.name, plan.pointNames, points]);
        expect(placed(quick)).toEqual(placed(alone));
      }
    }),
    { numRuns: runs(3) },
  );
  expect(drafted).toBeGreaterThan(3);
});
