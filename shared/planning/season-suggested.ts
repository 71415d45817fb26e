/** How much of what to put by for the winter: what was eaten of it last winter, as the larder's book has it. Where nothing was written down nothing is suggested. */
import { addDays, dayNumber, yearOf, type LocalDate } from "../kernel/local-date.ts";
import { dayWords } from "../kernel/words.ts";
import { bothAmounts, type LarderFacts } from "./larder-facts.ts";
import { portionsInStore } from "./larder-lots.ts";

export interface SuggestedTarget {
  readonly recipeId: string;
  readonly title: string;
  readonly portions: number;
  readonly by: LocalDate;
  readonly eatenPortions: number;
  readonly inLarderPortions: number;
  readonly text: string;
}

/** Winter: from 1 October to 30 April, from which on the garden gives again; half a year later in the south. Common practice, no source. */
const WINTER = { north: { from: "10-01", to: "04-30", storesFullBy: "11-01" }, south: { from: "04-01", to: "10-31", storesFullBy: "05-01" } } as const;

/** Most eaten first. `titles`: of the recipes that are still there. */
export function suggestedTargets(larder: LarderFacts, southern: boolean, titles: ReadonlyMap<string, string>): SuggestedTarget[] {
  const { from, to } = lastWinter(larder.today, southern);
  const by = storesFullBy(larder.today, southern);
  const store = portionsInStore(larder);
  const eaten = new Map<string, { portions: number; lastOn: LocalDate }>();
  for (const lot of larder.lots) {
    if (lot.recipe === null || !titles.has(lot.recipe.id)) continue;
    for (const entry of lot.entries) {
      if (entry.kind !== "take" || entry.takenFor === "trim" || entry.on < from || entry.on > to) continue;
      const portions = bothAmounts(lot, entry.amount).portions ?? 0;
      const before = eaten.get(lot.recipe.id);
      eaten.set(lot.recipe.id, { portions: (before?.portions ?? 0) + portions, lastOn: before && before.lastOn > entry.on ? before.lastOn : entry.on });
    }
  }
  return [...eaten]
    .filter(([, { portions }]) => portions > 0)
    .map(([recipeId, { portions, lastOn }]): SuggestedTarget => {
      const inLarderPortions = store.get(recipeId) ?? 0;
      const title = titles.get(recipeId) as string;
      return { recipeId, title, portions, by, eatenPortions: portions, inLarderPortions, text: `${portions} ${portions === 1 ? "portion" : "portions"} of ${title} ${portions === 1 ? "was" : "were"} eaten last winter, the last on ${dayWords(lastOn, yearOf(larder.today))}.` };
    })
    .sort((a, b) => b.portions - a.portions || (a.title < b.title ? -1 : 1));
}

/** The newest winter that is over. */
function lastWinter(today: LocalDate, southern: boolean): { from: LocalDate; to: LocalDate } {
  const { from, to } = WINTER[southern ? "south" : "north"];
  const year = yearOf(today);
  const endsIn = `${year}-${to}` < today ? year : year - 1;
  const begins = from > to ? endsIn - 1 : endsIn;
  return { from: `${begins}-${from}`, to: `${endsIn}-${to}` };
}

/** The next day on which stores are full, a month away at least. */
function storesFullBy(today: LocalDate, southern: boolean): LocalDate {
  const { storesFullBy: day } = WINTER[southern ? "south" : "north"];
  const soonest = addDays(today, 28);
  const year = yearOf(soonest);
  return dayNumber(`${year}-${day}`) >= dayNumber(soonest) ? `${year}-${day}` : `${year + 1}-${day}`;
}
