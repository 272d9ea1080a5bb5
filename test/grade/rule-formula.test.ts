import fc from 'fast-check';
import { derivative } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { checkRuleFormulas } from '../../src/check/rule-formula';
import { compileBlock } from '../../src/draft/compile-block';
import type { Drafter } from '../../src/draft/compile-block';
import { resolveParameters } from '../../src/draft/parameters';
import { findStyle } from '../../src/draft/styles';
import { quotient } from '../../src/formula/fraction';
import { blockGradients } from '../../src/grade/rule-formula-gradients';
import { gradeChart, resultFiles } from '../../src/index';
import type { GradeRequest, PointRule, Rule } from '../../src/index';
import type { DraftedResult } from '../graded';
import { anyChart, chartText, sixteenthsText } from '../skirts';
import { runs, some } from '../samples';
import { STYLE_NAMES } from '../styles';
import { treeText } from '../../src/formula/tree';
import { gradeLazily } from '../graded';

const CHART = chartText('cm', {
  waist_girth: [66, 70, 74],
  hip_girth: [92, 96, 99],
  waist_to_hip: [20.3, 20.6, 20.9],
  waist_to_knee: [58, 58.5, 59],
  skirt_length: [59, 60, 61],
});

function grade(request: Partial<GradeRequest> = {}): DraftedResult {
  return gradeLazily({ style: 'pencil', chart: CHART, base: '2', ...request });
}

function ruleOf({ range }: DraftedResult, piece: string, point: string): PointRule {
  const p = range.plans.findIndex(({ name }) => name === piece);
  const rule = range.draft.ruleFormulas[p]?.[range.plans[p]?.index.get(point) ?? -1];
  if (rule === undefined) throw new RangeError(`no rule for ${piece} ${point}`);
  return rule;
}

const texts = ({ x, y }: PointRule): readonly [string, string] => [x.text, y.text];

// US trade: the whole grade divided by four panels (Threads no. 101, fashion-incubator.com); the
// dart by half of the quarter's grade: common practice, no source.
describe('the rules of the quarter method', () => {
  it.each([
    ['center_waist', '0', '0'],
    ['side_waist', '1/4 waist_girth', '0'],
    ['dart_inner', '1/8 waist_girth', '0'],
    ['dart_tip', '1/8 waist_girth', '0'],
    ['dart_outer', '1/8 waist_girth', '0'],
    ['side_hip', '1/4 hip_girth', 'waist_to_hip'],
    ['side_hip_handle', '1/4 hip_girth', '2/3 waist_to_hip'],
    ['side_waist_handle', '1/12 waist_girth + 1/6 hip_girth', '1/3 waist_to_hip'],
    ['side_hem', '1/4 hip_girth', 'skirt_length'],
    ['center_hem', '0', 'skirt_length'],
    ['center_hip', '0', 'waist_to_hip'],
  ])('move %s by %s and %s', (point, x, y) => {
    const result = grade();
    for (const piece of ['front', 'back']) {
      const rule = ruleOf(result, piece, point);
      expect(texts(rule)).toEqual([x, y]);
      expect([rule.x.kind, rule.y.kind]).toEqual(['linear', 'linear']);
    }
  });

  it('start from the stack point', () => {
    const result = grade({ stack: 'side_hip' });
    expect(texts(ruleOf(result, 'front', 'side_hip'))).toEqual(['0', '0']);
    expect(texts(ruleOf(result, 'front', 'center_waist'))).toEqual([
      '-1/4 hip_girth',
      '-waist_to_hip',
    ]);
    expect(texts(ruleOf(result, 'back', 'side_waist'))).toEqual([
      '1/4 waist_girth - 1/4 hip_girth',
      '-waist_to_hip',
    ]);
  });

  it('follow a parameter to its measurements', () => {
    const set = {
      skirt_length: 'waist_to_knee - 2 in',
      hem_taper: '0.3*waist_to_hip/7',
      waist_ease: '(1 + 0.2471)*4*hip_girth - 4.9*hip_girth',
    };
    const result = grade({ set });
    expect(texts(ruleOf(result, 'front', 'side_hem'))).toEqual([
      '1/4 hip_girth - 3/70 waist_to_hip',
      'waist_to_knee',
    ]);
    // 0.0221 is 221/10000, which nobody reads as a fraction.
    expect(ruleOf(result, 'front', 'side_waist').x.text).toBe('1/4 waist_girth + 0.0221 hip_girth');
  });

  it('have the numbers of their texts', () => {
    const { x, y } = ruleOf(grade(), 'front', 'side_waist_handle');
    expect(x.coefficients).toEqual(
      new Map([
        ['waist_girth', 1 / 12],
        ['hip_girth', 1 / 6],
      ]),
    );
    expect(y.coefficients).toEqual(new Map([['waist_to_hip', 1 / 3]]));
  });
});

describe('the rules of the fixed-dart block', () => {
  // Darts at thirds of the back waist edge and two thirds of the front one, which is a quarter of
  // the waist: project-patterns.co.uk (2018-11-22).
  it.each([
    ['back', 'inner_dart', '1/12 waist_girth'],
    ['back', 'outer_dart', '1/6 waist_girth'],
    ['front', 'dart', '1/6 waist_girth'],
  ])('move the whole %s %s by %s', (piece, dart, expected) => {
    const result = grade({ style: 'fixed-dart' });
    for (const part of ['inner', 'tip', 'outer'])
      expect(ruleOf(result, piece, `${dart}_${part}`).x.text).toBe(expected);
  });
});

describe('the rules of the shared drop', () => {
  it('say which points truing moves', () => {
    const { x } = ruleOf(grade({ style: 'shared-drop' }), 'front', 'side_waist');
    expect(x.kind).toBe('implicit');
    expect(x.text).toMatch(/^0\.1\d+ \w+_girth [+] 0\.1\d+ \w+_girth .*\(numeric at base\)$/);
    // By its plan width the side point moves by an eighth of either girth.
    expect(x.coefficients?.get('waist_girth')).toBeCloseTo(1 / 8, 1);
    expect(x.coefficients?.get('hip_girth')).toBeCloseTo(1 / 8, 1);
  });

  // TRADE case W7 (b): W +4, H +3 a size; shares 0.5, 0.3, 0.2. The intake of a dart with a
  // vertical axis is its outer leg's place less its inner one's.
  it.each([
    ['back', -0.15],
    ['front', -0.1],
  ])('narrow the %s darts by a share of the drop', (piece, expected) => {
    const set = { axis_square: '0', back_darts: '1', front_darts: '1' };
    const result = grade({ style: 'shared-drop', set });
    const leg = (name: string): number => {
      const { kind, coefficients } = ruleOf(result, piece, `dart_${name}`).x;
      expect(kind).toBe('linear');
      return (
        4 * (coefficients?.get('waist_girth') ?? NaN) + 3 * (coefficients?.get('hip_girth') ?? NaN)
      );
    };
    expect(leg('outer') - leg('inner')).toBeCloseTo(expected, 12);
  });

  it('widen the waist edge of each panel by 0.875 before truing', () => {
    const { drafter, base } = drafterOf('shared-drop');
    const gradients = blockGradients(drafter, base);
    for (const key of ['front/width', 'back/width']) {
      const terms = gradients.get(key)?.terms;
      const [waist, hip] = ['waist_girth', 'hip_girth'].map((name) => terms?.get(name));
      expect([waist, hip]).toEqual([
        { top: 1, bottom: 8 },
        { top: 1, bottom: 8 },
      ]);
    }
    const share = gradients.get('back_intake')?.terms.get('hip_girth');
    expect(share).toEqual({ top: 3, bottom: 20 });
  });

  it('are smooth where a formula bends without truing', () => {
    const { y } = ruleOf(grade({ style: 'shared-drop' }), 'front', 'dart_fold');
    expect(y.kind).toBe('smooth');
    expect(y.text).toMatch(/ \(smooth at base\)$/);
  });
});

describe('a kink', () => {
  const skirt_length = 'max(waist_to_knee, 58.5 cm)';

  it('at the base size leaves no rule', () => {
    const { y } = ruleOf(grade({ set: { skirt_length } }), 'front', 'center_hem');
    expect([y.kind, y.text, y.coefficients]).toEqual(['implicit', 'not smooth at base', undefined]);
  });

  it('elsewhere does not', () => {
    const { y } = ruleOf(grade({ set: { skirt_length }, base: '3' }), 'front', 'center_hem');
    expect([y.kind, y.text]).toEqual(['implicit', 'waist_to_knee (numeric at base)']);
  });

  it('is what the end of an allowed range is', () => {
    // 70 cm of waist give just the 6 in that a hem may taper.
    const set = { hem_taper: 'max(waist_girth - 54.76 cm, 0 cm)' };
    const { x } = ruleOf(grade({ set, sizes: ['2'], chart: narrowed() }), 'front', 'side_hem');
    expect(x.text).toBe('not smooth at base');
  });

  /** No size with a wider waist than the base. */
  function narrowed(): string {
    return chartText('cm', { waist_girth: [66, 70], hip_girth: [92, 96], skirt_length: [59, 60] });
  }
});

/** Directions in which a body may grow, in cm; every one makes the hip or waist larger. */
const DIRECTIONS = [
  [1, 0, 0, 0],
  [0, 1, 0, 0],
  [0.5, 0.5, 1, 0],
  [0.5, 0.5, 0, 1],
] as const;

/** Drafts a hair to both sides of a body in one direction, as a chart of three sizes. */
function beside(step: number, [waist, hip, depth, length]: readonly number[]): string {
  const row = (middle: number, way = 0): readonly string[] =>
    [-step, 0, step].map((s) => (middle + s * way).toFixed(6));
  return chartText('cm', {
    waist_girth: row(70, waist),
    hip_girth: row(96, hip),
    waist_to_hip: row(20.6, depth),
    skirt_length: row(60, length),
  });
}

function slopeAlong({ coefficients }: Rule, direction: readonly number[]): number {
  const names = ['waist_girth', 'hip_girth', 'waist_to_hip', 'skirt_length'];
  return names.reduce(
    (sum, name, i) => sum + (coefficients?.get(name) ?? 0) * (direction[i] ?? 0),
    0,
  );
}

const CLOSE: Readonly<Record<Rule['kind'], number>> = {
  linear: 1e-7,
  smooth: 1e-5,
  implicit: 1e-4,
};

/** Compares every rule with differences of drafts that know nothing of rules. */
function expectSlopes(request: Partial<GradeRequest>): void {
  for (const direction of DIRECTIONS) {
    const step = 0.05;
    const result = grade({ ...request, chart: beside(step, direction) });
    const [below, , above] = result.range.draft.sizes;
    result.range.draft.ruleFormulas.forEach((points, p) => {
      points.forEach((rules, k) => {
        for (const axis of ['x', 'y'] as const) {
          const to = above?.pieces[p]?.points[k]?.[axis] ?? NaN;
          const from = below?.pieces[p]?.points[k]?.[axis] ?? NaN;
          const slope = (to - from) / (2 * step * 10);
          const plan = result.range.plans[p];
          const off = Math.abs(slopeAlong(rules[axis], direction) - slope);
          const close = off <= CLOSE[rules[axis].kind] * 2;
          expect(close ? '' : `${plan?.name} ${plan?.pointNames[k]} ${axis} ${off}`).toBe('');
        }
      });
    });
  }
}

describe('every rule', () => {
  it.each(some(STYLE_NAMES))(
    'of style %s is what drafts on both sides of the base show',
    (style) => {
      expectSlopes({ style });
    },
  );

  it('is so from another stack point', () => {
    expectSlopes({ style: 'shared-pencil', stack: 'side_waist' });
  });

  it('is so for any shares, ease and shift', () => {
    const share = fc.integer({ min: 2, max: 6 }).map((tenths) => tenths / 10);
    const mm = (min: number, max: number) => fc.integer({ min, max }).map((n) => `${n} mm`);
    const set = fc.record({
      side_share: share,
      waist_ease: mm(-10, 40),
      hip_ease: mm(0, 70),
      side_shift: mm(-15, 15),
      side_rise: mm(0, 20),
      half_rule: fc.constantFrom('0', '1', '1/2'),
      axis_square: fc.constantFrom('0', '1'),
    });
    fc.assert(
      fc.property(set, ({ side_share, ...others }) => {
        const back_dart_share = `${((1 - side_share) * 0.6).toFixed(3)}`;
        const front_dart_share = `1 - ${side_share} - ${back_dart_share}`;
        const shares = { side_share: `${side_share}`, back_dart_share, front_dart_share };
        expectSlopes({ style: 'shared-drop', set: { ...others, ...shares } });
      }),
      { numRuns: runs(1, 20) },
    );
  });
});

/** A style compiled for the base size of CHART, with its draft. */
function drafterOf(name: string) {
  const style = findStyle(name);
  const rows = ['waist_girth', 'hip_girth', 'waist_to_hip', 'skirt_length'];
  const parameters = resolveParameters(style, [], new Set(rows), 'cm');
  const layout = style.block.layout({
    atBase: () => 0,
    span: () => [0, 0],
    least: () => 0,
    alwaysZero: (name) => name === 'trued',
  });
  const drafter = compileBlock(style.block, layout, parameters, rows);
  const body: Readonly<Record<string, number>> = {
    waist_girth: 700,
    hip_girth: 960,
    waist_to_hip: 206,
    skirt_length: 600,
  };
  const base = drafter.draft(
    drafter.measurements.map((row) => body[row] ?? NaN),
    'base',
  );
  return { drafter, base, body };
}

/** The formula of a quantity with every name but the measurements replaced by its own formula. */
function wholeFormula(drafter: Drafter, key: string, constant: (key: string) => number): string {
  const { order, keyOf } = drafter.definitions;
  const definition = order.find((candidate) => candidate.key === key);
  if (definition === undefined) return key;
  const { given, piece } = definition;
  if (given.by !== 'formula') return `(${constant(key)})`;
  const names = new Set(given.formula.names);
  const text = treeText(given.formula.tree);
  return `(${text.replace(/base\.\w+|[A-Za-z_]\w*(?:\.[xy])?/g, (name) =>
    names.has(name) ? wholeFormula(drafter, keyOf(name, piece), constant) : name,
  )})`;
}

describe('the chain of formulas', () => {
  it.each([
    ['pencil', 'back/side_waist_handle.x'],
    ['shared-drop', 'front/dart_fold.x'],
    ['shared-drop', 'back/dart_inner_handle.y'],
    ['shared-a-line', 'front/side_hem.x'],
    ['shared-a-line', 'front/side_hem.y'],
  ])('of style %s gives for %s what mathjs derives from one whole formula', (style, key) => {
    const { drafter, base, body } = drafterOf(style);
    const whole = wholeFormula(drafter, key, base.valueOf);
    const terms = blockGradients(drafter, base).get(key)?.terms;
    const scope = { ...body, inch: 25.4, cm: 10, mm: 1 };
    expect(terms?.size).toBeGreaterThan(0);
    for (const name of Object.keys(body)) {
      const judged = derivative(whole, name, { simplify: false }).evaluate(scope) as unknown;
      const term = terms?.get(name);
      expect(term === undefined ? 0 : quotient(term)).toBeCloseTo(Number(judged), 9);
    }
  });
});

describe('the check', () => {
  it('finds that linear rules give the moves of any chart', () => {
    fc.assert(
      fc.property(anyChart, fc.constantFrom(...STYLE_NAMES), (chart, style) => {
        const { findings } = gradeChart({ chart: sixteenthsText(chart), base: '1', style });
        const found = findings.filter(({ check }) => check === 'rule-formula');
        expect(found.map(({ severity }) => severity)).toEqual(chart.waist.map(() => 'ok'));
      }),
      { numRuns: runs(4) },
    );
  });

  it('names the coordinate of a rule that is wrong', () => {
    const { range, display } = grade();
    const wrong: Rule = { kind: 'linear', coefficients: new Map([['hip_girth', 0.3]]), text: '' };
    const ruleFormulas = range.draft.ruleFormulas.map((points, p) =>
      points.map((rule, k) =>
        p === 1 && range.plans[1]?.pointNames[k] === 'side_hip' ? { ...rule, x: wrong } : rule,
      ),
    );
    const found = checkRuleFormulas({ ...range, draft: { ...range.draft, ruleFormulas } }, display);
    expect(found.map(({ severity, piece, subject }) => [severity, piece, subject])).toEqual([
      ['fail', 'back', 'side_hip'],
      ['ok', 'front', 'center_waist'],
      ['fail', 'back', 'side_hip'],
    ]);
    expect(found[0]?.measured).toBeCloseTo(0.05 * 40, 9);
  });
});

describe('grade-rules.csv', () => {
  const table = (request: Partial<GradeRequest>): readonly string[] => {
    const file = resultFiles(grade(request)).find(({ name }) => name === 'grade-rules.csv');
    return file?.text.split('\n') ?? [];
  };

  it('has the rule of every row in its last two columns', () => {
    const [header, ...rows] = table({});
    expect(header).toBe('piece,point,size,dx_cm,dy_cm,step_dx_cm,step_dy_cm,rule_x,rule_y');
    expect(rows).toContain('front,side_hip,3,0.75,0.3,0.75,0.3,1/4 hip_girth,waist_to_hip');
    expect(rows).toContain('back,side_waist,1,-1,0,-1,0,1/4 waist_girth,0');
  });

  it('says of every rule whether it holds in all sizes, in plain characters', () => {
    const rule =
      /^'?(0|-?(\d\S* )?[a-z_]+( [+-] (\d\S* )?[a-z_]+)*)( \((smooth|numeric) at base\))?$/;
    for (const row of table({ style: 'shared-drop' }).slice(1, -1))
      for (const text of row.split(',').slice(-2)) expect(text).toMatch(rule);
  });
});
