/** A rule sheet as CSV, in both habits of the trade. */
import type { SizeChart } from '../chart/size-chart';
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import type { GivenPattern } from '../given/pattern';
import type { MoveRow, RuleUnit } from './rule-moves';
import { ruleMoves } from './rule-moves';
import type { GivenRule, GivenRules } from './point-rules';
import { sizeList } from './size-list';
import type { TableCell } from '../table/typed-table';
import { readTable, statedBy, statedDown, statedUnit } from '../table/typed-table';

const MOVES = ['dx', 'dy', 'step_dx', 'step_dy', 'rule_x', 'rule_y'] as const;
const OTHERS = ['piece', 'point', 'rule', 'size', 'note'] as const;
type Column = (typeof MOVES)[number] | (typeof OTHERS)[number];

/** What a rule sheet is read with: the pattern it moves, and what its formulas are of. */
export interface RuleSources {
  readonly pattern: GivenPattern;
  readonly chart: SizeChart | undefined;
  /** The base as the caller asks for it. */
  readonly base: string | undefined;
}

/**
 * Reads a rule sheet. `dx` and `dy` are moves from the base, `step_dx` and `step_dy` steps from the
 * neighbor on the base's side; a row without a size gives one step, or one formula, for all sizes.
 * A row with the name of a rule and no point defines it; one with a point and the name uses it.
 * Throws InputError with file, row and column for whatever would leave a move doubtful.
 */
export function readRules(text: string, file: string, sources: RuleSources): GivenRules {
  const { pattern, chart } = sources;
  const table = readTable<Column>(text, file, [], [...MOVES, ...OTHERS]);
  const rows = table.rows.map((row): MoveRow => {
    const [piece, point, rule] = [row('piece'), row('point'), row('rule')];
    return {
      piece,
      point,
      rule,
      size: row('size'),
      x: firstFilled(row('dx'), row('step_dx'), row('rule_x')),
      y: firstFilled(row('dy'), row('step_dy'), row('rule_y')),
    };
  });
  const list = sizeList({
    file,
    chart,
    stated: statedBy(table, 'sizes'),
    cells: rows.map(({ size }) => size).filter(({ text: label }) => label !== ''),
    base: sources.base ?? pattern.base ?? statedBy(table, 'base')?.text,
  });
  const unit: LengthUnit =
    statedUnit(table) ??
    MOVES.map((column) => table.units.get(column)).find(Boolean) ??
    pattern.unit;
  const context: RuleUnit = { file, unit, down: statedDown(table), chart, list };

  const byTarget = new Map<string, MoveRow[]>();
  for (const row of rows) {
    const key = targetOf(row, pattern);
    if (key !== undefined) byTarget.set(key, [...(byTarget.get(key) ?? []), row]);
  }
  const named = new Map<string, GivenRule>();
  for (const [key, group] of byTarget) {
    if (key.startsWith('/')) named.set(key.slice(1), ruleMoves(group, context));
  }
  const use = ({ text: name, place }: TableCell): GivenRule => {
    const rule = named.get(name);
    if (rule !== undefined) return rule;
    throw new InputError('rule-unknown', {
      what: 'there is no rule of this name',
      allowed: [...named.keys()].join(', ') || 'rows that define it in the rule sheet',
      got: name,
      place,
    });
  };
  const ruled = pattern.pieces.map(({ base: { plan }, ruleNames }) => {
    const rules = new Map<number, GivenRule>();
    plan.pointNames.forEach((point, i) => {
      const group = byTarget.get(`${plan.name}/${point}`);
      const [first] = group ?? [];
      const own = ruleNames.get(point);
      if (first !== undefined && group !== undefined) {
        rules.set(i, first.rule.text === '' ? ruleMoves(group, context) : use(first.rule));
      } else if (own !== undefined) rules.set(i, use({ text: own.rule, place: own.place }));
    });
    return rules;
  });
  return { file, sizes: list.labels, base: list.base, ruled };
}

/** In which column the move stands tells what it is. */
function firstFilled(move: TableCell, step: TableCell, formula: TableCell): MoveRow['x'] {
  if (move.text !== '') return { habit: 'move', cell: move };
  if (step.text !== '') return { habit: 'step', cell: step };
  return { habit: 'move', cell: formula.text === '' ? move : formula };
}

/**
 * `piece/point`, or `/name` for a row that defines a rule; undefined for the handles of a spline,
 * which follow its points.
 */
function targetOf({ piece, point, rule }: MoveRow, pattern: GivenPattern): string | undefined {
  if (point.text === '' && rule.text !== '') return `/${rule.text}`;
  const pieces = pattern.pieces.map(({ base }) => base.plan);
  const plan = pieces.find(({ name }) => name === piece.text);
  if (plan === undefined) {
    throw new InputError('piece-unknown', {
      what: 'the pattern has no such piece',
      allowed: pieces.map(({ name }) => name).join(', '),
      got: piece.text,
      place: piece.place,
    });
  }
  if (point.text.includes('.') && plan.handles.has(point.text)) return undefined;
  if (plan.index.has(point.text)) return `${plan.name}/${point.text}`;
  throw new InputError('point-unknown', {
    what: `the piece ${plan.name} has no such point`,
    allowed: plan.pointNames.filter((name) => !name.includes('.')).join(', '),
    got: point.text,
    place: point.place,
  });
}
