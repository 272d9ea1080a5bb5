/** The points of measure of a skirt, made from the parts that its pieces declare. */
import type { DartEdge, PiecePlan } from '../pattern/piece';
import type { MeasurePath, PiecePoint, PointOfMeasure } from './point-of-measure';
import type { MeasureGroup, Taken } from './spec';

/** Each panel, of shell or lining, is half a front or half a back. */
const HALVES = 2;

/** The measure of the skirt's own edge at the waist, where a band is shorter than it. */
export const WAIST_EDGE = 'skirt_waist_edge';

/** The codes of what a spec of a skirt lists; all else is only among the finished measurements. */
const CODES: ReadonlyMap<string, string> = new Map([
  ['waist', 'A'],
  ['hip', 'B'],
  ['hem', 'C'],
  ['center_front_length', 'D'],
  ['center_back_length', 'E'],
  ['side_seam_front', 'F'],
  [WAIST_EDGE, 'G'],
  ['zip_length', 'H'],
]);

/**
 * What is measured on a skirt, in the order of its tables: whole girths (the waist along the closed band
 * without its underlap, beside it the edge of the skirt that is eased into it; without a band along that
 * edge, darts closed; hip straight across, hem along the edge), lengths of each panel, its darts, the
 * lining, the zip. Empty for a pattern that declares none of
 * these parts, apart from the zip, which is taken where a size states it.
 */
export function skirtPoints(plans: readonly PiecePlan[]): readonly PointOfMeasure[] {
  const panels = plans.filter(({ part }) => part === 'panel');
  const linings = plans.filter(({ part }) => part === 'lining');
  const bands = plans.filter(({ part }) => part === 'waistband');
  return [
    ...girths(panels, bands),
    ...panels.map(({ name }) =>
      lengthMeasure(
        `center_${name}_length`,
        `waist seam to hem at center ${name}`,
        // Straight, whether the seam runs all the way or is open below.
        between({ piece: name, point: 'center_waist' }, { piece: name, point: 'center_hem' }),
      ),
    ),
    ...panels.map((panel) =>
      lengthMeasure(
        `side_seam_${panel.name}`,
        'waist seam to hem along the side seam',
        along([panel], 'side'),
      ),
    ),
    ...panels.flatMap((panel) => panel.darts.flatMap((dart) => dartPoints(panel.name, dart))),
    ...(linings.length === 0
      ? []
      : [
          girth(
            'lining_hip',
            'straight across the lining at the hip line',
            acrossHip([...linings, ...twins(linings)]),
            1,
          ),
        ]),
    zip('zip_opening', 'waist seam to the end of the opening at center back'),
    zip('zip_length', 'zip, end to end'),
  ];
}

/** The measures that tell the girths of the panels themselves: waist edge and hip. */
export function panelGirths(taken: readonly { readonly name: string }[]): readonly string[] {
  const isTaken = taken.some(({ name }) => name === WAIST_EDGE);
  return [isTaken ? WAIST_EDGE : 'waist', 'hip'];
}

/** Those of them that a spec lists, in the order of their codes. */
export function skirtSpecPoints(plans: readonly PiecePlan[]): readonly PointOfMeasure[] {
  return skirtPoints(plans)
    .filter(({ code }) => code !== '')
    .toSorted((a, b) => (a.code < b.code ? -1 : 1));
}

function girths(
  panels: readonly PiecePlan[],
  bands: readonly PiecePlan[],
): readonly PointOfMeasure[] {
  if (panels.length === 0) return [];
  const edge = along(panels, 'waist');
  const waist =
    bands.length === 0
      ? [girth('waist', 'along the waist seam, darts and zip closed, all round', edge)]
      : [
          girth('waist', 'band closed, without its underlap', along(bands, 'waist'), 1),
          girth(WAIST_EDGE, 'edge of the skirt that is eased into the band, darts closed', edge),
        ];
  return [
    ...waist,
    girth('hip', 'straight across at the hip line, all round', acrossHip(panels)),
    girth('hem', 'along the bottom edge, all round', along(panels, 'hem'), HALVES, 'hem'),
  ];
}

/** The pieces again that are the same on both sides, of which there is no right and no left one. */
function twins(plans: readonly PiecePlan[]): readonly PiecePlan[] {
  return plans.filter(({ cuttings }) => cuttings.some(({ count, onFold }) => onFold || count > 1));
}

/** What a dart takes in, and its legs, the one nearer the center line first. */
function dartPoints(piece: string, { name, from, tip, to }: DartEdge): readonly PointOfMeasure[] {
  const leg = (which: string, end: string): PointOfMeasure =>
    lengthMeasure(
      `${piece}_${name}_${which}_leg`,
      `${which} leg of the dart, waist seam to tip`,
      between({ piece, point: end }, { piece, point: tip }),
    );
  return [
    lengthMeasure(
      `${piece}_${name}_intake`,
      'across the open dart on the waist seam',
      between({ piece, point: from }, { piece, point: to }),
    ),
    leg('inner', from),
    leg('outer', to),
  ];
}

function girth(
  measure: string,
  how: string,
  path: MeasurePath,
  times = HALVES,
  group: MeasureGroup = 'girth',
): PointOfMeasure {
  return pointOfMeasure(measure, how, path, 'girth', group, times);
}

function lengthMeasure(measure: string, how: string, path: MeasurePath): PointOfMeasure {
  return pointOfMeasure(measure, how, path, 'length', 'length', 1);
}

function zip(measure: string, how: string): PointOfMeasure {
  return pointOfMeasure(measure, how, { kind: 'stated', length: measure }, 'length', 'opening', 1);
}

function pointOfMeasure(
  measure: string,
  how: string,
  path: MeasurePath,
  taken: Taken,
  group: MeasureGroup,
  times: number,
): PointOfMeasure {
  const code = CODES.get(measure) ?? '';
  return { code, measure, how, taken, group, path, times, tolerance: undefined };
}

function along(plans: readonly PiecePlan[], edge: string): MeasurePath {
  return { kind: 'along', side: { edges: plans.map(({ name }) => ({ piece: name, edge })) } };
}

function between(from: PiecePoint, to: PiecePoint): MeasurePath {
  return { kind: 'between', from, to };
}

function acrossHip(plans: readonly PiecePlan[]): MeasurePath {
  return {
    kind: 'across',
    levels: plans.map(({ name }) => ({ piece: name, point: 'center_hip' })),
  };
}
