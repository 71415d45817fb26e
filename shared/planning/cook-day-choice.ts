/** What helps to settle a cook day, in words: which dishes fit together, what each adds, when the rises begin, what can be done the night before. */
import type { CookDayInput, DishCost, FittingSet } from "../engines/cook-day/index.ts";
import { listWords, minutesWords, sentenceCase } from "../kernel/words.ts";
import type { AdviceFound, ChoiceFound } from "./cook-day-tasks.ts";

export interface CostToday extends DishCost {
  readonly title: string;
  readonly batches: number;
}

export interface SetToday extends FittingSet {
  readonly text: string;
}

export interface ChoiceToday {
  readonly text: string;
  readonly sets: readonly SetToday[];
  readonly complete: boolean;
  readonly dishes: readonly CostToday[];
}

export interface EveningToday {
  readonly dish: string;
  readonly title: string;
  readonly steps: readonly string[];
  readonly texts: readonly string[];
  readonly whole: boolean;
  readonly handsOnMin: number;
  readonly savesMin: number | null;
  readonly text: string;
}

const titleOf = (day: CookDayInput, id: string): string => day.dishes.find((dish) => dish.id === id)?.title ?? "";

export function choiceWords(day: CookDayInput, withinMin: number, { fits, costs }: ChoiceFound): ChoiceToday {
  const names = (set: FittingSet): string => listWords(set.dishes.map((id) => titleOf(day, id)));
  const sets = fits.sets.map((set) => ({ ...set, text: `${names(set)}: done in ${minutesWords(set.endMin)}, ${minutesWords(set.handsOnMin)} of it with your hands.` }));
  const [best] = fits.sets;
  const within = minutesWords(withinMin);
  const text =
    best === undefined
      ? `None of these can be done in ${within}.`
      : best.dishes.length === day.dishes.length
        ? `All of them fit into ${within} together.`
        : `${best.dishes.length} of ${day.dishes.length} fit into ${within} together: ${names(best)}.`;
  return { text, sets, complete: fits.complete, dishes: costWords(day, costs) };
}

export function adviceWords(day: CookDayInput, { costs, rests, evening }: AdviceFound): { dishes: CostToday[]; rests: AdviceFound["rests"]; nightBefore: EveningToday[] } {
  return {
    dishes: costWords(day, costs),
    rests,
    nightBefore: evening.map((work): EveningToday => {
      const dish = day.dishes.find(({ id }) => id === work.dish);
      const texts = work.steps.map((id) => dish?.steps.find((step) => step.id === id)?.text ?? id);
      const saves = work.savesMin === null || work.savesMin === 0 ? "the day ends no earlier for it" : `the day then ends ${minutesWords(work.savesMin)} earlier`;
      return { ...work, title: titleOf(day, work.dish), texts, text: sentenceCase(`${work.whole ? `all of ${titleOf(day, work.dish)}` : `${titleOf(day, work.dish)}: ${listWords(texts.map((one) => `“${one}”`))}`} can be done the evening before; ${saves}.`) };
    }),
  };
}

const costWords = (day: CookDayInput, costs: readonly DishCost[]): CostToday[] => costs.map((cost) => ({ ...cost, title: titleOf(day, cost.dish), batches: day.dishes.find(({ id }) => id === cost.dish)?.batches ?? 1 }));
