/** Everything that a device at the counter shows of a cook day, in one answer. */
import type { Tx } from "#db/client.ts";
import type { Counter, CounterDish } from "#shared/contracts/counter.ts";
import type { DayDish } from "#shared/engines/cook-day/index.ts";
import { dayAt } from "../clock.ts";
import { batchDraft } from "#shared/planning/batch-draft.ts";
import { letterOf } from "#shared/planning/cook-day-proposal.ts";
import { coolingOf, type CoolingToday } from "#shared/planning/cooling.ts";
import { counterToday, type CounterToday } from "#shared/planning/counter-view.ts";
import { begunMark, finishedMark, zeroMs } from "#shared/planning/day-under-way.ts";
import type { CookDayFacts } from "#shared/planning/facts.ts";
import type { LarderFacts } from "#shared/planning/larder-facts.ts";
import { cautionsOf } from "#shared/planning/recipe-cautions.ts";
import { batchWords } from "../facts/batches.ts";
import { loadCookDayFacts, loadDish } from "../facts/cook-day.ts";
import { batchesOf, loadDayUnderWay, timersOf, type DayUnderWayRows } from "../facts/counter.ts";
import { heatOf } from "../facts/cooling.ts";
import type { House } from "../facts/house.ts";
import { loadLarder } from "../facts/larder.ts";
import type { Reference } from "../facts/reference.ts";
import { standOf } from "../http/changes.ts";
import { inOrder, instant, toCooling, toPlan, toStep, toTimer } from "./to-contract.ts";

interface Loaded {
  readonly day: DayUnderWayRows;
  readonly today: CounterToday;
  readonly recipes: CookDayFacts["dishes"];
  readonly larder: LarderFacts;
  readonly book: Reference;
  readonly nowMs: number;
}

export async function loadCounter(tx: Tx, house: House, id: string, book: Reference, nowMs: number): Promise<Counter | undefined> {
  const { householdId, zone } = house;
  const day = await loadDayUnderWay(tx, householdId, zone, id);
  const facts = day && (await loadCookDayFacts(tx, house, id, book));
  if (!day || !facts) return undefined;
  const today = counterToday(day.facts, nowMs);
  const larder = await loadLarder(tx, book, dayAt(nowMs, zone));
  const closed = await batchWords(tx, householdId, await batchesOf(tx, householdId, id), larder);
  const loaded: Loaded = { day, today, recipes: await withPlanned(tx, house, facts, day, book), larder, book, nowMs };
  const timers = (await timersOf(tx, householdId, id)).map((row) => toTimer(row, zone, nowMs));
  const last = day.plans.at(-1);
  const [begun, finished] = [begunMark(day.facts), finishedMark(day.facts)];
  const plan = last === undefined ? null : { ...toPlan(last, day.facts), passed: [...today.passed] };
  return {
    id,
    ...(day.row.title === null ? {} : { title: day.row.title }),
    on: day.row.on,
    zone,
    now: instant(nowMs),
    since: standOf(house.stamps),
    state: today.state,
    stale: today.stale,
    headline: today.headline,
    zeroAt: instant(zeroMs(day.facts)),
    ...(begun === undefined ? {} : { begunAt: instant(begun.atMs), begunMark: begun.id }),
    ...(finished === undefined ? {} : { finishedAt: instant(finished.atMs), finishedMark: finished.id }),
    plan,
    planCanBeUndone: day.plans.length > 1,
    steps: today.steps.map(toStep),
    inHand: [...today.inHand],
    next: [...today.next],
    minding: [...today.minding],
    skipped: today.skipped.map((one) => ({ ...one })),
    dishes: loaded.recipes.map((dish, i) => toDish(loaded, dish, i, closed)),
    timers: inOrder(timers),
    cautions: [...new Set(loaded.recipes.flatMap(({ recipe }) => cautionsOf(recipe, book.preservation, recipe.ingredientTexts)))],
  };
}

/** The dishes of the day, and those of the plan in hand that the day has lost since. */
async function withPlanned(tx: Tx, house: House, facts: CookDayFacts, { facts: { plans } }: DayUnderWayRows, book: Reference): Promise<CookDayFacts["dishes"]> {
  const lost = (plans.at(-1)?.day.dishes ?? []).filter(({ id }) => facts.dishes.every(({ recipe }) => recipe.id !== id));
  const found = [];
  for (const { id, batches } of lost) found.push(await loadDish(tx, house, id, batches, book));
  return [...facts.dishes, ...found.filter((dish) => dish !== undefined)];
}

function toDish(loaded: Loaded, { recipe, batches }: CookDayFacts["dishes"][number], i: number, closed: readonly NonNullable<CounterDish["batch"]>[]): CounterDish {
  const { day, larder, book, nowMs } = loaded;
  const planned = day.facts.plans.at(-1)?.day.dishes.find(({ id }) => id === recipe.id);
  const marks = day.facts.marks.filter(({ dish }) => dish === recipe.id);
  const cooling = coolingOf(heatOf(day.facts, planned ?? { ...recipe, batches }), book.preservation, nowMs);
  const batch = closed.find(({ recipeId }) => recipeId === recipe.id);
  const { portions, took, missing } = batchDraft(recipe, batches, larder);
  return {
    dish: recipe.id,
    letter: letterOf(i),
    title: recipe.title,
    batches,
    state: batch === undefined ? dishState(loaded, planned, recipe.id, cooling) : "put away",
    ingredients: recipe.ingredientTexts.map((text, line) => {
      const tick = marks.find((mark) => mark.kind === "ticked" && mark.line === line);
      return { line, text: batches === 1 ? text : `${batches} × ${text}`, ...(tick === undefined ? {} : { tickedAt: instant(tick.atMs), mark: tick.id }) };
    }),
    cooling: toCooling(recipe.id, cooling),
    draft: { portions, keeps: recipe.keeps.map(({ place, days }) => ({ place, days })), took: took.map((take) => ({ ...take })), missing: missing.map((one) => ({ ...one })) },
    ...(batch === undefined ? {} : { batch }),
  };
}

function dishState({ today }: Loaded, planned: DayDish | undefined, id: string, cooling: CoolingToday): CounterDish["state"] {
  const steps = today.steps.filter(({ step }) => step.dish === id);
  if (today.state === "draft" || today.state === "agreed") return "planned";
  if (planned === undefined || steps.length === 0) return "left out";
  if (cooling.needed && cooling.hotUntilMs !== null && cooling.state !== "cold") return "cooling";
  if (steps.every(({ state }) => state === "done") || (cooling.needed && cooling.state === "cold")) return "ready to put away";
  return steps.some(({ happened }) => happened !== null) ? "under way" : "planned";
}
