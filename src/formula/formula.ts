/** A formula as data: the text as it is written, and what it computes. */
import type { Place } from '../errors';
import { toMillimeters } from '../units';
import type { FormulaTree } from './tree';

/**
 * A formula that was read and checked: nothing is in it that cannot be computed, but its names may
 * still be unknown.
 */
export interface Formula {
  /** As written, for messages. */
  readonly text: string;
  /** Where it was written, for messages. */
  readonly place: Place;
  /** Its calls are of the allowed functions only. */
  readonly tree: FormulaTree;
  /** Names used, in order of first use: measurements, parameters and coordinates (`side_hip.x`). */
  readonly names: readonly string[];
}

/** Millimeters in each unit that a formula may write behind a number. */
export const UNIT_LENGTHS: ReadonlyMap<string, number> = new Map([
  ['inch', toMillimeters(1, 'in')],
  ['cm', toMillimeters(1, 'cm')],
  ['mm', toMillimeters(1, 'mm')],
]);

/** The functions a formula may call, with the number of arguments each takes. */
export const FUNCTIONS: ReadonlyMap<string, { readonly least: number; readonly most: number }> =
  new Map([
    ['abs', { least: 1, most: 1 }],
    ['sqrt', { least: 1, most: 1 }],
    ['min', { least: 2, most: 8 }],
    ['max', { least: 2, most: 8 }],
    ['sin', { least: 1, most: 1 }],
    ['cos', { least: 1, most: 1 }],
    ['tan', { least: 1, most: 1 }],
    ['atan', { least: 1, most: 1 }],
  ]);
