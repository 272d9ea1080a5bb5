/** What a block has beside its outline: grain, reference line, inside lines, notches, drill holes. */
import type { Point } from '../geometry/point';
import { distance } from '../geometry/point';
import { near } from './block-places';
import type { BlockContent, BlockPoint } from './block-point';
import { blockPoint, entitiesOn, strokesOn } from './block-point';
import { D6673_LAYERS } from './d6673-layers';
import { chords } from './line-point';
import type { DxfEntity } from './entity';
import { sewnNotches } from './sewn-notch';

/** What a block has beside its lines: marks, words, grain, and what is to be said of them. */
export interface BlockFeatures {
  readonly points: readonly BlockPoint[];
  /** Notches that are on no point of the outline. */
  readonly cutNotches: readonly BlockPoint[];
  /** Where those meet the outline, by their names, as far as the block says it. */
  readonly sewnNotches: ReadonlyMap<string, BlockPoint>;
  /** What was read of the block for them. */
  readonly read: ReadonlySet<DxfEntity>;
}

/**
 * What lies beside the points of outline and cut line. `turned` is the reference line of a block that
 * has none and does not lie upright.
 */
export function featuresOf(
  block: BlockContent,
  turned: DxfEntity | undefined,
  onOutline: readonly BlockPoint[],
  onCutLine: readonly BlockPoint[],
): BlockFeatures {
  // The strokes of its arrows may be there too.
  const [grain] = strokesOn(block, D6673_LAYERS.grainLine).toSorted((a, b) => long(b) - long(a));
  const [drawn] = strokesOn(block, D6673_LAYERS.gradeReference);
  const reference = drawn ?? turned;
  const inside = INSIDE.flatMap((type) => entitiesOn(block, D6673_LAYERS.internalLine, type));
  const notches = entitiesOn(block, D6673_LAYERS.notch, 'POINT');
  const drills = block.entities.filter(
    ({ layer, type, center }) =>
      layer === D6673_LAYERS.drillHole && (type === 'POINT' || center !== undefined),
  );
  const cutNotches = spots(block, notches, 'notch', 'cut_notch').filter(
    ({ raw }) => !onOutline.some((own) => own.raw.kind === 'notch' && near(own.raw.at, raw.at)),
  );
  const sewn = sewnNotches(block, new Set(cutNotches.map(({ raw }) => raw.name)));
  const isFolded = [...onOutline, ...onCutLine].some(({ raw }) => raw.fold);
  const folds = isFolded ? strokesOn(block, D6673_LAYERS.mirrorLine) : [];
  return {
    points: [
      ...ends(block, reference, 'reference', D6673_LAYERS.gradeReference),
      ...ends(block, grain, 'grain', D6673_LAYERS.grainLine),
      ...insideLines(block, inside),
      ...spots(block, drills, 'drill', 'drill'),
    ],
    cutNotches,
    sewnNotches: new Map([...sewn].map(([notch, own]) => [notch, own.sewn])),
    read: new Set([
      ...notches,
      ...drills,
      ...inside,
      ...folds,
      ...[...sewn.values()].map(({ words }) => words),
      ...(grain ? [grain] : []),
      ...(drawn ? [drawn] : []),
    ]),
  };
}

function long({ points: [from, to] }: DxfEntity): number {
  return from && to ? distance(from, to) : 0;
}

const INSIDE = ['POLYLINE', 'LINE'] as const;

/** The marks of a layer, numbered. */
function spots(
  block: BlockContent,
  marks: readonly DxfEntity[],
  kind: 'notch' | 'drill',
  prefix: string,
): readonly BlockPoint[] {
  return marks
    .flatMap(({ points, center, row, layer }) => {
      const at: Point | undefined = center ?? points[0];
      return at === undefined ? [] : [{ at, row, layer }];
    })
    .map(({ at, row, layer }, i) =>
      blockPoint(block, at, { name: `${prefix}_${i + 1}`, kind, row, edge: kind, layers: [layer] }),
    );
}

/** The ends of a line that lies beside the outline. */
function ends(
  block: BlockContent,
  line: DxfEntity | undefined,
  kind: 'grain' | 'reference',
  layer: string,
): readonly BlockPoint[] {
  if (line === undefined) return [];
  const { points, row } = line;
  return points.map((at, i) =>
    blockPoint(block, at, { name: `${kind}_${i + 1}`, kind, row, edge: kind, layers: [layer] }),
  );
}

function insideLines(block: BlockContent, lines: readonly DxfEntity[]): readonly BlockPoint[] {
  return lines.flatMap(({ points, closed, row, layer }, k) =>
    chords(points, closed).map((at, i) =>
      blockPoint(block, at, {
        name: `inside_${k + 1}_${i + 1}`,
        kind: 'inside',
        row,
        edge: `line_${k + 1}`,
        layers: [layer],
      }),
    ),
  );
}
