/** A style file: CSV with the columns parameter, value, note. */
import { InputError, readEach } from '../errors';
import { labelKey } from '../table/label';
import { refuseCountingNotes } from '../table/note-cells';
import type { SaidLine } from '../table/said-line';
import type { Statements } from '../table/statements';
import { seemsAllowance } from '../table/seeming';
import { agreedUnit, refuseUnread, statedBy } from '../table/statements';
import { checkTitle } from '../table/title';
import { readTypedTable } from '../table/typed-table';
import { DEFAULT_STYLE } from './default-style';
import { refuseLoneLines } from './lone-lines';
import type { Setting } from './setting';
import type { Style } from './styles';
import { STYLES, findParameter, findStyle } from './styles';

/** A style, and the settings that a file or a caller puts on top of it. */
export interface StyleChoice {
  readonly style: Style;
  /** The lines of the style file that may state something of the design. */
  readonly lines?: readonly SaidLine[];
  readonly settings: readonly Setting[];
  /** What the result is called, whatever the chart says. */
  readonly title?: string;
}

/**
 * Reads a style file. A comment line `# based on: straight` names the style it changes,
 * `shared-pencil` if there is none; `# unit: cm` is the unit of its bare numbers, otherwise they take the chart's.
 * Throws InputError `parameter-unknown` or `parameter-twice` with file and row, `sheet-malformed` for a
 * line that names a style or an allowance and does not say what of it, and what tables throw.
 */
export function readStyle(text: string, file: string): StyleChoice {
  const { statements, settings: typed, lines } = readSettings(text, file);
  const base = basedOn(statements, file);
  const settings = readEach(typed, (setting) => ({
    ...setting,
    parameter: findParameter(base, setting).name,
  }));
  refuseTwice(settings);
  refuseLoneLines(
    statements,
    settings,
    base.block.parameters.map((parameter) => parameter.name),
  );
  const name = file.replace(/^.*[\\/]/, '').replace(/\.csv$/i, '');
  return {
    style: { ...base, name, description: `${base.name}, changed by ${file}` },
    settings,
    lines,
  };
}

/** What a table with the columns parameter, value, note says, before it is asked what has these names. */
export interface SettingSheet {
  readonly statements: Statements;
  /** A row each, `parameter` as it was typed. */
  readonly settings: readonly TypedSetting[];
  /** What a line `# title: ...` states. */
  readonly title: string | undefined;
  readonly lines: readonly SaidLine[];
}

/** A setting as it stands in a cell, the same for every market. */
export interface TypedSetting extends Setting {
  readonly value: string;
}

/** Reads the rows of a style file or of a project file. Throws InputError, as `readStyle` does. */
export function readSettings(text: string, file: string): SettingSheet {
  const table = readTypedTable<'parameter' | 'value' | 'note'>(
    text,
    file,
    ['parameter', 'value'],
    ['note'],
  );
  refuseAllowance(table);
  const titled = statedBy(table, 'title');
  if (titled !== undefined) checkTitle(titled.text, titled.place);
  const unit = agreedUnit(table, table.units.values());
  refuseCountingNotes(table, unit);
  return {
    statements: table,
    title: titled?.text === '' ? undefined : titled?.text,
    settings: table.rows.map((row): TypedSetting => {
      const [parameter, value, note] = [row('parameter'), row('value').text, row('note').text];
      return {
        parameter: parameter.text,
        value,
        note: note === '' ? `style file ${file}` : note,
        place: { file, row: parameter.place.row ?? 1 },
        ...(unit === undefined ? {} : { unit }),
      };
    }),
    lines: table.comments,
  };
}

/** Throws InputError `parameter-twice` where two rows have the same name. */
export function refuseTwice(settings: readonly Setting[]): void {
  readEach(settings, (setting, index) => {
    if (settings.findIndex((s) => s.parameter === setting.parameter) === index) return;
    throw new InputError('parameter-twice', {
      what: 'the parameter is set twice',
      allowed: 'one row a parameter',
      got: setting.parameter,
      place: setting.place,
    });
  });
}

/** The style that the lines of a file name, or the usual one. Throws InputError `style-unknown` and `sheet-malformed`. */
export function basedOn(table: Statements, file: string): Style {
  const based = statedBy(table, 'based on');
  if (based !== undefined) {
    // `shared-pencil, ours` says something of the file behind the name.
    return findStyle(based.text.split(/[,;]/u)[0] ?? '', based.place);
  }
  const others = STYLES.map(({ name }) => labelKey(name)).filter(
    (key) => key !== labelKey(DEFAULT_STYLE),
  );
  refuseUnread(table, {
    what: 'which style it changes',
    seems: (text) => others.some((key) => ` ${wordsOf(text)} `.includes(` ${key} `)),
    allowed: `a line such as "# based on: straight"; without one the style is ${DEFAULT_STYLE}`,
    also: ['title', 'base'],
  });
  return findStyle(DEFAULT_STYLE, { file });
}

/** The words of a line, with the names of styles as one word however they are parted. */
function wordsOf(text: string): string {
  const parted = STYLES.map(({ name }) => name.split('-'));
  const words = text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ');
  return parted.reduce((line, name) => line.replaceAll(name.join(' '), name.join('')), words);
}

const SIDE_ALLOWANCE = 'a row for each seam, such as side_allowance,5/8 in';

/** Allowances of a style are parameters, which a line above the table does not set. */
function refuseAllowance(table: Statements): void {
  const stated = statedBy(table, 'allowance');
  if (stated !== undefined) {
    throw new InputError('sheet-malformed', {
      what: 'a style file sets allowances by its parameters, not by a line above them',
      allowed: SIDE_ALLOWANCE,
      got: stated.text,
      place: stated.place,
    });
  }
  refuseUnread(table, {
    what: 'allowances',
    seems: seemsAllowance,
    allowed: SIDE_ALLOWANCE,
  });
}
