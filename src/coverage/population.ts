/** A population of bodies: what a survey says of waist and hip, and how far it is to be trusted. */
import csv from '../../size-charts/populations.csv';
import { InputError } from '../errors';
import { matchName } from '../table/name-match';
import { wantedNames } from '../table/near-names';
import type { TypedRow } from '../table/typed-table';
import { readTypedTable } from '../table/typed-table';
import { toMillimeters } from '../units';

/** Mean and standard deviation of a girth, in mm. */
export interface Spread {
  readonly mean: number;
  readonly sd: number;
}

/** Waist and hip as a bivariate normal: mm, and the correlation between them. */
export interface BivariateNormal {
  readonly waist: Spread;
  readonly hip: Spread;
  readonly r: number;
}

/** Shares of the people measured, where the normal has 0.023 beyond two sd and 0.1 outside. */
export interface Tails {
  readonly waistAbove: number;
  readonly waistBelow: number;
  readonly hipAbove: number;
  readonly hipBelow: number;
  /** Outside of the ellipse that holds nine tenths of the normal. */
  readonly outside: number;
}

/** A survey summed up. */
export interface Population extends BivariateNormal {
  /** What a user types, such as `us-women-2017`. */
  readonly id: string;
  readonly title: string;
  readonly year: string;
  /** People measured. */
  readonly sample: number;
  readonly weighted: string;
  readonly waistLevel: string;
  readonly certainty: string;
  /** How the microdata differ from the normal; undefined where that is not known. */
  readonly tails: Tails | undefined;
}

/** The population that is meant where none is asked for: its waist is where a skirt's is. */
export const DEFAULT_POPULATION = 'us-army-women-1988';

const COLUMNS = [
  ...(['id', 'title', 'year', 'n', 'weighted', 'waist_level', 'certainty'] as const),
  ...(['waist_mean', 'waist_sd', 'hip_mean', 'hip_sd', 'r'] as const),
  ...(['waist_above', 'waist_below', 'hip_above', 'hip_below', 'outside'] as const),
] as const;
type Column = (typeof COLUMNS)[number];

let read: readonly Population[] | undefined;

/** All populations that come with the program. */
export function populations(): readonly Population[] {
  return (read ??= readTypedTable(csv, 'populations', COLUMNS, []).rows.map(populationOf));
}

/** The population of that name. Throws InputError `population-unknown`. */
export function population(id: string): Population {
  const all = populations();
  const name = matchName(
    id,
    all.map((one) => one.id),
  );
  const found = all.find((one) => one.id === name);
  if (found !== undefined) return found;
  throw new InputError('population-unknown', {
    what: 'there is no population of this name',
    ...wantedNames(
      id,
      all.map((one) => one.id),
    ),
    got: id,
    place: { field: 'population' },
  });
}

function populationOf(row: TypedRow<Column>): Population {
  const text = (name: Column): string => row(name).text;
  const spread = (girth: 'waist' | 'hip'): Spread => ({
    mean: toMillimeters(Number(text(`${girth}_mean`)), 'cm'),
    sd: toMillimeters(Number(text(`${girth}_sd`)), 'cm'),
  });
  const share = (name: Column): number => Number(text(name)) / 100;
  return {
    id: text('id'),
    title: text('title'),
    year: text('year'),
    sample: Number(text('n')),
    weighted: text('weighted'),
    waistLevel: text('waist_level'),
    certainty: text('certainty'),
    waist: spread('waist'),
    hip: spread('hip'),
    r: Number(text('r')),
    tails:
      text('outside') === ''
        ? undefined
        : {
            waistAbove: share('waist_above'),
            waistBelow: share('waist_below'),
            hipAbove: share('hip_above'),
            hipBelow: share('hip_below'),
            outside: share('outside'),
          },
  };
}
