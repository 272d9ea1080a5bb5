/** Every sign of a drafted skirt's own rule sheet turned round, one at a time, and named. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/check/finding';
import type { GradedPattern } from '../../src/grade/graded-pattern';
import type { Point } from '../../src/geometry/point';
import { pointOf } from '../../src/pattern/piece';
import { graded } from '../given/sheets';
import { LONG, some } from '../samples';
import { chartText } from '../skirts';
import { gradeLazily } from '../graded';
import { STYLE_NAMES } from '../styles';

const CHART = chartText(
  'in',
  {
    waist_girth: ['25', '26', '28', '30', '33'],
    hip_girth: ['35', '36', '38', '40', '43'],
    waist_to_hip: ['7 1/2', '7 3/4', '8', '8 1/4', '8 1/2'],
    skirt_length: ['23 1/2', '23 3/4', '24', '24 1/4', '24 1/2'],
  },
  ['6', '8', '10', '12', '14'],
);
const BASE = '10';
/** mm. A sign of less can hardly be seen. */
const SEEN = 1;

interface Rule {
  readonly piece: string;
  readonly point: string;
  /** Moves from the base, one a size. */
  readonly moves: readonly Point[];
  readonly isSide: boolean;
}

/** The panels of a skirt as a sample room has them: a base pattern, and a rule for every point. */
function handedOn({ sizes, rules, plans }: GradedPattern) {
  const base = sizes[rules.base]?.pieces ?? [];
  const rows: string[] = [];
  const sheet: Rule[] = [];
  base.forEach((piece, p) => {
    const plan = plans[p];
    if (plan?.part !== 'panel') return;
    const add = (point: string, kind: string, seam: string): void => {
      const at = pointOf(piece, point);
      const place = `${at.x.toFixed(9)},${at.y.toFixed(9)}`;
      rows.push(`${plan.name},${point},${place},${kind},${seam},${seam === 'side' ? seam : ''}`);
      const moves = rules.moves.map((of) => of[p]?.[plan.index.get(point) ?? -1] ?? { x: 0, y: 0 });
      const isSide = plan.outline.some(
        ({ seam: own, from, to }) => own === 'side' && [from, to].includes(point),
      );
      if (kind !== 'handle') sheet.push({ piece: plan.name, point, moves, isSide });
    };
    for (const edge of plan.outline) {
      add(edge.from, 'corner', edge.seam);
      if (edge.kind === 'dart') add(edge.tip, 'dart', '');
      if (edge.kind === 'cubic')
        for (const name of [edge.leave, edge.arrive]) add(name, 'handle', '');
    }
  });
  const pattern = `# unit: mm\n# base: ${BASE}\npiece,point,x,y,kind,edge,seam\n${rows.join('\n')}\n`;
  return { pattern, sheet, labels: sizes.map(({ label }) => label) };
}

/** The findings for the sheet with the moves of one rule changed by `wrong`. */
function findings(
  { pattern, sheet, labels }: ReturnType<typeof handedOn>,
  changed?: Rule,
  wrong: readonly Point[] = [],
): readonly Finding[] {
  const lines = sheet.flatMap((rule) =>
    labels.flatMap((label, size) => {
      const { x, y } = (rule === changed ? wrong : rule.moves)[size] ?? { x: 0, y: 0 };
      if (label === BASE) return [];
      return [`${rule.piece},${rule.point},${label},${x.toFixed(6)},${y.toFixed(6)}`];
    }),
  );
  const rules = `# unit: mm\n# sizes: ${labels.join(', ')}\npiece,point,size,dx,dy\n${lines.join('\n')}\n`;
  return graded(pattern, rules).findings;
}

/** Whether a finding names the point and the axis, and a size from which it shows. */
function names(found: readonly Finding[], { piece, point }: Rule, axis: 'x' | 'y'): boolean {
  return found.some(
    ({ check, piece: own, subject, size, message }) =>
      /^(wrong-sign|step-turns)$/u.test(check) &&
      size !== '' &&
      (own === piece && subject === point
        ? message.includes(`d${axis} `)
        : message.includes(`${piece} ${point} d${axis}`)),
  );
}

describe.each(some(STYLE_NAMES).map((style, i) => ({ style, i })))(
  'the sheet of $style',
  ({ style, i: rank }) => {
    const given = handedOn(gradeLazily({ chart: CHART, base: BASE, style }).range);
    const base = given.labels.indexOf(BASE);

    it('accuses nobody where all signs are right', () => {
      const accused = findings(given).filter(({ check }) => /sign|step-turns/u.test(check));
      expect(accused).toEqual([]);
    });

    it('names nearly every sign that is wrong in all sizes', () => {
      const signs = given.sheet.flatMap((rule) =>
        (['x', 'y'] as const)
          .filter((axis) => rule.moves.some((move) => Math.abs(move[axis]) >= SEEN))
          .map((axis) => ({ rule, axis })),
      );
      // In passing one of eight, others in each sheet.
      const planted = LONG ? signs : signs.filter((_, i) => i % 8 === rank);
      const missed = planted.filter(({ rule, axis }) => {
        const wrong = rule.moves.map((move) => ({ ...move, [axis]: -move[axis] }));
        return !names(findings(given, rule, wrong), rule, axis);
      });
      const told = missed.map(({ rule, axis }) => `${rule.piece}.${rule.point} d${axis}`);
      console.log(`${style}: ${told.length} of ${planted.length} signs missed`, told);
      expect(signs.length).toBeGreaterThan(10);
      expect(planted.length).toBeGreaterThan(LONG ? 10 : 1);
      expect(missed.length / planted.length).toBeLessThanOrEqual(0.1);
    });

    it.each(LONG ? [1, -1] : [rank % 2 === 0 ? 1 : -1])(
      'names a sign that is wrong in one step, %i from the base',
      (direction) => {
        const first = base + direction;
        for (const rule of some(given.sheet.filter(({ isSide }) => isSide))) {
          for (const axis of ['x', 'y'] as const) {
            const step = rule.moves[first]?.[axis] ?? 0;
            if (Math.abs(step) < SEEN) continue;
            const wrong = rule.moves.map((move, size) =>
              (size - first) * direction >= 0 ? { ...move, [axis]: move[axis] - 2 * step } : move,
            );
            const label = `${rule.piece}.${rule.point} d${axis}`;
            expect(names(findings(given, rule, wrong), rule, axis), label).toBe(true);
          }
        }
      },
    );
  },
);
