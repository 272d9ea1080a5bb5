/** The grain of a given pattern: drawn as it was given, and not made up where it was not. */
import { describe, expect, it } from 'vitest';
import { drawingOf } from '../../src/files/drawing-files';
import { nestSheet } from '../../src/render/nest-sheet';
import type { Scene } from '../../src/render/scene';
import { sizeSheet } from '../../src/render/size-sheet';
import { FRONT, graded } from '../given/sheets';
import { flatPaths, flatTexts } from './flat';

const MOVES = ['center_waist', 'dart_in', 'dart_tip', 'dart_out', 'center_hem']
  .map((name) => `front,${name},,,,0,0`)
  .concat(['side_waist', 'side_hip', 'side_hem'].map((name) => `front,${name},,,,1/4,0`));
const RULES = `# sizes: 10, 12, 14\npiece,point,size,dx,dy,step_dx,step_dy\n${MOVES.join('\n')}\n`;
/** Not upright, so that nobody could have guessed it: 3 in across on 4 in down. */
const GRAIN = `${FRONT}front,grain_top,2,10,grain,,\nfront,grain_low,5,14,grain,,\n`;

interface Arrow {
  readonly layer: string | undefined;
  readonly dx: number;
  readonly dy: number;
}

function grains(scene: Scene): readonly Arrow[] {
  return flatPaths(scene)
    .filter(({ part }) => part === 'grainline')
    .map(({ points: [from, to], within }) => ({
      layer: within[0],
      dx: (to?.x ?? NaN) - (from?.x ?? NaN),
      dy: (to?.y ?? NaN) - (from?.y ?? NaN),
    }));
}

function heads(scene: Scene): number {
  return flatPaths(scene).filter(({ part }) => part === 'arrowhead').length / 3;
}

function words(scene: Scene): readonly string[] {
  return flatTexts(scene).map(({ text }) => text.words);
}

describe('the grain of a given pattern', () => {
  const given = drawingOf(graded(GRAIN, RULES));

  it.each([
    ['nest', nestSheet(given)],
    ['one size', sizeSheet(given, '14')],
  ])('is drawn once as an arrow along its points, with its word: %s', (_, scene) => {
    const [arrow, ...more] = grains(scene);
    expect(more).toEqual([]);
    expect((arrow?.dx ?? NaN) / (arrow?.dy ?? NaN)).toBeCloseTo(3 / 4, 9);
    expect(heads(scene)).toBe(2);
    expect(words(scene).filter((said) => said === 'GRAIN')).toHaveLength(1);
    expect(words(scene).join()).not.toMatch(/No grainline/);
  });

  it('is drawn in each size where its rules turn it', () => {
    const turned = `${RULES}front,grain_top,,,,0,0\nfront,grain_low,,,,1/2,0\n`;
    const scene = nestSheet(drawingOf(graded(GRAIN, turned)));
    const ways = grains(scene).map(({ dx, dy }) => dx / dy);
    expect(new Set(ways.map((way) => way.toFixed(6)))).toEqual(
      new Set(['0.625000', '0.750000', '0.875000']),
    );
    expect(heads(scene)).toBe(6);
    expect(words(scene).filter((said) => said === 'GRAIN')).toHaveLength(1);
  });

  it('is not made up', () => {
    const none = drawingOf(graded(FRONT, RULES));
    for (const scene of [nestSheet(none), sizeSheet(none, '10')]) {
      expect(grains(scene)).toEqual([]);
      expect(words(scene)).toContain('No grainline given');
      expect(words(scene)).not.toContain('GRAIN');
    }
  });
});
