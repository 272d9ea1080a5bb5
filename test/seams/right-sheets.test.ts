/** Right rule sheets of many kinds, in which nobody may be accused of a slip. */
import { describe, expect, it } from 'vitest';
import { LONG, SEED } from '../samples';
import type { Form, Garment, Shares } from './planted/garment';
import { gradedBy, rightMoves, ruleText } from './planted/garment';
import { GARMENTS } from './planted/garments';
import { VEST } from './planted/vest';

const FORMS: readonly Form[] = ['moves', 'steps'];
const SHEETS = LONG ? 40 : 2;

/** A generator of numbers from 0 to 1 that is the same in every run (Park and Miller's, 1988). */
function numbers(seed: number): () => number {
  let state = seed % 2147483647;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

/**
 * What no seam binds, and the shares that a grader may give it: what a neck, a center or a hem does is
 * his own affair. Points of one entry keep together.
 */
const FREE: Readonly<Record<string, readonly (readonly [RegExp, 'x' | 'y', number, number])[]>> = {
  'bodice with sleeve': [
    [/^front\.neck_center$/u, 'y', 0, 0.5],
    [/^back\.neck_center$/u, 'y', 0, 0.15],
    [/^(front|back)\.waist_center$/u, 'y', 0.8, 1],
    [/^sleeve\.wrist_/u, 'y', 0.4, 1],
  ],
  trouser: [
    [/^front\.hip_side$|^back\.hip_side$/u, 'y', 0.5, 0.9],
    [/^(front|back)\.knee_side$/u, 'y', 0.9, 1.1],
  ],
  'six gores': [[/\.hem_/u, 'y', 0, 1.5]],
  'yoke skirt': [[/_skirt\.hem_/u, 'y', 0.5, 2]],
  vest: [
    [/^front\.neck_center$/u, 'y', 0, 0.4],
    [/^back\.neck_center$/u, 'y', 0, 0.1],
    [/\.neck_shoulder$/u, 'x', 0.1, 0.3],
    [/\.arm_mid$/u, 'x', 0.13, 0.17],
    [/\.arm_mid$/u, 'y', 0.2, 0.4],
    [/\.hip_center$|hip_side$|_hip$/u, 'y', 1, 1.6],
  ],
};

/** The garment with other growth, even or with one break, and other shares where no seam binds them. */
function varied(garment: Garment, next: () => number): Garment {
  const steps = garment.sizes.length - 1;
  const breakAt = Math.floor(next() * steps);
  const grows = Object.fromEntries(
    Object.entries(garment.grows).map(([measure, [first = 0]]) => {
      const even = Math.round(first * (0.7 + 0.8 * next()) * 2) / 2;
      const more = next() < 0.6 ? 0 : Math.round(even * 0.6 * next() * 2) / 2;
      return [measure, Array.from({ length: steps }, (_, k) => (k < breakAt ? even : even + more))];
    }),
  );
  const rules = { ...garment.rules };
  for (const [points, axis, least, most] of FREE[garment.name] ?? []) {
    const share = Math.round((least + (most - least) * next()) * 20) / 20;
    for (const [name, [x, y]] of Object.entries(rules)) {
      if (!points.test(name)) continue;
      const scaled = (old: Shares): Shares => {
        const [measure = 'length'] = Object.keys(old);
        return share === 0 ? {} : { ...old, [measure]: share };
      };
      rules[name] = axis === 'x' ? [scaled(x), y] : [x, scaled(y)];
    }
  }
  return { ...garment, grows, rules };
}

describe('right sheets', () => {
  it.each([...GARMENTS, VEST])('of a $name accuse nobody', (garment) => {
    const next = numbers(SEED);
    const accused: string[] = [];
    for (let i = LONG ? 0 : 1; i < SHEETS; i++) {
      const own = i === 0 ? garment : varied(garment, next);
      const sheet = ruleText(
        own,
        rightMoves(own),
        FORMS[i % 2] ?? 'moves',
        i % 3 === 0 ? 100 : 1000,
      );
      const { findings } = gradedBy(own, sheet);
      accused.push(
        ...findings
          .filter(
            ({ check, severity }) =>
              /^(wrong-sign|rule-slip|rule-doubt)$/u.test(check) ||
              (/^(fold-straight|point-unruled)$/u.test(check) && severity !== 'note'),
          )
          .map(({ check, size, message }) => `sheet ${i}, ${check} ${size}: ${message}`),
      );
    }
    expect(accused).toEqual([]);
  });
});

describe('one cell of a vest that is 3 mm off', () => {
  it('is called that, not ten times of a number that nobody types', () => {
    const right = rightMoves(VEST);
    const own = right.get('front.neck_shoulder') ?? [];
    const wrong = own.map((move, size) => (size === 0 ? { ...move, y: move.y + 3 } : move));
    const sheet = ruleText(VEST, new Map(right).set('front.neck_shoulder', wrong), 'moves');
    const told = gradedBy(VEST, sheet).findings.filter(({ check }) => check === 'rule-slip');
    expect(told).toMatchObject([{ piece: 'front', subject: 'neck_shoulder', size: '34' }]);
    expect(told[0]?.message).toMatch(/^dy of front neck_shoulder is probably off by 0\.3 cm/u);
  });
});
