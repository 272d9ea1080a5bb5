/** The body measurements the engine knows, named after ISO 8559-1, and what else they are called. */
import { bundledTable } from '../table/bundled-table';
import type { LengthUnit } from '../units';
import measurementsCsv from './measurements.csv';
import { labelKey, splitLabel } from '../table/label';
import { nearNames } from '../table/near-names';

/** One body measurement with every name under which a chart may bring it. */
export interface MeasurementTerm {
  /** ISO 8559-1 style name in snake_case. */
  readonly name: string;
  /** Other names in the trade; any case, blanks, hyphens and punctuation. */
  readonly synonyms: readonly string[];
  /** mm, both ends still possible. */
  readonly least: number;
  readonly most: number;
}

/** The rows without which no skirt can be drafted; every size must have them. */
export const NEEDED: readonly string[] = ['waist_girth', 'hip_girth'];

type Column = 'name' | 'least' | 'most' | 'meaning' | 'synonyms';

/** The known measurements, girths first. All are lengths. */
export const MEASUREMENTS: readonly MeasurementTerm[] = bundledTable<
  Readonly<Record<Column, string>>
>(measurementsCsv).map(({ name, least, most, synonyms }) => ({
  ...{ name, least: Number(least), most: Number(most) },
  synonyms: synonyms.split('; '),
}));

/** A label understood: the measurement's name, and the unit the label states, if any. */
export interface RecognizedMeasurement {
  readonly name: string;
  readonly unit?: LengthUnit;
}

/** The known measurement that a label means, or undefined if it means none. */
export function recognizeMeasurement(label: string): RecognizedMeasurement | undefined {
  // Most cells of a chart are numbers, and no measurement is called by one.
  if (!/\p{L}/u.test(label)) return undefined;
  const { text, unit } = splitLabel(label);
  const name = index().get(labelKey(text));
  if (name === undefined) return undefined;
  return unit === undefined ? { name } : { name, unit };
}

/** The known measurement whose name or other name is nearly this label; undefined if none is. */
export function nearMeasurement(label: string): string | undefined {
  const { text } = splitLabel(label);
  // What brackets say may be how it is measured, or that it is another measure.
  const plain = index().get(labelKey(text.replace(/[([{].*$/u, '')));
  const [near] = plain === undefined ? nearNames(text, [...index().keys()]) : [];
  return near === undefined ? plain : index().get(near);
}

let builtIndex: ReadonlyMap<string, string> | undefined;

function index(): ReadonlyMap<string, string> {
  return (builtIndex ??= new Map(
    MEASUREMENTS.flatMap(({ name, synonyms }) =>
      [name, ...synonyms].flatMap((word) =>
        endings(name).map((ending): [string, string] => [labelKey(word + ending), name]),
      ),
    ),
  ));
}

/** `waist` may just as well be written `waist girth`, `waist circumference` and so on. */
function endings(name: string): readonly string[] {
  return name.endsWith('_girth') ? ['', ' girth', ' circumference', ' circ', ' measurement'] : [''];
}
