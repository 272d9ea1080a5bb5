/** Points of measure as a file lists them, one a row. */
import type { InputErrorCode } from '../errors';
import { InputError } from '../errors';
import { meantName } from '../table/name-match';
import { withPlainHyphens } from '../table/tidy-text';
import { refuseCountingNotes } from '../table/note-cells';
import type { TypedCell, TypedRow } from '../table/typed-table';
import type { Statements } from '../table/statements';
import { statedBy, unitOrUsual } from '../table/statements';
import { lengthCell, readTypedTable } from '../table/typed-table';
import type { UnreadText } from '../table/unread';
import { unreadIn } from '../table/unread';
import { readSide } from '../seams/read-seams';
import { namedPoint } from '../pattern/named-point';
import type { PiecePlan } from '../pattern/piece';
import type { LengthUnit } from '../units';
import type { MeasurePath, PiecePoint, PointOfMeasure } from './point-of-measure';
import type { MeasureGroup, Taken } from './spec';

const NEEDED = ['code', 'measure', 'path', 'of'] as const;
const KNOWN = ['times', 'taken', 'group', 'minus', 'plus', 'how', 'note'] as const;
type Column = (typeof NEEDED)[number] | (typeof KNOWN)[number];

const PATHS = ['along', 'between', 'across'] as const;
const TAKEN: readonly Taken[] = ['girth', 'flat', 'length'];
const GROUPS: readonly MeasureGroup[] = ['girth', 'hem', 'length', 'band', 'opening'];

/**
 * Reads a list of points of measure: `along` edges (`front.waist + back.waist`), `between` two points
 * (`front.center_waist to front.center_hem`) or `across` pieces at the level of a point
 * (`front.side_hip + back.side_hip`). `usual` is the unit of a list that states none. Throws InputError `edge-unknown`, `point-unknown`,
 * `bad-option`, `measurement-twice` and what cells throw, each with its place.
 */
export function readMeasures(
  text: string,
  file: string,
  plans: readonly PiecePlan[],
  usual: LengthUnit | undefined,
): { readonly points: readonly PointOfMeasure[]; readonly unread: readonly UnreadText[] } {
  const table = readTypedTable<Column>(text, file, NEEDED, KNOWN);
  const unit = unitOrUsual(table, table.units.values(), usual);
  refuseCountingNotes(table, unit);
  refuseZeroBlanks(table);
  const codes = new Set<string>();
  const points = table.rows.map((row): PointOfMeasure => {
    const code = row('code');
    if (code.text === '' || codes.has(code.text)) {
      refuse(
        'measurement-twice',
        'a point of measure has no code of its own',
        'one code each',
        code,
      );
    }
    codes.add(code.text);
    const path = pathOf(row, plans);
    const taken = chosen(row('taken'), TAKEN, path.kind === 'between' ? 'length' : 'girth');
    const [minus, plus] = [row('minus'), row('plus')];
    const hasTolerance = minus.text !== '' || plus.text !== '';
    return {
      code: code.text,
      measure: row('measure').text,
      how: row('how').text || `${path.kind} ${row('of').text}`,
      taken,
      group: chosen(row('group'), GROUPS, taken === 'length' ? 'length' : 'girth'),
      path,
      times: timesOf(row('times')),
      tolerance: hasTolerance
        ? { minus: toleranceOf('-', minus, plus, unit), plus: toleranceOf('+', plus, minus, unit) }
        : undefined,
    };
  });
  return { points, unread: unreadIn(table, []) };
}

/** A blank tolerance is the usual one, and one of zero is none that a garment keeps. */
function refuseZeroBlanks(table: Statements): void {
  const stated = statedBy(table, 'blank');
  if (stated === undefined) return;
  throw new InputError('bad-option', {
    what: 'the list gives blanks a meaning, but a blank tolerance is the usual one here',
    allowed: 'no such line, and tolerances in minus and plus where they are not the usual ones',
    got: stated.text,
    place: stated.place,
  });
}

function pathOf(row: TypedRow<Column>, plans: readonly PiecePlan[]): MeasurePath {
  const of = row('of');
  switch (chosen(row('path'), PATHS, undefined)) {
    case 'along':
      return { kind: 'along', side: readSide(of, plans) };
    case 'between': {
      const [from, to, ...more] = of.text.split(/\s+to\s+/iu);
      if (from === undefined || to === undefined || more.length > 0) {
        refuse('bad-option', 'two points are not named', 'such as front.a to front.b', of);
      }
      const ends = { from: pieceAndPoint(from, of, plans), to: pieceAndPoint(to, of, plans) };
      if (ends.from.piece !== ends.to.piece) {
        refuse('bad-option', 'the points are on two pieces', 'two points of one piece', of);
      }
      return { kind: 'between', ...ends };
    }
    case 'across':
      return {
        kind: 'across',
        levels: of.text.split('+').map((part) => pieceAndPoint(part, of, plans)),
      };
  }
}

function pieceAndPoint(
  text: string,
  { place }: TypedCell,
  plans: readonly PiecePlan[],
): PiecePoint {
  return namedPoint({ text: '', place }, { text: text.trim(), place }, plans);
}

function chosen<Choice extends string>(
  cell: TypedCell,
  choices: readonly Choice[],
  fallback: Choice | undefined,
): Choice {
  if (cell.text === '' && fallback !== undefined) return fallback;
  return meantName(cell, choices, { code: 'bad-option', what: 'a word is not known' });
}

function timesOf(cell: TypedCell): number {
  if (cell.text === '') return 1;
  if (/^[1-9]\d?$/u.test(cell.text)) return Number(cell.text);
  return refuse('cell-not-a-number', 'it is not clear how often it counts', 'such as 2', cell);
}

/**
 * One tolerance alone counts both ways; `-1/4` below, `+1/4` above and `±1/4` in either are how people write
 * them. Throws InputError `bad-option` for the sign of the other column, as where columns are exchanged.
 */
function toleranceOf(sign: '-' | '+', own: TypedCell, other: TypedCell, unit: LengthUnit): number {
  const cell = own.text === '' ? other : own;
  const text = withPlainHyphens(cell.text).replace(/^(?:±|\+ ?\/? ?-) ?/u, '');
  if (own.text !== '' && text.startsWith(sign === '-' ? '+' : '-')) {
    const column = sign === '-' ? 'minus' : 'plus';
    refuse('bad-option', `the tolerance ${column} has the other sign`, `${sign}1/4 or 1/4`, own);
  }
  return Math.abs(lengthCell({ ...cell, text }, unit));
}

function refuse(
  code: InputErrorCode,
  what: string,
  allowed: string,
  { text, place }: TypedCell,
): never {
  throw new InputError(code, { what, allowed, got: text, place });
}
