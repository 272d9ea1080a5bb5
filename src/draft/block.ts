/** A block as data: parameters, and points whose coordinates are formulas. */
import type { Edge, MarkedLine } from '../pattern/piece';

export interface ParameterDefinition {
  readonly name: string;
  readonly quantity: 'length' | 'number';
  /** Default value or formula, with its unit. */
  readonly value: string;
  /** Allowed range, both ends included, written like the value. */
  readonly least: string;
  readonly most: string;
  readonly meaning: string;
  /** Where the default comes from. */
  readonly source: string;
  /** True where a row of this name in the chart goes before the default. */
  readonly fromChart?: true;
}

export interface PointDefinition {
  readonly name: string;
  /** Formulas in measurements, parameters and coordinates of the same piece (`side_hip.x`). */
  readonly x: string;
  readonly y: string;
  /** True for a point that only shapes a curve. */
  readonly handle?: true;
}

export interface BlockPiece {
  readonly name: string;
  readonly points: readonly PointDefinition[];
  readonly outline: readonly Edge[];
  readonly marks: readonly MarkedLine[];
}

export interface Block {
  readonly name: string;
  readonly parameters: readonly ParameterDefinition[];
  readonly pieces: readonly BlockPiece[];
}
