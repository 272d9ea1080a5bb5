/** The words of the zip allowance: in its strip where that is wide enough, else beside the nest. */
import { add, between, point, subtract } from '../geometry/point';
import { grownBox } from '../geometry/bounds';
import { shopLength } from '../pattern/shop-length';
import type { LengthDisplay } from '../units';
import { isClear } from './chords';
import type { NestedPiece } from './nested-piece';
import type { Sketch } from './sketch';
import { block, heightOf, leftOf, moved, readingAngle, widthOf } from './sketch';
import { zipStrip } from './zip-strip';

/** Type size, mm; smaller in a narrow strip, but never less than the second. */
const LARGEST = 8;
const LEAST = 5;
/** The type size as a share of the width of its strip. No tolerance: a look. */
const OF_STRIP = 0.32;
/** mm that the words keep from any line, so that no notch seems to belong to them. */
const CLEARANCE = 2;
/** Places along the strip that are tried, from its middle outward. */
const SHARES = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74];

/** The words, or undefined where there is no allowance to speak of. */
export function zipWords(nested: NestedPiece, display: LengthDisplay): Sketch | undefined {
  const { reference, chords, box: nest, lines } = nested;
  // Without the seam there is no strip to see.
  if (lines === 'cut') return undefined;
  const strip = zipStrip(reference);
  if (strip === undefined) return undefined;
  const { border, middle, seam, width } = strip;

  const words = `ZIP ALLOWANCE ${shopLength(width, display)}`;
  const angle = readingAngle(subtract(border.to, border.from));
  const sizeOf = Math.min(LARGEST, Math.max(LEAST, OF_STRIP * width));
  const sketch = block([{ words, size: sizeOf }], angle);
  const aside = subtract(between(middle, seam, 0.5), middle);
  for (const share of SHARES) {
    const center = add(between(border.from, border.to, share), aside);
    const corner = point(center.x - widthOf(sketch) / 2, center.y - heightOf(sketch) / 2);
    const within = moved(sketch, corner);
    if (isClear(grownBox(within.box, CLEARANCE), chords)) return within;
  }
  return leftOf(nest, sketch, middle.y);
}
