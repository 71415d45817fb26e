/** The requirement of a planting as a spread: the book's, moved by the climate's habit and by what the household's own sowings have shown. */
import type { Clock } from "./clock.ts";
import { CONTINENTAL_RANGE_C } from "./generated-weather.ts";
import { MONTH_SLOTS } from "./calendar-days.ts";
import { learnedFrom } from "./learned.ts";
import type { Learned } from "./learned.ts";
import { firstCut, widened } from "./spread.ts";
import { covered } from "./thermal-time.ts";
import type { ForecastQuestion, WeatherYears } from "./types.ts";

export interface Requirement {
  readonly likelyCd: number;
  readonly sigmaLn: number;
  /** What the household's own sowings moved it by; null where they did not. */
  readonly own: Learned | null;
  readonly notes: readonly string[];
}

/** Long-season crops of which growers by the sea choose early varieties: their book figure × 0.85 there (common practice). */
const EARLY_KINDS_BY_THE_SEA = new Set(["sweetcorn", "pumpkin", "butternut-squash", "leek"]);
const EARLY_KIND = 0.85;

export function requirementOf(q: ForecastQuestion, clock: Clock): Requirement {
  // a flower seen leaves only a wait behind it, which neither variety nor climate stretches
  if (clock.restsOn === "flowering" || clock.restsOn === "fruit-set") return { likelyCd: clock.likelyCd, sigmaLn: clock.sigmaLn, own: null, notes: [] };
  const { crop, varietyDays } = q.planting;
  const cut = firstCut(crop);
  const likelyCd = clock.likelyCd * cut.share;
  // the household's own sowings grew in its own garden, so their spread holds all of it
  const sigmaLn = Math.hypot(widened(clock, q.planting), cut.sigmaLn);
  const learned = learnedFrom(q.ownSowings ?? []);
  if (learned) return { likelyCd: likelyCd * Math.exp(learned.shiftLn), sigmaLn: learned.sigmaLn ?? sigmaLn, own: learned, notes: [] };
  if (EARLY_KINDS_BY_THE_SEA.has(crop.slug) && !varietyDays && isMaritime(q.weather)) {
    const note = "In a mild climate growers choose early varieties of this crop: the book's warmth is taken 15 % lower until you have your own sowings.";
    return { likelyCd: likelyCd * EARLY_KIND, sigmaLn, own: null, notes: [note] };
  }
  return { likelyCd, sigmaLn, own: null, notes: [] };
}

const MARITIME = new WeakMap<WeatherYears, boolean>();

/** July and January differ by 20 °C at most; false where the weather does not reach both. */
export function isMaritime(weather: WeatherYears): boolean {
  const known = MARITIME.get(weather);
  if (known !== undefined) return known;
  const { slot } = covered(weather, "open").calendar;
  const range = Math.abs(monthMeanC(weather, slot, 6) - monthMeanC(weather, slot, 0));
  MARITIME.set(weather, range <= CONTINENTAL_RANGE_C);
  return range <= CONTINENTAL_RANGE_C;
}

/** Mean of the days of a month (0 = January) over all scenario years; NaN without any. */
function monthMeanC(weather: WeatherYears, slot: Int16Array, month: number): number {
  let sum = 0;
  let n = 0;
  for (let d = 0; d < slot.length; d++) {
    const at = slot[d] as number;
    if (at < (MONTH_SLOTS[month] as number) || at >= (MONTH_SLOTS[month + 1] as number)) continue;
    for (const { tmaxC, tminC } of weather.years) {
      sum += ((tmaxC[d] as number) + (tminC[d] as number)) / 2;
      n++;
    }
  }
  return sum / n;
}
