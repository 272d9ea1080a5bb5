/** Which slips, alone or two together, would have written what stands in one series. */
import { EXACT_SLIP, SAME_PLACE } from '../../tolerance';
import type { AnswerKey } from './answer-key';
import { predicted } from './predict';
import type { Series } from './series';
import { wrongSizes } from './series';
import type { Slip } from './slip';
import { ANYTHING } from './slip';

/** Slips that together give the cells of a run, and how closely, as a mean miss in mm. */
export interface Explanation {
  readonly slips: readonly Slip[];
  readonly miss: number;
}

/** Wrong cells of one series that have one cause, and what may be the cause. */
export interface Run {
  readonly series: Series;
  /** Places of the wrong sizes. */
  readonly sizes: readonly number[];
  /** Empty where no slip fits. */
  readonly explanations: readonly Explanation[];
}

/** Kinds that are nothing in a single cell. */
const OF_LADDERS: ReadonlySet<string> = new Set([
  ...['break', 'break-never', 'rounded-steps', 'coarse', 'form', 'form-from', 'copied', 'rows'],
  ...['intake', 'shifted-row', 'unsigned-row'],
]);

/**
 * The runs of a series: all its sizes if slips give every cell of it, otherwise those on each side
 * of the base, otherwise each wrong cell. `match` is how closely, in mm, a slip must give a cell.
 */
export function explainSeries(
  key: AnswerKey,
  series: Series,
  slips: readonly Slip[],
  { tolerance, match }: { readonly tolerance: number; readonly match: number },
): readonly Run[] {
  const wrong = wrongSizes(key, series, tolerance);
  if (wrong.length === 0) return [];
  const fitting = (
    sizes: readonly number[],
    candidates: readonly (readonly Slip[])[],
  ): readonly Explanation[] =>
    candidates.flatMap((set) => {
      const miss = missOf(series, sizes, predicted(key, series, set), match);
      return miss === undefined ? [] : [{ slips: set, miss }];
    });
  const alone = slips.map((slip) => [slip]);
  const pairs = pairsOf(slips);
  const explain = (sizes: readonly number[]): readonly Explanation[] => {
    const singles = fitting(sizes, alone);
    // A slip that only comes near may hide two that fit: small moves come near to many things.
    return singles.some(({ miss }) => miss <= EXACT_SLIP)
      ? singles
      : [...singles, ...fitting(sizes, pairs)];
  };
  const given = series.given.flatMap((mm, i) => (mm === undefined ? [] : [i]));
  const whole = explain(given);
  if (whole.length > 0) return [{ series, sizes: wrong, explanations: whole }];

  const sides = [-1, 0, 1].map((side) => given.filter((i) => Math.sign(i - key.base) === side));
  return sides.flatMap((side): readonly Run[] => {
    const sizes = side.filter((i) => wrong.includes(i));
    if (sizes.length === 0) return [];
    const explanations = explain(side);
    if (explanations.length > 0) return [{ series, sizes, explanations }];
    const single = alone.filter(([slip]) => !OF_LADDERS.has(slip?.kind ?? ''));
    return sizes.map((i) => ({ series, sizes: [i], explanations: fitting([i], single) }));
  });
}

/** The mean miss over the sizes, or undefined if any of them is missed by more than `match`. */
function missOf(
  { given }: Series,
  sizes: readonly number[],
  values: readonly number[],
  match: number,
): number | undefined {
  let sum = 0;
  for (const i of sizes) {
    const miss = values[i] === ANYTHING ? 0 : Math.abs((given[i] ?? NaN) - (values[i] ?? NaN));
    if (!(miss <= match + SAME_PLACE)) return undefined;
    sum += miss;
  }
  return sum / sizes.length;
}

function pairsOf(all: readonly Slip[]): readonly (readonly Slip[])[] {
  const slips = all.filter(({ alone }) => alone !== true);
  return slips.flatMap((first, i) =>
    slips
      .slice(i + 1)
      .filter((second) => second.kind !== first.kind || first.kind === 'break')
      .map((second) => [first, second]),
  );
}
