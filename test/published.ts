/** Published grades that several tests grade by, with their sources. */
import { chartText } from './skirts';

/**
 * Waist and hip by 1 in and the length by 1/4 in a size: motley-muse.com, skirt grading. A quarter of a
 * girth step goes to each panel (Threads no. 101, fashion-incubator.com), half of that to the dart (common
 * practice, no source).
 */
export const EVEN_SIZES: readonly string[] = ['10', '12', '14', '16'];
/** In inches, in a chart of these sizes. */
export const EVEN_CHART = chartText(
  'in',
  {
    waist_girth: [26, 27, 28, 29],
    hip_girth: [36, 37, 38, 39],
    skirt_length: [25, 25.25, 25.5, 25.75],
  },
  EVEN_SIZES,
);

/** US pattern-industry misses sizing, in inches: sewingscholar.blogspot.com (2011-02). */
export const MISSES = {
  waist_girth: [23, 24, 25, 26.5, 28, 30, 32, 34],
  hip_girth: [32.5, 33.5, 34.5, 36, 38, 40, 42, 44],
};
/** Moves in sixteenths of an inch from size 12, each size its side at the waist, its dart, its side at the hip. */
export const MISSES_GRADE = [
  ['6', -14, -7, -14],
  ['8', -10, -5, -10],
  ['10', -6, -3, -6],
  ['12', 0, 0, 0],
  ['14', 6, 3, 8],
  ['16', 14, 7, 16],
  ['18', 22, 11, 24],
  ['20', 30, 15, 32],
] as const;
/** The sizes of that chart. */
export const MISSES_SIZES: readonly string[] = MISSES_GRADE.map(([size]) => size);
/** That chart. */
export const MISSES_CHART = chartText('in', MISSES, MISSES_SIZES);
