/**
 * The plain baseline: the quarter-method skirt written out by hand as one straight function, with
 * the same results as the engine's draft, grade and measure: named points of every size, moves from
 * the base, graded points, finished measurements.
 */
import { cubicLength } from '../../src/geometry/cubic';
import type { Point } from '../../src/geometry/point';

export interface Body {
  readonly waist: number;
  readonly hip: number;
  readonly depth: number;
  readonly length: number;
}

interface StraightSize {
  readonly front: Record<string, Point>;
  readonly back: Record<string, Point>;
}

const EASE = 50.8;
const TAPER = 25.4;
const ZIP = 25.4;
const INTAKE = 25.4;

function quarter(body: Body, dartLength: number): Record<string, Point> {
  const sideWaist = body.waist / 4 + INTAKE;
  const sideHip = body.hip / 4 + EASE / 4;
  const dart = sideWaist / 2;
  return {
    center_waist: { x: 0, y: 0 },
    dart_inner: { x: dart - INTAKE / 2, y: 0 },
    dart_center: { x: dart, y: 0 },
    dart_tip: { x: dart, y: dartLength },
    dart_outer: { x: dart + INTAKE / 2, y: 0 },
    side_waist: { x: sideWaist, y: 0 },
    side_waist_handle: { x: sideWaist + (2 / 3) * (sideHip - sideWaist), y: body.depth / 3 },
    side_hip_handle: { x: sideHip, y: (2 / 3) * body.depth },
    side_hip: { x: sideHip, y: body.depth },
    side_hem: { x: sideHip - TAPER, y: body.length },
    center_hem: { x: 0, y: body.length },
    center_hip: { x: 0, y: body.depth },
  };
}

function draft(body: Body): StraightSize {
  const back = quarter(body, 127);
  back.zip_waist = { x: -ZIP, y: 0 };
  back.zip_hem = { x: -ZIP, y: body.length };
  return { front: quarter(body, 101.6), back };
}

type At = (name: string) => Point;

function apart(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function side(at: At): number {
  const curve = cubicLength({
    from: at('side_waist'),
    leave: at('side_waist_handle'),
    arrive: at('side_hip_handle'),
    to: at('side_hip'),
  });
  return curve + apart(at('side_hip'), at('side_hem'));
}

function waist(at: At): number {
  return apart(at('center_waist'), at('dart_inner')) + apart(at('dart_outer'), at('side_waist'));
}

function darts(at: At): readonly number[] {
  return [
    apart(at('dart_inner'), at('dart_outer')),
    apart(at('dart_inner'), at('dart_tip')),
    apart(at('dart_outer'), at('dart_tip')),
  ];
}

/** Everything for all sizes; `base` is an index. */
export function straightSkirt(bodies: readonly Body[], base: number) {
  const drafts = bodies.map(draft);
  const zero = drafts[base] as StraightSize;
  return drafts.map((own) => {
    const moves: Record<string, Record<string, Point>> = { front: {}, back: {} };
    const graded: Record<string, Record<string, Point>> = { front: {}, back: {} };
    for (const piece of ['front', 'back'] as const) {
      for (const name of Object.keys(own[piece])) {
        const from = zero[piece][name] as Point;
        const to = own[piece][name] as Point;
        const move = { x: to.x - from.x, y: to.y - from.y };
        (moves[piece] as Record<string, Point>)[name] = move;
        (graded[piece] as Record<string, Point>)[name] = { x: from.x + move.x, y: from.y + move.y };
      }
    }
    const front: At = (name) => (graded.front as Record<string, Point>)[name] as Point;
    const back: At = (name) => (graded.back as Record<string, Point>)[name] as Point;
    return {
      draft: own,
      moves,
      graded,
      waist: 2 * (waist(front) + waist(back)),
      hip: 2 * (front('side_hip').x + back('side_hip').x),
      hem: 2 * (front('side_hem').x + back('side_hem').x),
      centerFront: apart(front('center_waist'), front('center_hem')),
      centerBack: apart(back('center_waist'), back('center_hem')),
      sideFront: side(front),
      sideBack: side(back),
      darts: [...darts(front), ...darts(back)],
    };
  });
}
