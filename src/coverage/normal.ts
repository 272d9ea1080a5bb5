/** The normal distribution, and the integral of a bivariate one over what is told apart by waist and hip. */

/**
 * The share of a standard normal below `z`: by its series near the middle (Abramowitz and Stegun 26.2.10)
 * and by its continued fraction in the tails (26.2.14), within 1e-14.
 */
export function normalBelow(z: number): number {
  if (Number.isNaN(z)) return NaN;
  if (z > 0) return 1 - normalBelow(-z);
  const density = normalDensity(z);
  if (z < -SERIES_TO) {
    let fraction = -z;
    for (let k = FRACTION_TERMS; k >= 1; k--) fraction = -z + k / fraction;
    return density / fraction;
  }
  let [term, sum] = [z, z];
  for (let k = 1; Math.abs(term) > Math.abs(sum) * Number.EPSILON; k++) {
    term *= -(z * z) / (2 * k);
    sum += term / (2 * k + 1);
    if (k > SERIES_TERMS) break;
  }
  return 0.5 + sum / Math.sqrt(2 * Math.PI);
}

/** Where the fraction is as good as the series; no tolerance. */
const SERIES_TO = 4;
const FRACTION_TERMS = 60;
const SERIES_TERMS = 200;

/** The density of a standard normal. */
export function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/** Nodes and weights of Gauss and Legendre on -1 to 1, by Newton's method from Tricomi's start. */
export function gaussLegendre(count: number): readonly (readonly [node: number, weight: number])[] {
  return Array.from({ length: count }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < NEWTON_STEPS; step++) {
      let [before, value] = [1, x];
      for (let k = 2; k <= count; k++)
        [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
      slope = (count * (x * value - before)) / (x * x - 1);
      x -= value / slope;
    }
    return [x, 2 / ((1 - x * x) * slope * slope)] as const;
  });
}

const NEWTON_STEPS = 8;
