/**
 * The project file `skirt.csv`: a style file that lies beside a chart and also says what else a call would
 * say, so that a call alone does it again.
 */
import { dirname } from 'node:path';
import { recognizeMeasurement } from '../chart/vocabulary';
import { refuseBareLengths } from '../draft/bare-length';
import { DEFAULT_STYLE } from '../draft/default-style';
import type { SettingSheet, StyleChoice, TypedSetting } from '../draft/style-file';
import { basedOn, readSettings, readStyle, refuseTwice } from '../draft/style-file';
import type { Style } from '../draft/styles';
import { findAskedStyle, findStyle } from '../draft/styles';
import { refuseLoneLines } from '../draft/lone-lines';
import type { Place } from '../errors';
import { InputError, readEach } from '../errors';
import { IMPRINT_NAMES } from '../table/imprint';
import { excerpt } from '../table/tidy-text';
import { unitNamed } from '../table/unit-name';
import { UNIT_WORDS } from '../units';
import { matchName, meantName } from '../table/name-match';
import { statedBy } from '../table/statements';
import type { Files } from './io';

/** Rows that name what the project is of. */
const SUBJECTS = ['chart', 'pattern'] as const;

/** Rows that name files, whose relative paths start in the folder of the project. */
const FILES: readonly string[] = [
  ...['chart', 'pattern', 'rules', 'seams', 'measures', 'measured', 'out'],
];

/** A row that stands for an option. */
export interface ProjectOption {
  readonly value: string;
  readonly place: Place;
}

/** A project as its file says it. */
export interface Project extends Pick<StyleChoice, 'lines' | 'title'> {
  readonly settings: readonly TypedSetting[];
  readonly file: string;
  /** By the names of options, paths as from where the call is made. */
  readonly options: ReadonlyMap<string, ProjectOption>;
}

/**
 * Reads a project; `names` are those of the options that it may have. Throws InputError
 * `parameter-unknown` for a row that is neither an option nor a parameter of its style, `parameter-twice`,
 * `unit-missing` for a length without a unit, and what tables and style files throw, each with file and row.
 */
export function readProject(
  io: Pick<Files, 'readText'>,
  path: string,
  names: readonly string[],
): Project {
  const sheet = readSettings(io.readText(path), path);
  const rowNames = [...new Set([...SUBJECTS, ...names])];
  const ofOption = ({ parameter }: TypedSetting): string | undefined =>
    matchName(parameter, rowNames);
  const rows = sheet.settings.map((row) => ({ ...row, parameter: ofOption(row) ?? row.parameter }));
  refuseTwice(rows);
  refuseUnits(rows);
  const options = new Map(
    rows
      .filter(({ parameter }) => rowNames.includes(parameter))
      .map(({ parameter, value, place }) => [parameter, { value, place }]),
  );
  const folder = dirname(path) === '.' ? '' : `${dirname(path)}/`;
  for (const [name, option] of options)
    if (FILES.includes(name)) options.set(name, { ...option, value: from(folder, option.value) });
  const { style, named } = styleOf(io, sheet, folder, options.get('style'));
  if (named !== undefined) options.set('style', named);
  const settings = readEach(
    rows.filter(({ parameter }) => !rowNames.includes(parameter)),
    (row) => ({ ...row, parameter: parameterOf(row, style, rowNames) }),
  );
  refuseLoneLines(
    sheet.statements,
    [...rows, ...settings],
    [...rowNames, ...style.block.parameters.map((parameter) => parameter.name)],
  );
  refuseBareLengths(
    style,
    settings,
    'a project goes with charts in inches and in centimeters alike',
  );
  const { lines, title } = sheet;
  return { ...{ file: path, options, settings, lines }, ...(title === undefined ? {} : { title }) };
}

/** The style whose parameters the rows may name, and what to ask for by it. */
function styleOf(
  io: Pick<Files, 'readText'>,
  { statements }: SettingSheet,
  folder: string,
  row: ProjectOption | undefined,
): { readonly style: Style; readonly named?: ProjectOption } {
  if (row === undefined) {
    const style = basedOn(statements, statements.file);
    const stated = statedBy(statements, 'based on');
    return stated === undefined
      ? { style: findStyle(DEFAULT_STYLE) }
      : { style, named: { value: style.name, place: stated.place } };
  }
  const stated = statedBy(statements, 'based on');
  const refuseOther = (name: string | undefined): void => {
    if (stated === undefined || matchName(stated.text, [name ?? '']) !== undefined) return;
    throw new InputError('sheet-malformed', {
      what: `the file names two styles, ${excerpt(row.value)} in row ${row.place.row ?? '?'} and another here`,
      allowed: 'one of them, in the row style',
      got: excerpt(stated.text),
      place: stated.place,
    });
  };
  if (!/\.csv$/iu.test(row.value)) {
    const style = findAskedStyle(row.value, row.place);
    refuseOther(style.name);
    return { style, named: { ...row, value: style.name } };
  }
  refuseOther(undefined);
  const value = from(folder, row.value);
  return { style: readStyle(io.readText(value), value).style, named: { ...row, value } };
}

/** Throws InputError `unit-contradicted` where a line has one unit for all lengths, and a row shows another. */
function refuseUnits(rows: readonly TypedSetting[]): void {
  const shown = rows.find(({ parameter }) => parameter === 'unit');
  if (shown?.unit === undefined || unitNamed(shown.value) === shown.unit) return;
  throw new InputError('unit-contradicted', {
    what: `the row unit is not ${UNIT_WORDS[shown.unit]}, in which a line says that all lengths are`,
    allowed: 'one unit; or no such line, and lengths with their unit, such as 3 cm',
    got: excerpt(shown.value),
    place: shown.place,
  });
}

/** Rows of a cover, which stand in lines above the table. */
const IN_LINES: readonly string[] = ['title', ...IMPRINT_NAMES];

/** A parameter by any of its names. */
function parameterOf(
  { parameter: text, place }: TypedSetting,
  { name, block }: Style,
  rowNames: readonly string[],
): string {
  const parameters = block.parameters.map((one) => one.name);
  const measured = recognizeMeasurement(text)?.name;
  const isOfCover = IN_LINES.includes(text);
  if (measured !== undefined && parameters.includes(measured)) return measured;
  return meantName({ text, place }, [...parameters, ...rowNames], {
    code: 'parameter-unknown',
    what: `a project file has no such row, and style ${name} no such parameter`,
    allowed: isOfCover
      ? `a line "# ${text}: ..." above the rows`
      : `${rowNames.slice(0, 8).join(', ')} and other options without their dashes, ` +
        `or one of the ${parameters.length} parameters of the style`,
  });
}

/** A relative path of a project, from where the call is made. */
function from(folder: string, path: string): string {
  return folder === '' || /^(?:[\\/]|[A-Za-z]:)/u.test(path) ? path : folder + path;
}
