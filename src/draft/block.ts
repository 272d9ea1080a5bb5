/** A block as data: parameters, and points whose coordinates are formulas. */
import type { Point } from '../geometry/point';
import type { Cutting, Edge, MarkedLine, Part, Piece, PiecePlan } from '../pattern/piece';
import type { SeamPair } from '../pattern/seam-pair';
import type { MarketValue } from './market-value';

/** Whether a formula gives a length (mm inside) or a plain number. */
export type FormulaQuantity = 'length' | 'number';

/** What a style or a caller may change about a block: its default, its range, what it means. */
export interface ParameterDefinition {
  readonly name: string;
  readonly quantity: FormulaQuantity;
  /** Default value or formula, with its unit; it may follow the unit of the chart. */
  readonly value: MarketValue;
  /** Allowed range, both ends included, written with its unit. */
  readonly least: string;
  readonly most: string;
  /** What it does to the skirt, for people. */
  readonly meaning: string;
  /** Where the default comes from. */
  readonly source: string;
  /** True where a row of this name in the chart goes before the default. */
  readonly fromChart?: true;
  /** True for a whole number that must be the same in every size, since it decides the points. */
  readonly count?: true;
}

/** A quantity that formulas use by name but nobody sets. */
export interface ValueDefinition {
  readonly name: string;
  readonly quantity: FormulaQuantity;
  readonly formula: string;
}

/** A point of a panel whose place is computed in every size. */
export interface PointDefinition {
  readonly name: string;
  /**
   * Formulas in measurements, parameters, values, and coordinates of the same piece (`side_hip.x`).
   * `base.width` is what `width` is in the base size.
   */
  readonly x: string;
  readonly y: string;
  /** True for a point that only shapes a curve. */
  readonly handle?: true;
}

/** How a panel is cut: the front once on the fold, the back as a pair for its center seam. */
export function panelCutting(panel: 'front' | 'back'): readonly Cutting[] {
  const onFold = panel === 'front';
  return [{ cloth: 'shell', count: onFold ? 1 : 2, onFold }];
}

/**
 * A piece whose points are formulas. What it does not state of its edges, notches and grain is plain,
 * none and down.
 */
export interface BlockPiece extends Partial<
  Pick<PiecePlan, 'edges' | 'grain' | 'notches' | 'drillHoles' | 'zip'>
> {
  readonly name: string;
  /** A `piece` if absent. */
  readonly part?: Part;
  readonly cuttings: readonly Cutting[];
  /** Values of this piece alone; they go before values and parameters of the same name. */
  readonly values?: readonly ValueDefinition[];
  readonly points: readonly PointDefinition[];
  readonly outline: readonly Edge[];
  readonly marks: readonly MarkedLine[];
}

/**
 * A length that no formula gives: it is found, in every size, so that `residual` becomes zero.
 */
export interface Truing {
  /** Name under which formulas of `piece` use the length; it starts at zero. */
  readonly unknown: string;
  readonly piece: string;
  /** mm by which the pieces in which truing moves something miss what it asks for. */
  readonly residual: (pieces: readonly Piece[], value: (name: string) => number) => number;
  /** What is moved, and for what, in words. */
  readonly meaning: string;
}

/** Numbers that must have a given sum, in every size. */
export interface SumRule {
  readonly parameters: readonly string[];
  readonly sum: number;
}

/** What a block may know of a range before it decides which points every size will have. */
export interface RangeFacts {
  /** A parameter or common value in the base size, in mm or as a plain number. */
  readonly atBase: (name: string) => number;
  /** A parameter or common value in the sizes in which it is least and most, in the same units. */
  readonly span: (name: string) => readonly [least: number, most: number];
  /** The least over the sizes of what is worked out from the values of each, in the same units. */
  readonly least: (of: (value: (name: string) => number) => number) => number;
  /** True for a parameter that is zero in every size of the range. */
  readonly alwaysZero: (name: string) => boolean;
}

/** A piece that is made from the drafted panels of its size, such as a facing. */
export interface DerivedPiece {
  readonly plan: PiecePlan;
  /**
   * The places of `plan.pointNames` in one size. `value` gives a parameter or common value by its
   * name, and a value of one panel as `front/width`.
   */
  readonly points: (panels: readonly Piece[], value: (key: string) => number) => readonly Point[];
}

/** The pieces of a block as decided for one range. */
export interface BlockLayout {
  readonly pieces: readonly BlockPiece[];
  /** Values that are decided for the whole range, on top of those of the block. */
  readonly values?: readonly ValueDefinition[];
  readonly truing: readonly Truing[];
  readonly derived: readonly DerivedPiece[];
  /** What is sewn to what. */
  readonly seams: readonly SeamPair[];
}

/** How one line of a draft is made, in words by which a hand can make it again. */
export interface Making {
  /** `waist`, `side`, `hem`, `dart` and the like. */
  readonly line: string;
  /** A few sentences without a capital at the start, which follow the name of the line. */
  readonly words: string;
}

/** A way to draft a skirt, as data: whatever is computed stands in it as a formula. */
export interface Block {
  readonly name: string;
  /** How its lines are drawn, for a cutter. */
  readonly making: readonly Making[];
  readonly parameters: readonly ParameterDefinition[];
  /** Common to all pieces, such as the ease of a quarter. */
  readonly values: readonly ValueDefinition[];
  readonly sums: readonly SumRule[];
  /** Decides the points that every size of a range will have. */
  readonly layout: (facts: RangeFacts) => BlockLayout;
  /** On what that depends; absent for a block whose layout is the same for every range. */
  readonly decide?: (facts: RangeFacts) => LayoutChoice;
}

/** What a layout depends on: equal keys give the same layout but for some of its values. */
export interface LayoutChoice {
  readonly key: string;
  /** mm, the values of the layout that are of one range alone, by name. */
  readonly values: ReadonlyMap<string, number>;
}
