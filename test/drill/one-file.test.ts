/** What is added to the engine is a file of its own and at most a line in a list. */
import { describe, expect, it } from 'vitest';
import type { Check } from '../../src/check/checks';
import { CHECKS } from '../../src/check/checks';
import type { StyleChoice } from '../../src/draft/style-file';
import { SHAPED_SKIRT } from '../../src/draft/shaped-skirt/block';
import type { Export } from '../../src/index';
import { EXPORTS, exportFiles, gradeChart } from '../../src/index';
import { whatToDo } from '../../src/verdict/what-to-do';
import { chartText } from '../skirts';

const CHART = chartText('cm', { waist_girth: [66, 70, 75], hip_girth: [92, 96, 101] });

/** A style: a block and the parameters in which it differs. */
const SHORT: StyleChoice = {
  style: {
    name: 'short',
    description: 'invented for tests: shared drop, 45 cm long',
    block: SHAPED_SKIRT,
    settings: [{ parameter: 'skirt_length', value: '45 cm', note: 'invented', place: {} }],
  },
  settings: [],
};

/** A check: one function over what is known. */
const manyPieces: Check = ({ range }) =>
  range.plans.length <= 3
    ? []
    : [
        {
          severity: 'note',
          check: 'many-pieces',
          size: '',
          piece: '',
          subject: '',
          quantity: 'number',
          measured: range.plans.length,
          source: 'invented for tests',
          message: `${range.plans.length} pieces are to be cut`,
        },
      ];

/** An export format: a name and a maker. */
const CORNERS: Export = {
  name: 'corners',
  description: 'the number of points of each piece',
  make: (result) =>
    Promise.resolve({
      files: [
        {
          name: 'corners.csv',
          text: result.range.plans
            .map((plan) => `${plan.name},${plan.pointNames.length}\n`)
            .join(''),
        },
      ],
      findings: [],
    }),
};

describe('what a file of its own adds', () => {
  const result = gradeChart({ chart: CHART, base: '2', style: SHORT });

  it('is a style that grades like any other', () => {
    expect(result.range.draft.style.name).toBe('short');
    for (const { measures } of result.range.sizes)
      expect(measures.find(({ name }) => name === 'center_front_length')?.value).toBeCloseTo(
        450 - (result.range.sizes[0]?.parameters.get('center_front_drop') ?? 0),
        6,
      );
  });

  it('is a check, a line in the list of checks', () => {
    const request = { chart: CHART, base: '2', style: SHORT };
    const { findings: found, range } = gradeChart(request, [...CHECKS, manyPieces]);
    expect(found.filter(({ check }) => check !== 'many-pieces')).toEqual(result.findings);
    const [own] = found.filter(({ check }) => check === 'many-pieces');
    expect(own?.measured).toBe(range.plans.length);
    // Without a remedy of its own it says itself what is to be known.
    expect(whatToDo(own === undefined ? [] : [own], result.display)).toBe(own?.message);
  });

  it('is an export, a line in the list of exports', async () => {
    const { files } = await exportFiles(result, ['corners'], {}, [...EXPORTS, CORNERS]);
    expect(files.map(({ name }) => name)).toEqual(['corners.csv']);
    expect(files[0]?.text.split('\n')[0]).toBe(`front,${result.range.plans[0]?.pointNames.length}`);
  });
});
