/**
 * Random cook days of at most seven steps, loads counted, in which everything that the scheduler's model knows may come up at once:
 * waits, oven heats, trays, several ovens, cooks, absences, things kept over steps, limits, ranges, loads, batches, fixed times,
 * and steps that wait for another dish. Minutes are small numbers, so that every placing can be tried.
 */
import type { CookDayInput, DayDish } from "#shared/engines/cook-day/index.ts";
import type { Hold, Limit, RecipeStep } from "#shared/kernel/recipe.ts";
import { seededRandom, type Random } from "#shared/kernel/seeded-random.ts";

export const MOST_STEPS = 7;

/** The day of a seed; `null` where the draw has come out larger than can be tried. */
export function tinyDay(seed: number): CookDayInput | null {
  const random = seededRandom(seed);
  const dishes: DayDish[] = [];
  for (let d = between(random, 1, 3); d > 0; d--) dishes.push(dishOf(random, `d${dishes.length}`, dishes));
  if (dishes.reduce((sum, dish) => sum + dish.steps.reduce((count, step) => count + loads(step, dish), 0), 0) > MOST_STEPS) return null;
  const oven = (): CookDayInput["kitchen"]["ovens"][number] => ({ trays: between(random, 1, 3), preheatMin: between(random, 0, 2), changeMin: between(random, 0, 2) });
  const first = oven();
  return {
    kitchen: {
      cooks: between(random, 1, 2),
      ovens: [[first], [first], [first, first], [first, oven()], []][random.next() < 0.04 ? 4 : random.below(4)] ?? [],
      burners: between(random, 1, 2),
      pots: between(random, 1, 2),
      sinks: 1,
      appliances: [{ name: "slow pot", count: 1 }],
    },
    dishes,
    endByMin: random.next() < 0.3 ? between(random, 5, 16) : null,
    unavailable: Array.from({ length: random.next() < 0.35 ? between(random, 1, 2) : 0 }, () => {
      const fromMin = random.below(8);
      return { what: "cook" as const, fromMin, toMin: fromMin + between(random, 1, 4) };
    }),
  };
}

const between = (random: Random, low: number, high: number): number => low + random.below(high - low + 1);
const loads = (step: RecipeStep, dish: DayDish): number => (step.loads ? Math.max(1, Math.ceil((step.loads.of * dish.batches) / step.loads.holds)) : 1);

function dishOf(random: Random, id: string, others: readonly DayDish[]): DayDish {
  const steps: RecipeStep[] = [];
  const inLoads = random.next() < 0.3 ? { holds: between(random, 1, 2), of: between(random, 1, 3) } : undefined;
  for (let k = between(random, 1, 4); k > 0; k--) steps.push(stepOf(random, steps, inLoads, others));
  const ids = steps.map((step) => step.id);
  const pair = (): { from: string; to: string } => {
    const [a, b] = [random.below(ids.length), random.below(ids.length)];
    return { from: ids[Math.min(a, b)] as string, to: ids[Math.max(a, b)] as string };
  };
  const holds: Hold[] = random.next() < 0.35 ? [{ what: (["pots", "burners", "sinks"] as const)[random.below(3)] as Hold["what"], ...pair() }] : [];
  const limits: Limit[] = steps.length > 1 && random.next() < 0.3 ? [{ from: ids[0] as string, to: ids[ids.length - 1] as string, maxMin: between(random, 0, 8) }] : [];
  return { id, title: `Dish ${id}`, batches: random.next() < 0.2 ? 2 : 1, steps, holds, limits };
}

function stepOf(random: Random, earlier: readonly RecipeStep[], inLoads: RecipeStep["loads"], others: readonly DayDish[]): RecipeStep {
  const id = `s${earlier.length}`;
  const off = between(random, 0, 3);
  const after = earlier.filter((_, k) => random.next() < (k === earlier.length - 1 ? 0.75 : 0.25)).map((step) => step.id);
  const other = others[random.below(Math.max(1, others.length))];
  if (other && random.next() < 0.12) after.push(`${other.id}/${other.steps[random.below(other.steps.length)]?.id}`);
  const waits = after.filter(() => random.next() < 0.5).map((before) => [before, between(random, 0, 3)] as const);
  const time = random.next();
  return {
    id,
    text: `Step ${id}`,
    handsOnMin: between(random, 0, 2),
    handsOffMin: random.next() < 0.15 ? { low: Math.max(0, off - 1), likely: off, high: off + between(random, 1, 2) } : off,
    needs: needsOf(random),
    after,
    ...(waits.length === 0 ? {} : after.length === 1 && random.next() < 0.5 ? { maxWaitMin: (waits[0] as readonly [string, number])[1] } : { maxWaitMin: Object.fromEntries(waits) }),
    ...(inLoads && random.next() < 0.6 ? { loads: inLoads } : {}),
    ...(time < 0.04 ? { startAtMin: between(random, 0, 8) } : time < 0.1 ? { notBeforeMin: between(random, 1, 6) } : time < 0.16 ? { endByMin: between(random, 3, 12) } : {}),
  };
}

function needsOf(random: Random): RecipeStep["needs"] {
  const kind = random.next();
  if (kind < 0.35) return {};
  if (kind < 0.7) {
    const c = [150, 180, 200][random.below(3)] as number;
    return { oven: { c, trays: between(random, 1, 2), ...(random.next() < 0.25 ? { fromC: c - 20, toC: c + 10 } : {}) } };
  }
  if (kind < 0.82) return { burners: between(random, 1, 2) };
  if (kind < 0.92) return { sinks: 1 };
  if (kind < 0.97) return { appliance: random.next() < 0.03 ? "canner" : "slow pot" };
  return { pots: 1, burners: 1 };
}
