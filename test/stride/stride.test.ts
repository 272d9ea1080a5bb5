import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { girthAt } from '../../src/stride/girth-profile';
import type { GirthProfile } from '../../src/stride/girth-profile';
import { longestStride, openingForStep } from '../../src/stride/stride';
import { hullOfLegs, stepOfHull } from '../../src/stride/two-legs';
import type { Walker } from '../../src/stride/walker';
import { walkerOf, wantedStep } from '../../src/stride/walker';
import {
  JOINT,
  LEG,
  bandRoundLegs,
  openingByHand,
  referenceLimb,
  stepByHand,
} from './hull-by-hand';

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

/** The remembered table: mm below the knee (the engine's own choice), girth in cm for a step of 67 cm. */
// From memory of a textbook on skirts, unverified.
const REMEMBERED = [
  ['10 cm above the knee', -100, 94],
  ['the knee', 0, 100],
  ['the upper calf', 100, 126],
  ['the lower calf', 200, 134],
  ['the ankle', 360, 146],
] as const;

/** mm that a skirt of this girth at one level allows. */
const stepInGirth = (girth: number, level: number, walker: Walker): number =>
  longestStride([{ level, girth }], walker).step;

describe('the band round two legs', () => {
  // The convex hull of two outlines laid down as points, in hull-by-hand.ts.
  it.each([-100, 0, 50, 100, 200, 360])('is their hull, %d mm below the knee', (below) => {
    const limb = referenceLimb(KNEE + below - JOINT);
    for (const step of [0, 200, 600, 860, 1200]) {
      const along = (step * (KNEE + below - JOINT)) / LEG;
      const hull = hullOfLegs(step, KNEE + below, REFERENCE);
      expect(Math.abs(hull - bandRoundLegs(limb, along))).toBeLessThan(0.1);
      if (step > 0) expect(stepOfHull(hull, KNEE + below, REFERENCE)).toBeCloseTo(step, 6);
    }
  });

  it('is longer than with both legs in one line', () => {
    for (const [, below] of REMEMBERED) {
      const limb = referenceLimb(KNEE + below - JOINT);
      const along = (670 * (KNEE + below - JOINT)) / LEG;
      const inLine = bandRoundLegs(limb, along, { side: 0 });
      expect(inLine).toBeCloseTo(limb + 2 * along, 0);
      expect(hullOfLegs(670, KNEE + below, REFERENCE)).toBeGreaterThan(inLine + 5);
    }
  });

  it('hardly changes where legs are a fifth deeper or wider than round', () => {
    for (const [, below] of REMEMBERED)
      for (const flat of [1 / 1.2, 1.2]) {
        const limb = referenceLimb(KNEE + below - JOINT);
        const along = (670 * (KNEE + below - JOINT)) / LEG;
        const oval = bandRoundLegs(limb, along, { flat });
        expect(Math.abs(oval / hullOfLegs(670, KNEE + below, REFERENCE) - 1)).toBeLessThan(0.03);
      }
  });

  it('is that of both legs side by side without a step, and as at the crotch above it', () => {
    const limb = referenceLimb(50);
    expect(hullOfLegs(0, 220, REFERENCE)).toBeCloseTo(limb + (2 * limb) / Math.PI, 9);
    expect(hullOfLegs(700, 100, REFERENCE)).toBe(hullOfLegs(700, 220, REFERENCE));
  });
});

describe('the step in the girths of the remembered table', () => {
  it.each(REMEMBERED)(
    'is never more than its 67 cm, and 57 at least: %s',
    (_place, below, girth) => {
      const step = stepInGirth(girth * 10, KNEE + below, REFERENCE);
      expect(step).toBeLessThanOrEqual(670);
      expect(step).toBeGreaterThan(565);
      // Errs short by 18 % at most, which the upper end of its spread makes good.
      const { atBest } = longestStride([{ level: KNEE + below, girth: girth * 10 }], REFERENCE);
      expect(atBest).toBeGreaterThanOrEqual(670);
      expect(670 / step).toBeLessThan(1.185);
    },
  );

  // What the README tells of other bodies, and no source: it pins the words to the engine.
  it.each([
    [840, 608, 692],
    [950, 567, 663],
    [1100, 454, 623],
  ])('is what is told of a hip of %d mm: %d to %d mm', (hip, least, most) => {
    const walker = walkerOf(new Map([['hip_girth', hip]]));
    const steps = REMEMBERED.map(([, below, girth]) =>
      stepInGirth(girth * 10, walker.knee + below, walker),
    );
    expect(Math.round(Math.min(...steps))).toBe(least);
    expect(Math.round(Math.max(...steps))).toBe(most);
  });

  it('comes near 67 cm where the table is least generous to the hull', () => {
    const steps = REMEMBERED.map(([, below, girth]) =>
      stepInGirth(girth * 10, KNEE + below, REFERENCE),
    );
    expect(Math.max(...steps)).toBeGreaterThan(660);
  });
});

describe('the step that a girth allows', () => {
  it.each([
    [1000, 0],
    [1000, 100],
    [1000, 200],
    [920, 0],
    [920, 100],
    [920, 200],
    [1250, 0],
  ])(
    "%d mm, %d mm below the knee: the geometry alone, by points and with the engine's own share",
    (girth, below) => {
      const step = stepInGirth(girth, KNEE + below, REFERENCE);
      expect(Math.abs(step - stepByHand(girth, KNEE + below))).toBeLessThan(0.2);
    },
  );

  it('is nothing where both legs side by side fill the girth, and without limit where nothing holds it', () => {
    expect(stepInGirth(350, KNEE + 100, REFERENCE)).toBe(0);
    const sideBySide = bandRoundLegs(350, 0);
    expect(stepInGirth(sideBySide - 0.1, KNEE + 100, REFERENCE)).toBe(0);
    expect(stepInGirth(sideBySide + 1, KNEE + 100, REFERENCE)).toBeGreaterThan(0);
    // Where the legs have not parted, and where the girth is longer than both legs: nothing holds it.
    expect(stepInGirth(900, 100, REFERENCE)).toBe(Infinity);
    expect(stepInGirth(90000, KNEE, REFERENCE)).toBe(Infinity);
  });
});

describe('a pencil skirt of 100 cm at the hip and 92 cm at the hem', () => {
  const pencil = skirt(1000, 920, KNEE + 100);

  it('allows at its hem what that allows by hand', () => {
    const { step, atBest, level } = longestStride(pencil, REFERENCE);
    expect(Math.abs(step - stepByHand(920, KNEE + 100))).toBeLessThan(0.2);
    expect(atBest / step).toBeCloseTo(1.04 / 0.88, 9);
    expect(level).toBe(650);
  });

  it.each([700, 600, 500, 450, 350])('is opened for a step of %d mm as by hand', (step) => {
    const byHand = openingByHand(step, [205, 1000], [650, 920]);
    const opening = openingForStep(step, pencil, REFERENCE);
    // The first level by hand is up to 1 mm lower than where the lack begins.
    expect(opening - byHand).toBeGreaterThan(-0.1);
    expect(opening - byHand).toBeLessThan(1.1);
  });

  it('is not opened for a step that it allows', () => {
    expect(openingForStep(350, pencil, REFERENCE)).toBe(0);
    expect(openingForStep(450, pencil, REFERENCE)).toBeGreaterThan(0);
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
    ).toEqual({ step: Infinity, atBest: Infinity, level: 206 });
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
    const tall = walkerOf(new Map([['stature', 1804]]));
    expect(tall).toMatchObject({ stature: 1804, isAssumed: false, leg: 902 });
    expect(tall.hipJoint).toBeCloseTo(187, 9);
    expect(tall.limb[1]?.level).toBeCloseTo(605, 9);
    expect(walkerOf(new Map([['stature', 1804]]), 1700)).toMatchObject({ stature: 1700, leg: 850 });
  });

  it('has the legs and the knee that the chart gives', () => {
    const known = walkerOf(
      new Map([
        ['stature', 1640],
        ['crotch_height', 790],
        ['inside_leg_length', 700],
        ['waist_to_knee', 600],
        ['hip_girth', 1000],
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
  it.each([85, 95, 110])('has thigh and knee of a survey at a hip of %d cm', (hip) => {
    const [thigh, knee] = walkerOf(new Map([['hip_girth', hip * 10]])).limb;
    expect(Math.abs((thigh?.girth ?? NaN) / 10 - (-7.84 + 0.681 * hip))).toBeLessThan(0.2);
    expect(Math.abs((knee?.girth ?? NaN) / 10 - (7.34 + 0.302 * hip))).toBeLessThan(0.2);
  });

  it.each([115, 140])('has thighs that go side by side into a hip of %d cm', (hip) => {
    const walker = walkerOf(new Map([['hip_girth', hip * 10]]));
    const [thigh, knee] = walker.limb;
    expect(bandRoundLegs(thigh?.girth ?? NaN, 0) / 10).toBeCloseTo(hip, 1);
    expect(Math.abs((knee?.girth ?? NaN) / 10 - (7.34 + 0.302 * hip))).toBeLessThan(0.2);
  });

  // PMC2943048 table 2: step length / stature .433 (sd .035) in the fastest group.
  it('wants a step of 69.3 cm at a stature of 160 cm and 71.4 cm at 165 cm', () => {
    const steps = [1600, 1650].map((height) =>
      wantedStep(walkerOf(new Map([['stature', height]]))),
    );
    expect(steps[0]).toBeCloseTo(692.8, 6);
    expect(steps[1]).toBeCloseTo(714.45, 6);
  });
});
