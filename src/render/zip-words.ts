/** The words of the zip allowance: in its strip where that is wide enough, else beside the nest. */
import type { Point } from '../geometry/point';
import { between, distance, dot, point, subtract } from '../geometry/point';
import type { Line } from '../geometry/segment';
import { segmentLength } from '../geometry/segment';
import { outlineSegments } from '../pattern/piece';
import { SAME_PLACE } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import { flattened, isClear } from './chords';
import type { NestedPiece } from './nested-piece';
import { markPoints } from './piece-lines';
import type { Sketch } from './sketch';
import { block, heightOf, leftOf, moved, readingAngle, widthOf } from './sketch';

/** Type size, mm; smaller in a narrow strip, but never less than the second. */
const LARGEST = 8;
const LEAST = 5;
/** The type size as a share of the width of its strip. */
const OF_STRIP = 0.32;

/** The words, or undefined where there is no allowance to speak of. */
export function zipWords(nested: NestedPiece, display: LengthDisplay): Sketch | undefined {
  const { reference, chords, box: nest, lines } = nested;
  // Without the seam there is no strip to see.
  if (lines === 'cut') return undefined;
  const mark = reference.plan.marks.find(({ name }) => name === 'zip-allowance');
  const border = mark === undefined ? undefined : longestChord(markPoints(reference, mark));
  if (border === undefined) return undefined;
  const middle = between(border.from, border.to, 0.5);
  const seam = nearestOn(flattened(outlineSegments(reference)), middle);
  const allowance = distance(middle, seam);
  if (allowance <= SAME_PLACE) return undefined;

  const words = `ZIP ALLOWANCE ${showLength(allowance, display)}`;
  const angle = readingAngle(subtract(border.to, border.from));
  const sizeOf = Math.min(LARGEST, Math.max(LEAST, OF_STRIP * allowance));
  const sketch = block([{ words, size: sizeOf }], angle);
  const strip = between(middle, seam, 0.5);
  const corner = point(strip.x - widthOf(sketch) / 2, strip.y - heightOf(sketch) / 2);
  const within = moved(sketch, corner);
  return isClear(within.box, chords) ? within : leftOf(nest, sketch, middle.y);
}

function longestChord(chain: readonly Point[]): Line | undefined {
  return chain.slice(1).reduce<Line | undefined>((longest, to, i) => {
    const chord: Line = { kind: 'line', from: chain[i] ?? to, to };
    return longest === undefined || segmentLength(chord) > segmentLength(longest) ? chord : longest;
  }, undefined);
}

/** The point of a chain of points that is nearest to `p`. */
function nearestOn(chain: readonly Point[], p: Point): Point {
  const feet = chain.slice(1).map((to, i) => {
    const from = chain[i] ?? to;
    const along = subtract(to, from);
    const square = dot(along, along);
    const t = square === 0 ? 0 : dot(subtract(p, from), along) / square;
    return between(from, to, Math.min(1, Math.max(0, t)));
  });
  return feet.reduce((best, foot) => (distance(foot, p) < distance(best, p) ? foot : best));
}
