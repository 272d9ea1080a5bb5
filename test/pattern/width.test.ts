import { describe, expect, it } from 'vitest';
import { point } from '../../src/geometry/point';
import type { Point } from '../../src/geometry/point';
import type { Edge, Piece } from '../../src/pattern/piece';
import { piecePlan } from '../../src/pattern/piece';
import { widthAt } from '../../src/pattern/width';

/**
 * A panel 200 wide and 500 deep with a dart of 20 at its upper edge, 100 deep, and from 300 down a
 * vent 40 wide beyond its center line.
 */
const POINTS: Readonly<Record<string, Point>> = {
  center_waist: point(0, 0),
  dart_in: point(90, 0),
  dart_tip: point(100, 100),
  dart_out: point(110, 0),
  side_waist: point(200, 0),
  side_hem: point(200, 500),
  vent_hem: point(-40, 500),
  vent_top: point(-40, 300),
  center_vent: point(0, 300),
};

function line(from: string, to: string, seam: string): Edge {
  return { kind: 'line', from, to, seam };
}

const OUTLINE: readonly Edge[] = [
  line('center_waist', 'dart_in', 'waist'),
  {
    kind: 'dart',
    name: 'dart',
    from: 'dart_in',
    tip: 'dart_tip',
    to: 'dart_out',
    seam: 'waist',
  },
  line('dart_out', 'side_waist', 'waist'),
  line('side_waist', 'side_hem', 'side'),
  line('side_hem', 'vent_hem', 'hem'),
  line('vent_hem', 'vent_top', 'center'),
  line('vent_top', 'center_vent', 'center'),
  line('center_vent', 'center_waist', 'center'),
];

function panel(points: Readonly<Record<string, Point>> = POINTS): Piece {
  const pointNames = Object.keys(points);
  const plan = piecePlan({
    name: 'back',
    part: 'panel',
    cuttings: [],
    pointNames,
    handles: new Set(),
    outline: OUTLINE,
    marks: [],
  });
  return { plan, points: pointNames.map((name) => points[name] ?? point(NaN, NaN)) };
}

describe('the width of a piece on a level', () => {
  it.each([
    ['the upper edge, where the dart is open all its width', 0, 180],
    ['halfway down the dart, where it is half as wide', 50, 190],
    ['the tip of the dart', 100, 200],
    ['between dart and vent', 200, 200],
    ['the vent', 400, 240],
    ['the hem', 500, 240],
    ['above the piece', -1, 0],
    ['below the piece', 501, 0],
  ])('%s', (_, level, width) => {
    expect(widthAt(panel(), level)).toBeCloseTo(width, 9);
  });

  it('leaves out what lies left of a place', () => {
    expect(widthAt(panel(), 400, 0)).toBeCloseTo(200, 9);
    expect(widthAt(panel(), 50, 95)).toBeCloseTo(200 - 105, 9);
    expect(widthAt(panel(), 400, 250)).toBe(0);
  });

  it('is no number where the level or the outline on it is none', () => {
    expect(widthAt(panel(), NaN)).toBeNaN();
    expect(widthAt(panel({ ...POINTS, side_waist: point(NaN, 0) }), 200)).toBeNaN();
  });
});
