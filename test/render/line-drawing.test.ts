/**
 * The line drawing against the finished measurements, which are walked along the seams of the pieces:
 * what is drawn must be the skirt that is sewn, at one scale.
 */
import { describe, expect, it } from 'vitest';
import { measureOf } from '../../src/grade/graded-pattern';
import { zipOf } from '../../src/pattern/zip';
import { lineDrawing } from '../../src/render/line-drawing';
import type { PathShape, Shape } from '../../src/render/scene';
import { segmentsBounds } from '../../src/geometry/bounds';
import { movedSegment } from '../../src/geometry/segment';
import { add } from '../../src/geometry/point';
import { gradedOnce } from '../graded';
import { SHAPED_NAMES, STYLE_NAMES } from '../styles';

const CHART =
  'measurement,unit,S,M,L\nwaist,cm,66,72,80\nhip,cm,92,98,106\nwaist_to_hip,cm,20,20.5,21\n' +
  'height,cm,168,168,168\nskirt_length,cm,60,61,62\n';
const HEIGHT = 100;

/** The paths of a drawing where they lie on the sheet. */
function paths(shapes: readonly Shape[], by = { x: 0, y: 0 }): readonly PathShape[] {
  return shapes.flatMap((shape): readonly PathShape[] => {
    if (shape.kind === 'group')
      return paths(shape.children, add(by, shape.offset ?? { x: 0, y: 0 }));
    if (shape.kind === 'text') return [];
    const segments = shape.segments.map((segment) => movedSegment(segment, (p) => add(p, by)));
    return [{ ...shape, segments }];
  });
}

function drawn(style: string, set: Readonly<Record<string, string>> = {}) {
  const { range } = gradedOnce({
    chart: CHART,
    base: 'M',
    style,
    set,
  });
  const size = range.sizes[1];
  if (size === undefined) throw new RangeError('no size');
  const garment = { pieces: size.pieces, zip: zipOf(size.pieces, size.parameters) };
  const all = paths(lineDrawing(garment, HEIGHT)?.shapes ?? []);
  const named = (part: string) => all.filter((path) => path.part === part);
  return { size, named };
}

describe('the line drawing', () => {
  it.each(STYLE_NAMES)('has the proportions of %s as it is sewn', (style) => {
    const { size, named } = drawn(style);
    const boxes = named('outline').map(({ segments }) => segmentsBounds(segments));
    expect(boxes).toHaveLength(2);
    const across = boxes.reduce((sum, { left, right }) => sum + right - left, 0);
    const longest = Math.max(...boxes.map(({ top, bottom }) => bottom - top));
    // Its widest place is the hip or the hem, all round: front and back together.
    const widest = Math.max(measureOf(size, 'hip'), measureOf(size, 'hem'));
    const down = measureOf(size, 'center_front_length');
    const band = size.pieces.some(({ plan }) => plan.part === 'waistband') ? 30 : 0;
    const scale = across / widest;
    // The side rises a little over the center front, and a flared hem is measured along its curve.
    expect(longest / scale).toBeGreaterThan(down + band - 5);
    expect(longest / scale).toBeLessThan(down + band + 40);
    // The waist is drawn as wide as it is sewn, but for a scale taken from a hem that is curved.
    const waists = named('outline').map(({ segments }) => {
      const { top } = segmentsBounds(segments);
      const xs = segments
        .filter(({ from }) => from.y < top + 0.12 * HEIGHT)
        .map(({ from }) => from.x);
      return Math.max(...xs.slice(0, 17)) - Math.min(...xs.slice(-17));
    });
    const waist = waists.reduce((sum, width) => sum + width, 0) / scale;
    expect(waist / measureOf(size, 'waist')).toBeGreaterThan(0.955);
    expect(waist / measureOf(size, 'waist')).toBeLessThan(1.01);
  });

  it.each(SHAPED_NAMES)('shows the waistband of %s, and neither it nor a seam without', (style) => {
    expect(drawn(style, { waist_finish: '1' }).named('waist')).toHaveLength(2);
    expect(drawn(style, { waist_finish: '0' }).named('waist')).toHaveLength(0);
  });

  it('shows each dart on both halves', () => {
    const two = drawn('shared-drop', { back_darts: '2', front_darts: '1' });
    expect(two.named('dart')).toHaveLength(2 * (2 + 1));
  });

  it('shows the vent, a slit or a closed seam', () => {
    const counts = (set: Readonly<Record<string, string>>) => {
      const { named } = drawn('shared-drop', set);
      return [named('vent').length, named('opening').length];
    };
    expect(counts({ vent_length: '20 cm', vent_width: '4 cm' })).toEqual([1, 1]);
    expect(counts({ vent_length: '20 cm', vent_width: '0 cm' })).toEqual([0, 1]);
    expect(counts({ vent_length: '0 cm' })).toEqual([0, 0]);
  });

  it('is longer for its width where the skirt is longer', () => {
    const shape = (length: string) => {
      const [front] = drawn('pencil', { skirt_length: length }).named('outline');
      const { left, right, top, bottom } = segmentsBounds(front?.segments ?? []);
      return (bottom - top) / (right - left);
    };
    expect(shape('90 cm') / shape('60 cm')).toBeCloseTo(90 / 60, 6);
  });
});
