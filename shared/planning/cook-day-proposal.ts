/** A cook day as it was put down → the timetable, with letters for the dishes, cautions, and a word where hot food would stand too long. */
import { dayToPlan, lastSteps, scheduleCookDay, type Budget, type CookDayInput, type CookDayPlan, type PlannedStep } from "../engines/cook-day/index.ts";
import { coolingStages, type CautionTopic, type PreservationTables } from "../engines/preservation/index.ts";
import { minutesWords } from "../kernel/words.ts";
import type { CookDayFacts, Part } from "./facts.ts";
import { goesCold, lastHotStep } from "./hot-food.ts";
import { cautionsOf } from "./recipe-cautions.ts";

export interface ProposedStep {
  readonly dish: string;
  readonly step: string;
  readonly load?: number;
  readonly text: string;
  readonly startMin: number;
  readonly handsOnMin: number;
  readonly handsOffMin: number;
  readonly cook?: number;
  readonly oven?: number;
  readonly ovenC?: number;
  readonly burner?: number;
  readonly mustStartByMin?: number;
}

export interface CookDayProposal extends Omit<CookDayPlan, "steps" | "conflicts" | "notes" | "schedulesUsed"> {
  readonly steps: readonly ProposedStep[];
  readonly dishes: readonly { readonly dish: string; readonly letter: string; readonly title: string; readonly batches: number }[];
  readonly conflicts: readonly { readonly text: string; readonly ways: readonly string[] }[];
  readonly cautions: readonly string[];
  readonly notes: readonly string[];
}

/** Enough for the days a household plans; one seed, so that the same day gives the same timetable. */
export const USUAL_BUDGET: Budget = { schedules: 2_000, seed: 1 };

/** Timetable of a cook day; a day that cannot be is an answer with what clashes. Minutes from the start of the day. */
export function proposeCookDay(day: CookDayFacts, tables: PreservationTables, budget: Budget = USUAL_BUDGET): CookDayProposal {
  const { steps, notes, conflicts, status, endMin, lowerBoundMin, endSpread, longestStandMin, handsOnMin, oneAfterAnotherMin } = scheduleCookDay(dayInput(day), budget);
  return {
    status, endMin, lowerBoundMin, endSpread, longestStandMin, handsOnMin, oneAfterAnotherMin,
    steps: steps.map(stepWords),
    dishes: day.dishes.map(({ recipe, batches }, i) => ({ dish: recipe.id, letter: letterOf(i), title: recipe.title, batches })),
    conflicts,
    cautions: dayCautions(day, tables),
    notes: [...notes, ...leftOutNotes(day), ...partNotes(day), ...standingNotes(day, steps, tables)],
  };
}

/** The day as the scheduler and its referee take it. */
export const dayInput = (day: CookDayFacts): CookDayInput =>
  dayToPlan(
    day,
    day.dishes.map(({ recipe: { id, title, steps, holds, limits, parts }, batches }) => ({ id, title, batches, steps, holds, limits, parts: (parts ?? []).map((part) => part.id) })),
  );

function leftOutNotes({ dishes }: CookDayFacts): string[] {
  if (dishes.length === 0) return ["There is no dish in this day yet."];
  return dishes.filter(({ recipe }) => recipe.steps.length === 0).map(({ recipe }) => `${recipe.title} has no steps written, so it is left out of the timetable.`);
}

function partNotes({ dishes }: CookDayFacts): string[] {
  const made = new Set(dishes.map(({ recipe }) => recipe.id));
  return dishes.flatMap(({ recipe }) => (recipe.parts ?? []).flatMap((part) => partNote(recipe.title, part, made.has(part.id))));
}

/** What is in store comes first: it is taken out, and a day that makes it anew is told of it. */
function partNote(dish: string, { title, inStore }: Part, madeToday: boolean): string[] {
  if (inStore !== undefined) return [madeToday ? `“${title}” is in store already: ${inStore}. ${dish} can take that instead of making more.` : `${dish} uses “${title}”: take it from store, ${inStore}.`];
  return madeToday ? [] : [`${dish} uses “${title}”: have it ready, or put it into this day.`];
}

/** A, B … Z, AA. */
export function letterOf(i: number): string {
  const letter = String.fromCharCode(65 + (i % 26));
  return i < 26 ? letter : letterOf(Math.floor(i / 26) - 1) + letter;
}

/** Left out what a step does not have. */
export function stepWords(step: PlannedStep): ProposedStep {
  const { dish, text, startMin, handsOnMin, handsOffMin, load, cook, oven, ovenC, burner, mustStartByMin } = step;
  return {
    dish, step: step.step, text, startMin, handsOnMin, handsOffMin,
    ...(load === null ? {} : { load }),
    ...(cook === null ? {} : { cook }),
    ...(oven === null ? {} : { oven }),
    ...(ovenC === null ? {} : { ovenC }),
    ...(burner === null ? {} : { burner }),
    ...(mustStartByMin === null ? {} : { mustStartByMin }),
  };
}

function dayCautions(day: CookDayFacts, tables: PreservationTables): string[] {
  return [
    ...new Set(
      day.dishes.flatMap(({ recipe }) => {
        const topics: CautionTopic[] = lastHotStep(recipe) && goesCold(recipe) ? ["cooling", "holding"] : [];
        return cautionsOf(recipe, tables, recipe.ingredientTexts, topics);
      }),
    ),
  ];
}

/**
 * Where no limit of the recipe guards it, hot food that goes into fridge or freezer is timed in the plan: from the end of the heat to the last step,
 * in which it is put away. Longer than the first cooling stage (FDA Food Code 3-501.14 (A)(1)) is said, with what helps.
 */
function standingNotes(day: CookDayFacts, steps: readonly PlannedStep[], tables: PreservationTables): string[] {
  if (steps.length === 0) return [];
  const [first, second] = coolingStages(tables);
  return day.dishes.flatMap(({ recipe }): string[] => {
    const hot = lastHotStep(recipe);
    if (!hot || !first || !second || !goesCold(recipe) || recipe.limits.some((limit) => limit.from === hot)) return [];
    const rule = `within ${minutesWords(first.withinMin)} from ${first.fromC} to ${first.toC} °C, and cold in ${minutesWords(second.withinMin)} in all`;
    const last = lastSteps(recipe.steps);
    if (last.includes(hot)) return [`${recipe.title}: no step for cooling is written. Hot food must cool ${rule}.`];
    const of = (ids: readonly string[]) => steps.filter((step) => step.dish === recipe.id && ids.includes(step.step));
    const hotUntil = Math.min(...of([hot]).map((step) => step.startMin + step.handsOnMin + step.handsOffMin));
    const standsMin = Math.max(...of(last).map((step) => step.startMin)) - hotUntil;
    if (standsMin <= first.withinMin) return [];
    return [`${recipe.title}: ${minutesWords(standsMin)} pass between the heat and the cold. Hot food must cool ${rule}: smaller portions, shallow boxes or an ice bath.`];
  });
}
