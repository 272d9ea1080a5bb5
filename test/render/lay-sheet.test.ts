/** What a drawn lay says to whoever cuts. */
import { describe, expect, it } from 'vitest';
import type { Lay } from '../../src/fabric/lay';
import { isLay } from '../../src/fabric/lay';
import type { ClothWidth } from '../../src/fabric/cloth';
import { layShapes } from '../../src/fabric/shapes';
import { shortestLay } from '../../src/fabric/shortest-lay';
import type { CutPiece } from '../../src/pattern/cut-piece';
import { laySheet } from '../../src/render/lay-sheet';
import { rectangle } from '../fabric/lay-pieces';
import { flatTexts } from './flat';

const CLOTH = { width: 1000, selvage: 0, fold: 'folded', nap: 'with' } as const;

function words(pieces: readonly CutPiece[], unit: ClothWidth['unit'] = 'cm'): readonly string[] {
  const lay: Lay | { piece: string } = shortestLay(layShapes(pieces, 'shell', CLOTH), CLOTH);
  if (!('placements' in lay) || !isLay(lay)) throw new RangeError('does not go on the cloth');
  const scene = laySheet({
    title: 'Skirt',
    size: '12',
    cloth: 'shell',
    width: { value: unit === 'in' ? 39 : 100, unit },
    lay,
    buy: { centimeters: 95, yards: 9 / 8 },
    spare: 0.05,
  });
  return flatTexts(scene).map(({ text }) => text.words);
}

describe('a drawn lay', () => {
  it('says of a piece that has to lie along the fold that it is not on it', () => {
    const told = (width: number): string =>
      words([rectangle('back', width, 700, { count: 2 })]).join(' ');
    expect(told(90)).not.toContain('beside the fold');
    expect(told(495)).toContain('beside the fold, not on it');
    const onFold = words([rectangle('front', 400, 700, { onFold: true })]).join(' ');
    expect(onFold).toContain('on the fold');
    expect(onFold).not.toContain('not on it');
  });

  it('has a ruler to the end of what is bought', () => {
    const band = [rectangle('band', 90, 700)];
    expect(words(band, 'cm')).toContain('95 cm');
    // 1 1/8 yd.
    expect(words(band, 'in')).toContain('40.5 in');
    expect(words(band, 'in')).toContain('36');
  });
});
