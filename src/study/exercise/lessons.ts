/** What each difficulty of an exercise practices, and how it differs from the plain one. */
import type { Growth } from './exercise-chart';

/** One kind of exercise on the front of the quarter method. */
export interface Lesson {
  /** In words for the student, such as `a quarter of each girth's step`. */
  readonly practices: string;
  /** How the girths of its chart grow. */
  readonly growth: Growth;
  /** The points that are asked for; all corners if absent. */
  readonly points?: readonly string[];
  /** Parameters of the style as formulas. */
  readonly set?: Readonly<Record<string, string>>;
  /** The zero that the sheet states and counts from; the center of the waist if absent. */
  readonly zero?: string;
  /** True where the sheet states that y runs up. */
  readonly up?: boolean;
  /** True where numbers are to be rounded to the ruler, which the plain ones fall on. */
  readonly rounded?: boolean;
  /** True where the sheet is filled in, with one slip to be found. */
  readonly slip?: boolean;
}

/** By difficulty, easier ones first. */
export const LESSONS = {
  even: { practices: 'a quarter of the step of each girth', growth: 'even' },
  darts: {
    practices: 'half of what the side moves by at a dart, legs and tip alike',
    growth: 'even',
    points: ['center_waist', 'dart_inner', 'dart_tip', 'dart_outer', 'side_waist'],
  },
  break: { practices: 'a size break, at one size for both girths', growth: 'break' },
  apart: { practices: 'size breaks of waist and hip at different sizes', growth: 'apart' },
  drop: { practices: 'waist and hip that grow by different steps', growth: 'drop' },
  rounding: {
    practices: 'steps that are off the ruler: add them up exactly, and round each sum once',
    growth: 'off-grid',
    rounded: true,
  },
  turned: {
    practices: 'another zero, the side at the hip line, and y that runs up',
    growth: 'apart',
    zero: 'side_hip',
    up: true,
  },
  shares: {
    practices: 'a dart that takes an eighth of the drop in each size, not one width in all',
    growth: 'drop',
    set: { front_dart_intake: '(hip_girth - waist_girth) / 8' },
  },
  slip: {
    practices: 'finding the one row of a finished sheet that has a slip, and putting it right',
    growth: 'apart',
    slip: true,
  },
} as const satisfies Readonly<Record<string, Lesson>>;

/** How hard an exercise is: see `LESSONS`. */
export type Difficulty = keyof typeof LESSONS;

/** The difficulties, easier ones first. */
export const DIFFICULTIES = Object.keys(LESSONS) as readonly Difficulty[];
