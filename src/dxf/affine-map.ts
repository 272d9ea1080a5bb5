/** How a block is put on the sheet or into another block: scaled, turned, mirrored. */
import { InputError } from '../errors';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import { DRAWN_ALIKE } from '../tolerance';
import { facingOf } from './entity';
import type { Raw } from './tags';
import { first, numberAt, rowOf } from './tags';

/** A map of the plane, y down: (x, y) to (a x + c y + e, b x + d y + f). */
export interface AffineMap {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

/** The placement that changes nothing. */
export const AS_DRAWN: AffineMap = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** A block put somewhere. */
export interface DxfInsert {
  /** Name of the block. */
  readonly block: string;
  readonly layer: string;
  readonly row: number;
  /** Where the base point of the block goes, and how the block lies about it. */
  readonly placement: AffineMap;
  /** `dxf-malformed`, to be thrown if the block is of a piece. */
  readonly fault: InputError | undefined;
}

/**
 * Reads an INSERT. It has a fault if it is tilted, stretched more one way than the other, or repeats
 * its block in rows and columns: what piece is meant by that is not for sure.
 */
export function insertOf(raw: Raw, file: string): DxfInsert {
  const number = (code: number, otherwise: number): number => numberAt(raw, code, otherwise, file);
  const block = first(raw, 2);
  let fault: InputError | undefined;
  const blame = (what: string, allowed: string, got: string): void => {
    const place = { file, row: rowOf(raw) };
    fault = new InputError('dxf-malformed', {
      what: `block ${block} ${what}`,
      allowed,
      got,
      place,
    });
  };
  const facing = facingOf(raw, file);
  if (facing === undefined) blame('is tilted', 'a block flat on the sheet', 'an extrusion aside');
  const [sx, sy] = [number(41, 1), number(42, 1)];
  if (sx === 0 || sy === 0 || Math.abs(Math.abs(sx / sy) - 1) > DRAWN_ALIKE) {
    blame('is stretched', 'one scale for x and y, mirrored or not', `${sx} along x, ${sy} along y`);
  }
  const copies = [number(70, 1), number(71, 1)];
  if (copies.some((count) => count > 1)) {
    blame('is inserted in rows and columns', 'one insert for each piece', copies.join(' by '));
  }
  const [cos, sin] = directionOf(number(50, 0));
  return {
    block,
    layer: first(raw, 8),
    row: rowOf(raw),
    fault,
    placement: {
      a: (facing ?? 1) * cos * sx,
      b: -sin * sx,
      c: (facing ?? 1) * sin * sy,
      d: cos * sy,
      e: (facing ?? 1) * number(10, 0),
      f: 0 - number(20, 0),
    },
  };
}

/** Cosine and sine of degrees, exact for quarter turns. */
function directionOf(degrees: number): readonly [number, number] {
  const quarter = (((degrees / 90) % 4) + 4) % 4;
  const exact = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ] as const;
  const angle = (degrees * Math.PI) / 180;
  return exact[quarter] ?? [Math.cos(angle), Math.sin(angle)];
}

/** Where a point goes. */
export function placed({ a, b, c, d, e, f }: AffineMap, { x, y }: Point): Point {
  return point(a * x + c * y + e, b * x + d * y + f);
}

/** First `inner`, then `outer`. */
export function after(outer: AffineMap, inner: AffineMap): AffineMap {
  const at = placed(outer, point(inner.e, inner.f));
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: at.x,
    f: at.y,
  };
}

/** A shift that puts a point at the origin. */
export function fromBase({ x, y }: Point): AffineMap {
  return { ...AS_DRAWN, e: 0 - x, f: 0 - y };
}

/** By how much a placement makes things larger. */
export function scaleOf({ a, b, c, d }: AffineMap): number {
  return Math.sqrt(Math.abs(a * d - b * c));
}

/** Whether a placement turns things over. */
export function turnsOver({ a, b, c, d }: AffineMap): boolean {
  return a * d - b * c < 0;
}

/** Whether it leaves directions as they are. */
export function isUpright({ a, b, c, d }: AffineMap): boolean {
  return a > 0 && d > 0 && Math.abs(b) <= DRAWN_ALIKE * a && Math.abs(c) <= DRAWN_ALIKE * a;
}
