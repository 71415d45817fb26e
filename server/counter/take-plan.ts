/**
 * Takes a timetable, or plans the rest of a day anew. The search runs beside the service and takes its time, so what it rested on is looked at again
 * under the lock of the day before anything is written.
 */
import type { FastifyRequest } from "fastify";
import type { Tx } from "#db/client.ts";
import type { NewDayPlan } from "#shared/contracts/day-plans.ts";
import { withWashingUp, type CookDayInput, type DayEvent, type DayUnderWay, type PlannedStep } from "#shared/engines/cook-day/index.ts";
import { refuse, type Problem } from "#shared/kernel/outcome.ts";
import { dayInput } from "#shared/planning/cook-day-proposal.ts";
import { begunSteps, dayInHand, keyOf, minuteOf, zeroMs } from "#shared/planning/day-under-way.ts";
import { asPlanned, asWanted } from "#shared/planning/plan-agreed.ts";
import type { CookDayFacts } from "#shared/planning/facts.ts";
import type { CookDayDesk } from "#shared/planning/cook-day-tasks.ts";
import { isUnderWay, loadDayUnderWay, type DayUnderWayRows, type PlanRow, type Told } from "../facts/counter.ts";
import { loadCookDayFacts, loadDish } from "../facts/cook-day.ts";
import { loadHouse } from "../facts/house.ts";
import type { Reference } from "../facts/reference.ts";
import { badFields } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { sameBody, type Put } from "../http/put-once.ts";
import { notFound, Refusal } from "../problems.ts";
import { addDish, findPlan, insertPlan, takeDishOut, undoPlan } from "./store.ts";

export interface PlanDeps extends Pick<Deps, "within" | "clock" | "books"> {
  readonly desk: Pick<CookDayDesk, "propose" | "replan">;
}

export interface AskedPlan {
  readonly dayId: string;
  readonly planId: string;
  readonly body: NewDayPlan;
}

/** What a search found, on its way to be kept. */
interface Found {
  readonly day: CookDayInput;
  readonly steps: readonly PlannedStep[];
  readonly brokenOff: readonly string[];
  readonly told: Told;
}

/** Somebody marked a step while the search ran: it is asked again, a few times. */
const MOST_TRIES = 3;

export async function takePlan(deps: PlanDeps, request: FastifyRequest, asked: AskedPlan): Promise<Put<PlanRow>> {
  const book = await deps.books();
  for (let tries = 1; ; tries++) {
    const start = await deps.within(request, (tx, householdId) => ground(tx, householdId, asked, book));
    if ("known" in start) return { made: false, row: start.known };
    const nowMs = deps.clock.now();
    const found = start.facts === null ? await replanned(deps, start, asked.body, nowMs) : await agreed(deps, start.facts, asked.body);
    const row = await deps.within(request, (tx, householdId) => keep(tx, householdId, asked, start, found, nowMs));
    if (row !== null) return { made: true, row };
    if (tries === MOST_TRIES) throw new Refusal({ code: "conflict", detail: "The day was changed while its plan was being made. Try again." });
  }
}

/** Undoes the newest plan; the one before it is in hand again. */
export async function takePlanBack(tx: Tx, householdId: string, dayId: string, planId: string): Promise<void> {
  const day = await loadDayUnderWay(tx, householdId, "utc", dayId, true);
  const row = day && (await findPlan(tx, householdId, planId));
  if (!day || row?.cookDayId !== dayId) throw notFound("plan of this cook day");
  if (row.undoneAt !== null) return;
  const last = day.plans.at(-1);
  if (last?.id !== planId) throw refusal("The plan was changed since. Undo the last change first.");
  if (day.plans.length === 1 && day.marks.some(({ kind }) => kind === "begun")) throw refusal("The day is under way, and this is the plan it runs by. Undo the beginning first.");
  if (day.plans.length === 1 || !newDishHasMarks(day, row)) await undoPlan(tx, row);
  else throw refusal("Something of the dish that came with it is done already. Leave the dish out instead.");
  const { kind, recipeId } = row.said as { kind: string; recipeId?: string };
  if (kind === "dish-more" && recipeId !== undefined) await takeDishOut(tx, day.row, recipeId);
}

const newDishHasMarks = ({ marks }: DayUnderWayRows, { said }: PlanRow): boolean => {
  const { kind, recipeId } = said as { kind: string; recipeId?: string };
  return kind === "dish-more" && marks.some(({ dish }) => dish === recipeId);
};

interface Ground {
  readonly day: DayUnderWayRows;
  /** To agree on; null where the day is under way. */
  readonly facts: CookDayFacts | null;
  readonly more: CookDayFacts["dishes"][number] | null;
}

async function ground(tx: Tx, householdId: string, { dayId, planId, body }: AskedPlan, book: Reference): Promise<Ground | { readonly known: PlanRow }> {
  const house = await loadHouse(tx, householdId);
  const day = await loadDayUnderWay(tx, householdId, house.zone, dayId);
  if (!day) throw notFound("cook day");
  const known = await findPlan(tx, householdId, planId);
  if (known) {
    if (known.cookDayId === dayId && sameBody(known.said, body)) return { known };
    throw refusal("Another plan is already stored under this id, and a plan is never rewritten: undo it with DELETE and put a new one.");
  }
  const begun = day.marks.some(({ kind }) => kind === "begun");
  if (body.kind === "agree") {
    if (begun) throw refusal("The day has begun. Say what has changed, and the rest of it is planned again.");
    return { day, facts: (await loadCookDayFacts(tx, house, dayId, book)) as CookDayFacts, more: null };
  }
  if (!isUnderWay(day.marks)) throw refusal(begun ? "The day is finished." : "The day has not begun. Change the day itself, and agree on its timetable.");
  const more = body.kind === "dish-more" ? await loadDish(tx, house, body.recipeId, body.batches, book) : null;
  if (more === undefined) throw badFields([{ path: "recipeId", message: "there is no such recipe" }]);
  return { day, facts: null, more };
}

async function agreed({ desk }: PlanDeps, facts: CookDayFacts, body: NewDayPlan): Promise<Found> {
  const day = dayInput(facts);
  if (day.dishes.every(({ steps }) => steps.length === 0)) throw refusal("There is no step in this day yet: put a dish with written steps into it first.");
  const wanted = body.kind === "agree" ? body.steps : undefined;
  if (wanted !== undefined) {
    const { steps, faults } = asWanted(day, wanted);
    if (faults.length > 0) throw new Refusal({ code: "conflict", detail: `It cannot be done like this. ${faults[0] as string}`, fields: faults.map((message) => ({ path: "steps", message })) });
    return { day, steps, brokenOff: [], told: { moved: [], passed: [], notes: [] } };
  }
  const plan = await desk.propose(facts);
  if (plan.endMin === null) throw cannotBe(plan.conflicts, plan.notes);
  return { day, steps: plan.steps.map(asPlanned), brokenOff: [], told: { moved: [], passed: [], notes: plan.notes } };
}

async function replanned({ desk }: PlanDeps, { day: { facts, row }, more }: Ground, body: NewDayPlan, nowMs: number): Promise<Found> {
  const inHand = facts.plans.at(-1);
  if (inHand === undefined) throw new Error("a day under way has a plan");
  const ask: DayUnderWay = { day: dayInHand(facts, inHand), plan: inHand.steps, begun: begunSteps(facts, inHand), nowMin: minuteOf(nowMs, zeroMs(facts)), events: [] };
  const problem = eventFault(ask, body);
  if (problem) throw new Refusal(problem);
  const { plan, moved, passed, notes, day, brokenOff } = await desk.replan({ ...ask, events: eventsOf(body, more, row.kitchen.washUpMin ?? 0, ask.day) });
  if (plan.endMin === null) throw cannotBe(plan.conflicts, plan.notes);
  const gone = new Set(brokenOff.map(keyOf));
  const marks = facts.marks.filter((mark) => mark.step !== null && gone.has(keyOf({ dish: mark.dish ?? "", step: mark.step, load: mark.load }))).map(({ id }) => id);
  return { day, steps: plan.steps, brokenOff: [...inHand.brokenOff, ...marks], told: { moved, passed, notes: [...notes, ...plan.notes] } };
}

function eventsOf(body: NewDayPlan, more: Ground["more"], washUpMin: number, day: CookDayInput): DayEvent[] {
  switch (body.kind) {
    case "agree":
    case "from-now":
      return [];
    case "late":
      return [{ kind: "late", byMin: body.byMin, ...(body.step === undefined ? {} : { step: { dish: body.step.dish, step: body.step.step, load: body.step.load ?? null } }) }];
    case "skip":
      return [{ kind: "skip", dish: body.dish, ...(body.step === undefined ? {} : { step: body.step }) }];
    case "oven-broken":
      return [{ kind: "oven-broken", oven: body.oven }];
    case "dish-more": {
      if (more === null) return [];
      const { recipe, batches } = more;
      const dish = { id: recipe.id, title: recipe.title, batches, steps: recipe.steps, holds: recipe.holds, limits: recipe.limits };
      return withWashingUp({ ...day, dishes: [dish] }, washUpMin).dishes.map((one) => ({ kind: "one-dish-more", dish: one }));
    }
  }
}

function eventFault({ day, begun }: DayUnderWay, body: NewDayPlan): Problem | null {
  const dish = (id: string) => day.dishes.find((one) => one.id === id);
  const missing = (path: string, message: string): Problem => badFields([{ path, message }]).problem;
  if (body.kind === "late" && body.step !== undefined) {
    const ref = { ...body.step, load: body.step.load ?? null };
    if (!begun.some((one) => keyOf(one) === keyOf(ref) && one.endMin === null)) return missing("step", "is not being done just now; leave it out to say that nothing new can begin for so long");
  }
  if (body.kind === "skip") {
    if (dish(body.dish) === undefined) return missing("dish", "is not in this day");
    if (body.step !== undefined && dish(body.dish)?.steps.every(({ id }) => id !== body.step)) return missing("step", "is not in this dish any more");
  }
  if (body.kind === "oven-broken" && day.kitchen.ovens.length < body.oven) return missing("oven", `there ${day.kitchen.ovens.length === 1 ? "is one oven" : `are ${day.kitchen.ovens.length} ovens`} in this kitchen`);
  if (body.kind === "dish-more" && dish(body.recipeId) !== undefined) return missing("recipeId", "is in the day already");
  return null;
}

/** Null when what the search rested on is not what stands now. */
async function keep(tx: Tx, householdId: string, { dayId, planId, body }: AskedPlan, start: Ground, found: Found, nowMs: number): Promise<PlanRow | null> {
  const day = await loadDayUnderWay(tx, householdId, start.day.facts.zone, dayId, true);
  if (!day) throw notFound("cook day");
  const known = await findPlan(tx, householdId, planId);
  if (known) return sameBody(known.said, body) ? known : null;
  if (print(day) !== print(start.day)) return null;
  if (body.kind === "dish-more") await addDish(tx, day.row, body.recipeId, body.batches);
  const { steps, brokenOff, told } = found;
  const row = await insertPlan(tx, day.row, { id: planId, said: body, at: new Date(nowMs).toISOString(), dayVersion: day.row.version, day: found.day, steps, brokenOff, told });
  return row ?? null;
}

/** Of the day, its plans and its marks: which there are. */
const print = ({ row, plans, marks }: DayUnderWayRows): string => JSON.stringify([row.version, plans.map(({ id }) => id), marks.map(({ id }) => id)]);

function cannotBe(conflicts: readonly { readonly text: string; readonly ways: readonly string[] }[], notes: readonly string[]): Refusal {
  const detail = [...conflicts.map(({ text }) => text), ...(conflicts.length === 0 ? notes : [])].join(" ") || "No plan was found for this day.";
  return new Refusal({ code: "conflict", detail, fields: conflicts.flatMap(({ ways }) => ways.map((message) => ({ path: "ways", message }))) });
}

const refusal = (detail: string): Refusal => new Refusal(refuse("conflict", detail).problem);
