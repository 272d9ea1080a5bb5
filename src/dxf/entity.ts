/** One entity of a DXF file as points, lines and words. */
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import { DRAWN_ALIKE } from '../tolerance';
import { arcPoints, bulgePoints, roundPoints } from './arcs';
import { splinePoints } from './b-spline';
import type { LinePoint } from './line-point';
import { mapped } from './line-point';
import type { Raw, Tag } from './tags';
import { first, numberAt, numberOf, numbersAt, rowOf } from './tags';

/** A line, place or text of a drawing, with curves as cubics. */
export interface DxfEntity {
  /** What it is to a pattern; `UNREAD` is named in the findings. */
  readonly type: 'LINE' | 'POLYLINE' | 'POINT' | 'TEXT' | 'UNREAD';
  /** What the file calls it. */
  readonly kind: string;
  readonly layer: string;
  /** In the unit of the file, y down. */
  readonly points: readonly LinePoint[];
  readonly closed: boolean;
  /** Of a circle. */
  readonly center?: Point;
  readonly words: string;
  /** Row in the file, from 1. */
  readonly row: number;
}

/** Reads an entity; one of a kind that is not known, or tilted out of the paper, is `UNREAD`. */
export function entityOf(raw: Raw, file: string): DxfEntity {
  const plain: DxfEntity = {
    type: 'UNREAD',
    kind: raw.type,
    layer: first(raw, 8),
    points: [],
    closed: false,
    words: '',
    row: rowOf(raw),
  };
  if (first(raw, 67) === '1') return { ...plain, kind: `${raw.type} IN PAPER SPACE` };
  // Through fit points alone many curves go, of which the file does not say which is meant.
  if (raw.type === 'SPLINE' && !has(raw, 10) && has(raw, 11))
    return { ...plain, kind: 'SPLINE OF FIT POINTS' };
  const shape = shapeOf(raw, file);
  const facing = facingOf(raw, file);
  if (shape === undefined || facing === undefined) return plain;
  if (facing === 1 || !ON_OWN_PLANE.has(raw.type)) return { ...plain, ...shape };
  const { points, center } = shape;
  return {
    ...plain,
    ...shape,
    points: mapped(points, fromBehind),
    ...(center && { center: fromBehind(center) }),
  };
}

function has({ tags }: Raw, wanted: number): boolean {
  return tags.some(({ code }) => code === wanted);
}

/** Kinds whose places are in the axes of their extrusion; those of the others are on the sheet. */
const ON_OWN_PLANE: ReadonlySet<string> = new Set([
  'LWPOLYLINE',
  'POLYLINE',
  'ARC',
  'CIRCLE',
  'TEXT',
  'ATTRIB',
  'ATTDEF',
]);

/** Where an extrusion down puts a place: its x axis is turned round, its y axis stays. */
function fromBehind({ x, y }: Point): Point {
  return { x: 0 - x, y };
}

/** Which way the extrusion of an entity points: 1 up, -1 down; undefined where it is tilted. */
export function facingOf(raw: Raw, file: string): 1 | -1 | undefined {
  const [x, y] = [numberAt(raw, 210, 0, file), numberAt(raw, 220, 0, file)];
  const z = numberAt(raw, 230, 1, file);
  // The z of an extrusion that is not written whole counts as none.
  if (Math.hypot(x, y) > DRAWN_ALIKE * Math.abs(z) || z === 0) return undefined;
  return z > 0 ? 1 : -1;
}

type Shape = Pick<DxfEntity, 'type' | 'points'> & Partial<DxfEntity>;

function shapeOf(raw: Raw, file: string): Shape | undefined {
  const number = (code: number, otherwise = NaN): number => numberAt(raw, code, otherwise, file);
  const at = placesOf(raw.tags, 10, file);
  switch (raw.type) {
    case 'LINE':
      return { type: 'LINE', points: [...at, ...placesOf(raw.tags, 11, file)] };
    case 'POINT':
      return { type: 'POINT', points: at.slice(0, 1) };
    case 'TEXT':
    case 'ATTRIB':
    case 'ATTDEF': {
      // The place of words that are not set from the left is the other one.
      const isAligned = number(72, 0) !== 0 || number(73, 0) !== 0;
      const set = isAligned ? placesOf(raw.tags, 11, file) : [];
      return { type: 'TEXT', points: [...set, ...at].slice(0, 1), words: unescaped(first(raw, 1)) };
    }
    case 'MTEXT':
      return { type: 'TEXT', points: at.slice(0, 1), words: paragraphs(raw) };
    case 'LWPOLYLINE':
      return polyline(lightVertices(raw), (number(70, 0) & 1) === 1, file);
    case 'POLYLINE': {
      const flags = number(70, 0);
      const isMesh = (flags & (16 | 64)) !== 0;
      const isFrame = (vertex: Raw): boolean => (numberAt(vertex, 70, 0, file) & 16) !== 0;
      if (isMesh) return undefined;
      const own = raw.vertices.filter((vertex) => !isFrame(vertex)).map(({ tags }) => tags);
      return polyline(own, (flags & 1) === 1, file);
    }
    case 'ARC': {
      const [start, end] = [radians(number(50)), radians(number(51))];
      const round = circle(at[0], number(40));
      if (round === undefined || !Number.isFinite(start + end)) return undefined;
      const turn = (end - start) % (2 * Math.PI);
      const points = arcPoints(round, start, start + (turn > 0 ? turn : turn + 2 * Math.PI));
      return { type: 'POLYLINE', points };
    }
    case 'CIRCLE': {
      const round = circle(at[0], number(40));
      if (round === undefined) return undefined;
      return { type: 'POLYLINE', points: roundPoints(round), closed: true, center: round.center };
    }
    case 'ELLIPSE':
      return ellipse(raw, file);
    case 'SPLINE':
      return spline(raw, file);
    default:
      return undefined;
  }
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** Angles of a file run from x up, so that v points up. */
function circle(center: Point | undefined, radius: number) {
  if (center === undefined || !(radius > 0)) return undefined;
  return { center, u: { x: radius, y: 0 }, v: { x: 0, y: -radius } };
}

function ellipse(raw: Raw, file: string): Shape | undefined {
  const [center] = placesOf(raw.tags, 10, file);
  const [u] = placesOf(raw.tags, 11, file);
  const ratio = numberAt(raw, 40, NaN, file);
  const facing = facingOf(raw, file) ?? 1;
  if (center === undefined || u === undefined || !(ratio > 0)) return undefined;
  const v = { x: facing * ratio * u.y, y: -facing * ratio * u.x };
  const [start, end] = [numberAt(raw, 41, 0, file), numberAt(raw, 42, 2 * Math.PI, file)];
  const turn = end > start ? end - start : end - start + 2 * Math.PI;
  const round = { center, u, v };
  // The whole way round to the rounding of a file, or a part of it.
  return Math.abs(turn - 2 * Math.PI) < DRAWN_ALIKE
    ? { type: 'POLYLINE', points: roundPoints(round), closed: true }
    : turn > 0 && turn < 2 * Math.PI
      ? { type: 'POLYLINE', points: arcPoints(round, start, start + turn) }
      : undefined;
}

function spline(raw: Raw, file: string): Shape | undefined {
  const weights = numbersAt(raw, 41, file);
  if (weights.some((weight) => weight !== weights[0])) return undefined;
  const points = splinePoints({
    degree: numberAt(raw, 71, 3, file),
    knots: numbersAt(raw, 40, file),
    controls: placesOf(raw.tags, 10, file),
  });
  return points && { type: 'POLYLINE', points };
}

/** The tags of a light polyline, parted at each x. */
function lightVertices({ tags }: Raw): readonly (readonly Tag[])[] {
  const vertices: Tag[][] = [];
  for (const tag of tags) {
    if (tag.code === 10) vertices.push([tag]);
    else vertices.at(-1)?.push(tag);
  }
  return vertices;
}

function polyline(vertices: readonly (readonly Tag[])[], closed: boolean, file: string): Shape {
  const own = vertices.flatMap((tags) => {
    const bulge = tags.find(({ code }) => code === 42);
    return placesOf(tags, 10, file)
      .slice(0, 1)
      .map((at) => ({ at, bulge: bulge === undefined ? 0 : numberOf(bulge, file) }));
  });
  const points = own.flatMap(({ at, bulge }, i) => {
    const next = own[i + 1] ?? (closed ? own[0] : undefined);
    // Down the paper a turn from x to y is the other one.
    return next === undefined ? [at] : bulgePoints(at, next.at, -bulge);
  });
  return { type: 'POLYLINE', points, closed };
}

/** Every x under `code` with the y that follows it. */
function placesOf(tags: readonly Tag[], code: number, file: string): readonly Point[] {
  return tags.flatMap((tag, i) => {
    if (tag.code !== code) return [];
    let k = i + 1;
    while (k < tags.length && tags[k]?.code !== code && tags[k]?.code !== code + 10) k++;
    const y = tags[k]?.code === code + 10 ? tags[k] : undefined;
    return [point(numberOf(tag, file), 0 - numberOf(y ?? { ...tag, value: '' }, file))];
  });
}

function unescaped(words: string): string {
  return words.replace(/\\U\+([0-9A-F]{4})/giu, (_, code: string) =>
    String.fromCharCode(parseInt(code, 16)),
  );
}

/** The words of a text of several lines, without what sets their type. */
function paragraphs({ tags }: Raw): string {
  const whole = tags
    .filter(({ code }) => code === 3 || code === 1)
    .map(({ value }) => value)
    .join('');
  return unescaped(whole)
    .replace(/\\P/gu, ' ')
    .replace(/\\[ACFHQTWfp][^;\\]*;|\\[LOKlok]|[{}]/gu, '')
    .trim();
}
