/** A style file: CSV with the columns parameter, value, note. */
import { CsvError, parse } from 'csv-parse/sync';
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { LENGTH_UNITS } from '../units';
import type { Setting } from './setting';
import type { Style } from './styles';
import { findParameter, findStyle } from './styles';

const HEADER = /^parameter,value\b/i;

/** A style, and the settings that a file or a caller puts on top of it. */
export interface StyleChoice {
  readonly style: Style;
  readonly settings: readonly Setting[];
}

interface StyleRow {
  readonly record: readonly string[];
  readonly info: { readonly lines: number };
}

/**
 * Reads a style file. A comment line `# based on: straight` names the style it changes, `pencil`
 * if there is none; `# unit: cm` is the unit of its bare numbers, otherwise they take the chart's.
 * Throws InputError `csv-malformed`, `style-malformed`, `parameter-unknown` or `parameter-twice`
 * with file and row.
 */
export function readStyle(text: string, file: string): StyleChoice {
  const [header, ...body] = readRows(text, file);
  if (header === undefined || !HEADER.test(header.record.join()))
    throw new InputError('style-malformed', {
      what: 'a style file starts with a row of column names',
      allowed: 'parameter,value,note',
      got: header?.record.join() ?? '',
      place: { file, row: header?.info.lines ?? 1 },
    });

  const named = /^#\s*based on\s*[:=]\s*([^\s,;]+)/im.exec(text)?.[1] ?? 'pencil';
  const base = findStyle(named, { file });
  const unit = statedUnit(text, file);
  const settings = body.map(({ record, info }): Setting => {
    const [parameter = '', value = '', note = ''] = record;
    return {
      parameter,
      value,
      note: note === '' ? `style file ${file}` : note,
      place: { file, row: info.lines },
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

function readRows(text: string, file: string): readonly StyleRow[] {
  try {
    return parse(text, {
      bom: true,
      comment: '#',
      comment_no_infix: true,
      delimiter: /^\s*"?parameter"?\s*;/im.test(text) ? ';' : ',',
      info: true,
      relax_column_count: true,
      relax_quotes: true,
      skip_records_with_empty_values: true,
      trim: true,
    }) as unknown as readonly StyleRow[];
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw new InputError('csv-malformed', {
      what: 'a quoted cell does not end with a quote',
      allowed: 'cells as they are, or between two double quotes',
      got: error.message,
      place: { file },
    });
  }
}

/** The unit of the file's bare numbers, from a comment such as `# unit: cm`. */
function statedUnit(text: string, file: string): LengthUnit | undefined {
  const stated = /^#\s*unit\s*[:=]\s*([^\s,;]+)/im.exec(text)?.[1];
  if (stated === undefined) return undefined;
  const unit = LENGTH_UNITS.find((candidate) => candidate === stated.toLowerCase());
  if (unit !== undefined) return unit;
  throw new InputError('unit-unknown', {
    what: 'the style file states an unknown unit',
    allowed: LENGTH_UNITS.join(', '),
    got: stated,
    place: { file },
  });
}
