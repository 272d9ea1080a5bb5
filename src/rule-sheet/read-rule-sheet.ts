/** The one reader of grade rules, for grading, marking and inferring. */
import { InputError, readEach } from '../errors';
import type { PiecePlan } from '../pattern/piece';
import type { Blanks } from '../table/blanks';
import { statedBlanks } from '../table/blanks';
import { refuseCountingNotes } from '../table/note-cells';
import type { Statements } from '../table/statements';
import { matchSize } from '../table/name-match';
import { wantedSizes } from '../table/near-names';
import { talksOfOtherForm, talksOfWholes } from '../table/sheet-talk';
import { seemsOtherOrigin, seemsOtherSize } from '../table/seeming';
import { agreedUnit, refuseUnread, statedBy, statedDown } from '../table/statements';
import { checkSizeLabel } from '../table/size-label';
import { excerpt } from '../table/tidy-text';
import type { TypedCell } from '../table/typed-table';
import { readOpenTable } from '../table/typed-table';
import type { LengthUnit } from '../units';
import { carriedNames } from './carried-names';
import { longRows } from './long-rows';
import { namedPoint, pointAsTyped } from '../pattern/named-point';
import { pointCells } from './point-cells';
import { readMove } from './read-cell';
import { refuseOtherRuler } from './other-ruler';
import { withPlainSizes } from './plain-heads';
import { COLUMNS, LAYOUTS } from './rule-columns';
import type { RuleEntry, RuleRow } from './rule-row';
import type { RuleCell, RuleSheet } from './rule-sheet';
import { isFilled } from './rule-sheet';
import { statedSizes } from './size-list';
import type { SizeHeads } from './step-heads';
import { sizeHeads } from './step-heads';
import { wideRows } from './wide-rows';

/** What is known beside the sheet. */
export interface SheetAbout {
  /** The pieces whose points have rules; names stand as they are typed if absent. */
  readonly plans?: readonly PiecePlan[] | undefined;
  /** Unit of a sheet that does not say its own. */
  readonly unit?: LengthUnit | undefined;
  /** The sizes of the chart. */
  readonly sizes?: readonly string[] | undefined;
  /** What these are of, for messages; a chart if absent. */
  readonly sizesOf?: 'chart' | 'library';
  /** The base as the caller has it; otherwise as the sheet states it. */
  readonly base?: string | undefined;
  /** Rules of a library, which the sheet may use and not define again. */
  readonly shared?: RuleSheet['named'] | undefined;
}

/** How the numbers of one sheet are read. */
interface Reading {
  readonly unit: LengthUnit;
  readonly blanks: Blanks;
  readonly heads: SizeHeads;
}

/**
 * Reads the text of a sheet; `file` names it in messages. One size a row or one a column, points as
 * `front.side_hip` or in two columns, moves or steps, numbers or formulas, named rules: rows with
 * the name of a rule and no point define it, rows with a point and the name use it. Throws InputError
 * with the row and the column for whatever would leave a cell doubtful; a blank cell is none of that.
 */
export function readRuleSheet(text: string, file: string, about: SheetAbout): RuleSheet {
  const table = readOpenTable(text, file, COLUMNS);
  const blanks = statedBlanks(table);
  const layout = table.columns.has('axis') ? wideRows : longRows;
  const laid = layout(table, blanks.isBlank);
  if (laid.rows.length === 0) {
    throw new InputError('sheet-malformed', {
      what: 'the sheet has no rules',
      allowed: LAYOUTS,
      place: { file, row: 1 },
    });
  }
  const stated = agreedUnit(table, [...table.units.values(), ...laid.units]);
  const { rows: plain, marked } = withPlainSizes(laid.rows, stated ?? about.unit);
  const { plans } = about;
  const asTyped = carriedNames(plain, plans);
  const known = agreedSizes(table, about.sizes, about.sizesOf);
  const rows = known === undefined ? asTyped : asTyped.map((row) => inSizes(row, known));
  const typed = rows.flatMap(({ entries }) => entries.map(({ size }) => size));
  const labels = typed.filter((size) => size.text !== '');
  for (const { text: label, place } of labels) checkSizeLabel(label, place);
  const base = agreedBase(table, about.base);
  if (base !== undefined) refuseOtherOrigin(table, base);
  const heads = sizeHeads([...new Set(labels.map((size) => size.text))], known, base, file);
  if (known !== undefined) refuseUnknown(labels, heads);
  // A direction that is not understood is refused, also where one would be recognized.
  statedDown(table);
  const unit = stated ?? about.unit;
  if (unit === undefined) {
    throw new InputError('unit-missing', {
      what: 'the sheet does not say its unit',
      allowed: 'columns such as dx_in or dx_cm, or a line "# unit: in"',
      ...(plans === undefined ? { orField: 'pattern' } : {}),
      place: { file },
    });
  }
  refuseCountingNotes(table, unit);
  const cellsOf = (row: RuleRow): readonly RuleCell[] => rowCells(row, { unit, blanks, heads });
  const nameOf = ({ piece, point }: RuleRow) =>
    plans === undefined ? pointAsTyped(piece, point) : namedPoint(piece, point, plans);
  const own = pointCells(rows, cellsOf, nameOf, about.shared);
  const cells = [...own.cells, ...[...own.named.values()].flat()];
  if (stated === undefined) refuseOtherRuler(cells, unit, file);
  refuseOtherForm(table, cells);
  return {
    file,
    comments: table.comments,
    notes: [...marked, ...table.notes],
    unit,
    sizes: heads.sizes,
    sizesKnown: known !== undefined,
    ...own,
  };
}

/** The base from which the sheet counts. Throws InputError `rule-contradicted` where it has another. */
function agreedBase(sheet: Statements, wanted: string | undefined): string | undefined {
  const stated = statedBy(sheet, 'base');
  if (stated === undefined || wanted === undefined) return wanted ?? stated?.text;
  if (matchSize(stated.text, [wanted]) !== undefined) return wanted;
  throw new InputError('rule-contradicted', {
    what: 'the sheet counts from another base size than the one that is graded from',
    allowed: wanted,
    got: stated.text,
    place: stated.place,
  });
}

/** Throws InputError `sheet-malformed` for a line by which moves seem to count from another size. */
export function refuseOtherOrigin(sheet: Statements, base: string): void {
  refuseUnread(sheet, {
    what: `that moves count from another size than the base ${base}`,
    seems: (text) => seemsOtherSize(text, base) || seemsOtherOrigin(text, base),
    allowed: `moves and steps from the base, and "# base: ${base}" or no line`,
    also: ['title'],
  });
}

/**
 * Throws InputError `sheet-malformed` for a line that seems to call moves steps, or the other way round, or
 * the growth of whole girths, and for allowances, which are the pattern's.
 */
function refuseOtherForm(sheet: Statements, cells: readonly RuleCell[]): void {
  refuseUnread(sheet, {
    what: 'the growth of whole girths',
    seems: talksOfWholes,
    allowed: 'how far each point moves, such as a quarter of what the girth grows by',
    also: ['title'],
  });
  const allowance = statedBy(sheet, 'allowance');
  if (allowance !== undefined) {
    throw new InputError('sheet-malformed', {
      what: 'a rule sheet states an allowance, which is read from the pattern alone',
      allowed: 'the line in the pattern',
      got: excerpt(allowance.typed),
      place: allowance.place,
    });
  }
  const [form, ...others] = new Set(cells.map((cell) => cell.form));
  if (form === undefined || others.length > 0) return;
  refuseUnread(sheet, {
    what: form === 'move' ? 'that cells are steps' : 'that cells are no steps',
    seems: (text) => talksOfOtherForm(text, form),
    allowed: 'dx, dy for moves from the base, and step_dx, step_dy for steps from the neighbor',
    also: ['title'],
  });
}

/** The sizes of the chart, or as stated. Throws InputError `rule-contradicted` where both differ. */
function agreedSizes(
  sheet: Statements,
  wanted: readonly string[] | undefined,
  of: SheetAbout['sizesOf'] = 'chart',
): readonly string[] | undefined {
  const stated = statedBy(sheet, 'sizes');
  const own = stated && statedSizes(stated);
  if (own === undefined || wanted === undefined) return wanted ?? own;
  const meant = new Set(own.map((size) => matchSize(size, wanted)));
  if (own.length === wanted.length && wanted.every((size) => meant.has(size))) return wanted;
  // A step leads to another neighbor where a size between is left out.
  throw new InputError('rule-contradicted', {
    what: `the sheet states other sizes than the ${of} has`,
    allowed: wanted.join(', '),
    got: own.join(', '),
    place: stated?.place ?? {},
  });
}

/** The row with its sizes spelled as they are known; steps and unknown sizes stay as typed. */
function inSizes(row: RuleRow, known: readonly string[]): RuleRow {
  return {
    ...row,
    entries: row.entries.map((entry) => {
      const text = matchSize(entry.size.text, known);
      return text === undefined ? entry : { ...entry, size: { ...entry.size, text } };
    }),
  };
}

function refuseUnknown(labels: readonly TypedCell[], { sizes, stepOf }: SizeHeads): void {
  const unknown = labels.find(
    (label) => !sizes.includes(label.text) && stepOf(label) === undefined,
  );
  if (unknown === undefined) return;
  throw new InputError('size-unknown', {
    what: 'the range has no such size',
    ...wantedSizes(unknown.text, sizes),
    got: unknown.text,
    place: unknown.place,
  });
}

/** The numbers of a row, of no point yet. Throws InputError `size-missing` and what cells throw. */
function rowCells(row: RuleRow, reading: Reading): readonly RuleCell[] {
  const cells = readEach(row.entries, (entry) => ruleCell(row, entry, reading));
  const sized = cells.filter((cell) => cell.size !== '' || isFilled(cell));
  const move = sized.find(
    ({ size, form, mm }) => size === '' && form === 'move' && (mm ?? 0) !== 0,
  );
  if (sized.length > 0 && move === undefined) return sized;
  const [first] = row.entries;
  const size = first?.size.place.column === undefined ? undefined : first.size.place;
  throw new InputError('size-missing', {
    what: 'a row does not say its size',
    allowed:
      'the label of a size; only a step, a formula or 0 may hold in every size, ' +
      'in step_dx or step_dy',
    got: move?.text ?? '',
    place: size ?? move?.places.cell ?? first?.cell.place ?? row.point.place,
  });
}

function ruleCell(row: RuleRow, entry: RuleEntry, reading: Reading): RuleCell {
  const { unit, blanks, heads } = reading;
  const { size, cell, axis, form } = entry;
  const step = size.text === '' ? undefined : heads.stepOf(size);
  const label = step?.size ?? size.text;
  const place = { ...cell.place, ...(label === '' ? {} : { size: label }) };
  const value = readMove({ ...cell, place }, unit, blanks);
  const reversed = step?.reversed ?? false;
  return {
    ...value,
    ...(reversed && value.mm !== undefined ? { mm: 0 - value.mm } : {}),
    piece: '',
    point: '',
    size: label,
    axis,
    form: step === undefined ? form : 'step',
    reversed,
    places: {
      cell: place,
      piece: (row.piece.text === '' ? row.point : row.piece).place,
      point: row.point.place,
      size: size.place,
    },
  };
}
