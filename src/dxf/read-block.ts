/** A block of an exchange file after ASTM D6673, unverified, back to the points of a piece. */
import { InputError } from '../errors';
import type { RawPiece } from '../given/raw-point';
import type { Cutting } from '../pattern/piece';
import { cutLinePoints, outlinePoints } from './block-line';
import { RULED, isAt, isLoop, near, ruleAt } from './block-places';
import type { BlockContent, BlockPoint } from './block-point';
import { blockPoint, entitiesOn } from './block-point';
import { D6673_LAYERS } from './d6673-layers';
import type { DxfEntity } from './read';
import { joinless } from './seam-words';

/** A block that was read: its points, and which rule moves each. */
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
export function readBlock(name: string, entities: readonly DxfEntity[], file: string): ReadBlock {
  const block = { entities, file };
  const [boundary, ...moreBoundaries] = closedOn(block, D6673_LAYERS.boundary);
  const [sewLine, ...moreSewLines] = closedOn(block, D6673_LAYERS.sewLine);
  const isRuled = sewLine?.points.some(
    (at) => ruleAt(entities, RULED, at, sewLine.row) !== undefined,
  );
  const outline = isRuled || boundary === undefined ? sewLine : boundary;
  if (outline === undefined) {
    throw new InputError('dxf-malformed', {
      what: `the block ${name} has no boundary`,
      allowed: `a closed polyline on layer ${D6673_LAYERS.boundary}`,
      place: { file, row: entities[0]?.row ?? 1 },
    });
  }
  const cut = outline === boundary ? undefined : boundary;
  const [grain, ...moreGrains] = entitiesOn(block, D6673_LAYERS.grainLine, 'LINE');
  const [reference, ...moreReferences] = entitiesOn(block, D6673_LAYERS.gradeReference, 'LINE');
  const onOutline = outlinePoints(block, outline);
  const cutLine = cut === undefined ? [] : cutLinePoints(block, cut);
  const cutNotches = spots(block, 'notch', D6673_LAYERS.notch, 'cut_notch').filter(
    ({ raw }) => !onOutline.some((own) => own.raw.kind === 'notch' && near(own.raw.at, raw.at)),
  );
  const points = [
    ...onOutline,
    ...ends(block, reference, 'reference', D6673_LAYERS.gradeReference),
    ...ends(block, grain, 'grain', D6673_LAYERS.grainLine),
    ...insideLines(block),
    ...spots(block, 'drill', D6673_LAYERS.drillHole, 'drill'),
  ];
  const said = entitiesOn(block, D6673_LAYERS.annotation, 'TEXT');
  const titles = said.map(({ words }) => /^PIECE NAME:\s*(.+)$/iu.exec(words)?.[1]?.trim());
  const doubles = said.filter(({ words }) => words === 'DOUBLE NOTCH');
  const notches = [...onOutline.filter(({ raw }) => raw.kind === 'notch'), ...cutNotches];
  const others = new Set(entities.map(({ layer }) => layer).filter((own) => !READ_LAYERS.has(own)));
  return {
    piece: {
      name: joinless(titles.find((found) => found !== undefined) ?? name),
      points: points.map(({ raw }) => raw),
      cuttings: said.flatMap(({ words }) => cuttingOf(words)),
      allowances: new Map(),
      cutLine: cutLine.map(({ raw }) => raw),
      cutNotches: cutNotches.map(({ raw }) => raw),
      doubleNotches: new Set(
        notches.filter(({ raw }) => doubles.some(isAt(raw.at))).map(({ raw }) => raw.name),
      ),
    },
    numbers: new Map(
      [...points, ...cutLine, ...cutNotches].flatMap(({ raw, row, rule }) =>
        rule === undefined ? [] : [[raw.name, { rule, row }]],
      ),
    ),
    leftOut: [
      ...(sewLine !== undefined && outline !== sewLine ? ['a sew line without rules'] : []),
      ...several(moreBoundaries.length, 'further boundary'),
      ...several(moreSewLines.length, 'further sew line'),
      ...several(moreGrains.length, 'further grain line'),
      ...several(moreReferences.length, 'alternate grade reference line'),
      ...[...others].map((layer) => `what is on layer ${layer}`),
    ],
  };
}

function closedOn(block: BlockContent, layer: string): readonly DxfEntity[] {
  return entitiesOn(block, layer, 'POLYLINE').filter((line) => line.closed || isLoop(line.points));
}

/** The marks of a layer, numbered. */
function spots(
  block: BlockContent,
  kind: 'notch' | 'drill',
  layer: string,
  prefix: string,
): readonly BlockPoint[] {
  return entitiesOn(block, layer, 'POINT')
    .flatMap(({ points, row }) => points.map((at) => ({ at, row })))
    .map(({ at, row }, i) =>
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

function insideLines(block: BlockContent): readonly BlockPoint[] {
  const layer = D6673_LAYERS.internalLine;
  return INSIDE.flatMap((type) => entitiesOn(block, layer, type)).flatMap(
    ({ points, closed, row }, k) =>
      [...points, ...(closed ? points.slice(0, 1) : [])].map((at, i) =>
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
