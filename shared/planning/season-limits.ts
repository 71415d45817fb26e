/** What a season's plan may use: hands, oven, freezing, room, jars and the rest, week by week. What nobody has said is taken from common practice and told. */
import type { Resource } from "../engines/season-plan/index.ts";
import { freezingLoad } from "../engines/larder/index.ts";
import { listWords } from "../kernel/words.ts";
import type { LotToday } from "./larder-facts.ts";
import { placesToday } from "./larder-rooms.ts";
import { freezingPounds } from "./rule-figures.ts";
import type { SeasonFacts } from "./season-facts.ts";
import type { SeasonWeeks } from "./season-weeks.ts";

/** Common practice, no source: an evening and a half, a long day of one oven, two days on which one freezes, four portions a head cooked for this week. */
export const USUAL_KITCHEN_MIN = 240;
const OVEN_MIN = 600;
const FREEZING_DAYS = 2;
const MEAL_PORTIONS = 4;
/** Portions a head that a household eats out of its stores in a week, and of one dish; common practice, no source. */
const STORE_PORTIONS = 4;
const ONE_DISH_PORTIONS = 2;

export interface SeasonLimits {
  readonly resources: readonly Resource[];
  readonly eatFromStorePortions: readonly number[];
  readonly eatOneDishPortions: readonly number[];
  /** Litres of the freezer, all together; null where nobody has said. */
  readonly freezerLitres: number | null;
  /** Taken up by what stands there now. */
  readonly freezerUsed: number;
  readonly notes: readonly string[];
}

export function seasonLimits(facts: SeasonFacts, weeks: SeasonWeeks, lots: readonly LotToday[]): SeasonLimits {
  const { people } = facts.kitchen;
  const rooms = placesToday(facts.larder, lots);
  const room = (kind: string): { litres: number | null; used: number } => {
    const of = rooms.filter(({ place }) => place.kind === kind);
    return { litres: of.length === 0 || of.some(({ place }) => place.litres === null) ? null : of.reduce((sum, { place }) => sum + (place.litres as number), 0), used: of.reduce((sum, { usedLitres }) => sum + usedLitres, 0) };
  };
  const [freezer, fridge, cellar] = [room("freezer"), room("fridge"), room("cellar")];
  // a week that is past, or in which nobody is at home, has no hands
  const weekly = (amount: number): number[] => weeks.atHome.map((share, t) => (t < weeks.first ? 0 : Math.round(amount * share)));
  const always = (amount: number): number[] => weeks.weeks.map(() => amount);
  const { kitchenMinPerWeek, ovens } = facts.settings;
  const resources: Resource[] = [
    { id: "hands-on", kind: "weekly", unit: "min", amount: weekly(kitchenMinPerWeek ?? USUAL_KITCHEN_MIN) },
    { id: "oven", kind: "weekly", unit: "min", amount: weekly(ovens * OVEN_MIN) },
    { id: "meals", kind: "weekly", unit: "portions", amount: weekly(people * MEAL_PORTIONS) },
  ];
  if (freezer.litres !== null) {
    const load = freezingLoad(freezer.litres, freezingPounds(facts.larder.preservation)).high;
    resources.push({ id: "freezing", kind: "weekly", unit: "g", amount: weekly(load * FREEZING_DAYS) });
    resources.push({ id: "freezer", kind: "held", unit: "l", amount: always(freezer.litres) });
  }
  if (fridge.litres !== null) resources.push({ id: "fridge", kind: "held", unit: "l", amount: always(Math.max(0, fridge.litres - fridge.used)) });
  if (cellar.litres !== null) resources.push({ id: "cellar", kind: "held", unit: "l", amount: always(Math.max(0, cellar.litres - cellar.used)) });
  for (const { kind, unit } of COUNTED) {
    const there = facts.supplies.filter((supply) => supply.kind === kind);
    if (there.length === 0) continue;
    resources.push({ id: kind, kind: kind === "jar" ? "held" : "consumed", unit, amount: always(there.reduce((sum, supply) => sum + supply.amount, 0)) });
  }
  return {
    resources,
    eatFromStorePortions: weekly(people * STORE_PORTIONS),
    eatOneDishPortions: weekly(people * ONE_DISH_PORTIONS),
    freezerLitres: freezer.litres,
    freezerUsed: freezer.used,
    notes: notesOf(facts, freezer.litres),
  };
}

/** Jars come back when they are eaten empty, lids and bags do not. What is not in the book of supplies is not limited. */
const COUNTED = [
  { kind: "jar", unit: "jars" },
  { kind: "lid", unit: "lids" },
  { kind: "bag", unit: "bags" },
  { kind: "sugar", unit: "g" },
  { kind: "vinegar", unit: "ml" },
] as const;

function notesOf({ settings, supplies, larder }: SeasonFacts, freezerLitres: number | null): string[] {
  const notes: string[] = [];
  if (settings.kitchenMinPerWeek === null) notes.push("Nobody has said how many hours there are for cooking ahead, so the plan reckons with 4 h a week.");
  if (freezerLitres === null) notes.push(larder.places.some(({ kind }) => kind === "freezer") ? "Nobody has said how many litres the freezer has, so its room is not counted." : "No freezer is put down, so its room is not counted.");
  const unknown = COUNTED.filter(({ kind }) => !supplies.some((supply) => supply.kind === kind)).map(({ kind }) => (kind === "sugar" || kind === "vinegar" ? kind : `${kind}s`));
  if (unknown.length > 0) notes.push(`Nothing is put down of ${listWords(unknown)}, so the plan takes it that there is enough.`);
  return notes;
}
