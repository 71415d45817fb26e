/** The heat of an oven as the household reads it on its own dial. Pure but for the household's units. */
import { degrees } from "../format.ts";
import { inPounds, units } from "../units.ts";

const NB = "\u00a0";
/** From gas mark 1 up a mark is 25 °F, and mark 1 is 275 °F: the table printed on British cookers, as in common reference works. */
const GAS_BASE_F = 250;
const GAS_STEP_F = 25;
const GAS_MARKS = 9;
/** US dials are marked, and baking recipes written, in steps of 25 °F; from 200 °F on the nearest is the pair that NIST's oven words give. Drying stays closer. */
const DIAL_STEP_F = 25;
const DRYING_STEP_F = 5;
const DIAL_FROM_F = 187;

/** 190 °C; 375 °F in a US kitchen; 375 °F (gas 5) in an imperial one. */
export function ovenHeat(celsius: number): string {
  if (!inPounds()) return degrees(celsius);
  const f = celsius * 1.8 + 32;
  const step = f < DIAL_FROM_F ? DRYING_STEP_F : DIAL_STEP_F;
  const heat = `${Math.round(f / step) * step}${NB}°F`;
  const mark = Math.round((f - GAS_BASE_F) / GAS_STEP_F);
  return units.value === "imperial" && mark >= 1 && mark <= GAS_MARKS ? `${heat} (gas${NB}${mark})` : heat;
}
