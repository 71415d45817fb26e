/** A timetable that the cooks take: made here or moved by hand, and what each later change of it is called. */
import { checkCookDay, type CookDayInput, type DayEvent, type PlannedStep } from "../engines/cook-day/index.ts";
import type { RecipeStep } from "../kernel/recipe.ts";
import { minutesWords } from "../kernel/words.ts";
import type { ProposedStep } from "./cook-day-proposal.ts";

/** Where somebody wants a step to stand. */
export interface WantedStep {
  readonly dish: string;
  readonly step: string;
  readonly load?: number | undefined;
  readonly startMin: number;
  readonly cook?: number | undefined;
  readonly oven?: number | undefined;
  readonly burner?: number | undefined;
}

/** The steps as they will be kept, and every reason against them in words; empty when they are allowed. */
export function asWanted(day: CookDayInput, wanted: readonly WantedStep[]): { readonly steps: readonly PlannedStep[]; readonly faults: readonly string[] } {
  const steps = wanted.map((one): PlannedStep => {
    const step = stepOf(day, one);
    const off = step === undefined ? 0 : typeof step.handsOffMin === "number" ? step.handsOffMin : step.handsOffMin.likely;
    return {
      dish: one.dish,
      step: one.step,
      load: one.load ?? null,
      text: step?.text ?? "",
      startMin: one.startMin,
      handsOnMin: step?.handsOnMin ?? 0,
      handsOffMin: off,
      cook: one.cook ?? null,
      oven: one.oven ?? (step?.needs.oven !== undefined && day.kitchen.ovens.length === 1 ? 1 : null),
      ovenC: step?.needs.oven?.c ?? null,
      burner: one.burner ?? null,
      mustStartByMin: null,
    };
  });
  // a step that the day does not have is the referee's to name
  return { steps: [...steps].sort((a, b) => a.startMin - b.startMin), faults: [...new Set(checkCookDay(day, steps).faults)] };
}

const stepOf = (day: CookDayInput, { dish, step }: WantedStep): RecipeStep | undefined => day.dishes.find(({ id }) => id === dish)?.steps.find(({ id }) => id === step);

/** A proposal has left out what a step does not have. */
export const asPlanned = (step: ProposedStep): PlannedStep => ({
  ...step,
  load: step.load ?? null,
  cook: step.cook ?? null,
  oven: step.oven ?? null,
  ovenC: step.ovenC ?? null,
  burner: step.burner ?? null,
  mustStartByMin: step.mustStartByMin ?? null,
});

export const endOf = (steps: readonly PlannedStep[]): number => steps.reduce((end, step) => Math.max(end, step.startMin + step.handsOnMin + step.handsOffMin), 0);

/** What a change of the plan is called: “20 min late”, “without Bread”. */
export function changeTitle(event: DayEvent | { readonly kind: "agree"; readonly byHand: boolean } | { readonly kind: "from-now" }, day: CookDayInput): string {
  const dishTitle = (id: string): string => day.dishes.find((dish) => dish.id === id)?.title ?? "a dish";
  const stepTitle = (dish: string, id: string): string => `“${day.dishes.find((one) => one.id === dish)?.steps.find((step) => step.id === id)?.text ?? id}” (${dishTitle(dish)})`;
  switch (event.kind) {
    case "agree":
      return event.byHand ? "The timetable, moved by hand" : "The timetable";
    case "from-now":
      return "Planned again from now";
    case "late":
      return event.step === undefined ? `${minutesWords(event.byMin)} late` : `${stepTitle(event.step.dish, event.step.step)} takes ${minutesWords(event.byMin)} longer`;
    case "skip":
      return event.step === undefined ? `Without ${dishTitle(event.dish)}` : `Without ${stepTitle(event.dish, event.step)}`;
    case "oven-broken":
      return day.kitchen.ovens.length === 1 ? "The oven is broken" : `Oven ${event.oven} is broken`;
    case "one-dish-more":
      return `With ${event.dish.title} as well`;
  }
}
