/** The side seam: what it takes in from hip to waist, and its direction all the way to the hem. */
import { present } from '../lists/present';
import { cornersOf } from '../geometry/bends';
import { cubicBend, cubicTangent } from '../geometry/cubic';
import { cross, length } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import type { GradedPattern } from '../grade/graded-pattern';
import type { Edge, Piece, PiecePlan } from '../pattern/piece';
import { edgeSegments, panelsOf, pointOf } from '../pattern/piece';
import { CORNER_SEEN, SAME_PLACE, SIDE_BEND, SIDE_FOLDS } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength, trimmed } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

/** A side that takes nothing in leans outward at the waist, and the darts lie. */
export function checkSideTakeUp(range: GradedPattern, display: LengthDisplay): Finding[] {
  return range.sizes.flatMap((size) =>
    panelsOf(size.pieces).map((piece): Finding => {
      const measured = pointOf(piece, 'side_hip').x - pointOf(piece, 'side_waist').x;
      const held = measured >= -SAME_PLACE;
      return found({
        severity: held ? 'ok' : 'fail',
        check: 'side-take-up',
        size: size.label,
        piece: piece.plan.name,
        subject: 'side',
        measured,
        expected: 0,
        source: "the engine's own rule: the hip is the widest place",
        message: held
          ? `the side takes in ${showLength(measured, display)} from hip to waist`
          : `the side leans ${showLength(-measured, display)} outward at the waist: ` +
            'hip minus waist is too small for this dart, make the dart narrower',
      });
    }),
  );
}

/** What is seen along the side of one panel, joint by joint. */
interface SideDirection {
  /** Degrees by which the direction jumps at each joint of the side. */
  readonly corners: readonly number[];
  /** Degrees per cm in the tightest bend of its curves. */
  readonly bend: number;
}

/**
 * The direction of the side along its whole way from waist to hem: each joint at which it jumps and
 * each piece with a bend too tight for a side seam is noted once over the whole range, and a side
 * that folds back fails.
 */
export function noteSideDirection(range: GradedPattern): Finding[] {
  return range.plans.flatMap((plan, p): Finding[] => {
    if (plan.part !== 'panel') return [];
    const seen = range.sizes.map(({ pieces }) => directionOf(pieces[p] as Piece));
    const joints = sideOf(plan).slice(1);
    const found = present([
      ...joints.flatMap(({ from }, k) => {
        const angles = seen.map(({ corners }) => corners[k] ?? NaN);
        return Math.max(...angles) > CORNER_SEEN ? cornerNote(plan, from, angles) : [];
      }),
      bendNote(
        plan,
        seen.map(({ bend }) => bend),
      ),
    ]);
    return found.length > 0 ? found : [smooth(plan, seen)];
  });
}

function sideOf({ outline }: PiecePlan): readonly Edge[] {
  return outline.filter(({ seam }) => seam === 'side');
}

function directionOf(piece: Piece): SideDirection {
  const line = sideOf(piece.plan).flatMap((edge) => edgeSegments(piece, edge));
  return { corners: cornersOf(line), bend: 10 * DEGREES * Math.max(...line.map(tightest)) };
}

const DEGREES = 180 / Math.PI;

/** The largest curvature of a segment, in radians per mm. */
function tightest(segment: Segment): number {
  if (segment.kind === 'line') return 0;
  const bends = Array.from({ length: 65 }, (_, i) => {
    const along = cubicTangent(segment, i / 64);
    return Math.abs(cross(along, cubicBend(segment, i / 64))) / length(along) ** 3;
  });
  return Math.max(...bends);
}

function cornerNote(plan: PiecePlan, joint: string, angles: readonly number[]): Finding {
  const [least, most] = [Math.min(...angles), Math.max(...angles)];
  const folds = most > SIDE_FOLDS;
  return {
    ...sideFinding(plan, joint, 'angle'),
    severity: folds ? 'fail' : 'note',
    measured: most,
    expected: 0,
    source: 'common practice, no source: a side seam runs smoothly from waist to hem',
    message:
      `the side seam turns by ${span(least, most)} degrees at ${joint}` +
      (folds
        ? ', it folds back: what lies between there and the hem is longer than the skirt'
        : ', where it is drawn without a curve: round it off by hand over some 10 cm'),
  };
}

function bendNote(plan: PiecePlan, bends: readonly number[]): Finding | undefined {
  const [least, most] = [Math.min(...bends), Math.max(...bends)];
  if (!(most > SIDE_BEND)) return undefined;
  return {
    ...sideFinding(plan, 'side', 'angle'),
    severity: 'note',
    measured: most,
    expected: 0,
    tolerance: SIDE_BEND,
    source: 'common practice, no source: a side seam runs smoothly from waist to hem',
    message:
      `the tightest bend of the side seam turns by ${span(least, most)} degrees in 1 cm, ` +
      'which shows as a corner: give its curve more length',
  };
}

function smooth(plan: PiecePlan, seen: readonly SideDirection[]): Finding {
  return {
    ...sideFinding(plan, 'side', 'angle'),
    severity: 'ok',
    measured: Math.max(0, ...seen.flatMap(({ corners }) => corners)),
    expected: 0,
    tolerance: CORNER_SEEN,
    source: 'common practice, no source: a side seam runs smoothly from waist to hem',
    message: 'the side seam has no corner from waist to hem',
  };
}

function sideFinding({ name }: PiecePlan, subject: string, quantity: Finding['quantity']) {
  return { check: 'side-direction', size: '', piece: name, subject, quantity };
}

/** `3.2`, or `3.2 to 3.4` where sizes differ. */
function span(least: number, most: number): string {
  const [from, to] = [trimmed(least, 1), trimmed(most, 1)];
  return from === to ? to : `${from} to ${to}`;
}
