/** One place of a block as a point of a piece, with the number of its rule. */
import type { Point } from '../geometry/point';
import type { RawPoint } from '../given/raw-point';
import { ruleAt } from './block-places';
import type { DxfEntity } from './read';

/** What a block holds, and the file for messages. */
export interface BlockContent {
  readonly entities: readonly DxfEntity[];
  readonly file: string;
}

/** A point that was read, and the number under which the rule table has its moves. */
export interface BlockPoint {
  readonly raw: RawPoint;
  /** Row in the file. */
  readonly row: number;
  /** The number of its rule, if it has one. */
  readonly rule: number | undefined;
}

/** What a point has besides its place. */
export interface PointTraits {
  readonly name: string;
  readonly kind: RawPoint['kind'];
  readonly row: number;
  readonly edge: string;
  readonly fold?: boolean;
  /** Layers on which the number of its rule may stand. */
  readonly layers: readonly string[];
}

/** The point at a place in mm, y down, with the number of a rule that stands there. */
export function blockPoint(
  { entities, file }: BlockContent,
  at: Point,
  { name, kind, row, edge, fold = false, layers }: PointTraits,
): BlockPoint {
  const place = { file, row };
  return {
    raw: { name, kind, at, edge, seam: '', fold, rule: { text: '', place }, place },
    row,
    rule: ruleAt(entities, layers, at, row),
  };
}

/** The entities of one type on a layer. */
export function entitiesOn(
  { entities }: BlockContent,
  layer: string,
  type: DxfEntity['type'],
): readonly DxfEntity[] {
  return entities.filter((entity) => entity.layer === layer && entity.type === type);
}
