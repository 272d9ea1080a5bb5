/** Skirts to draw: the quarter method with round numbers, in as many sizes as a test wants. */
import type { Piece, PiecePlan } from '../../src/pattern/piece';
import { piecePlan } from '../../src/pattern/piece';
import type { NestDrawing } from '../../src/render/nest-drawing';

const INCH = 25.4;

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
      pieces: (['front', 'back'] as const).map((panel) =>
        quarter(panel, size, length + i * lengthStep, stackPoint),
      ),
    })),
  };
}

/** A quarter of the skirt with its stack point at zero. */
export function quarter(
  panel: 'front' | 'back',
  { waist, hip }: Girths,
  skirtLength: number,
  stackPoint: string,
): Piece {
  const sideWaist = waist / 4 + 1;
  const sideHip = hip / 4 + 0.5;
  const take = sideHip - sideWaist;
  const dart = sideWaist / 2;
  const places: Record<string, readonly [number, number]> = {
    center_waist: [0, 0],
    dart_inner: [dart - 0.5, 0],
    dart_tip: [dart, panel === 'front' ? 4 : 5],
    dart_outer: [dart + 0.5, 0],
    dart_center: [dart, 0],
    side_waist: [sideWaist, 0],
    side_waist_handle: [sideWaist + (2 / 3) * take, 8 / 3],
    side_hip_handle: [sideHip, 16 / 3],
    side_hip: [sideHip, 8],
    side_hem: [sideHip - 1, skirtLength],
    center_hem: [0, skirtLength],
    center_hip: [0, 8],
    ...(panel === 'back' ? { zip_waist: [-1, 0], zip_hem: [-1, skirtLength] } : {}),
  };
  const [zeroX, zeroY] = places[stackPoint] ?? [0, 0];
  return {
    plan: quarterPlan(panel, Object.keys(places)),
    points: Object.values(places).map(([x, y]) => ({
      x: (x - zeroX) * INCH,
      y: (y - zeroY) * INCH,
    })),
  };
}

function quarterPlan(panel: 'front' | 'back', pointNames: readonly string[]): PiecePlan {
  const center = { from: 'center_hem', to: 'center_waist', seam: `center_${panel}` };
  return piecePlan({
    name: panel,
    part: 'panel',
    cuttings: [{ cloth: 'shell', count: panel === 'front' ? 1 : 2, onFold: panel === 'front' }],
    pointNames,
    handles: new Set(['side_waist_handle', 'side_hip_handle']),
    outline: [
      { kind: 'line', from: 'center_waist', to: 'dart_inner', seam: 'waist' },
      {
        kind: 'dart',
        name: 'dart',
        from: 'dart_inner',
        tip: 'dart_tip',
        to: 'dart_outer',
        seam: 'waist',
      },
      { kind: 'line', from: 'dart_outer', to: 'side_waist', seam: 'waist' },
      {
        kind: 'cubic',
        from: 'side_waist',
        leave: 'side_waist_handle',
        arrive: 'side_hip_handle',
        to: 'side_hip',
        seam: 'side',
      },
      { kind: 'line', from: 'side_hip', to: 'side_hem', seam: 'side' },
      { kind: 'line', from: 'side_hem', to: 'center_hem', seam: 'hem' },
      panel === 'front' ? { kind: 'fold', ...center } : { kind: 'line', ...center },
    ],
    marks: [
      { name: 'hip-line', through: ['center_hip', 'side_hip'] },
      ...(panel === 'back'
        ? [
            {
              name: 'zip-allowance' as const,
              through: ['center_waist', 'zip_waist', 'zip_hem', 'center_hem'],
            },
          ]
        : []),
    ],
  });
}
