/** The body measurements the engine knows, named after ISO 8559-1, and what else they are called. */
import type { LengthUnit } from '../units';
import { labelKey, splitLabel } from '../table/label';
import { nearNames } from '../table/near-names';

/** One body measurement with every name under which a chart may bring it. */
export interface MeasurementTerm {
  /** ISO 8559-1 style name in snake_case. */
  readonly name: string;
  /** What is measured, in a few words. */
  readonly meaning: string;
  /** Other names in the trade; any case, blanks, hyphens and punctuation. */
  readonly synonyms: readonly string[];
}

/** The rows without which no skirt can be drafted; every size must have them. */
export const NEEDED: readonly string[] = ['waist_girth', 'hip_girth'];

/** The known measurements, girths first. All are lengths. */
export const MEASUREMENTS: readonly MeasurementTerm[] = [
  term('waist_girth', 'around the natural waist', [
    ...['waist', 'waistline', 'natural waist', 'natural waistline'],
  ]),
  term('hip_girth', 'around the fullest part of the hips', [
    ...['hip', 'hips', 'hipline', 'full hip', 'full hips', 'low hip', 'low hips', 'lower hip'],
    ...['seat', 'buttock', 'buttocks'],
  ]),
  term('high_hip_girth', 'around the upper hips, over the abdomen', [
    ...['high hip', 'high hips', 'upper hip', 'upper hips', 'top hip'],
  ]),
  term('bust_girth', 'around the fullest part of the bust', [
    ...['bust', 'bustline', 'full bust', 'chest'],
  ]),
  term('thigh_girth', 'around the fullest part of the thigh', ['thigh', 'upper thigh']),
  term('knee_girth', 'around the knee', ['knee']),
  term('calf_girth', 'around the fullest part of the calf', ['calf']),
  term('ankle_girth', 'around the ankle', ['ankle']),
  term('stature', 'crown of the head to the floor', ['height', 'body height', 'total height']),
  term('waist_height', 'waist to the floor, straight down', ['height of waist']),
  term('hip_height', 'fullest part of the hips to the floor, straight down', ['height of hip']),
  term('knee_height', 'knee to the floor, straight down', ['height of knee']),
  term('crotch_height', 'crotch to the floor, straight down', [
    'height of crotch',
    'crotch to floor',
  ]),
  term('waist_to_hip', 'waist down to the fullest part of the hips', [
    ...['waist to hips', 'waist to full hip', 'waist to seat', 'waist to low hip'],
    ...['hip depth', 'hip drop', 'depth of hip', 'seat depth', 'waist to hip length'],
  ]),
  term('waist_to_high_hip', 'waist down to the upper hips', [
    ...['waist to upper hip', 'high hip depth', 'upper hip depth'],
  ]),
  term('waist_to_knee', 'waist down to the knee', ['waist to knee length', 'knee depth']),
  term('inside_leg_length', 'crotch down the inside of the leg to the floor', [
    ...['inside leg', 'inseam', 'inseam length', 'inner leg', 'inner leg length'],
  ]),
  term('outside_leg_length', 'waist over the hip to the floor', [
    ...['outside leg', 'outseam', 'outseam length', 'outer leg', 'outer leg length'],
  ]),
  term('skirt_length', 'waist to the hem of the skirt', ['length', 'length of skirt']),
];

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

function term(name: string, meaning: string, synonyms: readonly string[]): MeasurementTerm {
  return { name, meaning, synonyms };
}
