/** The cloth to buy for a given pattern, if it says how its pieces are cut. */
import { InputError } from '../errors';
import type { PatternResult } from '../jobs/grade-pattern';
import type { SizedPieces } from '../grade/graded-range';
import type { ResultFile } from './result-files';
import { layFiles } from './fabric-files';
import type { CutSize } from '../fabric/fabric-needs';

/**
 * The files of `layFiles`. Throws InputError `bad-option` if the pattern has no cut lines, or a piece
 * does not say how often it is cut, or is cut on a fold that it does not have.
 */
export function patternFabric({
  title,
  display,
  range,
  shown,
}: PatternResult): readonly ResultFile[] {
  for (const { name, cuttings, outline } of range.plans) {
    if (cuttings.length === 0) {
      refuse(
        `nothing says how often ${name} is cut`,
        'a cell such as `2` or `1 on fold` in column cut',
      );
    }
    const hasFold = outline.some(({ kind }) => kind === 'fold');
    if (!hasFold && cuttings.some(({ onFold }) => onFold)) {
      refuse(`${name} is cut on the fold, and none of its edges is on it`, 'a mark in column fold');
    }
  }
  const base = range.sizes.filter(({ label }) => label === range.base);
  return layFiles({ title, display, base: base.map(sized), shown: shown.map(sized) });
}

function sized({ label, cutPieces }: SizedPieces): CutSize {
  if (cutPieces !== undefined) return { label, pieces: cutPieces };
  return refuse(
    'the pattern has no cut lines, and cloth is laid with pieces as they are cut',
    'a line such as `# allowance: 1.5` in the pattern, or a column allowance',
  );
}

function refuse(what: string, allowed: string): never {
  throw new InputError('bad-option', { what, allowed, place: { field: 'fabric' } });
}
