/** The heat of an oven as a household reads it on its own dial. Pure. */
import type { Household } from "#shared/contracts/household.ts";
import { degrees } from "../format.ts";

export type Units = Household["units"];

const NB = "\u00a0";
/** From gas mark 1 up a mark is 25 °F, and mark 1 is 275 °F: the table printed on British cookers, as in common reference works. */
const GAS_BASE_F = 250;
const GAS_STEP_F = 25;
const GAS_MARKS = 9;

/** US dials are marked, and baking recipes written, in steps of 25 °F; from 200 °F on the nearest is the pair that NIST's oven words give. Drying stays closer. */
const DIAL_STEP_F = 25;
const DRYING_STEP_F = 5;
const DIAL_FROM_F = 187;

/** 190 °C; 375 °F for a US kitchen; 190 °C (gas 5) for an imperial one. */
export function ovenHeat(celsius: number, units: Units): string {
  const f = celsius * 1.8 + 32;
  const step = f < DIAL_FROM_F ? DRYING_STEP_F : DIAL_STEP_F;
  if (units === "us") return `${Math.round(f / step) * step}${NB}°F`;
  const mark = Math.round((f - GAS_BASE_F) / GAS_STEP_F);
  return units === "imperial" && mark >= 1 && mark <= GAS_MARKS ? `${degrees(celsius)} (gas${NB}${mark})` : degrees(celsius);
}
