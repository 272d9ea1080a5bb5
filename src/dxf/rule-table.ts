/**
 * The ASCII table of grade rules that goes with a pattern after ASTM D6673. That there is one, apart
 * from the DXF file, the standard says; its syntax is from memory and unverified.
 */
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import { InputError } from '../errors';
import { MOST_MOVE } from '../rule-sheet/point-rules';
import { drawnLines } from '../table/limits';
import type { LengthUnit } from '../units';
import { toMillimeters } from '../units';
import { UNITS_SAID, unitSaid } from './drawing-unit';
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
  const words = sizeWords(sizes);
  const header = [
    `GRADE RULE TABLE: ${dxfText(name)}`,
    'UNITS: METRIC',
    `NUMBER OF SIZES: ${sizes.length}`,
    `SIZE LIST: ${words.join(' ')}`,
    `SAMPLE SIZE: ${words[sizes.indexOf(sample)] ?? ''}`,
  ];
  const body = [...rules].flatMap(([number, moves]) => [
    `RULE: DELTA ${number}`,
    ...moves.map(({ x, y }) => `${dxfNumber(x)}, ${dxfNumber(-y)}`),
  ]);
  return [...header, ...body, 'END', ''].join('\n');
}

/** Sizes are parted by blanks or commas, so that one with such takes an underscore. */
export function sizeWord(label: string): string {
  return dxfText(label).replace(/[\s,]+/gu, '_');
}

/** The word of each size, no two alike; a label that is a word already keeps it. */
export function sizeWords(labels: readonly string[]): readonly string[] {
  const used = new Set(labels.filter((label) => label === sizeWord(label)));
  return labels.map((label) => {
    const stem = sizeWord(label);
    if (label === stem) return label;
    let word = stem;
    for (let n = 2; used.has(word); n++) word = `${stem}_${n}`;
    used.add(word);
    return word;
  });
}

/** A rule table as it was read, with the unit that it states. */
export interface ReadRuleTable extends RuleTable {
  readonly unit: LengthUnit;
  /** Row that states it. */
  readonly unitRow: number;
}

/** Reads such a table. Throws InputError `rule-table-malformed` with file and row. */
export function readRuleTable(text: string, file: string): ReadRuleTable {
  const lines = drawnLines(text, file);
  const refuse: Refuse = (what, allowed, got, row) => {
    throw new InputError('rule-table-malformed', { what, allowed, got, place: { file, row } });
  };
  const header = readHeader(lines, refuse);
  const { sizes, sample } = header;
  const base = sizes.indexOf(sample);
  const rules = readMoves(lines, header.unit, refuse);
  for (const [number, { row, moves }] of rules) {
    if (moves.length !== sizes.length) {
      const what = `rule ${number} has not one move a size`;
      refuse(what, `${sizes.length} lines`, `${moves.length}`, row);
    }
    const { x = NaN, y = NaN } = moves[base] ?? {};
    if (x !== 0 || y !== 0) {
      const got = `${dxfNumber(x)}, ${dxfNumber(-y)} mm`;
      refuse(`rule ${number} moves its point in the sample size`, '0, 0', got, row);
    }
  }
  return { ...header, rules: new Map([...rules].map(([number, { moves }]) => [number, moves])) };
}

type Refuse = (what: string, allowed: string, got: string, row: number) => never;

/** What the table says of itself before its rules. */
function readHeader(lines: readonly string[], refuse: Refuse): Omit<ReadRuleTable, 'rules'> {
  const stated = (name: string): { readonly text: string; readonly row: number } | undefined => {
    const at = lines.findIndex((line) => line.toUpperCase().startsWith(`${name}:`));
    const line = lines[at];
    return line === undefined
      ? undefined
      : { text: line.slice(name.length + 1).trim(), row: at + 1 };
  };
  const need = (name: string, allowed: string) =>
    stated(name) ?? refuse(`the table has no line ${name}`, allowed, lines[0] ?? '', 1);

  const list = need('SIZE LIST', 'a line such as `SIZE LIST: 8 10 12`');
  const sizes = list.text.split(/[\s,]+/u).filter((size) => size !== '');
  const twice = sizes.find((size, i) => sizes.indexOf(size) !== i);
  if (twice !== undefined) refuse('a size is listed twice', 'each size once', twice, list.row);
  const count = stated('NUMBER OF SIZES');
  if (count !== undefined && Number(count.text) !== sizes.length) {
    refuse('the number of sizes is not that of the list', `${sizes.length}`, count.text, count.row);
  }
  const sample = need('SAMPLE SIZE', 'a line such as `SAMPLE SIZE: 10`');
  if (!sizes.includes(sample.text)) {
    refuse('the sample size is not in the size list', sizes.join(' '), sample.text, sample.row);
  }
  const units = need('UNITS', 'a line `UNITS: METRIC` or `UNITS: ENGLISH`');
  const unit =
    unitSaid(units.text) ?? refuse('the unit is not known', UNITS_SAID, units.text, units.row);
  const name = stated('GRADE RULE TABLE')?.text ?? '';
  return { name, sizes, sample: sample.text, unit, unitRow: units.row };
}

/** The rules by their number, each with the row of its heading; moves in mm, y down. */
function readMoves(
  lines: readonly string[],
  unit: LengthUnit,
  refuse: Refuse,
): ReadonlyMap<number, { readonly row: number; readonly moves: readonly Point[] }> {
  const rules = new Map<number, { readonly row: number; readonly moves: Point[] }>();
  let moves: Point[] | undefined;
  lines.forEach((line, i) => {
    const rule = /^\s*RULE\s*:\s*DELTA\s+(\d+)\s*$/iu.exec(line);
    if (rule !== null) {
      const number = Number(rule[1]);
      if (rules.has(number)) refuse('a rule is there twice', 'each number once', line, i + 1);
      moves = [];
      rules.set(number, { row: i + 1, moves });
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
    const move = point(toMillimeters(x, unit), -toMillimeters(y, unit));
    if (!(Math.max(Math.abs(move.x), Math.abs(move.y)) <= MOST_MOVE)) {
      const allowed = `up to ${MOST_MOVE} mm from the sample size along each axis`;
      refuse('a rule moves its point farther than any size needs', allowed, line, i + 1);
    }
    moves.push(move);
  });
  return rules;
}
