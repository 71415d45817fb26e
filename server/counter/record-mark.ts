/** Writes a fact of a cook day down once: begun, a step started or done, an ingredient in, a temperature reached. */
import type { Tx } from "#db/client.ts";
import type { NewMark } from "#shared/contracts/counter.ts";
import { clockAt } from "#shared/kernel/clock-time.ts";
import { ok, refuse, type Problem, type Result } from "#shared/kernel/outcome.ts";
import { begunMark, finishedMark, zeroMs } from "#shared/planning/day-under-way.ts";
import { batchesOf, kindOf, loadDayUnderWay, type DayUnderWayRows, type MarkRow } from "../facts/counter.ts";
import { badFields } from "../http/contract.ts";
import { putOnce, type Put } from "../http/put-once.ts";
import { findMark, insertMark, undoMark } from "./store.ts";

export interface AskedMark {
  readonly dayId: string;
  readonly id: string;
  readonly body: NewMark;
  readonly zone: string;
  readonly nowMs: number;
}

/** Clocks of two devices are never quite alike. */
const AHEAD_MS = 60_000;

export async function recordMark(tx: Tx, householdId: string, { dayId, id, body, zone, nowMs }: AskedMark): Promise<Result<Put<MarkRow>>> {
  const day = await loadDayUnderWay(tx, householdId, zone, dayId, true);
  if (!day) return refuse("not-found", "There is no such cook day.");
  const atMs = body.at === undefined ? nowMs : Date.parse(body.at);
  return putOnce<MarkRow, Said>({
    what: "mark",
    body: { ...body, dayId },
    bodyOf: saidBy,
    find: () => findMark(tx, householdId, id),
    check: async () => (atMs > nowMs + AHEAD_MS ? badFields([{ path: "at", message: "lies ahead; write down what has happened" }]).problem : forbidden(day, body, atMs)),
    insert: () => insertMark(tx, { householdId, id, cookDayId: dayId, at: new Date(atMs).toISOString(), atSaid: body.at !== undefined, ...columnsOf(body) }),
  });
}

/** The row stays, marked as undone. */
export async function takeMarkBack(tx: Tx, householdId: string, dayId: string, id: string): Promise<Result<void>> {
  const day = await loadDayUnderWay(tx, householdId, "utc", dayId, true);
  const mark = day && (await findMark(tx, householdId, id));
  if (!day || mark?.cookDayId !== dayId) return refuse("not-found", "There is no such mark of this cook day.");
  if (mark.undoneAt !== null) return ok(undefined);
  if (mark.kind === "begun") {
    const last = day.plans.at(-1);
    if (day.marks.some(({ kind }) => kind !== "begun" && kind !== "ticked") || (last !== undefined && kindOf(last) !== "agree")) return refuse("conflict", "Something of this day is done already. Undo that first.");
  }
  if (["cooled", "reheated", "done"].includes(mark.kind)) {
    const closed = (await batchesOf(tx, householdId, dayId)).some(({ recipeId }) => recipeId === mark.dish);
    if (closed) return refuse("conflict", "This dish is put away, and that rests on this mark. Undo its putting away first.");
  }
  await undoMark(tx, mark);
  return ok(undefined);
}

function forbidden(day: DayUnderWayRows, body: NewMark, atMs: number): Problem | undefined {
  const begun = begunMark(day.facts);
  const conflict = (detail: string): Problem => refuse("conflict", detail).problem;
  if (body.kind === "begun") return beginFault(day, conflict);
  if (body.kind === "ticked") return tickFault(day, body, conflict);
  if (begun === undefined) return conflict("The day has not begun yet.");
  if (atMs < zeroMs(day.facts)) return badFields([{ path: "at", message: `lies before ${clockAt(day.facts.zone, begun.atMs)}, when the day was begun` }]).problem;
  if (body.kind === "finished") return finishedMark(day.facts) === undefined ? undefined : conflict("The day is finished already.");
  if (body.kind === "started" || body.kind === "done") return stepFault(day, body, atMs, conflict);
  return dishFault(day, body, conflict);
}

type Conflict = (detail: string) => Problem;

function beginFault({ facts, row }: DayUnderWayRows, conflict: Conflict): Problem | undefined {
  const plan = facts.plans.at(-1);
  const begun = begunMark(facts);
  if (begun !== undefined) return conflict(`The day was begun at ${clockAt(facts.zone, begun.atMs)} already.`);
  if (plan === undefined) return conflict("Agree on a timetable first: the day runs by it.");
  return plan.dayVersion === row.version ? undefined : conflict("The day was changed after its timetable was agreed on. Agree on it again.");
}

function stepFault({ facts }: DayUnderWayRows, body: Extract<NewMark, { kind: "started" | "done" }>, atMs: number, conflict: Conflict): Problem | undefined {
  if (finishedMark(facts) !== undefined) return conflict("The day is finished. Undo that to go on.");
  const plan = facts.plans.at(-1);
  const planned = plan?.steps.find((step) => step.dish === body.dish && step.step === body.step && step.load === (body.load ?? null));
  if (planned === undefined) return badFields([{ path: "step", message: "is not in the plan in hand" }]).problem;
  const of = (kind: string) => facts.marks.find((mark) => mark.kind === kind && mark.dish === body.dish && mark.step === body.step && mark.load === (body.load ?? null) && plan?.brokenOff.includes(mark.id) !== true);
  const [same, started] = [of(body.kind), of("started")];
  if (same !== undefined) return conflict(`“${planned.text}” was ${body.kind === "done" ? "done" : "begun"} at ${clockAt(facts.zone, same.atMs)} already.`);
  if (body.kind === "started" && of("done") !== undefined) return conflict(`“${planned.text}” is done already.`);
  if (body.kind === "done" && started !== undefined && atMs < started.atMs) return badFields([{ path: "at", message: `lies before ${clockAt(facts.zone, started.atMs)}, when it was begun` }]).problem;
  return undefined;
}

const dishIn = ({ facts }: DayUnderWayRows, id: string) => facts.plans.at(-1)?.day.dishes.find((dish) => dish.id === id);
const notHere = (): Problem => badFields([{ path: "dish", message: "is not in this day" }]).problem;

function tickFault(day: DayUnderWayRows, body: Extract<NewMark, { kind: "ticked" }>, conflict: Conflict): Problem | undefined {
  if (dishIn(day, body.dish) === undefined) return day.plans.length === 0 ? conflict("Agree on a timetable first: the day runs by it.") : notHere();
  const same = day.facts.marks.find(({ kind, dish, line }) => kind === "ticked" && dish === body.dish && line === body.line);
  return same === undefined ? undefined : conflict(`It is in since ${clockAt(day.facts.zone, same.atMs)}.`);
}

function dishFault(day: DayUnderWayRows, body: Extract<NewMark, { kind: "cooled" | "reheated" | "discarded" }>, conflict: Conflict): Problem | undefined {
  if (dishIn(day, body.dish) === undefined) return notHere();
  const ofDish = day.facts.marks.filter(({ dish }) => dish === body.dish);
  if (ofDish.some(({ kind }) => kind === "discarded")) return conflict("It was thrown away.");
  if (body.kind !== "cooled") return undefined;
  const since = ofDish.filter(({ kind }) => kind === "reheated").reduce((latest, { atMs }) => Math.max(latest, atMs), 0);
  const same = ofDish.find(({ kind, stage, atMs }) => kind === "cooled" && stage === body.stage && atMs >= since);
  return same === undefined ? undefined : conflict(`That was measured at ${clockAt(day.facts.zone, same.atMs)} already.`);
}

function columnsOf(body: NewMark) {
  return {
    kind: body.kind,
    dish: "dish" in body ? body.dish : null,
    step: "step" in body ? body.step : null,
    load: "load" in body ? (body.load ?? null) : null,
    oven: "oven" in body ? (body.oven ?? null) : null,
    line: "line" in body ? body.line : null,
    stage: "stage" in body ? body.stage : null,
  };
}

type Said = { readonly dayId: string; readonly kind: string } & Readonly<Record<string, unknown>>;

function saidBy({ cookDayId, kind, dish, step, load, oven, line, stage, at, atSaid }: MarkRow): Said {
  const said = { dish, step, load, oven, line, stage };
  return { dayId: cookDayId, kind, ...Object.fromEntries(Object.entries(said).filter(([, value]) => value !== null)), ...(atSaid ? { at: new Date(at).toISOString() } : {}) };
}
