/** What is written on every sheet and every piece: names, cuttings, sizes, facts. */
import { faceUp } from '../pattern/face-up';
import type { PiecePlan } from '../pattern/piece';
import { UNIT_WORDS } from '../units';
import type { CalledSize, NestDrawing } from './nest-drawing';
import { linesShown } from './nest-drawing';
import { zipStrip } from './zip-strip';

/** The caution on every drawing: no draft knows the body that will wear it. */
export const TOILE = 'Sew a toile before cutting cloth.';

/** A name of the engine in the capitals of a pattern sheet: `center_front` is CENTER FRONT. */
export function spelled(name: string): string {
  return name.replace(/[_-]+/g, ' ').toUpperCase();
}

/** How often to cut a piece, a line for each cloth: `Cut 1 on fold`, `Cut 1 of lining, wrong side up`. */
export function cuttings(plan: PiecePlan): readonly string[] {
  return plan.cuttings.map((cutting) => {
    const { cloth, count, onFold } = cutting;
    const from = cloth === 'shell' ? '' : ` of ${cloth}`;
    const face = faceUp(plan, cutting);
    return `Cut ${count}${from}${onFold ? ' on fold' : ''}${face ? `, ${face} side up` : ''}`;
  });
}

/** A given piece that does not say how it lies on the cloth, which is not for the engine to say. */
export function hasNoGrain({ part, marks }: PiecePlan): boolean {
  return part === 'piece' && !marks.some(({ name }) => name === 'grainline');
}

/**
 * The sizes of a nest, `Sizes 0 to 22`, or the one size of a sheet, `Size 8`. Each is told, `Sizes 8, 12 and 18`, if
 * they are two or it is `gapped`: sizes between them are left out.
 */
export function sizesShown(labels: readonly string[], gapped = false): string {
  const [first = '', ...others] = labels;
  const last = others.at(-1);
  if (last === undefined) return sizeWords({ label: first });
  if (!gapped && others.length > 1) return `Sizes ${first} to ${last}`;
  return `Sizes ${[first, ...others.slice(0, -1)].join(', ')} and ${last}`;
}

/** `Size 8`, or the name of a body. */
export function sizeWords({ label, called }: CalledSize): string {
  return called ?? `Size ${label}`;
}

/** The same of a drawing, or the name of its one body. */
export function sizesDrawn({ sizes, gapped = false }: NestDrawing): string {
  const [only, ...others] = sizes;
  if (only !== undefined && others.length === 0) return sizeWords(only);
  return sizesShown(
    sizes.map(({ label }) => label),
    gapped,
  );
}

/** The facts of a sheet, each a name and a value. */
export function sheetFacts({
  baseSize,
  stackPoint,
  display,
  sizes,
}: NestDrawing): readonly (readonly [name: string, value: string])[] {
  const isBody = sizes.some(({ called }) => called !== undefined);
  return [
    ...(isBody ? [] : [['Base size', baseSize] as const]),
    [
      'Stacked on',
      stackPoint === '' ? 'zero of each piece' : `${stackPoint.replace(/_/g, ' ')}, ringed`,
    ],
    ['Unit', UNIT_WORDS[display.unit]],
    ['Scale', 'true size, 1:1'],
  ];
}

/** What the lines of a drawing stand for where it shows `count` sizes, in a sentence for whoever cuts. */
export function linesNote(drawing: NestDrawing, count: number): string {
  const { given, sizes } = drawing;
  switch (linesShown(drawing)) {
    case 'net':
      if (given !== undefined) return `Lines as ${given} gives them, without any allowance added.`;
      return sizes.some(({ pieces }) => pieces.some((piece) => zipStrip(piece) !== undefined))
        ? 'Net lines: seam allowances are not included, except the zip allowance.'
        : 'Net lines: seam allowances are not included.';
    case 'cut':
      return 'Cut along the lines: seam allowances are included, as each piece says. Sewing lines are not drawn.';
    case 'both':
      return `Cut along the strong lines, sew along the thin ${count > 1 ? 'unbroken' : 'dashed'} ones: seam allowances are included, as each piece says.`;
  }
}

/** The same, and on a drawing of several sizes which lines and marks are whose. */
export function linesNotes(drawing: NestDrawing, count: number): readonly string[] {
  return [linesNote(drawing, count), ...(count > 1 ? [ofAllSizes(drawing.display)] : [])];
}

function ofAllSizes({ unit }: NestDrawing['display']): string {
  return (
    'Black lines and marks are those of the sizes beside them; without a size, of all. Where sizes are said to ' +
    `lie within ${unit === 'in' ? '1/16 in (1.5 mm)' : '1.5 mm (1/16 in)'}, any of their lines will do.`
  );
}
