/** What somebody who went wrong should ask himself: never what was done, nor what is right. */
import type { SheetCause } from './sheet-cause';
import type { Slip, Stage } from './slip';

const COUNTED = 'From which size is each number counted, and toward which?';
const COLUMNS = 'Does each number stand in the column of its own size?';

/** By the stage of the work, since slips of one stage are mended by one thought. */
const OF_STAGE: Readonly<Record<Stage, string>> = {
  girth: 'Which measurement of the body is this point drawn from?',
  share: 'Which part of the step of a measurement falls to this point, and why?',
  break: 'How large is the step between each two neighboring sizes of the chart?',
  sign: 'Which way does the point travel in larger sizes, and which way in smaller ones?',
  still: 'Which of the measurements that this point is drawn from change from size to size?',
  rounding: 'When is a number rounded, and to which ruler?',
  unit: 'In which unit is the chart, and in which is the sheet?',
  place: 'Which way does the axis of each row run?',
  form: COUNTED,
};

/** Where another thought mends a kind of slip than others of its stage. */
const OF_KIND: ReadonlyMap<string, string> = new Map([
  ['rows', 'Does each number stand in the row of its own point?'],
  ['copied', 'Does each number stand in the row of its own point?'],
  ['form-from', COUNTED],
  ['base', COUNTED],
  ['shifted-row', COLUMNS],
  ['intake', 'What does the dart take up in each size?'],
]);

/** By the first word of the id of a cause. */
const OF_CAUSE: ReadonlyMap<string, string> = new Map([
  ['coordinates', 'What does each number of the sheet measure?'],
  ['zero', 'From which place, and which way along each axis, does the sheet count?'],
  ['direction', 'From which place, and which way along each axis, does the sheet count?'],
  ...['shifted', 'exchanged', 'copied'].map((id): [string, string] => [id, COLUMNS]),
]);

/** The question that leads to a slip. */
export function questionOf({ kind, stage }: Slip): string {
  return OF_KIND.get(kind) ?? OF_STAGE[stage];
}

/** The question that leads to the cause of a whole sheet. */
export function questionOfCause({ id }: SheetCause): string {
  return OF_CAUSE.get(id.split(' ', 1)[0] ?? '') ?? COUNTED;
}

/** Where no cause is known. */
export const OPEN_QUESTION =
  'Which measurement reaches this point, which part of it falls here, and what is that in each size?';
