/** Charts, styles and rulers for the pieces of the shaped skirt that are made from its panels. */
import { readFileSync } from 'node:fs';
import type { Point } from '../../src/geometry/point';
import type { Cubic } from '../../src/geometry/segment';
import { pointOf } from '../../src/index';
import type { Piece } from '../../src/index';
import type { DraftedResult } from '../graded';
import { casteljau, chordLength } from '../geometry/curves';
import { gradedOnce } from '../graded';
import { LONG, someSizes } from '../samples';
import { SHAPED_NAMES } from '../styles';

const text = (file: string): string =>
  readFileSync(new URL(`../../size-charts/${file}`, import.meta.url), 'utf8');

/** Both ends of each chart, its base, and a size on either side of that. */
export const CHARTS = [
  { chart: someSizes(text('demo.csv'), ['2', '8', '12', '18', '24']), base: '12' },
  {
    chart: someSizes(text('standards/astm-d6960-16-plus.csv'), ['14W', '22W', '24W', '40W']),
    base: '22W',
  },
] as const;

export const DEMO = CHARTS[0];

/** The demo with every size, for what goes from one to the next. */
export const WHOLE_DEMO = { chart: text('demo.csv'), base: '12' } as const;

/** The figures of the metric market, set by hand: both charts are in inches and have others. */
export const METRIC = {
  waist_ease: '1 cm',
  band_ease: '1 cm',
  band_height: '3 cm',
  underlap: '3 cm',
  facing_depth: '6 cm',
  lining_shorter: '2 cm',
  tuck_length: '5 cm',
};

/** Every style on both charts (in passing the next style on the next chart alone), with these parameters set on top of `METRIC`. */
export function everyResult(
  set: Readonly<Record<string, string>>,
): readonly (readonly [name: string, result: DraftedResult])[] {
  return SHAPED_NAMES.flatMap((style, s) =>
    CHARTS.filter((_, c) => LONG || c === s % CHARTS.length).map(
      ({ chart, base }) =>
        [
          `${style}, base ${base}`,
          gradedOnce({ chart, base, style, set: { ...METRIC, ...set } }),
        ] as const,
    ),
  );
}

/** The curve of an outline between two of its points. */
export function curveOf(piece: Piece, from: string, to: string): Cubic {
  const edge = piece.plan.outline.find((e) => e.from === from && e.to === to);
  if (edge?.kind !== 'cubic') throw new RangeError(`no curve from ${from} to ${to}`);
  const at = (name: string): Point => pointOf(piece, name);
  const [leave, arrive] = [at(edge.leave), at(edge.arrive)];
  return { kind: 'cubic', from: at(from), leave, arrive, to: at(to) };
}

/** 200 chords of an edge of a skirt fall short by less than a hundred-thousandth of a millimeter. */
const CHORDS = 200;

/** Lengths of the edges of a seam by many short chords, darts and their mouths left out. */
export function chords(piece: Piece, seam: string): readonly number[] {
  return piece.plan.outline.flatMap((edge) => {
    if (edge.seam !== seam || edge.kind === 'dart') return [];
    return edge.kind === 'cubic'
      ? [chordLength(curveOf(piece, edge.from, edge.to), CHORDS)]
      : [apart(piece, edge.from, edge.to)];
  });
}

export function total(lengths: readonly number[]): number {
  return lengths.reduce((sum, length) => sum + length, 0);
}

export function apart(piece: Piece, a: string, b: string): number {
  const [p, q] = [pointOf(piece, a), pointOf(piece, b)];
  return Math.hypot(p.x - q.x, p.y - q.y);
}

/** Points along the curves of a seam, `count` a curve. */
export function dense(piece: Piece, seam: string, count: number): readonly Point[] {
  return piece.plan.outline.flatMap((edge) =>
    edge.seam === seam && edge.kind === 'cubic'
      ? Array.from({ length: count + 1 }, (_, i) =>
          casteljau(curveOf(piece, edge.from, edge.to), i / count),
        )
      : [],
  );
}

/** Angle in degrees of the way from one point to another, clockwise on paper from +x. */
export function bearing(a: Point, b: Point): number {
  return (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;
}

/** Names of a piece's darts from the center to the side. */
export function dartNames(piece: Piece): readonly string[] {
  return piece.plan.darts.map(({ name }) => name);
}
