/** How the sizes are told apart: by color and by dash, so that either alone is enough. */
import type { Stroke } from './scene';

/** Near black: words, furniture and the base size. */
export const INK = '#141a22';
/** For helping lines that must not compete with the pattern. */
export const SOFT_INK = '#5a6472';

/**
 * Blue, vermilion, green and purple, all dark enough to read on white. They were chosen to stay
 * apart under simulated red, green and blue blindness, and they differ in lightness too.
 */
const COLORS: readonly string[] = ['#0f73c4', '#c2400a', '#006b5b', '#5c1f6e'];

/** Ink and gap in mm: long dash, dots, dash-dot, short dash, dash-dot-dot. Solid is the base. */
const DASHES: readonly (readonly number[])[] = [
  [16, 3],
  [1.5, 2],
  [12, 2.5, 1.5, 2.5],
  [5, 2.5],
  [12, 2, 1.5, 2, 1.5, 2],
];

/** Sizes that dashes alone tell apart. */
export const DASH_COUNT = DASHES.length;

/**
 * In a nest the sewing line of one size may lie on the cut line of another. So it is an unbroken
 * hairline: the dashes of the cut line stay what they are, and in their gaps it is seen to run on.
 */
const NESTED_SEWING = { width: 0.15 };
const ALONE_SEWING = { width: 0.35, dash: [3, 2] };

const SIZE_WIDTH = 0.5;
const BASE_WIDTH = 0.8;

/** Everything that depends on a size's rank in the range and on whether it is the base. */
export interface SizeStyle {
  /** The cut line, or the net line where that is drawn alone. */
  readonly outline: Stroke;
  /** The sewing line beside the cut line. */
  readonly sewing: Stroke;
  readonly base: boolean;
}

/**
 * The style of the size at `rank`, counted from 0. Four colors against five dashes: neighbors
 * differ in both, and no pair of them comes back before rank 20. The base is solid ink.
 */
export function sizeStyle(rank: number, base: boolean): SizeStyle {
  const color = base ? INK : (COLORS[rank % COLORS.length] ?? INK);
  const sewing = { ...NESTED_SEWING, color };
  if (base) return { base, outline: { color, width: BASE_WIDTH }, sewing };
  const dash = DASHES[rank % DASHES.length] ?? [];
  return { base, outline: { color, width: SIZE_WIDTH, dash }, sewing };
}

/** The same size on a sheet of its own: nothing to tell it from, so the line is unbroken. */
export function aloneStyle({ outline: { color }, base }: SizeStyle): SizeStyle {
  return {
    base,
    outline: { color, width: BASE_WIDTH },
    sewing: { ...ALONE_SEWING, color },
  };
}

/** A line as a key shows it: what it is, and how it is drawn. */
export interface KeyEntry {
  readonly words: string;
  readonly stroke: Stroke;
  readonly base: boolean;
}

/** The lines of sizes for a key, smallest first, and last the sewing line where it is drawn too. */
export function keyEntries(
  sizes: readonly { readonly label: string; readonly style: SizeStyle }[],
  hasSewing: boolean,
): readonly KeyEntry[] {
  const sewn = sizes.find(({ style }) => style.base) ?? sizes[0];
  return [
    ...sizes.map(({ label, style: { base, outline } }) => ({
      words: base && sizes.length > 1 ? `${label}, base` : label,
      stroke: outline,
      base,
    })),
    ...(hasSewing && sewn !== undefined
      ? [{ words: 'sewing line', stroke: sewn.style.sewing, base: false }]
      : []),
  ];
}
