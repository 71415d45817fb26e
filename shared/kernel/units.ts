/**
 * Exact conversion between units of one kind. Definitions are rows of seed-data/measures/units.json, which carry their sources
 * (UCUM 2.1, SI Brochure); nothing is defined here.
 */
import { dividedBy, rationalOf, times } from "./quantity.ts";
import type { Rational } from "./quantity.ts";

export type UnitKind = "volume" | "mass" | "length";
/** Whose cup, spoon and pint: they differ by up to a third. `label` is the 240 ml cup of United States food labels. */
export const MEASURE_SYSTEMS = ["us", "imperial", "metric", "australian", "label"] as const;
export type MeasureSystem = (typeof MEASURE_SYSTEMS)[number];

export interface UnitDefinition {
  readonly unit: string;
  readonly system: MeasureSystem | "any";
  readonly kind: UnitKind;
  /** Millilitres, grams or millimetres in one, as an exact decimal. */
  readonly factor: string;
}

/** In millilitres, grams or millimetres. */
export function inBase(amount: Rational, unit: UnitDefinition): Rational {
  return times(amount, rationalOf(unit.factor));
}

/** Throws RangeError when the kinds differ: a volume is a weight only for a food. */
export function converted(amount: Rational, from: UnitDefinition, to: UnitDefinition): Rational {
  if (from.kind !== to.kind) throw new RangeError(`${from.unit} is a ${from.kind}, ${to.unit} a ${to.kind}`);
  return dividedBy(inBase(amount, from), rationalOf(to.factor));
}

/** (°F − 32) × 5/9. A difference of temperatures has no 32 in it: use `celsiusDifference`. */
export const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;
export const fahrenheit = (celsiusDegrees: number): number => (celsiusDegrees * 9) / 5 + 32;
export const celsiusDifference = (fahrenheitDegrees: number): number => (fahrenheitDegrees * 5) / 9;
