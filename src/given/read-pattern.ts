/** A base pattern as CSV: every point of every piece, in the order of its outline. */
import type { Place } from '../errors';
import { InputError } from '../errors';
import { point } from '../geometry/point';
import type { Cutting } from '../pattern/piece';
import type { LengthUnit } from '../units';
import { allowanceCell, cuttingCell, foldCell, kindCell, placeCell } from './pattern-cells';
import { buildPiece } from './build-piece';
import type { Pattern } from '../pattern/pattern';
import type { RawPiece, RawPoint } from './raw-point';
import { pairsBySeam } from './pairs-by-seam';
import type { Blanks } from '../table/blanks';
import { isDash, statedBlanks } from '../table/blanks';
import { refuseCountingNotes } from '../table/note-cells';
import { matchName, namesMeant } from '../table/name-match';
import type { TypedCell, TypedRow } from '../table/typed-table';
import { seemsAllowance, seemsOtherOrigin, seemsOtherSize } from '../table/seeming';
import { agreedUnit, refuseUnread, statedBy, statedDown } from '../table/statements';
import { unreadIn } from '../table/unread';
import { imprintOf } from '../table/imprint';
import { checkTitle } from '../table/title';
import { readTypedTable } from '../table/typed-table';

const NEEDED = ['point', 'x', 'y'] as const;
const KNOWN = [
  'piece',
  'kind',
  'edge',
  'seam',
  'allowance',
  'fold',
  'rule',
  'cut',
  'note',
] as const;
type Column = (typeof NEEDED)[number] | (typeof KNOWN)[number];

/** A pattern as a sheet has it. */
export interface TypedPattern extends Pattern {
  /** Whether the sheet counts y upward; the places of the pattern count it downward all the same. */
  readonly countsUp: boolean;
}

/**
 * Reads a pattern. Comment lines state its unit (`# unit: cm`), its size (`# base: 12`), a title,
 * `# y: up` where y does not run down, `# allowance: 1.5` for all edges without their own, and
 * `# blank: 0` where a blank or a dash in x or y is zero. Piece and point may be one name. A row without a
 * piece belongs to the one before it; a row without edge and seam continues those before it. Throws InputError with file, row and column for everything that would leave a point or an edge
 * doubtful.
 */
export function readPattern(text: string, file: string): TypedPattern {
  const table = readTypedTable<Column>(text, file, NEEDED, KNOWN);
  const unit = agreedUnit(table, table.units.values());
  if (unit === undefined) {
    throw new InputError('unit-missing', {
      what: 'the pattern does not say in which unit it is',
      allowed: 'a line such as `# unit: cm`, with in, cm or mm',
      place: { file },
    });
  }
  refuseCountingNotes(table, unit);
  const stated = statedBy(table, 'allowance');
  refuseUnread(table, {
    what: 'an allowance',
    seems: seemsAllowance,
    allowed:
      'one line such as "# allowance: 5/8 in", or none; what differs from it, such as a hem, in the ' +
      'column allowance',
    also: ['title'],
  });
  const usual = stated && allowanceCell(stated, unit);
  const down = statedDown(table);
  const raw = rawPieces(table.rows, { unit, usual, down, blanks: statedBlanks(table) });
  if (raw.length === 0) {
    throw new InputError('outline-malformed', {
      what: 'the pattern has no pieces',
      allowed: 'a row for each point of each piece',
      place: { file },
    });
  }
  if (statedBy(table, 'y') === undefined) refuseUpsideDown(raw);
  const titled = statedBy(table, 'title');
  if (titled !== undefined) checkTitle(titled.text, titled.place);
  const title = titled?.text;
  const base = statedBy(table, 'base')?.text;
  refuseUnread(table, {
    what: base === undefined ? 'the size of the pattern' : `another size than the base ${base}`,
    seems: (text) =>
      seemsOtherSize(text, base) || (base !== undefined && seemsOtherOrigin(text, base)),
    allowed: 'one line such as "# base: 12" for the size in which the pattern is drawn',
    also: ['title'],
  });
  const imprint = imprintOf(table.comments);
  return {
    ...{ ...assembled(raw), file, title, imprint, unit, base, leftOut: [], countsUp: down < 0 },
    unread: unreadIn(table, ['base', 'y', 'allowance', 'blank']),
  };
}

/**
 * Throws InputError `sheet-malformed` for a sheet without `# y:` that has no place below its zero, or a hem
 * above the waist: its y most likely runs up, and read as it stands each piece would be upside down.
 */
function refuseUpsideDown(pieces: readonly RawPiece[]): void {
  for (const piece of pieces) refuseHemAbove(piece);
  const points = pieces.flatMap((piece) => piece.points);
  if (points.some(({ at }) => at.y > 0)) return;
  const [lowest] = points.toSorted((a, b) => a.at.y - b.at.y);
  if (lowest === undefined || lowest.at.y === 0) return;
  throw new InputError('sheet-malformed', {
    what: 'every y of the pattern is negative or 0, and no line says which way it runs',
    allowed: 'a line "# y: up" where the hem lies below 0, as on graph paper, or "# y: down"',
    got: `point ${lowest.name}`,
    place: lowest.place,
  });
}

function refuseHemAbove({ points }: RawPiece): void {
  const called = (word: RegExp): readonly RawPoint[] =>
    points.filter(({ name }) => word.test(name.replaceAll('_', ' ')));
  const [waist, hem] = [called(/\bwaist\b/iu), called(/\bhem\b/iu)];
  const [first] = hem;
  const isAbove = waist.every(({ at }) => hem.every((own) => own.at.y < at.y));
  if (first === undefined || waist.length === 0 || !isAbove) return;
  throw new InputError('sheet-malformed', {
    what: 'the hem lies above the waist, and no line says which way y runs',
    allowed: 'a line "# y: up" where y counts from the hem or the floor, or "# y: down"',
    got: `point ${first.name}`,
    place: first.place,
  });
}

/** The pieces, and the seams in which they are sewn together. */
export function assembled(
  raw: readonly RawPiece[],
): Pick<Pattern, 'pieces' | 'seams' | 'unpaired'> {
  return { pieces: raw.map(buildPiece), ...pairsBySeam(raw) };
}

/** How the cells of one sheet are read. */
interface Reading {
  readonly unit: LengthUnit;
  /** 1 where y runs down, else -1. */
  readonly down: 1 | -1;
  /** mm, the allowance of edges without their own. */
  readonly usual: number | undefined;
  readonly blanks: Blanks;
}

/** A piece as far as its rows have been read. */
interface OpenPiece {
  readonly points: RawPoint[];
  readonly cuttings: Cutting[];
  readonly allowances: Map<string, number>;
}

function rawPieces(rows: readonly TypedRow<Column>[], reading: Reading): readonly RawPiece[] {
  const pieces = new Map<string, OpenPiece>();
  const seams = new Set<string>();
  let current = '';
  let on = { edge: 'edge', seam: '' };
  for (const typed of rows) {
    const row = withoutBlanks(typed, reading.blanks);
    const [cell, own] = nameCells(row('piece'), row('point'), current);
    if (cell.text !== '' && !isSame(cell.text, current)) {
      if ([...pieces.keys()].some((other) => isSame(cell.text, other))) refuseSplit(cell);
      current = named(cell);
      on = { edge: 'edge', seam: '' };
      pieces.set(current, { points: [], cuttings: [], allowances: new Map<string, number>() });
    }
    const piece = pieces.get(current);
    if (piece === undefined) throw missingName(cell, 'the first row names its piece');
    if (row('edge').text !== '' || row('seam').text !== '') {
      const seam = seamCell(row('seam'), [...seams]);
      if (seam !== '') seams.add(seam);
      on = { edge: edgeCell(row('edge'), piece.points) || seam, seam };
    }
    readPoint(piece, row, own, on, reading);
  }
  const anyGiven =
    reading.usual !== undefined ||
    [...pieces.values()].some(({ allowances }) => allowances.size > 0);
  return [...pieces].map(([name, { points, cuttings, allowances }]) => ({
    name,
    points,
    cuttings,
    allowances: new Map(
      anyGiven
        ? points
            .filter(({ kind }) => kind === 'corner' || kind === 'curve' || kind === 'notch')
            .map(({ edge }) => [edge, allowances.get(edge) ?? reading.usual ?? 0] as const)
        : [],
    ),
    cutLine: [],
    cutNotches: [],
    doubleNotches: new Set(),
  }));
}

/** The row with nothing in the cells that say nothing, where the sheet says what these stand for. */
function withoutBlanks(typed: TypedRow<Column>, blanks: Blanks): TypedRow<Column> {
  return (column) => {
    const cell = typed(column);
    return blanks.mm !== undefined && blanks.isBlank(cell) ? { ...cell, text: '' } : cell;
  };
}

/** Adds the point of a row to its piece, and what the row says of cutting and of its edge. */
function readPoint(
  { points, cuttings, allowances }: OpenPiece,
  row: TypedRow<Column>,
  own: TypedCell,
  { edge, seam }: Pick<RawPoint, 'edge' | 'seam'>,
  { unit, down, blanks }: Reading,
): void {
  const place = (column: 'x' | 'y'): number =>
    row(column).text === '' && blanks.mm !== undefined ? blanks.mm : placeCell(row(column), unit);
  const name = named(own);
  if (points.some((other) => other.name === name)) refuseTwice(name, own.place);
  points.push({
    name,
    kind: kindCell(row('kind')),
    at: point(place('x'), down * place('y')),
    edge,
    seam,
    fold: foldCell(row('fold')),
    rule: row('rule'),
    place: own.place,
  });
  if (row('cut').text !== '') cuttings.push(cuttingCell(row('cut')));
  if (row('allowance').text !== '') {
    const width = allowanceCell(row('allowance'), unit);
    if ((allowances.get(edge) ?? width) !== width) refuseTwoWidths(edge, row('allowance'));
    allowances.set(edge, width);
  }
}

function isSame(a: string, b: string): boolean {
  return namesMeant(a, [b]).length > 0;
}

/** The cells of piece and point; `front.side_hip` is both in one. */
function nameCells(
  piece: TypedCell,
  point: TypedCell,
  current: string,
): readonly [piece: TypedCell, point: TypedCell] {
  const dot = point.text.indexOf('.');
  const first = point.text.slice(0, Math.max(0, dot)).trim();
  const isOne = dot > 0 && (piece.text === '' || isSame(first, piece.text));
  if (!isOne) return [piece, point];
  const whole = { ...point, text: point.text.slice(dot + 1).trim() };
  return [
    piece.text === '' ? { ...point, text: isSame(first, current) ? current : first } : piece,
    whole,
  ];
}

/** A seam by the first of its spellings, since equal names are sewn together; a dash is none. */
function seamCell(cell: TypedCell, known: readonly string[]): string {
  return isDash(cell) ? '' : (matchName(cell.text, known) ?? cell.text);
}

/** An edge by the first of its spellings on the piece. Throws InputError `outline-malformed`. */
function edgeCell(cell: TypedCell, points: readonly RawPoint[]): string {
  if (isDash(cell)) throw missingName(cell, 'an edge has no name');
  return matchName(cell.text, [...new Set(points.map(({ edge }) => edge))]) ?? cell.text;
}

function named(cell: TypedCell): string {
  if (cell.text === '') throw missingName(cell, 'a piece or a point has no name');
  if (!/[.+]/u.test(cell.text)) return cell.text;
  throw missingName(cell, 'a name has a character by which names are joined');
}

function missingName({ text, place }: TypedCell, what: string): InputError {
  return new InputError('outline-malformed', {
    what,
    allowed: 'a name without . and +',
    got: text,
    place,
  });
}

function refuseSplit({ text, place }: TypedCell): never {
  throw new InputError('outline-malformed', {
    what: 'the points of a piece do not stand together',
    allowed: 'all points of a piece one below the other, in the order of its outline',
    got: text,
    place,
  });
}

function refuseTwice(name: string, place: Place): never {
  throw new InputError('point-twice', {
    what: 'the piece has two points of this name',
    allowed: 'each name once in a piece',
    got: name,
    place,
  });
}

function refuseTwoWidths(edge: string, { text, place }: TypedCell): never {
  throw new InputError('outline-malformed', {
    what: `the edge ${edge} has two allowances`,
    allowed: 'one allowance an edge; give the rest of it an edge name of its own',
    got: text,
    place,
  });
}
