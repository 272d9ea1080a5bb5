/**
 * Half a front or half a back of the shaped skirt, as formulas.
 *
 * The waist takes its directions from a guide, a parabola that is level at the center and rises to
 * the side. The legs of a dart are mirror images in its axis, hence equally long. Between the darts
 * the waist edge is a cubic that meets each leg so that, with the dart closed, the edge runs on
 * without a corner: it rises by the guide's own angle plus half the dart's before the dart, and by
 * the guide's angle minus that half after it. Each dart stands where this makes the stretch before
 * it a plain parabola, without a dip.
 */
import type { Edge, MarkedLine } from '../../pattern/piece';
import { panelCutting } from '../block';
import type { BlockPiece, PointDefinition, ValueDefinition } from '../block';
import type { Vent } from './vent';
import { centerBackEdges, centerBackMarks, ventPoints, zipPoints } from './vent';

/** Half a front from the fold, or half a back from the center seam. */
export type Panel = 'front' | 'back';

/** What is decided once for a whole range, so that all sizes have the same points. */
export interface PanelShape {
  readonly panel: Panel;
  readonly darts: 1 | 2;
  /** False where the hem is as wide as the hip in every size. */
  readonly tapered: boolean;
  /** True where the side runs straight down for a while before the taper begins. */
  readonly taperedBelowHip: boolean;
  /** True where part of the dart nearest the side is closed into the hem. */
  readonly flared: boolean;
  /** The opening at center back; always `none` for a front. */
  readonly vent: Vent;
}

/** `dart` where there is one, else `inner_dart` (nearer the center) and `outer_dart`. */
export function dartNames(darts: 1 | 2): readonly string[] {
  return darts === 1 ? ['dart'] : ['inner_dart', 'outer_dart'];
}

/**
 * The panel in one shape, every coordinate a formula: center waist at the zero of x, the waist near
 * the zero of y.
 */
export function panelPiece(shape: PanelShape): BlockPiece {
  const { panel, darts } = shape;
  const names = dartNames(darts);
  const last = names[names.length - 1] as string;
  return {
    name: panel,
    cuttings: panelCutting(panel),
    values: [
      ...commonValues(shape),
      ...names.flatMap((dart, i) => dartValues(panel, dart, darts, stretchStart(names[i - 1]))),
      ...(shape.flared ? turnValues(last) : []),
    ],
    points: [
      { name: 'center_waist', x: '0', y: 'drop' },
      ...waistPoints(shape, names),
      ...sidePoints(shape, last),
      { name: 'center_hem', x: '0', y: 'skirt_length' },
      { name: 'center_hip', x: '0', y: 'waist_to_hip' },
      { name: 'center_high_hip', x: '0', y: 'waist_to_high_hip' },
      ...(panel === 'back' ? [...ventPoints(shape.vent), ...zipPoints(shape.vent)] : []),
    ],
    outline: outline(shape, names),
    marks: marks(shape, names),
  };
}

function length(name: string, formula: string): ValueDefinition {
  return { name, quantity: 'length', formula };
}

function number(name: string, formula: string): ValueDefinition {
  return { name, quantity: 'number', formula };
}

function commonValues(shape: PanelShape): readonly ValueDefinition[] {
  const { panel } = shape;
  const start = taperStart(shape);
  return [
    // Plan width of the waist edge, darts open, before truing.
    length('width', `${panel}_hip_width - ${panel}_side_take_up`),
    length('edge', 'width - waist_move'),
    length('take_up', `${panel}_hip_width - edge`),
    length('drop', `center_${panel}_drop`),
    length('rise', panel === 'back' ? 'side_rise + rise_move' : 'side_rise'),
    length('side_depth', 'waist_to_hip + rise'),
    // The angle by which the waist must rise at the side to be square to it.
    number('side_angle', 'atan(2*take_up/side_depth)'),
    length('side_line', `sqrt((side_hem.x - ${start}.x)^2 + (side_hem.y - ${start}.y)^2)`),
  ];
}

function dartValues(
  panel: Panel,
  dart: string,
  darts: 1 | 2,
  before: StretchStart,
): readonly ValueDefinition[] {
  const place = `${panel}_${dart}_position`;
  const v = (name: string): string => `${dart}_${name}`;
  return [
    // By its share of the edge, or by half of the quarter's grade, or between the two.
    length(
      v('x'),
      `${place}*base.width + ((1 - half_rule)*${place} + half_rule/2)*(width - base.width)`,
    ),
    // The dart stands where the stretch before it, from direction to direction, is a parabola.
    length(
      v('y'),
      `${before.y} - (${v('x')} - ${v('half')}*${v('axis_y')} - ${before.x})*` +
        `(tan(${before.angle}) + tan(${v('in_angle')}))/2 - ${v('half')}*${v('axis_x')}`,
    ),
    // Rise of the guide, upward to the side, as a slope; and of the line across the dart's mouth.
    number(v('slope'), `2*(side_rise + drop)*${v('x')}/width^2`),
    number(v('lean'), `axis_square*base.${v('slope')}`),
    // The axis points from the waist to the tip, in every size in the base's direction, so that legs
    // and tip move together in the grade.
    number(v('axis_x'), `${v('lean')}/sqrt(1 + ${v('lean')}^2)`),
    number(v('axis_y'), `1/sqrt(1 + ${v('lean')}^2)`),
    length(v('half'), `${panel}_intake/${2 * darts}`),
    length(v('long'), `${panel}_${dart}_length`),
    number(v('half_angle'), `atan(${v('half')}/${v('long')})`),
    number(v('in_angle'), `atan(${v('slope')}) + ${v('half_angle')}`),
    number(v('out_angle'), `atan(${v('slope')}) - ${v('half_angle')}`),
    // Fold of the closed dart: toward the center the inner edge is mirrored, else the outer one.
    number(v('fold_slope'), `(1 - 2*press_to_side)*(atan(${v('slope')}) - atan(${v('lean')}))`),
  ];
}

/** Where a stretch of the waist edge begins, and the angle at which it rises there. */
interface StretchStart {
  readonly x: string;
  readonly y: string;
  readonly angle: string;
}

/** The stretch after a dart, or the first one, which starts level at the center. */
function stretchStart(dart: string | undefined): StretchStart {
  if (dart === undefined) return { x: '0', y: 'drop', angle: '0' };
  return {
    x: `(${dart}_x + ${dart}_half*${dart}_axis_y)`,
    y: `${dart}_y - ${dart}_half*${dart}_axis_x`,
    angle: `${dart}_out_angle`,
  };
}

/** The turn about the tip of the last dart that closes part of it and opens the hem. */
function turnValues(dart: string): readonly ValueDefinition[] {
  return [
    number('turn', `2*dart_closing*${dart}_half_angle`),
    number('turn_x', 'cos(turn)'),
    number('turn_y', 'sin(turn)'),
  ];
}

/** A point, turned about the tip of the last dart where the skirt is flared. */
function turned({ flared }: PanelShape, tip: string, definition: PointDefinition): PointDefinition {
  if (!flared) return definition;
  const [dx, dy] = [`(${definition.x} - ${tip}.x)`, `(${definition.y} - ${tip}.y)`];
  return {
    ...definition,
    x: `${tip}.x + ${dx}*turn_x + ${dy}*turn_y`,
    y: `${tip}.y - ${dx}*turn_y + ${dy}*turn_x`,
  };
}

function waistPoints(shape: PanelShape, names: readonly string[]): readonly PointDefinition[] {
  const points: PointDefinition[] = [];
  names.forEach((dart, i) => {
    const v = (name: string): string => `${dart}_${name}`;
    const before = i === 0 ? 'center_waist' : `${names[i - 1] ?? ''}_outer`;
    const angle = i === 0 ? '0' : `${names[i - 1] ?? ''}_out_angle`;
    const isLast = i === names.length - 1;
    const tip = v('tip');
    const half = isLast && shape.flared ? `(${v('half_angle')} - turn/2)` : v('half_angle');
    points.push(
      ...edgeHandles(before, angle, v('inner'), v('in_angle')),
      {
        name: v('inner'),
        x: `${v('x')} - ${v('half')}*${v('axis_y')}`,
        y: `${v('y')} + ${v('half')}*${v('axis_x')}`,
      },
      {
        name: tip,
        x: `${v('x')} + ${v('long')}*${v('axis_x')}`,
        y: `${v('y')} + ${v('long')}*${v('axis_y')}`,
      },
      foldPoint(v, half, isLast && shape.flared),
    );
    const outer: PointDefinition = {
      name: v('outer'),
      x: `${v('x')} + ${v('half')}*${v('axis_y')}`,
      y: `${v('y')} - ${v('half')}*${v('axis_x')}`,
    };
    points.push(isLast ? turned(shape, tip, outer) : outer);
  });
  return points;
}

/**
 * The end of the dart's fold on the cut edge: on the axis, where the waist edge mirrored in a leg
 * meets it.
 */
function foldPoint(v: (name: string) => string, half: string, isTurned: boolean): PointDefinition {
  const leg = `sqrt(${v('half')}^2 + ${v('long')}^2)`;
  const reach = `${leg}*(cos(${half}) + sin(${half})*tan(${half} - ${v('fold_slope')}))`;
  const [x, y] = isTurned
    ? [
        `(${v('axis_x')}*cos(turn/2) + ${v('axis_y')}*sin(turn/2))`,
        `(${v('axis_y')}*cos(turn/2) - ${v('axis_x')}*sin(turn/2))`,
      ]
    : [v('axis_x'), v('axis_y')];
  return {
    name: v('fold'),
    x: `${v('tip')}.x - ${x}*${reach}`,
    y: `${v('tip')}.y - ${y}*${reach}`,
  };
}

/** Handles of a waist stretch between two points with given rising angles, a third of its width. */
function edgeHandles(
  from: string,
  fromAngle: string,
  to: string,
  toAngle: string,
): readonly PointDefinition[] {
  const third = `(${to}.x - ${from}.x)/3`;
  return [
    {
      name: `${from}_handle`,
      x: `${from}.x + ${third}`,
      y: `${from}.y - ${third}*tan(${fromAngle})`,
      handle: true,
    },
    {
      name: `${to}_handle`,
      x: `${to}.x - ${third}`,
      y: `${to}.y + ${third}*tan(${toAngle})`,
      handle: true,
    },
  ];
}

/**
 * From the last dart down the side to the hem. The side curve is the parabola that is vertical at
 * the hip line; the hem is level at the center and square to the side, and its side end lies on the
 * parabola that these two directions give, so that the hem hangs level.
 */
function sidePoints(shape: PanelShape, last: string): readonly PointDefinition[] {
  const { panel, tapered, taperedBelowHip } = shape;
  const start = taperStart(shape);
  const tip = `${last}_tip`;
  const hip = `${panel}_hip_width`;
  const turn = (definition: PointDefinition): PointDefinition => turned(shape, tip, definition);
  const third = `(edge - ${last}_x - ${last}_half*${last}_axis_y)/3`;
  const outer = {
    x: `${last}_x + ${last}_half*${last}_axis_y`,
    y: `${last}_y - ${last}_half*${last}_axis_x`,
  };
  return [
    turn({
      name: `${last}_outer_handle`,
      x: `${outer.x} + ${third}`,
      y: `${outer.y} - ${third}*tan(${last}_out_angle)`,
      handle: true,
    }),
    turn({
      name: 'side_waist_inner_handle',
      x: `edge - ${third}*cos(side_angle)`,
      y: `-rise + ${third}*sin(side_angle)`,
      handle: true,
    }),
    turn({ name: 'side_waist', x: 'edge', y: '-rise' }),
    turn({
      name: 'side_waist_handle',
      x: 'edge + 2/3*take_up',
      y: '-rise + side_depth/3',
      handle: true,
    }),
    turn({ name: 'side_hip_handle', x: hip, y: 'waist_to_hip - side_depth/3', handle: true }),
    turn({ name: 'side_hip', x: hip, y: 'waist_to_hip' }),
    ...(taperedBelowHip
      ? [turn({ name: 'side_taper', x: hip, y: 'waist_to_hip + taper_start' })]
      : []),
    turn({
      name: 'side_hem',
      x: tapered ? `${hip} - hem_taper` : hip,
      y: tapered ? 'taper_level + taper_depth' : 'skirt_length',
    }),
    // Square to the side: the side's own direction, from where it starts to taper, turned.
    {
      name: 'side_hem_handle',
      x: `side_hem.x - side_hem.x/3*(side_hem.y - ${start}.y)/side_line`,
      y: `side_hem.y + side_hem.x/3*(side_hem.x - ${start}.x)/side_line`,
      handle: true,
    },
    { name: 'center_hem_handle', x: 'side_hem.x/3', y: 'center_hem.y', handle: true },
  ];
}

/** The point from which the side runs in one line to the hem. */
function taperStart({ taperedBelowHip }: PanelShape): string {
  return taperedBelowHip ? 'side_taper' : 'side_hip';
}

function outline({ panel, taperedBelowHip, vent }: PanelShape, names: readonly string[]): Edge[] {
  const waist = names.flatMap((dart, i): Edge[] => {
    const before = i === 0 ? 'center_waist' : `${names[i - 1] ?? ''}_outer`;
    return [
      {
        kind: 'cubic',
        from: before,
        leave: `${before}_handle`,
        arrive: `${dart}_inner_handle`,
        to: `${dart}_inner`,
        seam: 'waist',
      },
      {
        kind: 'dart',
        name: dart,
        from: `${dart}_inner`,
        tip: `${dart}_tip`,
        to: `${dart}_outer`,
        seam: 'waist',
      },
    ];
  });
  const last = names[names.length - 1] ?? '';
  return [
    ...waist,
    {
      kind: 'cubic',
      from: `${last}_outer`,
      leave: `${last}_outer_handle`,
      arrive: 'side_waist_inner_handle',
      to: 'side_waist',
      seam: 'waist',
    },
    {
      kind: 'cubic',
      from: 'side_waist',
      leave: 'side_waist_handle',
      arrive: 'side_hip_handle',
      to: 'side_hip',
      seam: 'side',
    },
    ...(taperedBelowHip
      ? ([{ kind: 'line', from: 'side_hip', to: 'side_taper', seam: 'side' }] as const)
      : []),
    {
      kind: 'line',
      from: taperedBelowHip ? 'side_taper' : 'side_hip',
      to: 'side_hem',
      seam: 'side',
    },
    {
      kind: 'cubic',
      from: 'side_hem',
      leave: 'side_hem_handle',
      arrive: 'center_hem_handle',
      to: 'center_hem',
      seam: 'hem',
    },
    ...(panel === 'front'
      ? ([{ kind: 'fold', from: 'center_hem', to: 'center_waist', seam: 'center_front' }] as const)
      : centerBackEdges(vent)),
  ];
}

function marks({ panel, vent }: PanelShape, names: readonly string[]): MarkedLine[] {
  return [
    { name: 'hip-line', through: ['center_hip', 'side_hip'] },
    ...names.map((dart): MarkedLine => ({
      name: 'dart-fold',
      through: [`${dart}_inner`, `${dart}_fold`, `${dart}_outer`],
    })),
    ...(panel === 'back' ? centerBackMarks(vent) : []),
  ];
}
