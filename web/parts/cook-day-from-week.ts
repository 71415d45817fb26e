/** A cook day made of a week: what is planned for it, or where nothing is, the first ways the calendar suggests. */
import type { CalendarWeek } from "#shared/contracts/calendar.ts";
import type { NewCookDay } from "#shared/contracts/cook-days.ts";
import type { Household } from "#shared/contracts/household.ts";
import { weekEnd, weekStart } from "#shared/kernel/iso-week.ts";
import { addDays, type LocalDate } from "#shared/kernel/local-date.ts";
import type { Way } from "#shared/kernel/way.ts";
import { weekName } from "../format.ts";

const STARTS_AT = "09:00";
const SUGGESTED = 3;
const MOST_BATCHES = 20;

interface Dish {
  readonly recipeId: string;
  readonly batches: number;
}

export interface DishesOfWeek {
  readonly dishes: readonly Dish[];
  readonly from: "plan" | "season" | "suggestions" | "nothing";
}

/** Ways that are done at the stove or the table, and so belong on a cook day unasked. */
const COOKED: ReadonlySet<Way> = new Set(["cook", "freeze", "bottle", "dry", "pickle", "ferment"]);

/** `hasSteps` says which recipes have any: what has none makes no cook day. Before that is known everything is taken to have some. */
export function dishesOfWeek(week: CalendarWeek, hasSteps: (recipeId: string) => boolean = () => true): DishesOfWeek {
  const planned = together(week.planned.filter((line) => hasSteps(line.recipeId)));
  if (planned.length > 0) return { dishes: planned, from: "plan" };
  const bySeason = together(week.cookDay.filter((dish) => hasSteps(dish.recipeId)));
  if (bySeason.length > 0) return { dishes: bySeason, from: "season" };
  const suggested = together(week.pairings.filter(({ way, recipeId }) => COOKED.has(way) && hasSteps(recipeId))).slice(0, SUGGESTED);
  return { dishes: suggested, from: suggested.length > 0 ? "suggestions" : "nothing" };
}

/** Saturday at nine; on the Sunday of the running week, that day. */
export function cookDayOf(week: CalendarWeek, dishes: readonly Dish[], household: Household, today: LocalDate): NewCookDay {
  const saturday = addDays(weekStart(week.week), 5);
  return {
    on: saturday < today && weekEnd(week.week) >= today ? today : saturday,
    startsAt: STARTS_AT,
    cooks: household.cooks,
    kitchen: household.kitchen,
    dishes: dishes.map(({ recipeId, batches }) => ({ recipeId, batches })),
  };
}

/** What the button will do, said before it is pressed. */
export function cookDayWords({ dishes, from }: DishesOfWeek, week: string): string {
  if (from === "plan") return `Takes what is planned for ${weekName(week)}.`;
  if (from === "season") return `Takes what the season’s plan has for ${weekName(week)}.`;
  if (from === "nothing") return "Nothing to cook is planned or suggested for this week.";
  const first = dishes.length === 1 ? "the first way that is cooked goes" : `the first ${dishes.length === 2 ? "two" : "three"} ways that are cooked go`;
  return `Nothing is planned for ${weekName(week)} yet, so ${first} in.`;
}

function together(lines: readonly Dish[]): Dish[] {
  const batches = new Map<string, number>();
  for (const line of lines) batches.set(line.recipeId, (batches.get(line.recipeId) ?? 0) + line.batches);
  return [...batches].map(([recipeId, n]) => ({ recipeId, batches: Math.min(MOST_BATCHES, n) }));
}
