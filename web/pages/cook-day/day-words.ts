/** The sentences of a cook day. Pure. */
import type { CookDay, Timetable, TimetableStep } from "#shared/contracts/cook-days.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { cropWord } from "#shared/kernel/crop-words.ts";
import { weighedWords } from "#shared/kernel/words.ts";
import { capital, clock, count, day as dayName, length, listed, made, plain } from "../../format.ts";
import { ovenHeat } from "../../parts/heat.ts";

/** Minutes after midnight of the start. */
export const startOf = (day: Pick<CookDay, "startsAt">): number => minutesOf(day.startsAt);

/** 870, for "14:30". */
export const minutesOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));

/** "14:35", for minutes from the start of the day. */
export const clockAt = (day: Pick<CookDay, "startsAt">, minutes: number): string => clock(startOf(day) + minutes);

const WEEKDAYS = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"];
export const weekdayOf = (date: string): string => WEEKDAYS[new Date(`${date}T12:00:00Z`).getUTCDay()] as string;

const NUMBERS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
const inWords = (n: number, one: string, many: string): string => `${NUMBERS[n] ?? n} ${n === 1 ? one : many}`;

export function daySentence(day: CookDay, plan: Timetable | null, today: string): string {
  const when = `${weekdayOf(day.on)}, ${dayName(day.on, today)}`;
  if (day.dishes.length === 0) return `Nothing is chosen for ${when} yet. Put a dish in, and its timetable stands here.`;
  if (plan === null) return `There is no timetable for ${when} yet.`;
  const dishes = inWords(day.dishes.length, "dish", "dishes");
  if (plan.status === "infeasible" || plan.endMin === null) {
    const what = day.dishes.length === 1 ? "This dish cannot be had" : `These ${dishes} cannot all be had`;
    return `${what} on ${when} as the day is set.${plan.conflicts.length > 0 ? " What clashes, and what would help, stands below." : ""}`;
  }
  return `Begin at ${day.startsAt} on ${when}, and ${dishes} ${day.dishes.length === 1 ? "is" : "are"} put away by ${clockAt(day, plan.endMin)}. ${hands(day)} busy for ${length(plan.handsOnMin)} of it.`;
}

const hands = (day: CookDay): string => (day.cooks === 1 ? "Your hands are" : `${capital(inWords(day.cooks, "pair", "pairs"))} of hands are`);

/** How good the plan is, and how sure its end. */
export function underSentence(day: CookDay, plan: Timetable): string {
  if (plan.endMin === null || plan.steps.length === 0) return "";
  const alone = plan.oneAfterAnotherMin > plan.endMin ? `One after another they would take ${length(plan.oneAfterAnotherMin)}.` : "";
  const bound = plan.status === "optimal" ? "No plan ends earlier." : plan.lowerBoundMin === null ? "" : `No plan can end before ${clockAt(day, plan.lowerBoundMin)}.`;
  const stand = plan.longestStandMin === null || plan.longestStandMin === 0 ? "" : `Where a dish should not wait, it waits ${length(plan.longestStandMin)} at most.`;
  return [alone, bound, stand, spreadSentence(day, plan), awaySentence(day)].filter(Boolean).join(" ");
}

/** What becomes of the end when everything that is a range takes short or long. */
function spreadSentence(day: CookDay, plan: Timetable): string {
  if (!plan.endSpread || plan.endSpread.low === plan.endSpread.high) return "";
  const span = `Simmering and baking are ranges, so the end lies between ${clockAt(day, plan.endSpread.low)} and ${clockAt(day, plan.endSpread.high)}`;
  const late = day.endsBy !== undefined && startOf(day) + plan.endSpread.high > minutesOf(day.endsBy);
  return late ? `${span}; at the longest that is after ${day.endsBy}.` : `${span}.`;
}

/** "Away from 12:00 to 12:30 for lunch." is for the reader to say; here it is "Away: 12:00 to 12:30, lunch." */
export function awaySentence(day: CookDay): string {
  if (day.unavailable.length === 0) return "";
  return `${day.cooks === 1 ? "Away" : "One cook is away"}: ${day.unavailable.map(({ fromMin, toMin, why }) => `${clockAt(day, fromMin)} to ${clockAt(day, toMin)}${why ? `, ${why}` : ""}`).join("; ")}.`;
}

/** A step that may wait longer than this needs no word about it. Own choice: a quarter of an hour is what a cook keeps in mind. */
const WORTH_SAYING_MIN = 15;

/** What one step asks: "15 min of hands, then 35 min in the oven at 190 °C; start by 15:45". */
export function stepSentence(day: CookDay, step: TimetableStep): string {
  return `${workWords(step)}${day.cooks > 1 && step.cook !== undefined ? `, cook ${step.cook}` : ""}${byWords(day, step)}`;
}

/** Whether the list says until when the step must begin. */
export const worthSaying = ({ startMin, mustStartByMin }: TimetableStep): boolean => mustStartByMin !== undefined && mustStartByMin - startMin <= WORTH_SAYING_MIN;

function byWords(day: CookDay, step: TimetableStep): string {
  const { startMin, mustStartByMin } = step;
  if (mustStartByMin === undefined || !worthSaying(step)) return "";
  return mustStartByMin <= startMin ? "; straight on, without a wait" : `; by ${clockAt(day, mustStartByMin)} at the latest`;
}

/** The same for a step in several loads: "each 1 min of hands, then 4 min by itself; straight on, without a wait". */
export function roundSentence(steps: readonly TimetableStep[]): string {
  const [first] = steps;
  if (!first) return "";
  const slack = Math.min(...steps.map(({ startMin, mustStartByMin }) => (mustStartByMin ?? Infinity) - startMin));
  const wait = slack > WORTH_SAYING_MIN ? "" : slack <= 0 ? "; straight on, without a wait" : `; each may wait ${length(slack)} more at most`;
  return `Each ${workWords(first)}${wait}`;
}

function workWords(step: TimetableStep): string {
  const place = step.ovenC !== undefined ? ` in the oven at ${ovenHeat(step.ovenC)}` : step.burner !== undefined ? ` on burner ${step.burner}` : " by itself";
  const on = step.handsOnMin === 0 ? "" : `${length(step.handsOnMin)} of hands`;
  const off = step.handsOffMin === 0 ? "" : `${length(step.handsOffMin)}${place}`;
  return [on, off].filter(Boolean).join(", then ") || "no time of its own";
}

/** Recipes that make a cook day: those with steps. */
export function cookable(all: readonly Recipe[]): Recipe[] {
  return all.filter((recipe) => recipe.steps.length > 0).sort((a, b) => a.title.localeCompare(b.title, "en"));
}

/** "2 batches; 2.4 kg courgettes make 12 portions." `names` by crop, as in the book of crops. */
export function dishWords(batches: number, recipe: Recipe | undefined, names: ReadonlyMap<string, string>): string {
  const times = count(batches, "batch", "batches");
  if (!recipe) return times;
  const makes = made({ amount: recipe.makes.amount * batches, unit: recipe.makes.unit });
  const uses = recipe.uses.filter(({ grams }) => grams > 0).map(({ crop, grams }) => `${weighedWords(grams * batches)} ${cropWord(names.get(crop) ?? crop)}`);
  const what = uses.length > 0 ? `${listed(uses)} make ${makes}` : `Makes ${makes}`;
  return `${batches > 1 ? `${times}: ` : ""}${batches > 1 && uses.length === 0 ? what.charAt(0).toLowerCase() + what.slice(1) : what}`;
}

/** "four dishes: courgette soup; two loaves", for the list of days. */
export function dishesOf(day: Pick<CookDay, "dishes">): string {
  return day.dishes.length === 0 ? "Nothing chosen yet" : day.dishes.map(({ title, batches }) => (batches > 1 ? `${title} × ${plain(batches)}` : title)).join(" · ");
}
