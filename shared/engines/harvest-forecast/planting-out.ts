/** The day a transplant goes out when nobody has said so. */
import type { DayNumber } from "../../kernel/local-date.ts";
import type { CropFacts } from "../../kernel/crop-facts.ts";
import { monthStart, seasonOf } from "./calendar-days.ts";
import { dayBandOf } from "./frost-dates.ts";
import type { CoveredWeather } from "./thermal-time.ts";

/** Days from sowing to planting out (common practice): quick growers, most others, and those raised slowly in warmth. */
const QUICK_DAYS = 25;
const USUAL_DAYS = 35;
const SLOW_DAYS = 55;
const SLOW_FAMILIES = new Set(["Solanaceae", "Apiaceae", "Amaryllidaceae"]);

export function raisingDays(crop: CropFacts): number {
  if (crop.daysToMaturity?.from === "sowing") return QUICK_DAYS;
  return SLOW_FAMILIES.has(crop.family) ? SLOW_DAYS : USUAL_DAYS;
}

/** Sowing day + raising days; a tender crop waits until nine years in ten have had their last killing night of spring, under its cover. */
export function likelyPlantingOut(sownOn: DayNumber, crop: CropFacts, weather: CoveredWeather, firstDay: DayNumber, southern: boolean): DayNumber {
  const raised = sownOn + raisingDays(crop);
  if (!crop.tender || crop.killC === null) return raised;
  const midsummer = monthStart(seasonOf(raised, southern), 7, southern);
  if (raised >= midsummer) return raised;
  const lastNights = weather.years.flatMap(({ tminC }) => {
    for (let day = midsummer - 1; day >= sownOn; day--) if ((tminC[day - firstDay] ?? NaN) <= (crop.killC as number)) return [day];
    return [];
  });
  // years without such a night count as safe from the sowing on
  const safe = [...lastNights, ...Array.from({ length: weather.years.length - lastNights.length }, () => sownOn)];
  return Math.max(raised, (dayBandOf(safe)?.high ?? raised) + 1);
}
