/** Exact fractions of whole numbers, for coefficients that people read as 1/4 or 2/3. */

/**
 * `top/bottom` in lowest terms, `bottom` positive. A number that is no fraction of whole numbers
 * below 2^53, such as a square root, stands as it is in `top`, over 1.
 */
export interface Fraction {
  readonly top: number;
  readonly bottom: number;
}

/** The fraction in lowest terms, or the quotient as a decimal where either is not whole. */
export function fraction(top: number, bottom = 1): Fraction {
  if (!Number.isSafeInteger(top) || !Number.isSafeInteger(bottom) || bottom === 0)
    return { top: top / bottom, bottom: 1 };
  const shared = greatestDivisor(Math.abs(top), Math.abs(bottom)) * Math.sign(bottom);
  // Adding zero turns a negative zero into a plain one.
  return { top: top / shared + 0, bottom: bottom / shared };
}

/** 0/1, where a sum begins. */
export const ZERO = fraction(0);

/** 1/1, where a product begins. */
export const ONE = fraction(1);

/** The number as typed: 25.4 is 127/5, though no double is exactly that. */
export function fractionOf(typed: number): Fraction {
  if (Number.isInteger(typed)) return fraction(typed);
  const [, whole = '', decimals = ''] = /^(-?\d+)\.(\d+)$/.exec(String(typed)) ?? [];
  return decimals === ''
    ? fraction(typed)
    : exactOr(Number(whole + decimals), 10 ** decimals.length, typed);
}

/** The quotient as the nearest double. */
export function quotient({ top, bottom }: Fraction): number {
  return top / bottom;
}

/** The exact sum, as a decimal over 1 where its parts grow beyond 2^53. */
export function plus(a: Fraction, b: Fraction): Fraction {
  return exactOr(
    a.top * b.bottom + b.top * a.bottom,
    a.bottom * b.bottom,
    quotient(a) + quotient(b),
  );
}

/** The exact product, as a decimal over 1 where its parts grow beyond 2^53. */
export function times(a: Fraction, b: Fraction): Fraction {
  return exactOr(a.top * b.top, a.bottom * b.bottom, quotient(a) * quotient(b));
}

/** `a` divided by `b`; as infinite as the plain quotient where `b` is zero. */
export function over(a: Fraction, b: Fraction): Fraction {
  return exactOr(a.top * b.bottom, a.bottom * b.top, quotient(a) / quotient(b));
}

/** `a` to a power that is a whole number, zero or more. */
export function power(a: Fraction, exponent: number): Fraction {
  return exactOr(a.top ** exponent, a.bottom ** exponent, quotient(a) ** exponent);
}

/** The fraction where both parts are whole and small enough to be exact, otherwise the decimal. */
function exactOr(top: number, bottom: number, decimal: number): Fraction {
  const exact = Number.isSafeInteger(top) && Number.isSafeInteger(bottom) && bottom !== 0;
  return exact ? fraction(top, bottom) : fraction(decimal);
}

function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}
