/** Skirts to draw: the quarter method with round numbers, in as many sizes as a test wants. */
import { compileBlock } from '../../src/draft/compile-block';
import type { Drafter } from '../../src/draft/compile-block';
import { resolveParameters } from '../../src/draft/parameters';
import { findStyle } from '../../src/draft/styles';
import { subtract } from '../../src/geometry/point';
import type { Piece } from '../../src/pattern/piece';
import { pointOf } from '../../src/pattern/piece';
import type { NestDrawing } from '../../src/render/nest-drawing';

const INCH = 25.4;

/** The pencil skirt of the engine, for bodies that a chart need not allow. */
const PENCIL = drafterOf('pencil', ['waist_girth', 'hip_girth', 'waist_to_hip', 'skirt_length']);

function drafterOf(name: string, rows: readonly string[]): Drafter {
  const style = findStyle(name);
  const layout = style.block.layout({
    atBase: () => NaN,
    span: () => [NaN, NaN],
    least: () => NaN,
    alwaysZero: (name) => name === 'trued',
  });
  return compileBlock(style.block, layout, resolveParameters(style, [], new Set(rows), 'in'), rows);
}

/** Body girths in inches. */
export interface Girths {
  readonly label: string;
  readonly waist: number;
  readonly hip: number;
}

/** Twelve sizes whose steps grow, as misses charts do. */
export const UNEVEN: readonly Girths[] = [
  ['0', 24.5, 34.5],
  ['2', 25.25, 35.25],
  ['4', 26, 36],
  ['6', 27, 37],
  ['8', 28, 38],
  ['10', 29, 39],
  ['12', 30.5, 40.5],
  ['14', 32, 42],
  ['16', 33.75, 43.5],
  ['18', 35.75, 45.25],
  ['20', 38, 47],
  ['22', 40.5, 49],
].map(([label, waist, hip]) => ({
  label: String(label),
  waist: Number(waist),
  hip: Number(hip),
}));

/** `count` sizes with the same step in inches from each to the next. */
export function even(count: number, step: number, labelOf: (i: number) => string): Girths[] {
  return Array.from({ length: count }, (_, i) => ({
    label: labelOf(i),
    waist: 26 + i * step,
    hip: 36 + i * step,
  }));
}

export interface Options {
  readonly title?: string;
  readonly base?: string;
  readonly stackPoint?: string;
  /** Inches from the waist to the hem of the smallest size. */
  readonly length?: number;
  /** Inches added to the length a size. */
  readonly lengthStep?: number;
}

export function drawingOf(girths: readonly Girths[], options: Options = {}): NestDrawing {
  const {
    title = 'Pencil skirt',
    base,
    stackPoint = 'center_waist',
    length = 27,
    lengthStep = 0,
  } = options;
  return {
    title,
    baseSize: base ?? girths[Math.floor(girths.length / 2)]?.label ?? '',
    stackPoint,
    display: { unit: 'in', fractions: true },
    sizes: girths.map((size, i) => ({
      label: size.label,
      pieces: drafted(size, length + i * lengthStep, stackPoint),
    })),
  };
}

/** Front and back as the engine drafts them, with the stack point at zero. */
function drafted(
  { label, waist, hip }: Girths,
  length: number,
  stackPoint: string,
): readonly Piece[] {
  const body: Readonly<Record<string, number>> = {
    waist_girth: waist * INCH,
    hip_girth: hip * INCH,
    waist_to_hip: 8 * INCH,
    skirt_length: length * INCH,
  };
  const measured = PENCIL.measurements.map((name) => body[name] ?? NaN);
  return PENCIL.draft(measured, label).pieces.map((piece) => {
    const zero = pointOf(piece, stackPoint);
    return { ...piece, points: piece.points.map((p) => subtract(p, zero)) };
  });
}
