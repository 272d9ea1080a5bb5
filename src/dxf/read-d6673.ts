/** A pattern for exchange after ASTM D6673, unverified: blocks and rule table back to a pattern. */
import { InputError } from '../errors';
import type { Point } from '../geometry/point';
import { distance, scale } from '../geometry/point';
import type { GivenPattern } from '../given/pattern';
import type { RawPoint } from '../given/raw-point';
import type { RawPiece } from '../given/read-pattern';
import { assembled } from '../given/read-pattern';
import type { GivenRule, GivenRules } from '../given/rules';
import type { Cutting } from '../pattern/piece';
import { EXCHANGED } from '../tolerance';
import { toMillimeters } from '../units';
import { D6673_LAYERS } from './d6673-layers';
import type { DxfEntity } from './read';
import { readDxf } from './read';
import { readRuleTable } from './rule-table';

export interface Exchanged {
  readonly pattern: GivenPattern;
  readonly rules: GivenRules;
}

interface Source {
  readonly text: string;
  readonly file: string;
}

/**
 * Reads a pattern and its rules. The seam line is taken for the outline where there is one, since
 * that is the line to be walked; otherwise the boundary. Points have no names in such a file and
 * are numbered. Throws InputError `dxf-malformed` or `rule-table-malformed` with file and row.
 */
export function readD6673(drawing: Source, table: Source): Exchanged {
  const { blocks, entities, passedOver } = readDxf(drawing.text, drawing.file);
  const { rules, sizes, sample, unit } = readRuleTable(table.text, table.file);
  const stated = entities.map(({ words }) => /^UNITS:\s*(METRIC|ENGLISH)/iu.exec(words)?.[1]);
  const drawn = stated.find((found) => found !== undefined)?.toUpperCase();
  const own = drawn === undefined ? unit : drawn === 'METRIC' ? 'mm' : 'in';
  const factor = toMillimeters(1, own);
  if (blocks.length === 0) {
    throw new InputError('dxf-malformed', {
      what: 'the drawing has no blocks',
      allowed: 'one block for each piece',
      place: { file: drawing.file },
    });
  }
  const base = sizes.indexOf(sample);
  const read = blocks.map(({ name, entities: inside }) =>
    readBlock(
      name,
      inside.map((entity) => scaled(entity, factor)),
      drawing.file,
    ),
  );
  const title = entities
    .map(({ words }) => /^STYLE NAME:\s*(.+)$/iu.exec(words)?.[1])
    .find((found) => found !== undefined);
  const pattern: GivenPattern = {
    ...assembled(read.map(({ piece }) => piece)),
    file: drawing.file,
    title,
    unit: own === 'mm' ? 'cm' : own,
    base: sample,
    leftOut: [
      ...[...passedOver].map(([kind, count]) => `${count} ${kind}`),
      ...read.flatMap(({ piece: { name }, notches }) =>
        notches === 0 ? [] : [`${notches} notches of ${name} that are not on its outline`],
      ),
    ],
  };
  const ruled = pattern.pieces.map(({ base: { plan } }, p) => {
    const found = new Map<number, GivenRule>();
    for (const [name, number] of read[p]?.numbers ?? []) {
      const moves = rules.get(number.rule);
      if (moves === undefined) {
        throw new InputError('rule-unknown', {
          what: `the rule table has no rule ${number.rule}`,
          allowed: [...rules.keys()].join(', '),
          got: `# ${number.rule}`,
          place: { file: drawing.file, row: number.row },
        });
      }
      const text = { x: `rule ${number.rule}`, y: `rule ${number.rule}` };
      const place = { file: drawing.file, row: number.row };
      found.set(plan.index.get(name) ?? -1, { moves, text, place });
    }
    return found;
  });
  return { pattern, rules: { file: table.file, sizes, base, ruled } };
}

function scaled(entity: DxfEntity, factor: number): DxfEntity {
  return { ...entity, points: entity.points.map((at) => scale(at, factor)) };
}

interface ReadBlock {
  readonly piece: RawPiece;
  /** The rule number of each point that has one. */
  readonly numbers: ReadonlyMap<string, { readonly rule: number; readonly row: number }>;
  /** How many notches stand beside the outline. */
  readonly notches: number;
}

function readBlock(block: string, entities: readonly DxfEntity[], file: string): ReadBlock {
  const on = (layer: string, type: DxfEntity['type']): readonly DxfEntity[] =>
    entities.filter((entity) => entity.layer === layer && entity.type === type);
  const closed = (layer: string): readonly DxfEntity[] =>
    on(layer, 'POLYLINE').filter((line) => line.closed || isLoop(line.points));
  const sewn = closed(D6673_LAYERS.sewLine);
  const outline = (sewn.length === 1 ? sewn : closed(D6673_LAYERS.boundary))[0];
  if (outline === undefined) {
    throw new InputError('dxf-malformed', {
      what: `the block ${block} has no boundary`,
      allowed: `a closed polyline on layer ${D6673_LAYERS.boundary}`,
      place: { file, row: entities[0]?.row ?? 1 },
    });
  }
  const numbers = new Map<string, { rule: number; row: number }>();
  const points: RawPoint[] = [];
  const add = (
    kind: RawPoint['kind'],
    at: Point,
    layers: readonly string[],
    edge: string,
    row: number,
    fold = false,
  ): void => {
    const place = { file, row };
    const name = `${kind}_${points.filter((other) => other.kind === kind).length + 1}`;
    points.push({ name, kind, at, edge, seam: '', fold, rule: { text: '', place }, place });
    const number = layers
      .flatMap((layer) => on(layer, 'TEXT'))
      .map(({ words, points: [where] }) => ({ rule: /^#\s*(\d+)$/u.exec(words)?.[1], where }))
      .find(({ rule, where }) => rule !== undefined && where !== undefined && near(where, at));
    if (number?.rule !== undefined) numbers.set(name, { rule: Number(number.rule), row });
  };
  const isOn = (layer: string, at: Point): boolean =>
    on(layer, 'POINT').some(({ points: [where] }) => where !== undefined && near(where, at));
  const folds = on(D6673_LAYERS.mirrorLine, 'LINE');
  const vertices = outlineFrom(outline.points, (at) => !isOn(D6673_LAYERS.curvePoint, at));
  let edge = 0;
  vertices.forEach((at, i) => {
    const next = vertices[(i + 1) % vertices.length] ?? at;
    const smooth = isOn(D6673_LAYERS.curvePoint, at);
    if (!smooth) edge++;
    const kind = !smooth ? 'corner' : isOn(D6673_LAYERS.notch, at) ? 'notch' : 'curve';
    const layer = smooth ? D6673_LAYERS.curvePoint : D6673_LAYERS.turnPoint;
    const fold = folds.some(({ points: [a, b] }) => a && b && joins(a, b, at, next));
    add(kind, at, [layer], `edge_${edge}`, outline.row, fold);
  });
  for (const { points: ends, row } of on(D6673_LAYERS.grainLine, 'LINE').slice(0, 1)) {
    for (const at of ends) add('grain', at, [D6673_LAYERS.grainLine], 'grain', row);
  }
  const lines = [
    ...on(D6673_LAYERS.internalLine, 'POLYLINE'),
    ...on(D6673_LAYERS.internalLine, 'LINE'),
  ];
  lines.forEach(({ points: line, row }, i) => {
    for (const at of line) add('inside', at, [D6673_LAYERS.internalLine], `line_${i + 1}`, row);
  });
  for (const { points: spots, row } of on(D6673_LAYERS.drillHole, 'POINT')) {
    for (const at of spots) add('drill', at, [D6673_LAYERS.drillHole], 'drill', row);
  }
  const words = on(D6673_LAYERS.annotation, 'TEXT').map((text) => text.words);
  const named = words.map((text) => /^PIECE NAME:\s*(.+)$/iu.exec(text)?.[1]?.trim());
  const name = (named.find((found) => found !== undefined) ?? block).replace(/[.+]/gu, '_');
  const notches = on(D6673_LAYERS.notch, 'POINT').filter(
    ({ points: [at] }) => at !== undefined && !vertices.some((vertex) => near(vertex, at)),
  ).length;
  return { piece: { name, points, cuttings: words.flatMap(cuttingOf) }, numbers, notches };
}

function near(a: Point, b: Point): boolean {
  return distance(a, b) <= EXCHANGED / 2;
}

function isLoop(points: readonly Point[]): boolean {
  const [first, last] = [points[0], points.at(-1)];
  return points.length > 3 && first !== undefined && last !== undefined && near(first, last);
}

function joins(a: Point, b: Point, from: Point, to: Point): boolean {
  return (near(a, from) && near(b, to)) || (near(a, to) && near(b, from));
}

/** The vertices from the first corner on, without a last one that repeats the first. */
function outlineFrom(points: readonly Point[], isCorner: (at: Point) => boolean): readonly Point[] {
  const own = isLoop(points) ? points.slice(0, -1) : points;
  const start = Math.max(0, own.findIndex(isCorner));
  return [...own.slice(start), ...own.slice(0, start)];
}

function cuttingOf(words: string): readonly Cutting[] {
  const parts = /^QUANTITY:\s*(\d+)( ON FOLD)?(?: OF (\w+))?$/iu.exec(words);
  if (parts === null) return [];
  const stated = parts[3]?.toLowerCase();
  const cloth = stated === 'lining' || stated === 'interfacing' ? stated : 'shell';
  return [{ cloth, count: Number(parts[1]), onFold: parts[2] !== undefined }];
}
