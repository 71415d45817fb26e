/** Before a day is settled: asked of the plan of a week or of dishes, or of a day that is put down already. Nothing is stored. */
import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import type { Tx } from "#db/client.ts";
import { Choice, DayAdvice, NewChoice } from "#shared/contracts/choosing.ts";
import { IdParams } from "#shared/contracts/common.ts";
import { adviceWords, choiceWords, type CostToday } from "#shared/planning/cook-day-choice.ts";
import { dayInput } from "#shared/planning/cook-day-proposal.ts";
import type { CookDayFacts } from "#shared/planning/facts.ts";
import type { CookDayDesk } from "#shared/planning/cook-day-tasks.ts";
import { loadCookDayFacts, loadDish } from "../facts/cook-day.ts";
import { loadHouse, type House } from "../facts/house.ts";
import type { Reference } from "../facts/reference.ts";
import { badFields, refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { notFound } from "../problems.ts";
import { linesOfWeek } from "./store.ts";

const tags = ["cook-days"];
/** Every set of dishes is a plan of its own. */
const LONGEST_SEARCH_MS = 55_000;
const Nothing = z.strictObject({}).nullish();
/** A kitchen of which nothing was said (common practice, no source). */
const USUAL_KITCHEN = { ovens: [{ trays: 2, preheatMin: 15, changeMin: 10 }], burners: 4 };
const MOST_DISHES = 10;

export interface ChoosingDeps extends Deps {
  readonly desk: CookDayDesk;
}

export const choosingRoutes: FastifyPluginAsyncZod<ChoosingDeps> = async (app, { within, books, desk }) => {
  app.post(
    "/api/cook-days/choices",
    { handlerTimeout: LONGEST_SEARCH_MS, schema: { tags, summary: "Which dishes fit together into so many minutes, and what each adds; nothing is stored", body: NewChoice, response: { 200: Choice, ...refusals } } },
    async (request) => {
      const book = await books();
      const { body } = request;
      const { facts, leftOut } = await within(request, async (tx, householdId) => dayToTry(tx, await loadHouse(tx, householdId), body, book));
      const day = dayInput(facts);
      const found = await desk.choose({ day, withinMin: body.withinMin });
      const { text, sets, complete, dishes } = choiceWords(day, body.withinMin, found);
      return { text, sets: sets.map(({ dishes: recipeIds, endMin, handsOnMin, text: words }) => ({ recipeIds: [...recipeIds], endMin, handsOnMin, text: words })), complete, dishes: dishes.map(toCost), leftOut };
    },
  );

  app.post(
    "/api/cook-days/:id/advice",
    { handlerTimeout: LONGEST_SEARCH_MS, schema: { tags, summary: "What each dish of a day adds, when its rises have to begin, and what can be done the night before", params: IdParams, body: Nothing, response: { 200: DayAdvice, ...refusals } } },
    async (request) => {
      const book = await books();
      const facts = await within(request, async (tx, householdId) => loadCookDayFacts(tx, await loadHouse(tx, householdId), request.params.id, book));
      if (!facts) throw notFound("cook day");
      const day = dayInput(facts);
      const { dishes, rests, nightBefore } = adviceWords(day, await desk.advise(day));
      return { dishes: dishes.map(toCost), rests: rests.map((rest) => ({ ...rest })), nightBefore: nightBefore.map((work) => ({ ...work, steps: [...work.steps], texts: [...work.texts] })) };
    },
  );
};

const toCost = ({ dish, title, batches, addsMin, aloneMin, handsOnMin }: CostToday): DayAdvice["dishes"][number] => ({ recipeId: dish, title, batches, addsMin, aloneMin, handsOnMin });

/** The dishes in the household's kitchen, or in the one that is said. What has no steps written cannot be tried. */
async function dayToTry(tx: Tx, house: House, { week, dishes, startsAt, cooks, kitchen }: NewChoice, book: Reference): Promise<{ facts: CookDayFacts; leftOut: string[] }> {
  const wanted = dishes ?? (await linesOfWeek(tx, house.householdId, week as string));
  const path = dishes === undefined ? "week" : "dishes";
  if (wanted.length === 0) throw badFields([{ path, message: "nothing is planned for that week yet" }]);
  if (wanted.length > MOST_DISHES) throw badFields([{ path, message: `at most ${MOST_DISHES} dishes can be tried together; name those that matter` }]);
  const found: CookDayFacts["dishes"][number][] = [];
  const leftOut: string[] = [];
  for (const [i, { recipeId, batches }] of wanted.entries()) {
    const dish = await loadDish(tx, house, recipeId, batches, book);
    if (dish === undefined) throw badFields([{ path: `dishes.${i}.recipeId`, message: "there is no such recipe" }]);
    if (wanted.findIndex((other) => other.recipeId === recipeId) < i) throw badFields([{ path: `dishes.${i}.recipeId`, message: "is in the list already; give that dish more batches" }]);
    if (dish.recipe.steps.length === 0) leftOut.push(`${dish.recipe.title} has no steps written.`);
    else found.push(dish);
  }
  if (found.length === 0) throw badFields([{ path, message: "none of these has steps written, so none can be timed" }]);
  return { facts: { startsAt: startsAt ?? "09:00", endsBy: null, cooks: cooks ?? house.cooks, kitchen: kitchen ?? house.kitchen ?? USUAL_KITCHEN, unavailable: [], dishes: found }, leftOut };
}
