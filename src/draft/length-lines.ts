/**
 * The lines at which a skirt is made longer or shorter for its wearer: square to the grain, as deep below
 * the waist line in every size, and clear of all that must keep its shape.
 */
import { present } from '../lists/present';
import type { MarkedLine } from '../pattern/piece';
import { HALF_STEP } from '../tolerance';
import type { PointDefinition, RangeFacts, ValueDefinition } from './block';

/** mm below the waist line, the same in every size; undefined where no place is clear in all of them. */
export interface LengthLines {
  /** Below hip, side curve, darts and zip, and above the hem or the top of a vent. */
  readonly length: number | undefined;
  /** Between the tips of the darts and the hip line. */
  readonly hipDepth: number | undefined;
}

/** What the lines must stay clear of, as names of lengths. */
export interface LineBounds {
  /** Added up, how far down the side has its curves, or is not straight. */
  readonly curved: readonly string[];
  /** Added up, how far up from the hem there is a vent or a turn-up; the most of them counts. */
  readonly aboveHem: readonly string[];
  /** Lengths of all darts. */
  readonly darts: readonly string[];
  /** Depths at which the waist line of a panel begins at the center. */
  readonly drops: readonly string[];
  /** mm by which a flare may lift the side at most, in a size of these values. */
  readonly lift: (value: (name: string) => number) => number;
}

/** mm (common practice, no source: a finger's width or two). */
const CLEAR = 20;
/** mm from the tip of a dart, the end of a zip, and above the hip line, where there is less room. */
const CLEAR_OF_DART = 10;
/** mm to which the depths are rounded down, so that they can be told. */
const STEP = 5;

/** Where the lines of a range go. */
export function lengthLines(
  { span, least }: Pick<RangeFacts, 'span' | 'least'>,
  { curved, aboveHem, darts, drops, lift }: LineBounds,
): LengthLines {
  const most = (name: string): number => span(name)[1];
  const greatest = (names: readonly string[]): number => Math.max(0, ...names.map(most));
  const below = curved.reduce((sum, name) => sum + Math.max(0, most(name)), 0);
  const tips = greatest(darts) + greatest(drops);
  // A zip is bought: it may end up to a step below the opening that is needed.
  const zip = most('waist_to_hip') - span('zip_above_hip')[0] + most('zip_step');
  return {
    length: midway(
      Math.max(below + CLEAR, Math.max(tips, zip) + CLEAR_OF_DART),
      least((value) => value('skirt_length') - lift(value)) - greatest(aboveHem) - CLEAR,
    ),
    hipDepth: midway(
      tips + CLEAR_OF_DART,
      least((value) => value('waist_to_hip') - lift(value)) - CLEAR_OF_DART,
    ),
  };
}

function midway(from: number, to: number): number | undefined {
  if (!(to >= from)) return undefined;
  const middle = STEP * Math.floor((from + to) / (2 * STEP) + HALF_STEP);
  return Math.max(middle, from);
}

/** The names under which formulas use the depths of the lines. */
const LENGTH_LINE = 'length_line_depth';
/** As above, of the line above the hip. */
export const HIP_DEPTH_LINE = 'hip_depth_line_depth';

/** The depths by the names that formulas use. */
export function lineDepths({ length, hipDepth }: LengthLines): ReadonlyMap<string, number> {
  return new Map([
    [LENGTH_LINE, length ?? 0],
    [HIP_DEPTH_LINE, hipDepth ?? 0],
  ]);
}

/** The same as values of a layout. */
export function lineValues(lines: LengthLines): readonly ValueDefinition[] {
  return [...lineDepths(lines)].map(([name, depth]) => ({
    name,
    quantity: 'length',
    formula: `${depth} mm`,
  }));
}

/** The places at which a line of a depth ends at the side, as formulas of its point. */
export interface SideEnds {
  readonly length: Pick<PointDefinition, 'x' | 'y'>;
  readonly hipDepth: Pick<PointDefinition, 'x' | 'y'>;
}

/** The ends of both lines; `sideAt` says where the side is at each. */
export function lengthLinePoints(
  { length, hipDepth }: LengthLines,
  sideAt: (depths: { readonly length: string; readonly hipDepth: string }) => SideEnds,
): readonly PointDefinition[] {
  const depths = { length: LENGTH_LINE, hipDepth: HIP_DEPTH_LINE };
  const side = sideAt(depths);
  const hasLength = length !== undefined;
  const hasDepth = hipDepth !== undefined;
  return present([
    hasLength && { name: 'length_center', x: '0', y: depths.length },
    hasLength && { name: 'length_side', ...side.length },
    hasDepth && { name: 'hip_depth_center', x: '0', y: depths.hipDepth },
    hasDepth && { name: 'hip_depth_side', ...side.hipDepth },
  ]);
}

/** Both lines, as far as there is room for them. */
export function lengthLineMarks({ length, hipDepth }: LengthLines): readonly MarkedLine[] {
  return present<MarkedLine>([
    length !== undefined && { name: 'length-line', through: ['length_center', 'length_side'] },
    hipDepth !== undefined && {
      name: 'hip-depth-line',
      through: ['hip_depth_center', 'hip_depth_side'],
    },
  ]);
}

/** On the line from one point of a panel to another, at a depth. */
export function onLine(from: string, to: string, depth: string): Pick<PointDefinition, 'x' | 'y'> {
  return {
    x: `${from}.x + (${to}.x - ${from}.x)*(${depth} - ${from}.y)/(${to}.y - ${from}.y)`,
    y: depth,
  };
}
