/** A style file: CSV with the columns parameter, value, note. */
import { InputError } from '../errors';
import { statedBy, statedUnit } from '../table/statements';
import { readTypedTable } from '../table/typed-table';
import type { Setting } from './setting';
import type { Style } from './styles';
import { findParameter, findStyle } from './styles';

/** A style, and the settings that a file or a caller puts on top of it. */
export interface StyleChoice {
  readonly style: Style;
  readonly settings: readonly Setting[];
}

/**
 * Reads a style file. A comment line `# based on: straight` names the style it changes, `pencil`
 * if there is none; `# unit: cm` is the unit of its bare numbers, otherwise they take the chart's.
 * Throws InputError `parameter-unknown` or `parameter-twice` with file and row, and what tables throw.
 */
export function readStyle(text: string, file: string): StyleChoice {
  const table = readTypedTable<'parameter' | 'value' | 'note'>(
    text,
    file,
    ['parameter', 'value'],
    ['note'],
  );
  const based = statedBy(table, 'based on');
  const base = findStyle(based?.text.split(/[\s,;]/u)[0] ?? 'pencil', based?.place ?? { file });
  const unit = statedUnit(table);
  const settings = table.rows.map((row): Setting => {
    const [parameter, value, note] = [row('parameter'), row('value').text, row('note').text];
    return {
      parameter: parameter.text,
      value,
      note: note === '' ? `style file ${file}` : note,
      place: { file, row: parameter.place.row ?? 1 },
      ...(unit === undefined ? {} : { unit }),
    };
  });
  settings.forEach((setting, index) => {
    findParameter(base, setting);
    if (settings.findIndex((s) => s.parameter === setting.parameter) === index) return;
    throw new InputError('parameter-twice', {
      what: 'the parameter is set twice',
      allowed: 'one row a parameter',
      got: setting.parameter,
      place: setting.place,
    });
  });
  const name = file.replace(/^.*[\\/]/, '').replace(/\.csv$/i, '');
  return {
    style: { ...base, name, description: `${base.name}, changed by ${file}` },
    settings,
  };
}
