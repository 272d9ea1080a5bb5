/** The rows of one rule as a move for every size. */
import type { SizeChart } from '../chart/size-chart';
import type { Place } from '../errors';
import { InputError } from '../errors';
import { point } from '../geometry/point';
import { SAME_PLACE } from '../tolerance';
import type { LengthUnit } from '../units';
import { incrementFormula } from './increment-formula';
import { parseMove } from './parse-move';
import type { GivenRule } from './point-rules';
import type { SizeList } from './size-list';
import type { TableCell } from '../table/typed-table';

/** A move along one axis, and whether it counts from the base or from the neighbor. */
export interface AxisCell {
  readonly habit: 'move' | 'step';
  readonly cell: TableCell;
}

/** A row of a rule sheet. */
export interface MoveRow {
  readonly piece: TableCell;
  readonly point: TableCell;
  readonly rule: TableCell;
  readonly size: TableCell;
  readonly x: AxisCell;
  readonly y: AxisCell;
}

/** What all rows of a sheet have in common. */
export interface RuleUnit {
  readonly file: string;
  readonly unit: LengthUnit;
  readonly down: 1 | -1;
  readonly chart: SizeChart | undefined;
  readonly list: SizeList;
}

/**
 * The rule that the rows give: one row for all sizes, or one row for each size but the base. Throws
 * InputError `rule-twice`, `rule-missing` or `rule-moves-base` with the place.
 */
export function ruleMoves(rows: readonly MoveRow[], context: RuleUnit): GivenRule {
  const place = rows[0]?.piece.place ?? {};
  refuseTwice(rows);
  const x = axisMoves(rows, 'x', context);
  const y = axisMoves(rows, 'y', context);
  return {
    moves: x.map((dx, i) => point(dx, context.down * (y[i] ?? NaN))),
    text: { x: textOf(rows, 'x', context), y: textOf(rows, 'y', context) },
    place: { ...(place.file === undefined ? {} : { file: place.file }), row: place.row ?? 1 },
  };
}

function refuseTwice(rows: readonly MoveRow[]): void {
  rows.forEach((row, i) => {
    const sizes = rows.map(({ size }) => size.text);
    const all = sizes.indexOf('');
    if (sizes.indexOf(row.size.text) === i && (all < 0 || rows.length === 1)) return;
    throw new InputError('rule-twice', {
      what: 'a rule is given twice',
      allowed: 'one row for all sizes, or one row a size',
      got: `size ${row.size.text === '' ? 'blank' : row.size.text}`,
      place: row.size.place,
    });
  });
}

function axisMoves(
  rows: readonly MoveRow[],
  axis: 'x' | 'y',
  context: RuleUnit,
): readonly number[] {
  const { labels, base } = context.list;
  const [only] = rows;
  if (only?.size.text === '') return evenMoves(only[axis], context);
  const moves = labels.map(() => 0);
  const fill = (direction: 1 | -1): void => {
    for (let size = base + direction; labels[size] !== undefined; size += direction) {
      const row = rows.find((candidate) => candidate.size.text === labels[size]);
      if (row === undefined) refuseMissing(rows, labels[size] ?? '');
      const own = sizedMove(row[axis], size, context);
      moves[size] = row[axis].habit === 'step' ? (moves[size - direction] ?? 0) + own : own;
    }
  };
  fill(1);
  fill(-1);
  const atBase = rows.find(({ size }) => size.text === labels[base])?.[axis];
  if (atBase !== undefined && Math.abs(sizedMove(atBase, base, context)) > SAME_PLACE) {
    throw new InputError('rule-moves-base', {
      what: 'a rule moves its point in the base size',
      allowed: '0 in the base size, or no row for it',
      got: atBase.cell.text,
      place: { ...atBase.cell.place, size: labels[base] ?? '' },
    });
  }
  return moves;
}

/** The move of one row in mm; a blank cell is no move. */
function sizedMove({ cell }: AxisCell, size: number, { unit, chart, list }: RuleUnit): number {
  if (cell.text === '') return 0;
  const length = parseMove(cell.text, unit);
  return length ?? incrementFormula(cell.text, cell.place, chart)(list.base)[size] ?? NaN;
}

/** One cell for all sizes: a step that is the same everywhere, or a formula. */
function evenMoves({ habit, cell }: AxisCell, { unit, chart, list }: RuleUnit): readonly number[] {
  const { labels, base } = list;
  if (cell.text === '') return labels.map(() => 0);
  const step = parseMove(cell.text, unit);
  if (step === undefined) return incrementFormula(cell.text, cell.place, chart)(base);
  if (habit === 'step' || step === 0) return labels.map((_, size) => step * (size - base));
  throw new InputError('rule-missing', {
    what: 'a move from the base is for one size, and the row names none',
    allowed: 'a size, or the step of every size in step_dx or step_dy, or a formula',
    got: cell.text,
    place: cell.place,
  });
}

function refuseMissing(rows: readonly MoveRow[], size: string): never {
  const place: Place = rows[0]?.size.place ?? {};
  const [piece, name, rule] = [rows[0]?.piece.text, rows[0]?.point.text, rows[0]?.rule.text];
  throw new InputError('rule-missing', {
    what: `the rule that begins here has no row for size ${size}`,
    allowed: 'a row for every size but the base',
    got: rows.map((row) => row.size.text).join(', '),
    place: { ...place, size, point: name === '' ? (rule ?? '') : `${piece ?? ''}.${name ?? ''}` },
  });
}

/** A formula, or a step for all sizes, as typed; nothing where every size has its own move. */
function textOf(rows: readonly MoveRow[], axis: 'x' | 'y', { unit }: RuleUnit): string {
  const [only] = rows;
  if (only === undefined || rows.length > 1 || only.size.text !== '') return '';
  const { text } = only[axis].cell;
  const step = text === '' ? 0 : parseMove(text, unit);
  if (step === 0) return '0';
  const isPlain = step !== undefined && /^[-+\d./ ]+$/u.test(text);
  return only[axis].habit === 'step' ? `${text}${isPlain ? ` ${unit}` : ''} a size` : text;
}
