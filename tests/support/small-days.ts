/** Small random cook days for properties: two or three dishes, a tight kitchen, waits, limits, loads, holds and ranges now and then. */
import fc from "fast-check";
import type { CookDayInput, DayDish } from "#shared/engines/cook-day/index.ts";
import type { RecipeStep } from "#shared/kernel/recipe.ts";

const sometimes = <T>(value: fc.Arbitrary<T>, weight = 3): fc.Arbitrary<T | undefined> =>
  fc.oneof({ weight, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: value });

const needs: fc.Arbitrary<RecipeStep["needs"]> = fc.oneof(
  { weight: 3, arbitrary: fc.constant({}) },
  { weight: 2, arbitrary: fc.record({ oven: fc.record({ c: fc.constantFrom(150, 200), trays: fc.integer({ min: 1, max: 2 }) }) }) },
  { weight: 2, arbitrary: fc.constant({ burners: 1 }) },
  { weight: 1, arbitrary: fc.constant({ sinks: 1 }) },
);

const oven = fc.record({ trays: fc.integer({ min: 1, max: 3 }), preheatMin: fc.integer({ min: 0, max: 2 }), changeMin: fc.integer({ min: 0, max: 2 }) });

interface Draft {
  readonly hands: number;
  readonly off: number;
  readonly longer: number | undefined;
  readonly needs: RecipeStep["needs"];
  readonly wait: number | undefined;
  readonly loads: number | undefined;
  readonly alone: boolean;
  readonly endBy: number | undefined;
}

const draft: fc.Arbitrary<Draft> = fc.record({
  hands: fc.integer({ min: 0, max: 3 }),
  off: fc.integer({ min: 0, max: 4 }),
  longer: sometimes(fc.integer({ min: 1, max: 3 }), 6),
  needs,
  wait: sometimes(fc.integer({ min: 0, max: 3 }), 1),
  loads: sometimes(fc.integer({ min: 2, max: 3 }), 9),
  alone: fc.boolean(),
  endBy: sometimes(fc.integer({ min: 6, max: 20 }), 9),
});

function dishOf(id: string, drafts: readonly Draft[], limit: number | undefined, hold: boolean): DayDish {
  const steps = drafts.map((one, k): RecipeStep => {
    // A step that stands alone begins a second strand, which the next one joins.
    const after = k === 0 || (one.alone && k < drafts.length - 1) ? [] : k > 1 && drafts[k - 1]?.alone ? [`${k - 2}`, `${k - 1}`] : [`${k - 1}`];
    return {
      id: `${k}`,
      text: `Step ${k}`,
      handsOnMin: one.hands,
      handsOffMin: one.longer === undefined ? one.off : { low: Math.max(0, one.off - 1), likely: one.off, high: one.off + one.longer },
      needs: one.needs,
      after,
      ...(one.wait !== undefined && after.length > 0 ? { maxWaitMin: Object.fromEntries([[after[after.length - 1] as string, one.wait]]) } : {}),
      ...(one.loads !== undefined ? { loads: { holds: 1, of: one.loads } } : {}),
      ...(one.endBy !== undefined ? { endByMin: one.endBy } : {}),
    };
  });
  const last = `${steps.length - 1}`;
  return {
    id,
    title: `Dish ${id}`,
    batches: 1,
    steps,
    holds: hold ? [{ what: "pots", from: "0", to: last }] : [],
    limits: limit !== undefined && steps.length > 1 ? [{ from: "0", to: last, maxMin: limit }] : [],
  };
}

export interface SmallDays {
  readonly dishes: number;
  /** Steps of a dish, before loads. */
  readonly mostSteps: number;
  readonly loads?: boolean;
  /** Always with a deadline, and a near one: many of these days cannot be. */
  readonly tight?: boolean;
}

export function smallDays({ dishes, mostSteps, loads = true, tight = false }: SmallDays): fc.Arbitrary<CookDayInput> {
  const one = loads ? draft : draft.map((d) => ({ ...d, loads: undefined }));
  const deadline = tight ? fc.integer({ min: 5, max: 11 }) : sometimes(fc.integer({ min: 8, max: 30 }), 6);
  const dish = fc.record({ drafts: fc.array(one, { minLength: 1, maxLength: mostSteps }), limit: sometimes(fc.integer({ min: 2, max: 10 })), hold: fc.boolean() });
  return fc
    .record({
      kitchen: fc.record({
        cooks: fc.integer({ min: 1, max: 2 }),
        // One, two of a kind, or two that differ.
        ovens: fc.oneof(oven.map((one) => [one]), oven.map((one) => [one, one]), fc.tuple(oven, oven)),
        burners: fc.integer({ min: 1, max: 2 }),
        pots: fc.integer({ min: 1, max: 2 }),
        sinks: fc.constant(1),
      }),
      drafts: fc.array(dish, { minLength: 1, maxLength: dishes }),
      endByMin: deadline,
      away: fc.array(fc.tuple(fc.integer({ min: 0, max: 10 }), fc.integer({ min: 1, max: 4 })), { maxLength: 2 }),
    })
    .map(({ kitchen, drafts, endByMin, away }): CookDayInput => ({
      kitchen,
      dishes: drafts.map(({ drafts: steps, limit, hold }, d) => dishOf(`d${d}`, steps, limit, hold)),
      endByMin: endByMin ?? null,
      unavailable: away.map(([fromMin, length]) => ({ what: "cook", fromMin, toMin: fromMin + length })),
    }));
}
