/** One long sheet from a roll. */
import { InputError } from '../errors';
import { point } from '../geometry/point';
import type { PdfPage } from '../render/pdf';
import type { SheetSize } from '../render/sheet-layout';
import { inkOf } from './ink';
import type { RollPaper } from './paper';
import type { PlanePart } from './plane';
import { planeShapes } from './plane';
import { onStrip } from '../render/side-by-side';
import { widthOf } from '../render/sketch';
import { turned } from './turned';

/**
 * As long as the parts need; those wider than the roll are turned. Throws InputError
 * `paper-too-small` if one is too wide in both ways.
 */
export function rollPage(
  title: string,
  parts: readonly PlanePart[],
  sizes: readonly SheetSize[],
  { width }: RollPaper,
  margin: number,
): PdfPage {
  const strip = width - 2 * margin;
  const laid = parts.map((part) => (widthOf(part) > strip ? turned(part) : part));
  const arrangement = onStrip(laid, strip);
  if (arrangement === undefined) {
    const widest = Math.max(...laid.map(widthOf));
    throw new InputError('paper-too-small', {
      what: 'the roll is narrower than the widest piece',
      allowed: `a roll of ${Math.ceil(widest + 2 * margin)} mm or more, or fewer sizes`,
      got: `${width} mm`,
      place: { field: 'paper' },
    });
  }
  const shapes = planeShapes(arrangement, sizes);
  const height = Math.ceil(inkOf(shapes).box.bottom + 2 * margin);
  const moved = { kind: 'group' as const, offset: point(margin, margin), children: shapes };
  return { scene: { title, width, height, shapes: [moved] }, windows: [] };
}
