/** How sure a slip is that was found in a sheet, and what would tell it from others with the same numbers. */
import { EXACT_SLIP, SAME_PLACE } from '../../tolerance';
import type { AnswerKey } from './answer-key';
import type { Run } from './explanations';
import type { FoundSlip } from './fewest-slips';
import { predicted } from './predict';
import type { Series, SeriesName } from './series';
import { rightValues, seriesId } from './series';
import type { Slip } from './slip';
import { ANYTHING } from './slip';

/** A sheet as its slips were found in it. */
export interface Diagnosed {
  readonly key: AnswerKey;
  readonly series: readonly Series[];
  /** All slips that were found. */
  readonly found: readonly FoundSlip[];
  /** Points that are asked for. */
  readonly asked: readonly { readonly piece: string; readonly point: string }[];
  /** mm. */
  readonly tolerance: number;
}

/** What would tell two slips apart, or does. */
export type Apart =
  /** Cells that are blank and would differ. */
  | { readonly by: 'blank'; readonly row: SeriesName; readonly sizes: readonly number[] }
  /** A row that one of them alone would turn; it is right, or blank. */
  | { readonly by: 'right' | 'blank-row'; readonly row: SeriesName; readonly turnedBy: Slip }
  /** Nothing that is asked for. */
  | { readonly by: 'nothing' };

/** How sure a slip is. */
export interface Sureness {
  /**
   * `open` where another slip gives the same; `likely` where few numbers show it, or only nearly, or fewer than
   * half of the rows where it could.
   */
  readonly grade: 'sure' | 'likely' | 'open';
  /** Numbers that show it. */
  readonly numbers: number;
  /** True where it gives them all to a hundredth of a millimeter. */
  readonly isExact: boolean;
  /** Rows that show it, and rows of the sheet that it would turn if it were made everywhere. */
  readonly rows: number;
  readonly couldBe: number;
}

/** Fewer numbers may look like a slip by chance. */
const ENOUGH_NUMBERS = 3;

/** What speaks for a slip. */
export function surenessOf(sheet: Diagnosed, one: FoundSlip): Sureness {
  const { slip, runs, alike } = one;
  const own = new Set(runs.map(({ series }) => seriesId(series)));
  const numbers = new Set(
    runs.flatMap(({ series, sizes }) => sizes.map((i) => `${seriesId(series)} ${i}`)),
  ).size;
  const isExact = runs.every((run) => missOf(sheet, run, slip) <= EXACT_SLIP);
  const couldBe = sheet.series.filter(
    (series) => own.has(seriesId(series)) || turned(sheet, series, slip).length > 0,
  ).length;
  const isOpen = alike.some(({ words }) => words !== slip.words);
  const isLikely = numbers < ENOUGH_NUMBERS || !isExact || 2 * own.size < couldBe;
  return {
    grade: isOpen ? 'open' : isLikely ? 'likely' : 'sure',
    ...{ numbers, isExact, couldBe },
    rows: own.size,
  };
}

/** What tells a slip that was found from another that gives the same numbers. */
export function tellingApart(sheet: Diagnosed, { slip, runs }: FoundSlip, other: Slip): Apart {
  const own = new Set(runs.map(({ series }) => seriesId(series)));
  for (const run of runs) {
    const made = chosenFor(sheet, run, slip);
    const [a, b] = [made, made.map((one) => (one === slip ? other : one))].map((slips) =>
      predicted(sheet.key, run.series, slips),
    );
    const sizes = run.series.given.flatMap((mm, i) =>
      mm === undefined && i !== sheet.key.base && differs(a?.[i], b?.[i], sheet.tolerance)
        ? [i]
        : [],
    );
    if (sizes.length > 0) return { by: 'blank', row: run.series, sizes };
  }
  const rows = rowsOf(sheet).filter((row) => !own.has(seriesId(row)));
  const telling = rows.flatMap((row) => {
    const [a, b] = [slip, other].map((one) => turned(sheet, row, one));
    const isOne = (a?.length ?? 0) > 0 !== (b?.length ?? 0) > 0;
    return isOne ? [{ row, turnedBy: (a?.length ?? 0) > 0 ? slip : other }] : [];
  });
  const right = telling.find(({ row }) => isAllRight(sheet, row));
  if (right !== undefined) return { by: 'right', ...right };
  const blank = telling.find(({ row }) => row.given.every((mm) => mm === undefined));
  return blank === undefined ? { by: 'nothing' } : { by: 'blank-row', ...blank };
}

/** The slips of the explanation that was taken for a run: of all that were found the closest. */
function chosenFor({ found }: Diagnosed, { explanations }: Run, slip: Slip): readonly Slip[] {
  const all = new Set(found.map((one) => one.slip.id));
  const [best] = explanations
    .filter(({ slips }) => slips.includes(slip) && slips.every(({ id }) => all.has(id)))
    .toSorted((a, b) => a.miss - b.miss);
  return best?.slips ?? [slip];
}

function missOf(sheet: Diagnosed, run: Run, slip: Slip): number {
  const slips = chosenFor(sheet, run, slip);
  return run.explanations.find((one) => one.slips === slips)?.miss ?? Infinity;
}

/** The rows of the sheet, and those that it leaves out though they are asked for, without a number. */
function rowsOf({ key, series, asked }: Diagnosed): readonly Series[] {
  const given = new Set(series.map(({ piece, point, axis }) => `${piece}.${point} ${axis}`));
  const form = series.some((one) => one.form === 'move') ? 'move' : 'step';
  const absent = asked.flatMap((point) =>
    (['x', 'y'] as const).map((axis) => ({ ...point, axis, form })),
  );
  return [
    ...series,
    ...absent
      .filter(({ piece, point, axis }) => !given.has(`${piece}.${point} ${axis}`))
      .map((row): Series => ({ ...row, form, given: key.sizes.map(() => undefined) })),
  ];
}

/** Places of the sizes whose number in a row would be another by a slip, where they are given or none is. */
function turned({ key, tolerance }: Diagnosed, row: Series, slip: Slip): readonly number[] {
  const right = rightValues(key, row);
  const made = predicted(key, row, [slip]);
  const isOpen = row.given.every((mm) => mm === undefined);
  return made.flatMap((mm, i) =>
    (isOpen || row.given[i] !== undefined) && differs(mm, right[i], tolerance) ? [i] : [],
  );
}

function isAllRight({ key, tolerance }: Diagnosed, row: Series): boolean {
  const right = rightValues(key, row);
  return (
    row.given.some((mm) => mm !== undefined) &&
    row.given.every((mm, i) => mm === undefined || !differs(mm, right[i], tolerance))
  );
}

function differs(a: number | undefined, b: number | undefined, by: number): boolean {
  // What may be anything tells nothing.
  if (a === ANYTHING || b === ANYTHING) return false;
  return !(Math.abs((a ?? NaN) - (b ?? NaN)) <= by + SAME_PLACE);
}
