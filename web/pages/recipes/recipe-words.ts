/** What the recipe pages say: times, yields, needs of a step. Pure. */
import type { Recipe, Step } from "#shared/contracts/recipes.ts";
import { capital, degrees, length, made } from "../../format.ts";

type Off = Step["handsOffMin"];

export const likelyOff = (off: Off): number => (typeof off === "number" ? off : off.likely);

/** "40 min"; "35 to 50 min" for a range; empty for nothing. */
export function offWords(off: Off): string {
  if (typeof off === "number") return off === 0 ? "" : length(off);
  return off.low === off.high ? length(off.likely) : `${off.low} to ${length(off.high)}`;
}

/** "15 min of hands, then 35 to 50 min in the oven at 190 °C; start within 10 min". */
export function stepTimes(step: Step): string {
  const where = step.needs.oven ? ` in the oven at ${degrees(step.needs.oven.c)}` : step.needs.burners ? " on the heat" : " by itself";
  const off = offWords(step.handsOffMin);
  const hands = step.handsOnMin > 0 ? `${length(step.handsOnMin)} of hands` : "";
  const parts = [hands, off && `${hands ? "then " : ""}${off}${where}`].filter(Boolean).join(", ");
  const loads = step.loads ? `; ${step.loads.of} to do, ${step.loads.holds} at a time` : "";
  return `${capital(parts)}${loads}${waitWords(step)}`;
}

function waitWords(step: Step): string {
  if (step.maxWaitMin === undefined) return "";
  const least = typeof step.maxWaitMin === "number" ? step.maxWaitMin : Math.min(...Object.values(step.maxWaitMin));
  return least === 0 ? "; at once after the step before" : `; within ${length(least)} of the step before`;
}

export const WAY_WORDS: Readonly<Record<Recipe["way"], string>> = {
  eat: "eat",
  cook: "cook",
  freeze: "freeze",
  bottle: "bottle",
  dry: "dry",
  pickle: "pickle",
  ferment: "ferment",
  store: "store",
  give: "give",
};

/** "3 days in the fridge, 4 months in the freezer". */
export function keepsWords(keeps: Recipe["keeps"]): string {
  const PLACES: Readonly<Record<string, string>> = { fridge: "in the fridge", freezer: "in the freezer", shelf: "on the shelf", cellar: "in the cellar", clamp: "in a clamp" };
  return keeps.map(({ place, days }) => `${keepLength(days)} ${PLACES[place] ?? place}`).join(", ");
}

function keepLength(days: number): string {
  if (days < 14) return `${days} ${days === 1 ? "day" : "days"}`;
  if (days < 60) return `${Math.round(days / 7)} weeks`;
  return `${Math.round(days / 30.4)} months`;
}

/** The page's sentence: "Courgette soup makes 6 portions and takes 35 min of hands." */
export function recipeSentence(recipe: Recipe): string {
  return `${recipe.title} makes ${made(recipe.makes)} and takes ${length(recipe.handsOnMin)} of hands.`;
}
