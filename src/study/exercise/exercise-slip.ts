/** A slip for an exercise in which one is to be found. */
import type { AnswerKey } from '../mark/answer-key';
import { predicted } from '../mark/predict';
import type { SeriesName } from '../mark/series';
import { rightValues, rowName } from '../mark/series';
import { slipsFor } from '../mark/slips';
import { RULE_RIGHT } from '../../tolerance';
import type { LengthUnit } from '../../units';
import type { Draw } from './seeded';

/** One row of a sheet as it is with a slip. */
export interface PlantedRow {
  readonly row: SeriesName;
  /** mm, one a size. */
  readonly moves: readonly number[];
  /** What was done, in words with the row. */
  readonly words: string;
}

/** Slips of one row that a look at the numbers shows. */
const SHOWN: ReadonlySet<string> = new Set([
  ...['whole', 'half', 'eighth', 'sign', 'hip-for-waist', 'waist-for-hip', 'break'],
]);

/** Sizes beside the base that a slip must turn, by twice what a right number may be off. */
const LEAST_TURNED = 2;

/** One of the slips that show in these rows. Throws a RangeError where none does. */
export function plantedRow(
  key: AnswerKey,
  rows: readonly SeriesName[],
  unit: LengthUnit,
  draw: Draw,
): PlantedRow {
  const slips = slipsFor(key, rows, unit, RULE_RIGHT).filter(({ kind }) => SHOWN.has(kind));
  const all = rows.flatMap((row) => {
    const right = rightValues(key, row);
    return slips.flatMap((slip): PlantedRow[] => {
      const moves = predicted(key, row, [slip]);
      const turned = moves.filter((mm, i) => Math.abs(mm - (right[i] ?? NaN)) > 2 * RULE_RIGHT);
      const words = `${rowName(row)}: ${slip.words}`;
      return turned.length < LEAST_TURNED ? [] : [{ row, moves, words }];
    });
  });
  const planted = all[draw(all.length)];
  if (planted === undefined) throw new RangeError('no slip shows in this exercise');
  return planted;
}
