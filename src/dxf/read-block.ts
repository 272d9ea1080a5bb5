/** A block of an exchange file after ASTM D6673, unverified, back to the points of a piece. */
import { InputError } from '../errors';
import type { Point } from '../geometry/point';
import type { RawPiece, RawPoint } from '../given/raw-point';
import type { Cutting } from '../pattern/piece';
import { RULED, isAt, isLoop, isSmooth, liesOn, near, outlineFrom, ruleAt } from './block-places';
import { D6673_LAYERS } from './d6673-layers';
import type { DxfEntity } from './read';
import { joinless } from './seam-words';

export interface ReadBlock {
  readonly piece: RawPiece;
  /** The rule number of each point that has one. */
  readonly numbers: ReadonlyMap<string, { readonly rule: number; readonly row: number }>;
  /** What the block has that the piece has not, in words. */
  readonly leftOut: readonly string[];
}

/**
 * The seam line is the outline where there is one with rules, since that is the line to be walked,
 * and the boundary then the cut line; otherwise the boundary is the outline. Throws InputError
 * `dxf-malformed`.
 */
export function readBlock(block: string, entities: readonly DxfEntity[], file: string): ReadBlock {
  const on = (layer: string, type: DxfEntity['type']): readonly DxfEntity[] =>
    entities.filter((entity) => entity.layer === layer && entity.type === type);
  const closed = (layer: string): readonly DxfEntity[] =>
    on(layer, 'POLYLINE').filter((line) => line.closed || isLoop(line.points));
  const [boundary, ...moreBoundaries] = closed(D6673_LAYERS.boundary);
  const [sewLine, ...moreSewLines] = closed(D6673_LAYERS.sewLine);
  const isRuled = sewLine?.points.some(
    (at) => ruleAt(entities, RULED, at, sewLine.row) !== undefined,
  );
  const outline = isRuled || boundary === undefined ? sewLine : boundary;
  if (outline === undefined) {
    throw new InputError('dxf-malformed', {
      what: `the block ${block} has no boundary`,
      allowed: `a closed polyline on layer ${D6673_LAYERS.boundary}`,
      place: { file, row: entities[0]?.row ?? 1 },
    });
  }
  const cut = outline === boundary ? undefined : boundary;
  const numbers = new Map<string, { rule: number; row: number }>();
  const named = (
    name: string,
    kind: RawPoint['kind'],
    at: Point,
    { row, edge, layers, fold = false }: Beside,
  ): RawPoint => {
    const place = { file, row };
    const rule = ruleAt(entities, layers, at, row);
    if (rule !== undefined) numbers.set(name, { rule, row });
    return { name, kind, at, edge, seam: '', fold, rule: { text: '', place }, place };
  };
  const notchAt = (at: Point): boolean => on(D6673_LAYERS.notch, 'POINT').some(isAt(at));
  const folds = on(D6673_LAYERS.mirrorLine, 'LINE');
  const said = on(D6673_LAYERS.annotation, 'TEXT');
  const told = (kind: 'EDGE' | 'DART', at: Point): string | undefined =>
    said
      .filter((text) => text.words.startsWith(`${kind}: `) && isAt(at)(text))
      .map((text) => joinless(text.words.slice(kind.length + 2)))[0];

  const line = ({ points, row }: DxfEntity, prefix: string, isOutline: boolean): RawPoint[] => {
    const smooth = (at: Point): boolean => isSmooth(entities, at, row);
    const vertices = outlineFrom(points, (at) => !smooth(at));
    const edges = vertices.map((at) => told('EDGE', at));
    let edge = edges.findLast((name) => name !== undefined);
    const isNamed = isOutline && edge !== undefined;
    let corners = 0;
    const counts = new Map<string, number>();
    return vertices.map((at, i) => {
      const next = vertices[(i + 1) % vertices.length] ?? at;
      if (!smooth(at)) corners++;
      edge = isNamed ? (edges[i] ?? edge) : `edge_${corners}`;
      const isTip = isOutline && told('DART', at) !== undefined;
      const curve = isOutline && notchAt(at) ? 'notch' : 'curve';
      const kind = isTip ? 'dart' : smooth(at) ? curve : 'corner';
      const count = (counts.get(kind) ?? 0) + 1;
      counts.set(kind, count);
      const fold = folds.some(
        ({ points: [a, b] }) => a && b && liesOn(at, a, b) && liesOn(next, a, b),
      );
      return named(`${prefix}${kind}_${count}`, kind, at, {
        row,
        edge: edge ?? '',
        layers: RULED,
        fold,
      });
    });
  };
  const points = line(outline, '', true);
  const cutLine = cut === undefined ? [] : line(cut, 'cut_', false);
  const spots = (kind: RawPoint['kind'], layer: string, type: DxfEntity['type'], own: string) =>
    on(layer, type)
      .flatMap(({ points: places, row }) => places.map((at) => ({ at, row })))
      .map(({ at, row }, i) =>
        named(`${own}_${i + 1}`, kind, at, { row, edge: kind, layers: [layer] }),
      );
  const [grain, ...moreGrains] = on(D6673_LAYERS.grainLine, 'LINE');
  const [reference, ...moreReferences] = on(D6673_LAYERS.gradeReference, 'LINE');
  const pairOf = (entity: DxfEntity | undefined, kind: 'grain' | 'reference', layer: string) =>
    (entity?.points ?? []).map((at, i) =>
      named(`${kind}_${i + 1}`, kind, at, { row: entity?.row ?? 1, edge: kind, layers: [layer] }),
    );
  const inside = INSIDE.flatMap((type) => on(D6673_LAYERS.internalLine, type)).flatMap(
    ({ points: places, closed: isClosed, row }, k) =>
      [...places, ...(isClosed ? places.slice(0, 1) : [])].map((at, i) =>
        named(`inside_${k + 1}_${i + 1}`, 'inside', at, {
          row,
          edge: `line_${k + 1}`,
          layers: [D6673_LAYERS.internalLine],
        }),
      ),
  );
  const cutNotches = spots('notch', D6673_LAYERS.notch, 'POINT', 'cut_notch').filter(
    ({ at }) => !points.some((own) => own.kind === 'notch' && near(own.at, at)),
  );
  const doubles = said.filter(({ words }) => words === 'DOUBLE NOTCH');
  const notches = [...points.filter(({ kind }) => kind === 'notch'), ...cutNotches];
  const titled = said.map(({ words }) => /^PIECE NAME:\s*(.+)$/iu.exec(words)?.[1]?.trim());
  const name = titled.find((found) => found !== undefined) ?? block;
  const others = [...new Set(entities.map(({ layer }) => layer))].filter(
    (l) => !READ_LAYERS.has(l),
  );
  return {
    piece: {
      name: joinless(name),
      points: [
        ...points,
        ...pairOf(reference, 'reference', D6673_LAYERS.gradeReference),
        ...pairOf(grain, 'grain', D6673_LAYERS.grainLine),
        ...inside,
        ...spots('drill', D6673_LAYERS.drillHole, 'POINT', 'drill'),
      ],
      cuttings: said.flatMap(({ words }) => cuttingOf(words)),
      allowances: new Map(),
      cutLine,
      cutNotches,
      doubleNotches: new Set(
        notches.filter(({ at }) => doubles.some(isAt(at))).map((notch) => notch.name),
      ),
    },
    numbers,
    leftOut: [
      ...(sewLine !== undefined && outline !== sewLine ? ['a sew line without rules'] : []),
      ...several(moreBoundaries.length, 'further boundary'),
      ...several(moreSewLines.length, 'further sew line'),
      ...several(moreGrains.length, 'further grain line'),
      ...several(moreReferences.length, 'alternate grade reference line'),
      ...others.map((layer) => `what is on layer ${layer}`),
    ],
  };
}

interface Beside {
  readonly row: number;
  readonly edge: string;
  /** Layers on which the number of the point's rule may stand. */
  readonly layers: readonly string[];
  readonly fold?: boolean;
}

const INSIDE = ['POLYLINE', 'LINE'] as const;
/** A cut-out would have to be cut, which a line inside is not. */
const READ_LAYERS: ReadonlySet<string> = new Set(
  Object.entries(D6673_LAYERS).flatMap(([name, layer]) =>
    name === 'internalCutOut' ? [] : [layer],
  ),
);

function several(count: number, what: string): readonly string[] {
  return count === 0 ? [] : [`${count} ${what}${count === 1 ? '' : 's'}`];
}

function cuttingOf(words: string): readonly Cutting[] {
  const parts = /^QUANTITY:\s*(\d+)( ON FOLD)?(?: OF (\w+))?$/iu.exec(words);
  if (parts === null) return [];
  const stated = parts[3]?.toLowerCase();
  const cloth = stated === 'lining' || stated === 'interfacing' ? stated : 'shell';
  return [{ cloth, count: Number(parts[1]), onFold: parts[2] !== undefined }];
}
