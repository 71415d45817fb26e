/** Full days for one cook out of the recipes that come with the product: drawn until so many steps are reached, loads counted. */
import { readdirSync, readFileSync } from "node:fs";
import type { CookDayInput, DayDish } from "#shared/engines/cook-day/index.ts";
import { seededRandom, type Random } from "#shared/kernel/seeded-random.ts";

const FOLDER = new URL("../../seed-data/recipes/", import.meta.url).pathname;
/** Invented: a usual kitchen. */
export const KITCHEN = { cooks: 1, ovens: [{ trays: 2, preheatMin: 15, changeMin: 10 }], burners: 4, pots: 3, sinks: 1 };
/** A dish that takes longer alone (drying, fermenting) would decide the day's end by itself. */
const LONGEST_MIN = 300;

interface File {
  readonly id: string;
  readonly recipe: Pick<DayDish, "title" | "steps"> & Partial<Pick<DayDish, "holds" | "limits">>;
}

/** Every recipe as a dish of one batch, by file name. */
export function bookDishes(): DayDish[] {
  return readdirSync(FOLDER).filter((name) => name.endsWith(".json")).sort().map((name): DayDish => {
    const { id, recipe } = JSON.parse(readFileSync(`${FOLDER}${name}`, "utf8")) as File;
    return { id, title: recipe.title, batches: 1, steps: recipe.steps, holds: recipe.holds ?? [], limits: recipe.limits ?? [] };
  });
}

/** So many days of `steps` to a tenth more; the same for the same seed. */
export function recipeDays(count: number, steps: number, seed: number): CookDayInput[] {
  const random = seededRandom(seed);
  const dishes = bookDishes().filter((dish) => minutesOf(dish) <= LONGEST_MIN);
  const days: CookDayInput[] = [];
  while (days.length < count) {
    const chosen = draw(dishes, steps, random);
    if (stepsOf(chosen) <= 1.1 * steps) days.push({ kitchen: KITCHEN, dishes: chosen, endByMin: null, unavailable: [] });
  }
  return days;
}

function draw(dishes: readonly DayDish[], steps: number, random: Random): DayDish[] {
  const chosen: DayDish[] = [];
  while (stepsOf(chosen) < steps) {
    const dish = dishes[random.below(dishes.length)] as DayDish;
    if (!chosen.includes(dish)) chosen.push(dish);
  }
  return chosen;
}

function minutesOf(dish: DayDish): number {
  return dish.steps.reduce((sum, { handsOnMin, handsOffMin }) => sum + handsOnMin + (typeof handsOffMin === "number" ? handsOffMin : handsOffMin.likely), 0);
}

const stepsOf = (dishes: readonly DayDish[]): number =>
  dishes.reduce((sum, dish) => sum + dish.steps.reduce((count, { loads }) => count + (loads ? Math.max(1, Math.ceil((loads.of * dish.batches) / loads.holds)) : 1), 0), 0);
