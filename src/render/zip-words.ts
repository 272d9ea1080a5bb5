/** The words of the zip allowance: in its strip where that is wide enough, else beside the nest. */
import { between, point, subtract } from '../geometry/point';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import { isClear } from './chords';
import type { NestedPiece } from './nested-piece';
import type { Sketch } from './sketch';
import { block, heightOf, leftOf, moved, readingAngle, widthOf } from './sketch';
import { zipStrip } from './zip-strip';

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
  const strip = zipStrip(reference);
  if (strip === undefined) return undefined;
  const { border, middle, seam, width } = strip;

  const words = `ZIP ALLOWANCE ${showLength(width, display)}`;
  const angle = readingAngle(subtract(border.to, border.from));
  const sizeOf = Math.min(LARGEST, Math.max(LEAST, OF_STRIP * width));
  const sketch = block([{ words, size: sizeOf }], angle);
  const center = between(middle, seam, 0.5);
  const corner = point(center.x - widthOf(sketch) / 2, center.y - heightOf(sketch) / 2);
  const within = moved(sketch, corner);
  return isClear(within.box, chords) ? within : leftOf(nest, sketch, middle.y);
}
