/**
 * The ASCII table of grade rules that goes with a pattern after ASTM D6673. That there is one, apart
 * from the DXF file, the standard says; its syntax is from memory and unverified.
 */
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { toMillimeters } from '../units';
import { dxfNumber, dxfText } from './entities';

/** Rules by their number: cumulative moves in mm from the sample size, y down, one a size. */
export interface RuleTable {
  readonly name: string;
  readonly sizes: readonly string[];
  /** Label of the sample size. */
  readonly sample: string;
  readonly rules: ReadonlyMap<number, readonly Point[]>;
}

/** Metric, in mm; moves from the sample size, with y running up as in the drawing. */
export function writeRuleTable({ name, sizes, sample, rules }: RuleTable): string {
  const header = [
    `GRADE RULE TABLE: ${dxfText(name)}`,
    'UNITS: METRIC',
    `NUMBER OF SIZES: ${sizes.length}`,
    `SIZE LIST: ${sizes.map(sizeWord).join(' ')}`,
    `SAMPLE SIZE: ${sizeWord(sample)}`,
  ];
  const body = [...rules].flatMap(([number, moves]) => [
    `RULE: DELTA ${number}`,
    ...moves.map(({ x, y }) => `${dxfNumber(x)}, ${dxfNumber(-y)}`),
  ]);
  return [...header, ...body, 'END', ''].join('\n');
}

/** Sizes are parted by blanks, so that one with a blank takes an underscore. */
export function sizeWord(label: string): string {
  return dxfText(label).replace(/\s+/gu, '_');
}

/** Reads such a table. Throws InputError `rule-table-malformed` with file and row. */
export function readRuleTable(text: string, file: string): RuleTable & { unit: LengthUnit } {
  const lines = text.split(/\r\n|\r|\n/u);
  const stated = (name: string): string | undefined => {
    const line = lines.find((candidate) => candidate.toUpperCase().startsWith(`${name}:`));
    return line?.slice(name.length + 1).trim();
  };
  const refuse = (what: string, allowed: string, got: string, row: number): never => {
    throw new InputError('rule-table-malformed', { what, allowed, got, place: { file, row } });
  };
  const sizes = stated('SIZE LIST')?.split(/[\s,]+/u) ?? [];
  const sample = stated('SAMPLE SIZE') ?? '';
  if (!sizes.includes(sample)) {
    refuse('the sample size is not in the size list', sizes.join(' '), sample, 1);
  }
  const units = stated('UNITS')?.toUpperCase() ?? '';
  const unit = ({ METRIC: 'mm', ENGLISH: 'in' } as Record<string, LengthUnit | undefined>)[units];
  if (unit === undefined) return refuse('the unit is not known', 'METRIC or ENGLISH', units, 1);

  const rules = new Map<number, readonly Point[]>();
  let moves: Point[] | undefined;
  lines.forEach((line, i) => {
    const rule = /^\s*RULE\s*:\s*DELTA\s+(\d+)\s*$/iu.exec(line);
    if (rule !== null) {
      moves = [];
      rules.set(Number(rule[1]), moves);
      return;
    }
    if (moves === undefined || line.trim() === '' || /^\s*END\s*$/iu.test(line)) return;
    const numbers = line
      .trim()
      .split(/[\s,]+/u)
      .map(Number);
    const [x = NaN, y = NaN] = numbers;
    if (numbers.length !== 2 || !Number.isFinite(x) || !Number.isFinite(y)) {
      refuse('a line of a rule is no move', 'two numbers, dx and dy', line, i + 1);
    }
    moves.push(point(toMillimeters(x, unit), -toMillimeters(y, unit)));
  });
  for (const [number, list] of rules) {
    if (list.length === sizes.length) continue;
    const row = lines.findIndex((line) => new RegExp(`DELTA\\s+${number}\\s*$`, 'iu').test(line));
    refuse(
      `rule ${number} has not one move a size`,
      `${sizes.length} lines`,
      `${list.length}`,
      row + 1,
    );
  }
  return { name: stated('GRADE RULE TABLE') ?? '', sizes, sample, rules, unit };
}
