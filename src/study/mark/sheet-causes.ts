/** The causes of a whole sheet that are looked for, the likelier first where two read it alike. */
import type { AnswerKey, PointKey } from './answer-key';
import type { Series } from './series';
import { keyPoint } from './series';
import type { SheetCause } from './sheet-cause';
import { placing } from './sheet-cause';

type Given = Series['given'];

/** Every habit that a whole sheet against this key may have, but exchanged columns. */
export function sheetCauses(key: AnswerKey): readonly SheetCause[] {
  const { sizes } = key;
  return [
    ...upward(),
    shifted(1, 'smaller'),
    shifted(-1, 'larger'),
    COORDINATES,
    ...sizes.flatMap((_, base) => (base === key.base ? [] : [fromBase(key, base)])),
  ];
}

/** Where each point lies, in the place of how far it moves. */
const COORDINATES: SheetCause = {
  id: 'coordinates',
  words:
    'coordinates for moves: each number tells where the point lies, not how far it moves from the base',
  advice: 'take the coordinate of the base size away from that of every other size',
  read: (key, series) => ({
    key,
    series: series.map((one) => {
      if (one.form === 'step') return one;
      const place = keyPoint(key, one).place[one.axis];
      return { ...one, given: one.given.map((mm) => (mm === undefined ? mm : mm - place)) };
    }),
    left: 0,
  }),
};

/** Every size whose column is, wherever it says something, that of another size. */
export function copiedColumns(
  { sizes, base }: AnswerKey,
  series: readonly Series[],
): readonly SheetCause[] {
  return sizes.flatMap((own, to) =>
    sizes.flatMap((other, from) => {
      const told = series.filter(({ given }) => (given[from] ?? 0) !== 0);
      const isCopy =
        to !== from &&
        to !== base &&
        told.length > 1 &&
        series.every(({ given }) => (given[to] ?? 0) === (given[from] ?? 0));
      return isCopy ? [copied(own, to, other)] : [];
    }),
  );
}

/** What was to stand there is not known, so it is asked of nobody. */
function copied(own: string, to: number, other: string): SheetCause {
  return {
    id: `copied ${own} ${other}`,
    words: `a column copied: ${own} has the numbers of ${other}`,
    advice: 'put a finger on the head of the column before writing its first number',
    read: (key, series) => ({
      key,
      series: series.map((one) => ({
        ...one,
        given: one.given.map((mm, i) => (i === to ? undefined : mm)),
      })),
      left: 0,
    }),
  };
}

/** Every pair of sizes whose columns may be exchanged. */
export function exchangedColumns(key: AnswerKey): readonly SheetCause[] {
  return key.sizes.flatMap((_, a) =>
    key.sizes.slice(a + 1).map((_, b) => exchanged(key, a, a + 1 + b)),
  );
}

/** Moves counted from another size: every point is off by what it moves between the two. */
function fromBase({ sizes, base: right }: AnswerKey, base: number): SheetCause {
  const [own = '', wanted = ''] = [sizes[base], sizes[right]];
  const end = base === 0 ? 'smallest' : base === sizes.length - 1 ? 'largest' : undefined;
  return {
    id: `base ${own}`,
    words:
      end === undefined
        ? `counted from another base: from ${own} instead of ${wanted}`
        : `counted from the ${end} size, ${own}, instead of the base ${wanted}`,
    advice:
      `the pattern is drawn in ${wanted}: there nothing moves, and every other size is counted ` +
      'from there',
    read: (key, series) => ({ key: counted(key, base), series, left: 0 }),
  };
}

/** The same key, seen from another base. */
function counted(key: AnswerKey, base: number): AnswerKey {
  const from = (moves: readonly number[]): readonly number[] =>
    moves.map((move) => move - (moves[base] ?? NaN));
  return {
    ...key,
    base,
    points: new Map(
      [...key.points].map(([name, point]): [string, PointKey] => [
        name,
        { ...point, moves: { x: from(point.moves.x), y: from(point.moves.y) } },
      ]),
    ),
    increments: new Map([...key.increments].map(([name, moves]) => [name, from(moves)])),
  };
}

/** Below the base numbers are counted toward it: each with its own size, or with the size it leads to. */
function upward(): readonly SheetCause[] {
  const turned = (given: Given, base: number): Given =>
    given.map((mm, i) => (i < base && mm !== undefined ? 0 - mm : mm));
  const ledTo = (given: Given, base: number): Given =>
    given.map((mm, i) => {
      if (i > base) return mm;
      const next = given[i + 1];
      return i === base ? undefined : next === undefined ? undefined : 0 - next;
    });
  const steps = {
    words: 'steps listed upward, from each smaller size to the next, also below the base',
    advice:
      'count from the base outward: below it a step leads to the smaller size, and its sign turns',
  };
  const asSteps = (lay: typeof turned) =>
    placing((one, base) => ({ ...one, form: 'step', given: lay(one.given, base) }));
  return [
    {
      id: 'unsigned',
      words: 'growth listed in all sizes alike: below the base the minus is missing',
      advice: 'smaller sizes are smaller than the base: their numbers take the other sign',
      read: placing((one, base) =>
        one.form === 'move' ? { ...one, given: turned(one.given, base) } : one,
      ),
    },
    { id: 'upward', ...steps, read: asSteps(ledTo) },
    { id: 'upward own', ...steps, read: asSteps(turned) },
  ];
}

/**
 * Steps in the columns of moves, and the reverse. That is a slip like others, which may meet them; it
 * is only tried here so that no cause is taken for it.
 */
export const EXCHANGED_FORM: SheetCause = {
  id: 'form',
  words: '',
  advice: '',
  read: placing((one) => ({ ...one, form: one.form === 'step' ? 'move' : 'step' })),
};

/** Every number one column too far; `by` columns back is its place. */
function shifted(by: 1 | -1, neighbor: string): SheetCause {
  return {
    id: `shifted ${by}`,
    words: `columns shifted by one: each size has the numbers of the next ${neighbor} one`,
    advice: 'put a finger on the head of the column before writing its first number',
    read: placing((one) => ({ ...one, given: one.given.map((_, i) => one.given[i + by]) })),
  };
}

function exchanged({ sizes }: AnswerKey, a: number, b: number): SheetCause {
  const [first = '', second = ''] = [sizes[a], sizes[b]];
  const place = (i: number): number => (i === a ? b : i === b ? a : i);
  return {
    id: `exchanged ${first} ${second}`,
    words: `columns exchanged: ${first} has the numbers of ${second}, and the reverse`,
    advice: 'put a finger on the head of the column before writing its first number',
    read: placing((one) => ({ ...one, given: one.given.map((_, i) => one.given[place(i)]) })),
  };
}
