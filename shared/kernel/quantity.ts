/** Amounts as fractions, so that a third of a cup stays a third. Whole numbers over whole numbers, the sign in the upper one. */
import Fraction from "fraction.js";

export interface Rational {
  readonly n: number;
  readonly d: number;
}

/** In lowest terms. Throws RangeError for a zero below the line. */
export function rational(n: number, d = 1): Rational {
  if (d === 0) throw new RangeError("a fraction with zero below the line");
  return plain(new Fraction(n, d));
}

/** A decimal text such as 236.5882365, exactly. */
export function rationalOf(decimal: string): Rational {
  return plain(new Fraction(decimal));
}

export const plus = (a: Rational, b: Rational): Rational => plain(fraction(a).add(fraction(b)));
export const minus = (a: Rational, b: Rational): Rational => plain(fraction(a).sub(fraction(b)));
export const times = (a: Rational, b: Rational): Rational => plain(fraction(a).mul(fraction(b)));
export const dividedBy = (a: Rational, b: Rational): Rational => plain(fraction(a).div(fraction(b)));
export const asNumber = (a: Rational): number => a.n / a.d;

/** To the nearest multiple of a step, halves upwards. */
export function roundedTo(a: Rational, step: Rational): Rational {
  return plain(fraction(a).div(fraction(step)).add(1, 2).floor().mul(fraction(step)));
}

const fraction = (a: Rational): Fraction => new Fraction(a.n, a.d);

/** Above 2^53 the whole numbers of a double have gaps; a kitchen that gets there has mistyped. */
function plain(f: Fraction): Rational {
  const n = Number(f.s * f.n);
  const d = Number(f.d);
  if (!Number.isSafeInteger(n) || !Number.isSafeInteger(d)) return { n: f.valueOf(), d: 1 };
  return { n, d };
}
