/** One place of a block as a point of a piece. */
import type { Point } from '../geometry/point';
import type { RawPoint } from '../given/raw-point';
import type { PlaceIndex } from './place-index';
import type { DxfEntity } from './entity';

/** What a block holds, and the file for messages. */
export interface BlockContent {
  readonly entities: readonly DxfEntity[];
  /** Its marks of turn and curve points. */
  readonly marks: PlaceIndex<DxfEntity>;
  readonly file: string;
}

/** A point that was read, and the number under which the rule table has its moves. */
export interface BlockPoint {
  readonly raw: RawPoint;
  /** Row in the file of the line or mark that it is of. */
  readonly row: number;
  /** Layers on which the number of its rule may stand. */
  readonly layers: readonly string[];
}

/** What a point has besides its place. */
export interface PointTraits {
  readonly name: string;
  readonly kind: RawPoint['kind'];
  readonly row: number;
  readonly edge: string;
  readonly fold?: boolean;
  readonly layers: readonly string[];
}

/** The point at a place in mm, y down, with the number of a rule that stands there. */
export function blockPoint(
  { file }: BlockContent,
  { x, y }: Point,
  { name, kind, row, edge, fold = false, layers }: PointTraits,
): BlockPoint {
  const place = { file, row };
  const at = { x, y };
  return {
    raw: { name, kind, at, edge, seam: '', fold, rule: { text: '', place }, place },
    row,
    layers,
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

/** The straight lines on a layer from end to end, whether they are lines or polylines. */
export function strokesOn(block: BlockContent, layer: string): readonly DxfEntity[] {
  const lines = [...entitiesOn(block, layer, 'LINE'), ...entitiesOn(block, layer, 'POLYLINE')];
  return lines.filter(
    ({ points, closed }) =>
      points.length === 2 && !closed && points.every(({ bend }) => bend === undefined),
  );
}
