/** Every recipe of the book can be cooked by one pair of hands in an ordinary kitchen, and the demo's cook day can be had. */
import { describe, expect, test } from "vitest";
import { checkCookDay, scheduleCookDay, type CookDayInput, type DayDish } from "#shared/engines/cook-day/index.ts";
import type { NewRecipe } from "#shared/contracts/recipes.ts";
import { readDemo } from "./read-demo.ts";
import { readRecipes } from "./read.ts";

const KITCHEN = { cooks: 1, ovens: [{ trays: 2, preheatMin: 15, changeMin: 10 }], burners: 4, pots: 2, sinks: 1 };
const BUDGET = { schedules: 40, seed: 1 };
const book = readRecipes();

describe("one recipe alone", () => {
  test("comes to a plan that the referee allows, with one batch", () => {
    const refused = book.flatMap(({ id, file, recipe }) => faults(dayOf([dish(id, recipe, 1)])).map((fault) => `${file}: ${fault}`));
    expect(refused).toEqual([]);
    expect(book.length).toBeGreaterThan(100);
  });

  test("so do three batches of what is blanched for the freezer: the loads follow each other through pot and sink", () => {
    const blanched = book.filter(({ recipe }) => recipe.steps.some((step) => step.id === "blanch" && step.loads !== undefined));
    expect(blanched.length).toBeGreaterThan(15);
    expect(blanched.flatMap(({ id, file, recipe }) => faults(dayOf([dish(id, recipe, 3)])).map((fault) => `${file}: ${fault}`))).toEqual([]);
  });
});

describe("the demo's cook day", () => {
  test("comes to a plan within its time in which the dishes run side by side", () => {
    const demo = readDemo();
    const all = new Map([...book, ...demo.recipes].map(({ id, recipe }) => [id, recipe]));
    const [on] = demo.cookDays;
    if (!on) throw new Error("the demo has no cook day");
    const dishes = on.dishes.map(({ recipeId, batches }) => dish(recipeId, all.get(recipeId) as NewRecipe, batches));
    const day: CookDayInput = { ...dayOf(dishes), endByMin: minutesBetween(on.startsAt, on.endsBy ?? ""), unavailable: (on.unavailable ?? []) as CookDayInput["unavailable"] };
    const plan = scheduleCookDay(day, { schedules: 500, seed: 1 });
    expect(plan.endMin).not.toBeNull();
    expect(checkCookDay(day, plan.steps).faults).toEqual([]);
    expect(plan.endMin as number).toBeLessThan(plan.oneAfterAnotherMin * 0.7);
  });
});

function dish(id: string, recipe: NewRecipe, batches: number): DayDish {
  return { id, title: recipe.title, batches, steps: recipe.steps as DayDish["steps"], holds: recipe.holds ?? [], limits: (recipe.limits ?? []) as DayDish["limits"] };
}

function dayOf(dishes: readonly DayDish[]): CookDayInput {
  return { kitchen: KITCHEN, dishes, endByMin: null, unavailable: [] };
}

function faults(day: CookDayInput): readonly string[] {
  const plan = scheduleCookDay(day, BUDGET);
  return plan.endMin === null ? [`no plan: ${plan.status}`] : checkCookDay(day, plan.steps).faults;
}

function minutesBetween(from: string, to: string): number {
  const minutes = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
  return minutes(to) - minutes(from);
}
