/**
 * A sewer's walk through the instructions: each edge that a step names is there and still free when the
 * step comes, nothing is closed before what lies inside it, and at the end no edge is left raw.
 */
import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/index';
import { draftRange } from '../../src/jobs/draft-range';
import type { PiecePlan } from '../../src/pattern/piece';
import type { SewnEdge, SewingStep } from '../../src/sewing/step';
import type { SewnSize } from '../../src/sewing/skirt';
import { sewnSkirt } from '../../src/sewing/skirt';
import { sewingSteps } from '../../src/sewing/sewing-steps';
import { DARTED } from './garments';

const CHART = readChart(
  'measurement,unit,S,M\nwaist,cm,66,72\nhip,cm,92,98\nwaist_to_hip,cm,20,20.5\n' +
    'height,cm,168,168\nskirt_length,cm,60,61\n',
  'chart.csv',
);

function sizesOf(style: string, set: Readonly<Record<string, string>> = {}): readonly SewnSize[] {
  const { sizes } = draftRange(CHART, 1, { style, set });
  return sizes.map(({ draft }) => ({ pieces: draft.pieces, parameters: draft.parameters }));
}

/** Every edge that a needle must pass: all but folds, an edge with a zip in it as its two stretches. */
function edgesToSew(plans: readonly PiecePlan[]): readonly string[] {
  return plans.flatMap(({ name, outline }) => {
    const edges = outline
      .filter(({ kind }) => kind !== 'fold')
      .map((edge) => (edge.kind === 'dart' ? edge.name : edge.seam));
    return [...new Set(edges)].flatMap((edge) =>
      edge === 'center_back' && !name.endsWith('facing')
        ? [`${name}.${edge} below`, `${name}.${edge} above`]
        : [`${name}.${edge}`],
    );
  });
}

function nameOf({ piece, edge, stretch }: SewnEdge): string {
  return `${piece}.${edge}${stretch === undefined ? '' : ` ${stretch}`}`;
}

/** The place of the step that sews an edge; -1 if none does. */
function stepOf(steps: readonly SewingStep[], edge: string): number {
  return steps.findIndex(({ sews }) => sews.some((sewn) => nameOf(sewn) === edge));
}

describe.each(DARTED)('the steps of %s with %j', (style, set) => {
  const sizes = sizesOf(style, set);
  const skirt = sewnSkirt(sizes, { unit: 'cm' });
  if (skirt === undefined) throw new RangeError('no skirt');
  const steps = sewingSteps(skirt);

  it('sew each edge once, and leave none raw', () => {
    const plans = sizes[0]?.pieces.map(({ plan }) => plan) ?? [];
    const sewn = steps.flatMap(({ sews }) => sews.map(nameOf));
    expect([...sewn].sort()).toEqual([...edgesToSew(plans)].sort());
  });

  it('come in an order in which each edge can be reached', () => {
    const at = (edge: string): number => stepOf(steps, edge);
    const dart = at(`back.${skirt.back.darts[0]?.name ?? ''}`);
    // Flat work before the garment is closed round: darts, center back and zip, then the sides.
    expect(dart).toBeLessThan(at('back.center_back below'));
    expect(at('back.center_back below')).toBeLessThan(at('back.center_back above'));
    expect(at('back.center_back above')).toBeLessThan(at('back.side'));
    // The waist takes in the side seams and the lining; the hem comes after both.
    expect(at('back.side')).toBeLessThan(at('back.waist'));
    expect(at('back.waist')).toBeLessThan(at('back.hem'));
    for (const { name } of skirt.linings) {
      expect(at(`${name}.side`)).toBeLessThan(at(`${name}.waist`));
      expect(at(`${name}.waist`)).toBe(at('back.waist'));
      // It is leveled by the hem of the skirt.
      expect(at('back.hem')).toBeLessThan(at(`${name}.hem`));
    }
    // The lining is caught at the vent once the hem below it is done.
    const lined = skirt.linings
      .slice(1)
      .filter(({ outline }) => outline.some((e) => e.seam === 'vent'));
    for (const { name } of lined) expect(at('back.hem')).toBeLessThan(at(`${name}.vent`));
  });

  it('tell lengths that are there', () => {
    for (const { title, words } of steps) {
      expect(title).not.toBe('');
      expect(words.join(' ')).not.toMatch(/NaN|Infinity|undefined|[a-z]_[a-z]/u);
    }
  });
});

describe('the words of the steps', () => {
  const told = (set: Readonly<Record<string, string>>): string => {
    const skirt = sewnSkirt(sizesOf('shared-drop', set), { unit: 'cm' });
    return skirt === undefined
      ? ''
      : sewingSteps(skirt)
          .flatMap(({ words }) => words)
          .join(' ');
  };

  it('say the widths that are cut', () => {
    const words = told({ side_allowance: '2.5 cm', hem_allowance: '6 cm', lining: '0' });
    expect(words).toContain('Sew 2.5 cm (1 in) from the edge, and press the seams open.');
    expect(words).toContain('turn up 6 cm (2 1/4 in)');
  });

  it('press darts the way they were drafted', () => {
    expect(told({ press_to_side: '0' })).toContain('toward the centers');
    expect(told({ press_to_side: '1' })).toContain('toward the sides');
  });
});
