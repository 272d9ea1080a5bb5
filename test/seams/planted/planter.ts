/** Nine ways of going wrong in a rule sheet, planted one at a time. */
import type { Point } from '../../../src/geometry/point';
import type { Form, Garment, Moves } from './garment';

/** What is planted; `plant` changes the numbers of a sheet as they are typed. */
export const KINDS = [
  'sign of a point',
  'sign of a step',
  'x and y exchanged',
  'rule missing',
  'rules of two points exchanged',
  'one step doubled',
  '3 mm off in one size',
  'ten times',
  'rows of two sizes exchanged',
] as const;

export type Kind = (typeof KINDS)[number];
type Axis = 'x' | 'y';

/** One planted slip. */
export interface Planted {
  readonly kind: Kind;
  /** `piece.point`; of exchanged rules both. */
  readonly at: readonly string[];
  readonly words: string;
  readonly moves: Moves;
}

/** mm. A slip that moves no point farther than this cannot be told from a careless ruler. */
const SEEN = 2;

/** Every slip of a kind that a sheet can have, in the order of the sheet. */
export function slipsOf(
  kind: Kind,
  garment: Garment,
  right: Moves,
  form: Form,
): readonly Planted[] {
  return [...right.keys()]
    .flatMap((name) => plantedAt(kind, name, garment, right, form))
    .filter(({ moves }) => farthest(moves, right) > SEEN);
}

function farthest(moves: Moves, right: Moves): number {
  return Math.max(
    ...[...right].flatMap(([name, own]) =>
      own.map(({ x, y }, s) => {
        const wrong = moves.get(name)?.[s];
        return wrong === undefined ? Infinity : Math.hypot(wrong.x - x, wrong.y - y);
      }),
    ),
  );
}

function plantedAt(
  kind: Kind,
  name: string,
  { sizes, base: baseName }: Garment,
  right: Moves,
  form: Form,
): readonly Planted[] {
  const own = right.get(name) ?? [];
  const base = sizes.indexOf(baseName);
  const others = sizes.flatMap((_, s) => (s === base ? [] : [s]));
  const one = (words: string, rule: readonly Point[]): Planted => ({
    kind,
    at: [name],
    words: `${name}: ${words}`,
    moves: new Map(right).set(name, rule),
  });
  const axes = (['x', 'y'] as const).filter((axis) =>
    own.some((move) => Math.abs(move[axis]) > 0.5),
  );
  const along = (axis: Axis, change: (cells: readonly number[]) => readonly number[]) => {
    const cells = asCells(
      own.map((move) => move[axis]),
      base,
      form,
    );
    const changed = fromCells(change(cells), base, form);
    return own.map((move, s) => ({ ...move, [axis]: changed[s] ?? NaN }));
  };
  const cell = (s: number, change: (mm: number) => number) => (cells: readonly number[]) =>
    cells.map((mm, i) => (i === s ? change(mm) : mm));
  switch (kind) {
    case 'sign of a point':
      return axes.map((axis) =>
        one(
          `d${axis} turned`,
          along(axis, (c) => c.map((mm) => -mm)),
        ),
      );
    case 'sign of a step':
      return axes.flatMap((axis) =>
        others.map((s) =>
          one(
            `d${axis} of ${sizes[s] ?? ''} turned`,
            along(
              axis,
              cell(s, (mm) => -mm),
            ),
          ),
        ),
      );
    case 'x and y exchanged':
      return [
        one(
          'exchanged',
          own.map(({ x, y }) => ({ x: y, y: x })),
        ),
      ];
    case 'rule missing': {
      const rest = new Map(right);
      rest.delete(name);
      return axes.length === 0 ? [] : [{ kind, at: [name], words: `${name} missing`, moves: rest }];
    }
    case 'rules of two points exchanged': {
      const [piece] = name.split('.');
      const after = [...right.keys()].filter((key) => key.startsWith(`${piece ?? ''}.`));
      return after.slice(after.indexOf(name) + 1, after.indexOf(name) + 3).map((other) => ({
        kind,
        at: [name, other],
        words: `${name} and ${other} exchanged`,
        moves: new Map(right).set(name, right.get(other) ?? []).set(other, own),
      }));
    }
    case 'one step doubled':
      return axes.flatMap((axis) =>
        others.map((s) =>
          one(`step to ${sizes[s] ?? ''} doubled in d${axis}`, doubled(own, axis, s, base)),
        ),
      );
    case '3 mm off in one size':
      return axes.flatMap((axis) =>
        others.flatMap((s) =>
          [3, -3].map((off) =>
            one(
              `d${axis} of ${sizes[s] ?? ''} off by ${off}`,
              along(
                axis,
                cell(s, (mm) => mm + off),
              ),
            ),
          ),
        ),
      );
    case 'ten times':
      return axes.flatMap((axis) => [
        one(
          `d${axis} ten times`,
          along(axis, (c) => c.map((mm) => 10 * mm)),
        ),
        ...others.map((s) =>
          one(
            `d${axis} of ${sizes[s] ?? ''} ten times`,
            along(
              axis,
              cell(s, (mm) => 10 * mm),
            ),
          ),
        ),
      ]);
    case 'rows of two sizes exchanged':
      return others.slice(1).map((s, i) => {
        const [a, b] = [others[i] ?? 0, s];
        const swap = (cells: readonly number[]) =>
          cells.map((mm, k) => (k === a ? (cells[b] ?? NaN) : k === b ? (cells[a] ?? NaN) : mm));
        const [x, y] = [along('x', swap), along('y', swap)];
        return one(
          `rows of ${sizes[a] ?? ''} and ${sizes[b] ?? ''} exchanged`,
          x.map((move, k) => ({ x: move.x, y: y[k]?.y ?? NaN })),
        );
      });
  }
}

function doubled(own: readonly Point[], axis: Axis, s: number, base: number): readonly Point[] {
  const steps = asCells(
    own.map((move) => move[axis]),
    base,
    'steps',
  );
  const changed = fromCells(
    steps.map((step, i) => (i === s ? 2 * step : step)),
    base,
    'steps',
  );
  return own.map((move, i) => ({ ...move, [axis]: changed[i] ?? NaN }));
}

/** Moves as the cells of a sheet; steps are counted from the neighbor on the base's side. */
function asCells(moves: readonly number[], base: number, form: Form): readonly number[] {
  if (form === 'moves') return moves;
  return moves.map((move, s) => (s === base ? 0 : move - (moves[s + Math.sign(base - s)] ?? NaN)));
}

function fromCells(cells: readonly number[], base: number, form: Form): readonly number[] {
  if (form === 'moves') return cells;
  const moves = cells.map(() => 0);
  for (const way of [1, -1])
    for (let s = base + way; s >= 0 && s < cells.length; s += way)
      moves[s] = (moves[s - way] ?? NaN) + (cells[s] ?? NaN);
  return moves;
}
