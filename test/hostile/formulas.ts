/** Formulas that are right by their grammar and their dimension, whatever comes out of them. */
import type { Random } from './random';

const LENGTHS = [
  '2 in',
  '0 in',
  '3 cm',
  '25 mm',
  '0.0001 in',
  '24 in',
  '1/16 in',
  '2',
  '900000 mm',
];
const NAMES = [
  'waist_girth',
  'hip_girth',
  'waist_to_hip',
  'waist_to_knee',
  'hip_ease',
  'waist_ease',
];
const NUMBERS = ['1', '2', '0.5', '0', '-1', '1/3', '1000000', '0.000001', '4'];

/** A length: terms within terms, up to so many levels. */
export function length(random: Random, levels: number): string {
  if (levels <= 0) return random.onceIn(3) ? random.of(LENGTHS) : `${random.of(NAMES)}`;
  const a = (): string => length(random, levels - 1 - random.below(3));
  const n = (): string => number(random, levels - 1 - random.below(3));
  switch (random.below(9)) {
    case 0:
      return `(${a()} + ${a()})`;
    case 1:
      return `(${a()} - ${a()})`;
    case 2:
      return `${a()} * (${n()})`;
    case 3:
      return `${a()} / (${n()})`;
    case 4:
      return `min(${a()}, ${a()})`;
    case 5:
      return `max(${a()}, ${a()})`;
    case 6:
      return `abs(${a()})`;
    case 7:
      return `sqrt(${a()} * ${a()})`;
    default:
      return a();
  }
}

function number(random: Random, levels: number): string {
  if (levels <= 0) return random.of(NUMBERS);
  const n = (): string => number(random, levels - 1 - random.below(3));
  switch (random.below(6)) {
    case 0:
      return `${length(random, levels - 1)} / (${length(random, levels - 1)})`;
    case 1:
      return `(${n()}) ^ (${n()})`;
    case 2:
      return `${random.of(['sin', 'cos', 'tan', 'atan', 'sqrt', 'abs'])}(${n()})`;
    case 3:
      return `(${n()} - ${n()})`;
    default:
      return n();
  }
}
