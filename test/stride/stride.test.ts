import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { girthAt } from '../../src/stride/girth-profile';
import type { GirthProfile } from '../../src/stride/girth-profile';
import { girthForStep, longestStride, openingForStep, stepInGirth } from '../../src/stride/stride';
import { walkerOf, wantedStep } from '../../src/stride/walker';

const REFERENCE = walkerOf(new Map());

/** Levels of the reference: hip joint 17 cm below the waist, knee 38 cm below the joint. */
const KNEE = 550;

/** A skirt from a hip line 20.5 cm below the waist to a hem at `level`, all in mm. */
function skirt(hip: number, hem: number, level: number): GirthProfile {
  return [
    { level: 205, girth: hip },
    { level, girth: hem },
  ];
}

// Derived: a taut band round two legs a step apart; common practice, no source.
describe('the girth that a step needs', () => {
  it.each([
    ['at the knee', 0, [91.6, 100.9, 115.7]],
    ['5 cm below the knee', 50, [97.9, 108.4, 125.2]],
    ['10 cm below the knee', 100, [105.2, 117, 135.7]],
    ['20 cm below the knee', 200, [113.9, 128, 150.7]],
  ])('%s, for steps of 60, 70 and 86 cm', (_place, below, girths) => {
    [600, 700, 860].forEach((step, i) => {
      const girth = girthForStep(step, KNEE + below, REFERENCE) / 10;
      expect(Math.abs(girth - (girths[i] ?? NaN))).toBeLessThan(0.1);
    });
  });

  // From memory of a textbook, unconfirmed: 94, 100, 126, 134, 146 cm for a step of 67 cm.
  it.each([
    ['10 cm above the knee', -100, 94],
    ['knee', 0, 100],
    ['upper calf', 100, 126],
    ['lower calf', 200, 134],
    ['ankle', 360, 146],
  ])('lies 2 to 10 %% below a remembered table at the %s', (_place, below, remembered) => {
    const share = girthForStep(670, KNEE + below, REFERENCE) / 10 / remembered;
    expect(share).toBeGreaterThan(0.9);
    expect(share).toBeLessThan(0.985);
  });

  it('is the limb alone at the hip joint and above it', () => {
    expect(girthForStep(700, 170, REFERENCE)).toBe(570);
    expect(girthForStep(700, 100, REFERENCE)).toBe(570);
  });
});

describe('the step that a girth allows', () => {
  // Derived; common practice, no source.
  it.each([
    [1000, 0, 69],
    [1000, 100, 55.5],
    [1000, 200, 50.2],
    [920, 0, 60.4],
    [920, 100, 48.7],
    [920, 200, 44.5],
  ])('%d mm, %d mm below the knee: %d cm', (girth, below, step) => {
    expect(stepInGirth(girth, KNEE + below, REFERENCE) / 10).toBeCloseTo(step, 0);
  });

  it('is nothing where the girth is that of one leg, and two legs where nothing holds it', () => {
    expect(stepInGirth(350, KNEE + 100, REFERENCE)).toBe(0);
    expect(stepInGirth(200, KNEE + 100, REFERENCE)).toBe(0);
    expect(stepInGirth(900, 100, REFERENCE)).toBe(1640);
    expect(stepInGirth(90000, KNEE, REFERENCE)).toBe(1640);
  });
});

// Hip 100, hem 92 ten cm below the knee, leg 82 cm. Derived; common practice, no source.
describe('a pencil skirt of 100 cm at the hip and 92 cm at the hem', () => {
  const pencil = skirt(1000, 920, KNEE + 100);

  it('allows a step of 48.7 cm, at its hem', () => {
    const { step, level } = longestStride(pencil, REFERENCE);
    expect(step / 10).toBeCloseTo(48.7, 1);
    expect(level).toBe(650);
  });

  it.each([
    [700, 15.3],
    [600, 8.5],
    [500, 1.1],
    [480, 0],
  ])('is opened for a step of %d mm from %d cm above the hem', (step, above) => {
    expect(openingForStep(step, pencil, REFERENCE) / 10).toBeCloseTo(above, 1);
  });
});

const anySkirt = fc
  .record({
    hip: fc.integer({ min: 850, max: 1600 }),
    taper: fc.integer({ min: -300, max: 200 }),
    hem: fc.integer({ min: 400, max: 900 }),
  })
  .map(({ hip, taper, hem }) => skirt(hip, hip - taper, hem));
const anyWalker = fc
  .record({
    height: fc.integer({ min: 1450, max: 1850 }),
    hip_girth: fc.integer({ min: 800, max: 1500 }),
  })
  .map((rows) => walkerOf(new Map(Object.entries(rows))));
const anyStep = fc.integer({ min: 100, max: 1200 });

describe('any skirt', () => {
  it('needs an opening at least as high for a longer step', () => {
    fc.assert(
      fc.property(anySkirt, anyWalker, anyStep, anyStep, (profile, walker, one, other) => {
        const [short, long] = [Math.min(one, other), Math.max(one, other)];
        const least = openingForStep(short, profile, walker);
        expect(openingForStep(long, profile, walker)).toBeGreaterThanOrEqual(least - 1e-9);
      }),
    );
  });

  it('allows at least as long a step with a wider hem', () => {
    fc.assert(
      fc.property(
        anySkirt,
        anyWalker,
        fc.integer({ min: 0, max: 500 }),
        (profile, walker, more) => {
          const wider = profile.map(({ level, girth }, i) => ({
            level,
            girth: i === 0 ? girth : girth + more,
          }));
          const { step } = longestStride(profile, walker);
          expect(longestStride(wider, walker).step).toBeGreaterThanOrEqual(step - 1e-9);
        },
      ),
    );
  });

  it('allows the step it is opened for, and no more than that where it had to be opened', () => {
    fc.assert(
      fc.property(anySkirt, anyWalker, anyStep, (profile, walker, step) => {
        const [top, bottom] = profile;
        const opening = openingForStep(step, profile, walker);
        if (opening >= (bottom?.level ?? 0) - (top?.level ?? 0)) return;
        const opened = longestStride(profile, walker, opening).step;
        expect(opened).toBeGreaterThanOrEqual(step - 1e-6);
        if (opening > 0) expect(opened).toBeCloseTo(step, 6);
        else expect(longestStride(profile, walker).step).toBeGreaterThanOrEqual(step - 1e-6);
      }),
    );
  });

  it('holds the step at no level more than at the one it names', () => {
    fc.assert(
      fc.property(
        anySkirt,
        anyWalker,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (profile, walker, share) => {
          const [top, bottom] = profile.map(({ level }) => level);
          const level = (top ?? NaN) + share * ((bottom ?? NaN) - (top ?? NaN));
          const here = stepInGirth(girthAt(profile, level), level, walker);
          expect(here).toBeGreaterThanOrEqual(longestStride(profile, walker).step - 1e-6);
        },
      ),
    );
  });

  it('shorter than to the hip joint lets the legs go as far as they reach', () => {
    expect(
      longestStride(skirt(900, 900, 206), walkerOf(new Map([['waist_to_knee', 600]]))),
    ).toEqual({ step: 1640, level: 206 });
  });
});

describe('the walker', () => {
  it('is the reference where the chart tells nothing', () => {
    expect(REFERENCE).toMatchObject({ stature: 1640, isAssumed: true, leg: 820, hipJoint: 170 });
    const girths = [170, KNEE, KNEE + 50, KNEE + 100, KNEE + 200].map((level) =>
      girthAt(REFERENCE.limb, level),
    );
    expect(girths).toEqual([570, 360, 350, 350, 290]);
  });

  it('has legs of half her stature, and all levels in proportion', () => {
    const tall = walkerOf(new Map([['height', 1804]]));
    expect(tall).toMatchObject({ stature: 1804, isAssumed: false, leg: 902 });
    expect(tall.hipJoint).toBeCloseTo(187, 9);
    expect(tall.limb[1]?.level).toBeCloseTo(605, 9);
    expect(walkerOf(new Map([['height', 1804]]), 1700)).toMatchObject({ stature: 1700, leg: 850 });
  });

  it('has the legs and the knee that the chart gives', () => {
    const known = walkerOf(
      new Map([
        ['height', 1640],
        ['crotch_height', 790],
        ['inside_leg_length', 700],
        ['waist_to_knee', 600],
        ['thigh_girth', 600],
        ['knee_girth', 380],
        ['calf_girth', 385],
      ]),
    );
    expect(known).toMatchObject({ isAssumed: false, leg: 840 });
    expect(known.hipJoint).toBeCloseTo(600 - (380 * 840) / 820, 9);
    expect(known.limb.slice(0, 4).map(({ girth }) => girth)).toEqual([600, 380, 385, 385]);
    expect(walkerOf(new Map([['inside_leg_length', 770]])).leg).toBe(820);
  });

  // 1988 Anthropometric Survey of US Army Personnel, women: knee girth = 7.34 + 0.302 hip,
  // thigh girth = -7.84 + 0.681 hip, in cm.
  it.each([85, 95, 110, 140])('has thigh and knee of a survey at a hip of %d cm', (hip) => {
    const [thigh, knee] = walkerOf(new Map([['hip_girth', hip * 10]])).limb;
    expect(Math.abs((thigh?.girth ?? NaN) / 10 - (-7.84 + 0.681 * hip))).toBeLessThan(0.2);
    expect(Math.abs((knee?.girth ?? NaN) / 10 - (7.34 + 0.302 * hip))).toBeLessThan(0.2);
  });

  // PMC2943048 table 2: step length / stature 0.422 to 0.433 in two groups.
  it('wants a step of 67 to 70 cm at a stature of 160 to 165 cm', () => {
    for (const height of [1600, 1650]) {
      const step = wantedStep(walkerOf(new Map([['height', height]])));
      expect(step).toBeGreaterThanOrEqual(670);
      expect(step).toBeLessThanOrEqual(700);
    }
  });
});
