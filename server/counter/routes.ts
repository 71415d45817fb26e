import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { IdParams } from "#shared/contracts/common.ts";
import { Counter, Mark, MarkParams, NewMark } from "#shared/contracts/counter.ts";
import { DayPlan, NewDayPlan, PlanParams } from "#shared/contracts/day-plans.ts";
import { NewTimer, Timer, TimerParams } from "#shared/contracts/timers.ts";
import type { CookDayDesk } from "#shared/planning/cook-day-tasks.ts";
import { loadDayUnderWay } from "../facts/counter.ts";
import { loadHouse } from "../facts/house.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { tagOf } from "../http/etag.ts";
import { ifMatchOf } from "../http/if-match.ts";
import { refuseStaleDelete } from "../http/put-once.ts";
import { granted, notFound } from "../problems.ts";
import { loadCounter } from "./load-counter.ts";
import { recordMark, takeMarkBack } from "./record-mark.ts";
import { setTimer } from "./set-timer.ts";
import { deleteTimer, findTimer, lockTimer } from "./store.ts";
import { takePlan, takePlanBack } from "./take-plan.ts";
import { toMark, toPlan, toTimer } from "./to-contract.ts";

const tags = ["counter"];
/** A day of many dishes is searched for longer than anything else takes. */
const LONGEST_SEARCH_MS = 55_000;
const plan = "/api/cook-days/:id/plans/:planId";
const mark = "/api/cook-days/:id/marks/:markId";
const timer = "/api/cook-days/:id/timers/:timerId";

export interface CounterDeps extends Deps {
  readonly desk: CookDayDesk;
}

export const counterRoutes: FastifyPluginAsyncZod<CounterDeps> = async (app, deps) => {
  const { within, clock, books } = deps;

  app.get("/api/cook-days/:id/counter", { schema: { tags, summary: "A cook day as it stands now: the plan in hand, what has happened, timers, cooling, what is put away", params: IdParams, response: { 200: Counter, ...refusals } } }, async (request) => {
    const book = await books();
    const found = await within(request, async (tx, householdId) => loadCounter(tx, await loadHouse(tx, householdId), request.params.id, book, clock.now()));
    if (found === undefined) throw notFound("cook day");
    return found;
  });

  app.put(
    plan,
    { handlerTimeout: LONGEST_SEARCH_MS, schema: { tags, summary: "Agree on a timetable, as it is made or moved by hand; or, under way, say what has changed and plan the rest anew", params: PlanParams, body: NewDayPlan, response: { 200: DayPlan, 201: DayPlan, ...refusals } } },
    async (request, reply) => {
      const { id: dayId, planId } = request.params;
      const { made, row } = await takePlan(deps, request, { dayId, planId, body: request.body });
      const answer = await within(request, async (tx, householdId) => {
        const day = await loadDayUnderWay(tx, householdId, (await loadHouse(tx, householdId)).zone, dayId);
        if (!day) throw notFound("cook day");
        return toPlan(row, day.facts);
      });
      if (made) return reply.code(201).header("location", `/api/cook-days/${dayId}/plans/${planId}`).send(answer);
      return reply.code(200).send(answer);
    },
  );

  app.delete(plan, { schema: { tags, summary: "Undo the newest plan; the one before it is in hand again", params: PlanParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    await within(request, (tx, householdId) => takePlanBack(tx, householdId, request.params.id, request.params.planId));
    return reply.code(204).send();
  });

  app.put(mark, { schema: { tags, summary: "Write down once what has happened: begun, started, done, an ingredient in, a temperature reached", params: MarkParams, body: NewMark, response: { 200: Mark, 201: Mark, ...refusals } } }, async (request, reply) => {
    const { id: dayId, markId: id } = request.params;
    const { made, row } = await within(request, async (tx, householdId) => granted(await recordMark(tx, householdId, { dayId, id, body: request.body, zone: (await loadHouse(tx, householdId)).zone, nowMs: clock.now() })));
    if (made) return reply.code(201).header("location", `/api/cook-days/${dayId}/marks/${id}`).send(toMark(row));
    return reply.code(200).send(toMark(row));
  });

  app.delete(mark, { schema: { tags, summary: "Undo a mark; its row stays, marked", params: MarkParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    granted(await within(request, (tx, householdId) => takeMarkBack(tx, householdId, request.params.id, request.params.markId)));
    return reply.code(204).send();
  });

  app.get(timer, { schema: { tags, summary: "One timer as it stands now", params: TimerParams, response: { 200: Timer, ...refusals } } }, async (request, reply) => {
    const { row, zone } = await within(request, async (tx, householdId) => ({ row: await findTimer(tx, householdId, request.params.timerId), zone: (await loadHouse(tx, householdId)).zone }));
    if (row?.cookDayId !== request.params.id) throw notFound("timer of this cook day");
    return reply.header("etag", tagOf(row)).send(toTimer(row, zone, clock.now()));
  });

  app.put(timer, { schema: { tags, summary: "Set a timer by minutes, by an instant or by the clock; hear it, put it off, stop it", params: TimerParams, body: NewTimer, response: { 200: Timer, 201: Timer, ...refusals } } }, async (request, reply) => {
    const { id: dayId, timerId: id } = request.params;
    const nowMs = clock.now();
    const { made, row, zone } = await within(request, async (tx, householdId) => {
      const { zone } = await loadHouse(tx, householdId);
      return { ...granted(await setTimer(tx, householdId, { dayId, id, body: request.body, ifMatch: ifMatchOf(request), zone, nowMs })), zone };
    });
    reply.header("etag", tagOf(row));
    if (made) return reply.code(201).header("location", `/api/cook-days/${dayId}/timers/${id}`).send(toTimer(row, zone, nowMs));
    return reply.code(200).send(toTimer(row, zone, nowMs));
  });

  app.delete(timer, { schema: { tags, summary: "Take a timer away", params: TimerParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    await within(request, async (tx, householdId) => {
      const row = await lockTimer(tx, householdId, request.params.timerId);
      if (row?.cookDayId !== request.params.id) throw notFound("timer of this cook day");
      refuseStaleDelete(ifMatchOf(request), tagOf(row));
      await deleteTimer(tx, row);
    });
    return reply.code(204).send();
  });
};
