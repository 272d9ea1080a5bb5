/** Whom a range serves: by integration, by another formula, by simulation, and counted from a survey. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { bestChanges } from '../../src/coverage/changes';
import { coverChart } from '../../src/coverage/cover-chart';
import type { WeightedBody } from '../../src/coverage/coverage';
import { coverageOf } from '../../src/coverage/coverage';
import type { FitRules, FittedSize } from '../../src/bodies/fit';
import { LEFT_OUT, fittedSize, placeIn, toleranceOf } from '../../src/bodies/fit';
import { gaussLegendre, normalBelow } from '../../src/coverage/normal';
import type { BivariateNormal } from '../../src/coverage/population';
import { population, populations } from '../../src/coverage/population';
import { servedShare } from '../../src/coverage/served';
import { suggestedSizes } from '../../src/coverage/suggest';
import { normalOf } from '../../src/coverage/survey';
import { publishedTable, publishedTables } from '../../src/standards/published-tables';
import { chartText } from '../skirts';
import { SEED, runs, some } from '../samples';

const RULES: FitRules = {
  waist: { ease: 10, tolerance: 20, give: 0 },
  hip: { ease: 40, tolerance: 40, give: 0 },
};
const TABLES = publishedTables()
  .filter(({ kind, unusable }) => kind !== 'survey' && unusable === undefined)
  .map(({ id }) => id);

function sizesOf(id: string): readonly FittedSize[] {
  const { sizes, waist, hip } = publishedTable(id);
  return sizes.map((label, i) =>
    fittedSize({ label, waist: waist.values[i] ?? NaN, hip: hip.values[i] ?? NaN }, RULES),
  );
}

/** A box over waist and hip in mm. */
type Box = readonly [waistFrom: number, waistTo: number, hipFrom: number, hipTo: number];

function boxOf({ waist, hip, waistTolerance, hipTolerance }: FittedSize): Box {
  return [
    ...([waist - waistTolerance.smaller, waist + waistTolerance.larger] as const),
    ...([hip - hipTolerance.smaller, hip + hipTolerance.larger] as const),
  ];
}

/**
 * The share of a bivariate normal below `h` and `k`, standardized: Plackett 1954 in the form of Drezner and
 * Wesolowsky 1990, an integral over the angle whose sine is the correlation.
 */
function below(h: number, k: number, r: number): number {
  const to = Math.asin(r);
  const integral = gaussLegendre(40).reduce((sum, [node, weight]) => {
    const angle = (to * (node + 1)) / 2;
    const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
    return sum + (weight * to * Math.exp(-(h * h + k * k - 2 * h * k * sin) / (2 * cos * cos))) / 2;
  }, 0);
  return normalBelow(h) * normalBelow(k) + integral / (2 * Math.PI);
}

/** The share in a union of boxes: all boxes cut at all edges, each cell taken once. */
function unionShare({ waist, hip, r }: BivariateNormal, boxes: readonly Box[]): number {
  const edges = (at: readonly (0 | 1 | 2 | 3)[]): readonly number[] =>
    [...new Set(boxes.flatMap((box) => at.map((i) => box[i])))].sort((a, b) => a - b);
  const [across, up] = [edges([0, 1]), edges([2, 3])];
  const grid = across.map((w) =>
    up.map((h) => below((w - waist.mean) / waist.sd, (h - hip.mean) / hip.sd, r)),
  );
  let share = 0;
  for (let i = 1; i < across.length; i++)
    for (let j = 1; j < up.length; j++) {
      const [w, h] = [
        ((across[i - 1] ?? 0) + (across[i] ?? 0)) / 2,
        ((up[j - 1] ?? 0) + (up[j] ?? 0)) / 2,
      ];
      if (!boxes.some(([a, b, c, d]) => w > a && w < b && h > c && h < d)) continue;
      const at = (x: number, y: number): number => grid[x]?.[y] ?? NaN;
      share += at(i, j) - at(i - 1, j) - at(i, j - 1) + at(i - 1, j - 1);
    }
  return share;
}

/** Bodies drawn from a normal by a generator of its own (mulberry32) and Box and Muller. */
function simulated({ waist, hip, r }: BivariateNormal, count: number): readonly WeightedBody[] {
  let state = SEED;
  const random = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  return Array.from({ length: count }, () => {
    const radius = Math.sqrt(-2 * Math.log(1 - random()));
    const angle = 2 * Math.PI * random();
    const [a, b] = [radius * Math.cos(angle), radius * Math.sin(angle)];
    return {
      waist: waist.mean + waist.sd * a,
      hip: hip.mean + hip.sd * (r * a + Math.sqrt(1 - r * r) * b),
      weight: 1,
    };
  });
}

describe('the normal', () => {
  // Abramowitz and Stegun table 26.1, and its tail by R's pnorm.
  it.each([
    [0, 0.5],
    [1, 0.841344746068543],
    [1.96, 0.97500210485178],
    [-3, 0.00134989803163],
    [-5, 2.866515718791939e-7],
    [-8, 6.220960574271785e-16],
  ])('below %d is as published', (z, share) => {
    expect(Math.abs(normalBelow(z) - share) / share).toBeLessThan(1e-11);
  });

  it("of two that are not correlated is a product, and of a quadrant Sheppard's arc", () => {
    expect(below(1, -0.5, 0)).toBeCloseTo(normalBelow(1) * normalBelow(-0.5), 14);
    // Sheppard 1899: a quarter and the arc of r over a full turn.
    expect(below(0, 0, 0.74)).toBeCloseTo(0.25 + Math.asin(0.74) / (2 * Math.PI), 13);
  });
});

describe('the coverage of a published table', () => {
  it.each(some(TABLES))("%s is the same by strips and by cells of Plackett's formula", (id) => {
    const sizes = sizesOf(id);
    for (const normal of populations()) {
      const { served, bySize, leftOut } = coverageOf({ kind: 'normal', normal }, sizes);
      expect(served).toBeCloseTo(unionShare(normal, sizes.map(boxOf)), 7);
      expect(servedShare({ kind: 'normal', normal })(sizes)).toBeCloseTo(served, 3);
      const all = [...bySize, ...LEFT_OUT.map((why) => leftOut[why])];
      expect(all.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
      for (const share of all) expect(share).toBeGreaterThanOrEqual(0);
    }
  });

  it('is that of simulated bodies within four standard errors, size by size and reason by reason', () => {
    const normal = population('us-army-women-1988');
    const bodies = simulated(normal, runs(20_000, 1_000_000));
    for (const id of ['astm-d5585-95', 'en-13402-3']) {
      const sizes = sizesOf(id);
      const exact = coverageOf({ kind: 'normal', normal }, sizes);
      const counted = coverageOf({ kind: 'bodies', bodies }, sizes);
      const pairs = [
        ...exact.bySize.map((share, i) => [share, counted.bySize[i] ?? NaN] as const),
        ...LEFT_OUT.map((why) => [exact.leftOut[why], counted.leftOut[why]] as const),
      ];
      for (const [share, count] of pairs) {
        const error = Math.sqrt((share * (1 - share)) / bodies.length);
        expect(Math.abs(share - count)).toBeLessThan(4 * error + 3 / bodies.length);
      }
    }
  });
});

/** The counted cells of a survey, each body in the middle of its cell. */
const CELLS: readonly WeightedBody[] = readFileSync('test/coverage/ansur-1988-cells.csv', 'utf8')
  .trimEnd()
  .split('\n')
  .filter((line) => !line.startsWith('#'))
  .slice(1)
  .map((line) => {
    const [waist = NaN, hip = NaN, weight = NaN] = line.split(',').map(Number);
    return { waist: 10 * waist + 5, hip: 10 * hip + 5, weight };
  });

/** Sixteen bodies evenly over the cell of one. */
function spreadOver({ waist, hip, weight }: WeightedBody): readonly WeightedBody[] {
  const at = [-3.75, -1.25, 1.25, 3.75];
  return at.flatMap((w) =>
    at.map((h) => ({ waist: waist + w, hip: hip + h, weight: weight / 16 })),
  );
}

describe('a survey that was counted', () => {
  const all = CELLS.reduce((sum, { weight }) => sum + weight, 0);
  const { waist, hip, r } = population('us-army-women-1988');

  it('has the people, means, deviations and correlation of its population', () => {
    const own = normalOf(CELLS);
    expect(all).toBe(2208);
    // Cells of 1 cm add their own variance, a twelfth of a square centimeter (Sheppard's correction).
    expect(own.waist.mean).toBeCloseTo(waist.mean, -0.5);
    expect(Math.abs(own.waist.mean - waist.mean)).toBeLessThan(0.6);
    expect(Math.abs(own.hip.mean - hip.mean)).toBeLessThan(0.6);
    expect(Math.abs(own.waist.sd - waist.sd)).toBeLessThan(0.7);
    expect(Math.abs(own.hip.sd - hip.sd)).toBeLessThan(0.7);
    expect(Math.abs(own.r - r)).toBeLessThan(0.01);
  });

  it('has the tails that its population says', () => {
    const { tails } = population('us-army-women-1988');
    const share = (is: (body: WeightedBody) => boolean): number =>
      CELLS.reduce((sum, body) => sum + (is(body) ? body.weight : 0), 0) / all;
    const off = (body: WeightedBody): readonly [number, number] => [
      (body.waist - waist.mean) / waist.sd,
      (body.hip - hip.mean) / hip.sd,
    ];
    const found = {
      waistAbove: share((body) => off(body)[0] > 2),
      waistBelow: share((body) => off(body)[0] < -2),
      hipAbove: share((body) => off(body)[1] > 2),
      hipBelow: share((body) => off(body)[1] < -2),
      outside: share((body) => {
        const [a, b] = off(body);
        return (a * a - 2 * r * a * b + b * b) / (1 - r * r) > -2 * Math.log(0.1);
      }),
    };
    // A cell of 1 cm at the border may count on either side of it.
    for (const [name, value] of Object.entries(found))
      expect(Math.abs(value - (tails?.[name as keyof typeof found] ?? NaN)), name).toBeLessThan(
        0.008,
      );
  });

  it('is counted as a hand counts it, box by box', () => {
    for (const id of TABLES) {
      const boxes = sizesOf(id).map(boxOf);
      let served = 0;
      for (const body of CELLS)
        if (
          boxes.some(
            ([a, b, c, d]) => body.waist >= a && body.waist <= b && body.hip >= c && body.hip <= d,
          )
        )
          served += body.weight;
      const coverage = coverageOf({ kind: 'bodies', bodies: CELLS }, sizesOf(id));
      expect(coverage.served).toBeCloseTo(served / all, 12);
      // Spread over their cells the bodies are served as their normal is, within four of a hundred.
      const spread = coverageOf({ kind: 'bodies', bodies: CELLS.flatMap(spreadOver) }, sizesOf(id));
      const normal = population('us-army-women-1988');
      const { served: ofNormal } = coverageOf({ kind: 'normal', normal }, sizesOf(id));
      expect(Math.abs(ofNormal - spread.served)).toBeLessThan(0.04);
    }
  });
});

describe('a body', () => {
  const sizes = [
    ...[
      [600, 860],
      [640, 900],
      [680, 940],
    ].map(([waist = 0, hip = 0], i) => fittedSize({ label: `${i}`, waist, hip }, RULES)),
  ];

  it.each([
    [640, 900, 1],
    [649, 930, 1],
    [652, 900, 'between'],
    [560, 900, 'below'],
    [600, 780, 'below'],
    [700, 940, 'above'],
    [680, 1000, 'above'],
    [600, 925, 'fuller-hip'],
    [680, 880, 'slimmer-hip'],
    [560, 1000, 'fuller-hip'],
    [720, 800, 'slimmer-hip'],
  ] as const)('of %d and %d mm stands at %s', (waist, hip, place) => {
    expect(placeIn(sizes, { waist, hip })).toBe(place);
  });

  it('takes of the ease, never more than there is, and of what the cloth gives', () => {
    expect(toleranceOf({ ease: 10, tolerance: 20, give: 0 }, 700)).toEqual({
      larger: 10,
      smaller: 20,
    });
    expect(toleranceOf({ ease: 30, tolerance: 20, give: 0 }, 700)).toEqual({
      larger: 20,
      smaller: 20,
    });
    expect(toleranceOf({ ease: -20, tolerance: 20, give: 0.1 }, 700)).toEqual({
      larger: 68,
      smaller: 20,
    });
  });
});

describe('a change', () => {
  it('wins what the changed range serves more, and the best is told first', () => {
    const normal = population('us-army-women-1988');
    const bodies = sizesOf('jis-l-4005').map(({ label, waist, hip }) => ({ label, waist, hip }));
    const changes = bestChanges({ kind: 'normal', normal }, bodies, RULES, 10);
    const shareOf = (all: typeof bodies): number =>
      unionShare(
        normal,
        all.map((size) => boxOf(fittedSize(size, RULES))),
      );
    for (const { wins, sizes } of changes)
      expect(wins).toBeCloseTo(shareOf([...sizes]) - shareOf(bodies), 7);
    const wins = changes.map((change) => change.wins);
    expect(wins).toEqual([...wins].sort((a, b) => b - a));
    expect(new Set(changes.map(({ kind }) => kind)).size).toBe(5);
  });
});

describe('a range proposed', () => {
  // In inches and centimeters; a step moves the whole range about, so that several numbers change at once.
  it.each([
    [4, 10],
    [8, 12.7],
  ])(
    'of %i sizes has even steps on a grid of %d mm, and no step aside serves more',
    (count, grid) => {
      const normal = population('us-army-women-1988');
      const crowd = { kind: 'normal', normal } as const;
      const sizes = suggestedSizes(crowd, normal, count, RULES, grid);
      const [a, b] = sizes;
      const ladder = [
        a?.waist,
        (b?.waist ?? 0) - (a?.waist ?? 0),
        a?.hip,
        (b?.hip ?? 0) - (a?.hip ?? 0),
      ];
      const [w = 0, ws = 0, h = 0, hs = 0] = ladder.map((value = 0) => value / grid);
      for (const value of [w, ws, h, hs]) expect(value).toBeCloseTo(Math.round(value), 9);
      const shareOf = (by: readonly number[]): number => {
        const [dw = 0, dws = 0, dh = 0, dhs = 0] = by;
        return unionShare(
          normal,
          sizes.map((_, i) => {
            const at = { waist: w + dw + i * (ws + dws), hip: h + dh + i * (hs + dhs) };
            const body = { label: '', waist: at.waist * grid, hip: at.hip * grid };
            return boxOf(fittedSize(body, RULES));
          }),
        );
      };
      const best = shareOf([]);
      const turns = [-1, 0, 1];
      for (const steps of turns.flatMap((one) => turns.map((other) => [one, other] as const))) {
        // About its middle, as near as the grid has it.
        const [dw = 0, dh = 0] = steps.map((by) => Math.round((-by * (count - 1)) / 2));
        for (const waist of turns)
          for (const hip of turns) {
            const by = [dw + waist, steps[0], dh + hip, steps[1]];
            expect(shareOf(by), by.join()).toBeLessThan(best + 1e-3);
          }
      }
      for (const id of TABLES.filter((name) => sizesOf(name).length <= count))
        expect(best).toBeGreaterThan(unionShare(normal, sizesOf(id).map(boxOf)));
    },
  );
});

describe('a chart', () => {
  const chart = chartText('cm', { waist_girth: [64, 68, 72], hip_girth: [92, 96, 100] });

  it('is held against a list of bodies with their weights', () => {
    const bodies = {
      text: '# unit: cm\nwaist,hip,people,kg\n64,92,3,60\n72.5,101,1,61\n100,120,4,62\n64,x,5,62\n',
      file: 'survey.csv',
    };
    const counted = coverChart({ chart, bodies });
    expect(counted.range.coverage.served).toBeCloseTo(2 / 3, 12);
    const { range, source } = coverChart({ chart, bodies, weights: 'people' });
    expect(range.coverage.served).toBeCloseTo(4 / 8, 12);
    expect(range.coverage.leftOut.above).toBeCloseTo(4 / 8, 12);
    expect(source).toMatchObject({ setAside: ['row 6'], weights: 'people' });
  });

  it('fits more bodies in a cloth that gives, and none fewer', () => {
    const of = (give: string): number => coverChart({ chart, give }).range.coverage.served;
    expect(of('5%')).toBeGreaterThan(of('0%'));
  });

  it.each([
    [{ population: 'us-women-2018' }, 'population-unknown'],
    [{ give: '5' }, 'bad-option'],
    [{ waistTolerance: '2' }, 'bad-option'],
    [{ hipTolerance: '0cm' }, 'bad-option'],
    [{ suggest: 1 }, 'bad-option'],
    [{ weights: 'n' }, 'bad-option'],
    [
      { bodies: { text: '# unit: cm\nwaist,hip\n64,92\n66,94\n', file: 'a' }, weights: 'n' },
      'column-unknown',
    ],
    [{ bodies: { text: '# unit: cm\nwaist,hip\n64,92\n', file: 'a' } }, 'cell-missing'],
  ] as const)('with %j is refused', (more, code) => {
    expect(() => coverChart({ chart, ...more })).toThrow(expect.objectContaining({ code }));
  });
});
