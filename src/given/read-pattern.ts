/** A base pattern as CSV: every point of every piece, in the order of its outline. */
import type { Place } from '../errors';
import { InputError } from '../errors';
import { point } from '../geometry/point';
import type { Cutting } from '../pattern/piece';
import type { LengthUnit } from '../units';
import { allowanceCell, cuttingCell, kindCell } from './pattern-cells';
import { buildPiece } from './build-piece';
import type { Pattern } from '../pattern/pattern';
import type { RawPiece, RawPoint } from './raw-point';
import { pairsBySeam } from './pairs-by-seam';
import type { TypedCell, TypedRow } from '../table/typed-table';
import { agreedUnit, refuseUnread, statedBy, statedDown } from '../table/statements';
import { lengthCell, readTypedTable } from '../table/typed-table';

const NEEDED = ['piece', 'point', 'x', 'y'] as const;
const KNOWN = ['kind', 'edge', 'seam', 'allowance', 'fold', 'rule', 'cut', 'note'] as const;
type Column = (typeof NEEDED)[number] | (typeof KNOWN)[number];

/** A word on allowances in prose; that there are none is what a sheet without the line says. */
const ALLOWANCE = /(?<!\b(?:no|without)(?: seam)?[- ])\ballowances?\b/iu;

/**
 * Reads a pattern. Comment lines state its unit (`# unit: cm`), its size (`# base: 12`), a title,
 * `# y: up` where y does not run down, and `# allowance: 1.5` for all edges without their own. A row
 * without a piece belongs to the one before it; a row without edge and seam continues those before
 * it. Throws InputError with file, row and column for everything that would leave a point or an edge
 * doubtful.
 */
export function readPattern(text: string, file: string): Pattern {
  const table = readTypedTable<Column>(text, file, NEEDED, KNOWN);
  const unit = agreedUnit(table, table.units.values());
  if (unit === undefined) {
    throw new InputError('unit-missing', {
      what: 'the pattern does not say in which unit it is',
      allowed: 'a line such as `# unit: cm`, with in, cm or mm',
      place: { file },
    });
  }
  const stated = statedBy(table, 'allowance');
  if (stated === undefined) refuseUnread(table, 'allowance', ALLOWANCE, '"# allowance: 5/8 in"');
  const usual = stated && allowanceCell(stated, unit);
  const raw = rawPieces(table.rows, unit, statedDown(table), usual);
  if (raw.length === 0) {
    throw new InputError('outline-malformed', {
      what: 'the pattern has no pieces',
      allowed: 'a row for each point of each piece',
      place: { file },
    });
  }
  const title = statedBy(table, 'title')?.text;
  const base = statedBy(table, 'base')?.text;
  return { ...assembled(raw), file, title, unit, base, leftOut: [] };
}

/** The pieces, and the seams in which they are sewn together. */
export function assembled(
  raw: readonly RawPiece[],
): Pick<Pattern, 'pieces' | 'seams' | 'unpaired'> {
  return { pieces: raw.map(buildPiece), ...pairsBySeam(raw) };
}

function rawPieces(
  rows: readonly TypedRow<Column>[],
  unit: LengthUnit,
  down: 1 | -1,
  usual: number | undefined,
): readonly RawPiece[] {
  const pieces = new Map<
    string,
    { points: RawPoint[]; cuttings: Cutting[]; allowances: Map<string, number> }
  >();
  let current = '';
  let edge = 'edge';
  let seam = '';
  for (const row of rows) {
    const cell = row('piece');
    if (cell.text !== '' && cell.text !== current) {
      if (pieces.has(cell.text)) refuseSplit(cell);
      current = named(cell);
      [edge, seam] = ['edge', ''];
      pieces.set(current, { points: [], cuttings: [], allowances: new Map<string, number>() });
    }
    const piece = pieces.get(current);
    if (piece === undefined) throw missingName(cell, 'the first row names its piece');
    if (row('edge').text !== '' || row('seam').text !== '') {
      seam = row('seam').text;
      edge = row('edge').text || seam;
    }
    const name = named(row('point'));
    if (piece.points.some((other) => other.name === name)) refuseTwice(name, row('point').place);
    piece.points.push({
      name,
      kind: kindCell(row('kind')),
      at: point(lengthCell(row('x'), unit), down * lengthCell(row('y'), unit)),
      edge,
      seam,
      fold: row('fold').text !== '',
      rule: row('rule'),
      place: row('point').place,
    });
    if (row('cut').text !== '') piece.cuttings.push(cuttingCell(row('cut')));
    if (row('allowance').text !== '') {
      const width = allowanceCell(row('allowance'), unit);
      if ((piece.allowances.get(edge) ?? width) !== width) refuseTwoWidths(edge, row('allowance'));
      piece.allowances.set(edge, width);
    }
  }
  const anyGiven =
    usual !== undefined || [...pieces.values()].some(({ allowances }) => allowances.size > 0);
  return [...pieces].map(([name, { points, cuttings, allowances }]) => ({
    name,
    points,
    cuttings,
    allowances: new Map(
      anyGiven
        ? points
            .filter(({ kind }) => kind === 'corner' || kind === 'curve' || kind === 'notch')
            .map(({ edge: own }) => [own, allowances.get(own) ?? usual ?? 0] as const)
        : [],
    ),
    cutLine: [],
    cutNotches: [],
    doubleNotches: new Set(),
  }));
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
