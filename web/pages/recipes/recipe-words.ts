/** What the recipe pages say: times, yields, needs of a step. Pure. */
import type { Recipe, Step } from "#shared/contracts/recipes.ts";
import { cropWord } from "#shared/kernel/crop-words.ts";
import { weighedWords } from "#shared/kernel/words.ts";
import { capital, count, length, listed, made } from "../../format.ts";
import { ovenHeat } from "../../parts/heat.ts";
import type { StepFields } from "./recipe-form.ts";

/** "40 min"; "35 to 50 min" for a range; empty for nothing. */
export function offWords(off: Step["handsOffMin"]): string {
  if (typeof off === "number") return off === 0 ? "" : length(off);
  if (off.low === off.high) return off.likely === 0 ? "" : length(off.likely);
  return off.high < 60 ? `${off.low} to ${length(off.high)}` : `${length(off.low)} to ${length(off.high)}`;
}

/** "15 min of hands, then 35 to 50 min in the oven at 190 °C; within 10 min of step 2". `steps` are those of the recipe, in its order. */
export function stepTimes(step: Step, steps: readonly Step[]): string {
  const { oven, burners = 0 } = step.needs;
  const where = oven ? ` in the oven at ${ovenHeat(oven.c)}` : burners > 0 ? " on the heat" : " by itself";
  const off = offWords(step.handsOffMin);
  const hands = step.handsOnMin > 0 ? `${length(step.handsOnMin)} of hands${off || (!oven && burners === 0) ? "" : where}` : "";
  const parts = [hands, off && `${hands ? "then " : ""}${off}${where}`].filter(Boolean).join(", ");
  return [capital(parts), loadWords(step), waitWords(step, steps)].filter(Boolean).join("; ");
}

/** Loads of one batch; a step that goes once says nothing. */
function loadWords({ loads }: Step): string {
  const n = loads ? Math.ceil(loads.of / loads.holds) : 1;
  return n > 1 ? `in ${count(n, "load", "loads")}, so long each` : "";
}

function waitWords({ after, maxWaitMin }: Step, steps: readonly Step[]): string {
  if (maxWaitMin === undefined) return "";
  const waits = typeof maxWaitMin === "number" ? after.map((id) => [id, maxWaitMin] as const) : Object.entries(maxWaitMin);
  const words = waits.map(([id, min]) => {
    const number = `step ${steps.findIndex((one) => one.id === id) + 1}`;
    return min === 0 ? `at once after ${number}` : `within ${length(min)} of ${number}`;
  });
  return listed(words);
}

/** "From the end of step 4 to the start of step 7 at most 2 h: hot food, …" */
export function limitSentence(limit: Recipe["limits"][number], steps: readonly Step[]): string {
  const number = (id: string): number => steps.findIndex((step) => step.id === id) + 1;
  return `From the end of step ${number(limit.from)} to the start of step ${number(limit.to)} at most ${length(limit.maxMin)}${limit.why ? `: ${limit.why}` : ""}.`;
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

const PLACES: Readonly<Record<string, string>> = { fridge: "in the fridge", freezer: "in the freezer", shelf: "on the shelf", cellar: "in the cellar", clamp: "in a clamp" };

/** "3 days in the fridge, 4 months in the freezer". */
export function keepsWords(keeps: Recipe["keeps"]): string {
  return keeps.map(({ place, days }) => `${keepLength(days)} ${PLACES[place] ?? place}`).join(", ");
}

/** Rounded down, so that nothing is said to keep a part of a week or month longer; the tables count a month as 30 days. */
function keepLength(days: number): string {
  if (days < 14) return count(days, "day", "days");
  if (days < 60) return count(Math.floor(days / 7), "week", "weeks");
  return days < 730 ? count(Math.floor(days / 30), "month", "months") : count(Math.floor(days / 365), "year", "years");
}

/** "1.2 kg courgettes, 200 g onions": what one batch takes from the garden, as picked. `names` by crop. */
export function usesWords(uses: Recipe["uses"], names: ReadonlyMap<string, string>): string {
  return listed(uses.filter(({ grams }) => grams > 0).map(({ crop, grams }) => `${weighedWords(grams)} ${cropWord(names.get(crop) ?? crop)}`));
}

/** The page's sentence: "Courgette soup makes 6 portions and takes 35 min of hands." */
export function recipeSentence(recipe: Recipe): string {
  const makes = `${recipe.title} makes ${made(recipe.makes)}`;
  return recipe.handsOnMin > 0 ? `${makes} and takes ${length(recipe.handsOnMin)} of hands.` : `${makes}.`;
}

/** One line under a title: "6 portions · 35 min of hands · 3 days in the fridge". */
export function briefly(recipe: Pick<Recipe, "makes" | "handsOnMin" | "keeps">): string {
  return [made(recipe.makes), recipe.handsOnMin > 0 ? `${length(recipe.handsOnMin)} of hands` : "", keepsWords(recipe.keeps)].filter(Boolean).join(" · ");
}

/** What a step in the form needs besides hands, to open its fields: "Needs the oven at 190 °C, 1 burner; 3 loads". */
export function needsWords(step: StepFields): string {
  const n = (text: string): number => Number(text) || 0;
  const needs = [n(step.ovenC) > 0 ? `the oven at ${ovenHeat(n(step.ovenC))}` : "", n(step.burners) > 0 ? count(n(step.burners), "burner", "burners") : "", n(step.pots) > 0 ? count(n(step.pots), "large pot", "large pots") : "", n(step.sinks) > 0 ? count(n(step.sinks), "sink", "sinks") : ""].filter(Boolean);
  const loads = n(step.of) > n(step.holds) && n(step.holds) > 0 ? `, ${count(Math.ceil(n(step.of) / n(step.holds)), "load", "loads")}` : "";
  return `${needs.length > 0 ? `Needs ${listed(needs)}` : "Needs hands only"}${loads}`;
}
