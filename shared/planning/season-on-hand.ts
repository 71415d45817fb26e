/** Produce that is there already, entered in the week from which it would keep just as long as it still does. Grams as picked. */
import { keepWeeksOf } from "../engines/glut/index.ts";
import { waitsForTheGrower } from "../kernel/crop-facts.ts";
import { weekOf, weekStart, type IsoWeek } from "../kernel/iso-week.ts";
import { dayNumber, type LocalDate } from "../kernel/local-date.ts";
import type { GardenReckoning } from "./garden-reckoning.ts";
import type { LotToday } from "./larder-facts.ts";
import { endsOn } from "./larder-lots.ts";
import type { SeasonWeeks } from "./season-weeks.ts";

/** By crop, then by week of the season. */
export type OnHand = ReadonlyMap<string, readonly number[]>;

export function onHand(lots: readonly LotToday[], { crops, span }: GardenReckoning, weeks: SeasonWeeks, today: LocalDate): OnHand {
  const entered = new Map<string, number[]>();
  const enter = (crop: string, t: number, grams: number): void => {
    const row = entered.get(crop) ?? weeks.weeks.map(() => 0);
    row[t] = (row[t] ?? 0) + grams;
    entered.set(crop, row);
  };
  const keeps = new Map(crops.map(({ crop }) => [crop.slug, keepWeeksOf(crop, waitsForTheGrower(crop))]));
  const monday = dayNumber(weekStart(weeks.weeks[0] as IsoWeek));
  for (const one of lots) {
    const { crop } = one.lot;
    // what is frozen or dried as it was picked is food in store, not produce to be used
    if (crop === null || one.discard || one.balance.left <= 0 || one.place.kind === "freezer") continue;
    const last = Math.max(weeks.running, Math.floor((dayNumber(endsOn(one)) - monday) / 7));
    enter(crop, Math.min(weeks.running, Math.max(0, last - (keeps.get(crop) ?? 1) + 1)), one.balance.left);
  }
  const thisWeek = weekOf(today);
  for (const { crop, pickedGrams } of crops) {
    const put = lots.filter(({ lot }) => lot.crop === crop.slug && weekOf(lot.madeOn) === thisWeek).reduce((sum, { lot }) => sum + lot.entries.reduce((all, entry) => all + (entry.kind === "put" ? entry.amount : 0), 0), 0);
    const loose = (pickedGrams[span.current] ?? 0) - put;
    if (loose > 0) enter(crop.slug, weeks.running, loose);
  }
  return entered;
}
