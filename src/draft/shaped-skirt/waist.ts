/**
 * The waist edge of a panel and its darts, as formulas.
 *
 * The legs of a dart are mirror images in its axis, hence equally long. The edge is drawn as over
 * the closed darts: there it is level at the center, square to the side at its end, and in between
 * it climbs the more the farther it is from the center (`@course`, its angle at a dart). Opened,
 * what lies beyond a dart falls by the dart's angle, so that it meets one leg at `@in_angle` and
 * leaves the other at `@out_angle`. Every stretch is the parabola of the angles at its ends; of all
 * such edges `climb` takes the one that ends in the side point before truing, to the first order of
 * the small angles at the darts. What that leaves, a millimeter or two, goes into the last stretch.
 * Without darts the edge is that one stretch, from the center to the side.
 *
 * Slopes and angles are counted upward to the side; y runs down.
 */
import type { Edge, MarkedLine } from '../../pattern/piece';
import type { PointDefinition, ValueDefinition } from '../block';
import { flaredPoints } from './flare';
import type { PanelShape } from './panel-shape';
import { dartNames, lastDart } from './panel-shape';
import { lengthValue, numberValue, ofDart } from './values';

/** Places, angles and stretches of the waist edge. */
export function waistValues(shape: PanelShape): readonly ValueDefinition[] {
  const { panel } = shape;
  const names = dartNames(shape);
  return [
    // Plan width of the waist edge, darts open, before truing.
    lengthValue('width', `${panel}_hip_width - ${panel}_side_take_up`),
    lengthValue('edge', 'width - waist_move'),
    lengthValue('take_up', `${panel}_hip_width - edge`),
    lengthValue('drop', `center_${panel}_drop`),
    lengthValue('rise', panel === 'back' ? 'side_rise + rise_move' : 'side_rise'),
    ...(names.length === 0
      ? [lengthValue('last_third', 'edge/3')]
      : [
          ...climbValues(shape),
          lengthValue('last_third', `(edge - ${lastDart(shape)}_outer_x)/3`),
        ]),
    ...names.flatMap((dart, i) => dartValues(shape, dart, names[i - 1], names[i + 1])),
  ];
}

/**
 * The slope square to the side; then the angle at the last dart with which the edge comes out at the side
 * point. Both are those before truing, so that truing leaves the darts where they are.
 */
function climbValues(shape: PanelShape): readonly ValueDefinition[] {
  const last = lastDart(shape);
  const sum = (value: string): string =>
    dartNames(shape)
      .map((dart) => `${dart}_${value}`)
      .join(' + ');
  return [
    numberValue('side_slope', `2*${shape.panel}_side_take_up/(waist_to_hip + side_rise)`),
    numberValue(
      'climb',
      `(side_rise + drop + ${sum('fall')} - ${last}_after*side_slope/2)/(${sum('reach')})`,
    ),
  ];
}

function dartValues(
  { panel, darts }: PanelShape,
  dart: string,
  before: string | undefined,
  after: string | undefined,
): readonly ValueDefinition[] {
  return ofDart(dart, [
    numberValue('@share', `${panel}_${dart}_position`),
    lengthValue('@long', `${panel}_${dart}_length`),
    lengthValue('@half', `${panel}_intake/${2 * darts}`),
    numberValue('@half_angle', 'atan(@half/@long)'),
    // By its share of the edge, or by half of the quarter's grade, or between the two.
    lengthValue(
      '@x',
      '@share*base.width + ((1 - half_rule)*@share + half_rule/2)*(width - base.width)',
    ),

    // Plan widths of the stretches beside it, and the angle by which the darts up to it are open.
    lengthValue('@before', before === undefined ? '@x - @half' : `${before}_after`),
    lengthValue(
      '@after',
      `${after === undefined ? 'width' : `${after}_x - ${after}_half`} - @x - @half`,
    ),
    numberValue('@opened_before', before === undefined ? '0' : `${before}_opened`),
    numberValue('@opened', '@opened_before + 2*@half_angle'),
    // What one unit of climb raises beside and across it, and by how much the open darts lower that.
    lengthValue('@reach', `((@before + @after)/2 + 2*axis_square*@half)*@x/${after ?? dart}_x`),
    lengthValue(
      '@fall',
      '(@before/2 + axis_square*@half)*@opened_before + (@after/2 + axis_square*@half)*@opened',
    ),
    numberValue('@course', `climb*@x/${after ?? dart}_x`),
    numberValue('@in_angle', '@course - @opened_before'),
    numberValue('@out_angle', '@course - @opened'),
    numberValue('@angle', '(@in_angle + @out_angle)/2'),

    // The axis points from the waist to the tip, in every size in the base's direction, so that legs
    // and tip move together in the grade.
    numberValue('@lean', 'axis_square*tan(base.@angle)'),
    numberValue('@axis_x', '@lean/sqrt(1 + @lean^2)'),
    numberValue('@axis_y', '1/sqrt(1 + @lean^2)'),

    // The stretch before it, from the leg of the dart before or from the center, is a parabola: it
    // rises by its width times the mean of the slopes at its ends.
    lengthValue('@start_x', before === undefined ? '0' : `${before}_outer_x`),
    lengthValue('@start_y', before === undefined ? 'drop' : `${before}_outer_y`),
    numberValue('@start_angle', before === undefined ? '0' : `${before}_out_angle`),
    lengthValue('@inner_x', '@x - @half*@axis_y'),
    lengthValue(
      '@inner_y',
      '@start_y - (@inner_x - @start_x)*(tan(@start_angle) + tan(@in_angle))/2',
    ),
    lengthValue('@y', '@inner_y - @half*@axis_x'),
    lengthValue('@outer_x', '@x + @half*@axis_y'),
    lengthValue('@outer_y', '@y - @half*@axis_x'),

    // Fold of the closed dart: toward the center the inner edge is mirrored, else the outer one.
    numberValue('@fold_slope', '(1 - 2*press_to_side)*(@angle - atan(@lean))'),
  ]);
}

/** From the first stretch to the outer leg of the last dart; then the stretch to the side. */
export function waistPoints(shape: PanelShape): readonly PointDefinition[] {
  const names = dartNames(shape);
  return [
    { name: 'center_waist', x: '0', y: 'drop' },
    ...names.flatMap((dart, i) => dartPoints(shape, dart, names[i - 1])),
    ...flaredPoints(shape, [
      ...(names.length === 0
        ? [{ name: 'center_waist_handle', x: 'last_third', y: 'drop', handle: true as const }]
        : lastLegPoints(lastDart(shape))),
      {
        name: 'side_waist_inner_handle',
        x: 'edge - last_third',
        y: '-rise + last_third*tan(side_angle)',
        handle: true,
      },
      { name: 'side_waist', x: 'edge', y: '-rise' },
    ]),
  ];
}

/** The outer leg of the last dart, and the handle of the stretch that begins there. */
function lastLegPoints(last: string): readonly PointDefinition[] {
  return [
    { name: `${last}_outer`, x: `${last}_outer_x`, y: `${last}_outer_y` },
    {
      name: `${last}_outer_handle`,
      x: `${last}_outer_x + last_third`,
      y: `${last}_outer_y - last_third*tan(${last}_out_angle)`,
      handle: true,
    },
  ];
}

/** The stretch before a dart and the dart itself, without the outer leg of the last one. */
function dartPoints(
  shape: PanelShape,
  dart: string,
  before: string | undefined,
): readonly PointDefinition[] {
  const isLast = dart === lastDart(shape);
  const outer: PointDefinition = { name: '@outer', x: '@outer_x', y: '@outer_y' };
  return ofDart(dart, [
    {
      name: `${before === undefined ? 'center_waist' : `${before}_outer`}_handle`,
      x: '@start_x + (@inner_x - @start_x)/3',
      y: '@start_y - (@inner_x - @start_x)/3*tan(@start_angle)',
      handle: true,
    },
    {
      name: '@inner_handle',
      x: '@inner_x - (@inner_x - @start_x)/3',
      y: '@inner_y + (@inner_x - @start_x)/3*tan(@in_angle)',
      handle: true,
    },
    { name: '@inner', x: '@inner_x', y: '@inner_y' },
    { name: '@tip', x: '@x + @long*@axis_x', y: '@y + @long*@axis_y' },
    foldPoint(isLast && shape.flared),
    ...(isLast ? [] : [outer]),
  ]);
}

/**
 * The end of the dart's fold on the cut edge: on the axis, where the waist edge mirrored in a leg
 * meets it. Where part of the dart is closed its axis has turned by half of that.
 */
function foldPoint(isTurned: boolean): PointDefinition {
  const half = isTurned ? '(@half_angle - turn/2)' : '@half_angle';
  const reach =
    `sqrt(@half^2 + @long^2)*` + `(cos(${half}) + sin(${half})*tan(${half} - @fold_slope))`;
  const [x, y] = isTurned
    ? ['(@axis_x*cos(turn/2) + @axis_y*sin(turn/2))', '(@axis_y*cos(turn/2) - @axis_x*sin(turn/2))']
    : ['@axis_x', '@axis_y'];
  return { name: '@fold', x: `@tip.x - ${x}*${reach}`, y: `@tip.y - ${y}*${reach}` };
}

/** From the center to the side, the darts between the stretches. */
export function waistEdges(shape: PanelShape): readonly Edge[] {
  const names = dartNames(shape);
  const stretch = (from: string, to: string, arrive = `${to}_handle`): Edge => ({
    kind: 'cubic',
    from,
    leave: `${from}_handle`,
    arrive,
    to,
    seam: 'waist',
  });
  return [
    ...names.flatMap((dart, i): readonly Edge[] => [
      stretch(i === 0 ? 'center_waist' : `${names[i - 1] ?? ''}_outer`, `${dart}_inner`),
      {
        kind: 'dart',
        name: dart,
        from: `${dart}_inner`,
        tip: `${dart}_tip`,
        to: `${dart}_outer`,
        seam: 'waist',
      },
    ]),
    stretch(
      names.length === 0 ? 'center_waist' : `${lastDart(shape)}_outer`,
      'side_waist',
      'side_waist_inner_handle',
    ),
  ];
}

/** The folds of the closed darts. */
export function dartMarks(shape: PanelShape): readonly MarkedLine[] {
  return dartNames(shape).map((dart): MarkedLine => ({
    name: 'dart-fold',
    through: [`${dart}_inner`, `${dart}_fold`, `${dart}_outer`],
  }));
}
