import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { IdParams } from "#shared/contracts/common.ts";
import { CookDay, CookDays, NewCookDay, Timetable } from "#shared/contracts/cook-days.ts";
import type { CookDayDesk } from "#shared/planning/cook-day-tasks.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { tagOf } from "../http/etag.ts";
import { ifMatchOf } from "../http/if-match.ts";
import { refuseStaleDelete } from "../http/put-once.ts";
import { granted, notFound, Refusal } from "../problems.ts";
import { loadHouse } from "../facts/house.ts";
import { loadCookDayFacts } from "../facts/cook-day.ts";
import { mayGo, planCookDay } from "./plan-cook-day.ts";
import { deleteCookDay, findCookDay, listCookDays, lockCookDay } from "./store.ts";
import { toContract, toTimetable } from "./to-contract.ts";

const tags = ["cook-days"];
/** A day of many dishes is searched for longer than anything else takes. */
const LONGEST_SEARCH_MS = 55_000;
const Nothing = z.strictObject({}).nullish();

export interface CookDayDeps extends Deps {
  /** Works a timetable out without keeping other requests waiting. */
  readonly desk: CookDayDesk;
}

export const cookDayRoutes: FastifyPluginAsyncZod<CookDayDeps> = async (app, { within, answer, books, desk }) => {
  app.get("/api/cook-days", { schema: { tags, summary: "The cook days, soonest first", response: { 200: CookDays, ...refusals } } }, async (request, reply) =>
    answer(request, reply, { restsOn: ["kitchen"], load: (tx, { householdId }) => listCookDays(tx, householdId), reckon: (rows) => ({ body: rows.map(toContract) }) }),
  );

  app.get("/api/cook-days/:id", { schema: { tags, summary: "One cook day", params: IdParams, response: { 200: CookDay, ...refusals } } }, async (request, reply) =>
    answer(request, reply, {
      restsOn: ["kitchen"],
      load: async (tx, { householdId }) => {
        const row = await findCookDay(tx, householdId, request.params.id);
        if (!row) throw notFound("cook day");
        return row;
      },
      reckon: (row) => ({ body: toContract(row), etag: tagOf(row) }),
    }),
  );

  app.put(
    "/api/cook-days/:id",
    { schema: { tags, summary: "Put a cook day down, or change it", params: IdParams, body: NewCookDay, response: { 200: CookDay, 201: CookDay, ...refusals } } },
    async (request, reply) => {
      const { id } = request.params;
      const { made, row } = granted(await within(request, (tx, householdId) => planCookDay(tx, householdId, { id, body: request.body, ifMatch: ifMatchOf(request) })));
      reply.header("etag", tagOf(row));
      if (made) return reply.code(201).header("location", `/api/cook-days/${id}`).send(toContract(row));
      return reply.code(200).send(toContract(row));
    },
  );

  app.delete("/api/cook-days/:id", { schema: { tags, summary: "Drop a cook day", params: IdParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    await within(request, async (tx, householdId) => {
      const row = await lockCookDay(tx, householdId, request.params.id);
      if (!row) throw notFound("cook day");
      refuseStaleDelete(ifMatchOf(request), tagOf(row));
      const problem = await mayGo(tx, row);
      if (problem) throw new Refusal(problem);
      await deleteCookDay(tx, row);
    });
    return reply.code(204).send();
  });

  app.post(
    "/api/cook-days/:id/timetable",
    { handlerTimeout: LONGEST_SEARCH_MS, schema: { tags, summary: "The timetable of a cook day; a day that cannot be is an answer too", params: IdParams, body: Nothing, response: { 200: Timetable, ...refusals } } },
    async (request) => {
      const book = await books();
      const day = await within(request, async (tx, householdId) => loadCookDayFacts(tx, await loadHouse(tx, householdId), request.params.id, book));
      if (!day) throw notFound("cook day");
      return toTimetable(await desk.propose(day));
    },
  );
};
