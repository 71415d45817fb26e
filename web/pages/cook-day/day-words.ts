/** The sentences of a cook day. Pure. */
import type { CookDay, Timetable } from "#shared/contracts/cook-days.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { clock, count, day as dayName, length } from "../../format.ts";

/** Minutes after midnight of the start. */
export const startOf = (day: CookDay): number => Number(day.startsAt.slice(0, 2)) * 60 + Number(day.startsAt.slice(3));

/** "14:35", for minutes from the start of the day. */
export const clockAt = (day: CookDay, minutes: number): string => clock(startOf(day) + minutes);

const WEEKDAYS = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"];
export const weekdayOf = (date: string): string => WEEKDAYS[new Date(`${date}T12:00:00Z`).getUTCDay()] as string;

export function daySentence(day: CookDay, plan: Timetable, today: string): string {
  const when = `${weekdayOf(day.on)}, ${dayName(day.on, today)}`;
  if (day.dishes.length === 0) return `Nothing is chosen for ${when} yet. Put a dish in, and its timetable stands here.`;
  if (plan.status === "infeasible" || plan.endMin === null) return `These dishes cannot all be had on ${when} as it is set.`;
  const dishes = count(day.dishes.length, "dish is", "dishes are");
  return `Begin at ${day.startsAt} on ${when}, and ${dishes} put away by ${clockAt(day, plan.endMin)}. ${hands(day)} busy for ${length(plan.handsOnMin)} of it.`;
}

const hands = (day: CookDay): string => (day.cooks === 1 ? "Your hands are" : `${day.cooks} pairs of hands are`);

/** How good the plan is, and how sure its end. */
export function underSentence(day: CookDay, plan: Timetable): string {
  if (plan.endMin === null || plan.steps.length === 0) return "";
  const alone = `One after another they would take ${length(plan.oneAfterAnotherMin)}.`;
  const bound = plan.status === "optimal" ? "No plan ends earlier." : plan.lowerBoundMin === null ? "" : `No plan can end before ${clockAt(day, plan.lowerBoundMin)}.`;
  const spread = plan.endSpread && plan.endSpread.low !== plan.endSpread.high ? `Where a time is a range, the end lies between ${clockAt(day, plan.endSpread.low)} and ${clockAt(day, plan.endSpread.high)}.` : "";
  const stand = plan.longestStandMin === null || plan.longestStandMin === 0 ? "" : `The longest any dish waits where it should not wait long is ${length(plan.longestStandMin)}.`;
  return [alone, bound, spread, stand].filter(Boolean).join(" ");
}

/** What one step asks: "15 min of hands, then 35 min in the oven at 190 °C; start by 15:45". */
export function stepSentence(day: CookDay, step: Timetable["steps"][number]): string {
  const off = step.handsOffMin === 0 ? "" : `${length(step.handsOffMin)}${step.ovenC !== undefined ? ` in the oven at ${step.ovenC} °C` : step.burner !== undefined ? ` on burner ${step.burner}` : " by itself"}`;
  const on = step.handsOnMin === 0 ? "" : `${length(step.handsOnMin)} of hands`;
  const who = day.cooks > 1 && step.cook !== undefined ? `, cook ${step.cook}` : "";
  const by = step.mustStartByMin === undefined ? "" : `; start by ${clockAt(day, step.mustStartByMin)} at the latest`;
  return `${[on, off].filter(Boolean).join(", then ")}${who}${by}`;
}

/** Recipes that make a cook day: those with steps. */
export function cookable(all: readonly Recipe[]): Recipe[] {
  return all.filter((recipe) => recipe.steps.length > 0).sort((a, b) => a.title.localeCompare(b.title, "en"));
}
