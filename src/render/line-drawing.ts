/**
 * The line drawing of a finished skirt, front and back, worked out from its pieces, so that it has
 * their proportions: waist, darts, sides, hem, band, zip, vent or slit.
 */
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Piece } from '../pattern/piece';
import { panelsOf, pointOf } from '../pattern/piece';
import { sewnPanel } from '../pattern/sewn-panel';
import type { Zip } from '../pattern/zip';
import { zipEnd, ZIP_LAP } from '../pattern/zip';
import type { Scene, Shape, Stroke } from './scene';
import { polygon, polyline } from './scene';
import { INK } from './size-style';
import type { Sketch } from './sketch';
import { block, heightOf, moved, sketchOf, widthOf } from './sketch';

/** mm on paper, whatever the scale. */
const OUTLINE: Stroke = { color: INK, width: 0.5 };
const SEAM: Stroke = { color: INK, width: 0.25 };
const HIDDEN: Stroke = { color: INK, width: 0.25, dash: [1.2, 0.8] };
const BETWEEN_VIEWS = 14;
const CAPTION = 3.2;
const BELOW = 4;
const MARGIN = 8;
/** mm of the tallest view on a sheet of its own. */
const SHEET_HEIGHT = 110;

/** A skirt as a line drawing shows it. */
export interface DrawnGarment {
  readonly pieces: readonly Piece[];
  readonly zip: Zip | undefined;
}

/** The drawing as a sheet of its own; undefined for pieces that are no skirt of front and back. */
export function lineDrawingSheet(title: string, garment: DrawnGarment): Scene | undefined {
  const drawn = lineDrawing(garment, SHEET_HEIGHT);
  if (drawn === undefined) return undefined;
  const placed = moved(drawn, point(MARGIN, MARGIN));
  return {
    title,
    width: widthOf(placed) + 2 * MARGIN,
    height: heightOf(placed) + 2 * MARGIN,
    shapes: placed.shapes,
  };
}

/**
 * Front and back side by side, `height` mm high, with their names below. Undefined for
 * pieces that are no skirt of half a front and half a back.
 */
export function lineDrawing({ pieces, zip }: DrawnGarment, height: number): Sketch | undefined {
  const [front, back] = ['front', 'back'].map((name) =>
    panelsOf(pieces).find(({ plan }) => plan.name === name),
  );
  if (front === undefined || back === undefined) return undefined;
  const band = bandHeight(pieces);
  const views = [viewOf(front, band, []), viewOf(back, band, backLines(back, band, zip))];
  // Both hang from one level, so that a back whose waist lies lower is drawn so.
  const top = Math.min(...views.map((view) => view.top));
  const scale = height / (Math.max(...views.map(({ bottom }) => bottom)) - top);
  let left = 0;
  const sketches = views.map((view, i) => {
    const drawn = sketchOf(view.shapes(scale));
    const name = block([{ words: i === 0 ? 'Front' : 'Back', size: CAPTION }]);
    const x = left - drawn.box.left;
    left = x + drawn.box.right + BETWEEN_VIEWS;
    const shifted = moved(drawn, point(x + drawn.box.left, (view.top - top) * scale));
    const captioned = moved(name, point(x - widthOf(name) / 2, height + BELOW));
    return sketchOf([...shifted.shapes, ...captioned.shapes]);
  });
  return sketchOf(sketches.flatMap(({ shapes }) => shapes));
}

/** One side of the garment, in true mm, and its shapes at a scale. */
interface View {
  readonly top: number;
  readonly bottom: number;
  readonly shapes: (scale: number) => readonly Shape[];
}

/** A line within a view, in true mm. */
interface DrawnLine {
  readonly part: string;
  readonly through: readonly Point[];
  readonly stroke: Stroke;
}

/** mm that a waistband stands above the waist; zero without one. */
function bandHeight(pieces: readonly Piece[]): number {
  const band = pieces.find(({ plan }) => plan.part === 'waistband');
  return band === undefined
    ? 0
    : pointOf(band, 'underlap_waist').y - pointOf(band, 'underlap_fold').y;
}

function viewOf(panel: Piece, band: number, more: readonly DrawnLine[]): View {
  const sewn = sewnPanel(panel);
  const upper = sewn.waist.map(({ x, y }) => point(x, y - band));
  const bottom = [...sewn.hem].reverse();
  const half = [...upper, ...sewn.side, ...bottom];
  const lines: readonly DrawnLine[] = [
    ...(band > 0 ? [{ part: 'waist', through: acrossCenter(sewn.waist), stroke: SEAM }] : []),
    ...sewn.darts.flatMap((dart) =>
      [dart, dart.map(toOtherHalf)].map((through) => ({ part: 'dart', through, stroke: SEAM })),
    ),
    ...more,
  ];
  const ys = half.map(({ y }) => y);
  return {
    top: Math.min(...ys),
    bottom: Math.max(...ys),
    shapes: (scale) => [
      polygon('outline', scaled([...half, ...half.map(toOtherHalf).reverse()], scale), OUTLINE),
      ...lines.map(({ part, through, stroke }) => polyline(part, scaled(through, scale), stroke)),
    ],
  };
}

function toOtherHalf({ x, y }: Point): Point {
  return point(-x, y);
}

/** A line from the center outwards, with that of the other half before it. */
function acrossCenter(line: readonly Point[]): readonly Point[] {
  return [...line.map(toOtherHalf).reverse(), ...line];
}

function scaled(line: readonly Point[], by: number): readonly Point[] {
  return line.map(({ x, y }) => point(by * x, by * y));
}

/** What only a back has: its seam, the zip in it, and the vent or slit at its foot. */
function backLines(back: Piece, band: number, zip: Zip | undefined): readonly DrawnLine[] {
  const center = pointOf(back, 'center_hip').x;
  const at = (name: string): Point | undefined =>
    back.plan.index.has(name)
      ? point(pointOf(back, name).x - center, pointOf(back, name).y)
      : undefined;
  const waist = at('center_waist') ?? point(0, 0);
  const hem = at('center_hem') ?? waist;
  const top = point(0, waist.y - band);
  const vent = [at('vent_top'), at('vent_top_outer'), at('vent_hem')].flatMap((p) => p ?? []);
  const end = zip === undefined ? undefined : point(0, waist.y + zipEnd(zip));
  return [
    { part: 'center-back', through: [top, hem], stroke: SEAM },
    ...(end === undefined ? [] : zipLines(waist, end)),
    // The extension of a vent lies behind its other side, and is seen as what is hidden is.
    ...(vent.length > 1 ? [{ part: 'vent', through: vent, stroke: HIDDEN }] : []),
    ...vent.slice(0, 1).map((from) => ({ part: 'opening', through: [from, hem], stroke: OUTLINE })),
  ];
}

/**
 * The stitching of a zip from the waist down and across where it ends. The left back laps over the right,
 * as at the vent, and is seen on the left from behind.
 */
function zipLines(top: Point, end: Point): readonly DrawnLine[] {
  const lap = -ZIP_LAP;
  return [{ part: 'zip', through: [point(lap, top.y), point(lap, end.y), end], stroke: HIDDEN }];
}
