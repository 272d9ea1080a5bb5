/** The cells of one point along one axis as moves from the base. */
import type { SizeChart } from '../chart/size-chart';
import { InputError } from '../errors';
import { RULES_AGREE, SAME_PLACE } from '../tolerance';
import { cellValues, towardBase } from './cell-values';
import { inWords } from './point-cells';
import type { Axis, RuleCell } from './rule-sheet';
import type { SizeList } from './size-list';

/** mm, and the cell that says so. */
interface Told {
  readonly mm: number;
  readonly cell: RuleCell;
}

/** The cells of each point along each axis. */
export function byPoint(
  cells: readonly RuleCell[],
): ReadonlyMap<string, Readonly<Record<Axis, readonly RuleCell[]>>> {
  const groups = new Map<string, Record<Axis, RuleCell[]>>();
  for (const cell of cells) {
    const id = `${cell.piece}.${cell.point}`;
    const group = groups.get(id) ?? { x: [], y: [] };
    group[cell.axis].push(cell);
    groups.set(id, group);
  }
  return groups;
}

/**
 * Moves in mm, one a size, steps added up from the base; undefined for sizes of which the cells say
 * nothing. Throws InputError `rule-moves-base`, and `rule-contradicted` with both places where a
 * move and a step of one size disagree.
 */
export function axisMoves(
  cells: readonly RuleCell[],
  list: SizeList,
  chart: SizeChart | undefined,
): readonly (number | undefined)[] {
  const { labels, base } = list;
  const moved: Told[] = [];
  const stepped: Told[] = [];
  for (const cell of cells) {
    const told = cell.form === 'move' ? moved : stepped;
    cellValues(cell, list, chart).forEach((mm, size) => {
      if (mm !== undefined) told[size] = { mm, cell };
    });
  }
  refuseMovedBase([moved[base], stepped[base]], labels[base] ?? '');
  const moves: (number | undefined)[] = labels.map((_, size) => (size === base ? 0 : undefined));
  const outward = labels.map((_, size) => size).filter((size) => size !== base);
  for (const size of outward.toSorted((a, b) => Math.abs(a - base) - Math.abs(b - base))) {
    const [move, step] = [moved[size], stepped[size]];
    const from = moves[towardBase(size, base)];
    const sum = step === undefined || from === undefined ? undefined : from + step.mm;
    if (move !== undefined && step !== undefined && sum !== undefined) {
      refuseContradiction(move, step, sum, labels[size] ?? '');
    }
    moves[size] = move?.mm ?? sum;
  }
  return moves;
}

function refuseMovedBase(told: readonly (Told | undefined)[], size: string): void {
  const moved = told.find((one) => Math.abs(one?.mm ?? 0) > SAME_PLACE);
  if (moved === undefined) return;
  throw new InputError('rule-moves-base', {
    what: 'a rule moves its point in the base size',
    allowed: '0 in the base size, or no row for it',
    got: moved.cell.text,
    place: { ...moved.cell.places.cell, size },
  });
}

function refuseContradiction(move: Told, step: Told, sum: number, size: string): void {
  if (Math.abs(move.mm - sum) <= RULES_AGREE) return;
  const { axis, places, text } = move.cell;
  throw new InputError('rule-contradicted', {
    what:
      `the step does not lead to the move of d${axis} for size ${size}, ` +
      `which is ${text} (${inWords(places.cell)})`,
    allowed: 'steps that add up to the moves, or one of the two',
    got: step.cell.text,
    place: { ...step.cell.places.cell, size },
  });
}
