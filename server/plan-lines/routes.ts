import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import type { Tx } from "#db/client.ts";
import { IdParams } from "#shared/contracts/common.ts";
import { NewPlanLine, PlanLine, PlanLines, PlanLinesQuery } from "#shared/contracts/plan-lines.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { Problem } from "#shared/kernel/outcome.ts";
import { dayAsked, loadHouse, type House } from "../facts/house.ts";
import type { Reference } from "../facts/reference.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { tagOf } from "../http/etag.ts";
import { ifMatchOf } from "../http/if-match.ts";
import type { InTurn } from "../http/in-turn.ts";
import { refuseStaleDelete } from "../http/put-once.ts";
import { granted, notFound } from "../problems.ts";
import { chooseWay } from "./choose-way.ts";
import { deletePlanLine, findPlanLine, listPlanLines, lockPlanLine } from "./store.ts";
import { toContract } from "./to-contract.ts";

const tags = ["plan-lines"];

export interface PlanLineDeps extends Deps {
  /** One after another in each household, with the agreeing of whole weeks. */
  readonly turn: InTurn;
  /** How the season holds a line to what is left; handed in, because slices do not know each other. */
  readonly reserving: {
    readonly lock: (tx: Tx, householdId: string) => Promise<void>;
    readonly fits: (tx: Tx, house: House, book: Reference, asked: { readonly id: string; readonly body: NewPlanLine; readonly day: LocalDate }) => Promise<Problem | undefined>;
  };
}

export const planLineRoutes: FastifyPluginAsyncZod<PlanLineDeps> = async (app, { within, answer, books, clock, householdOf, turn, reserving }) => {
  const one = async (tx: Tx, householdId: string, id: string): Promise<{ line: PlanLine; etag: string }> => {
    const row = await findPlanLine(tx, householdId, id);
    const [line] = row ? toContract([row], await books(), await loadHouse(tx, householdId)) : [];
    if (!row || !line) throw notFound("plan line");
    return { line, etag: tagOf(row) };
  };

  app.get("/api/plan-lines", { schema: { tags, summary: "What was chosen, by week", querystring: PlanLinesQuery, response: { 200: PlanLines, ...refusals } } }, async (request, reply) => {
    const book = await books();
    return answer(request, reply, {
      restsOn: ["kitchen"],
      load: async (tx, house) => ({ house, rows: await listPlanLines(tx, house.householdId, request.query.week) }),
      reckon: ({ house, rows }) => ({ body: toContract(rows, book, house) }),
    });
  });

  app.get("/api/plan-lines/:id", { schema: { tags, summary: "One way chosen", params: IdParams, response: { 200: PlanLine, ...refusals } } }, async (request, reply) =>
    answer(request, reply, {
      restsOn: ["kitchen"],
      load: (tx, { householdId }) => one(tx, householdId, request.params.id),
      reckon: ({ line, etag }) => ({ body: line, etag }),
    }),
  );

  app.put(
    "/api/plan-lines/:id",
    { schema: { tags, summary: "Choose a way for a week, or change it", params: IdParams, body: NewPlanLine, response: { 200: PlanLine, 201: PlanLine, ...refusals } } },
    async (request, reply) => {
      const { id } = request.params;
      const { body } = request;
      const book = await books();
      const { made, line, etag } = await turn(householdOf(request), () =>
        within(request, async (tx, householdId) => {
          await reserving.lock(tx, householdId);
          const house = await loadHouse(tx, householdId);
          const fits = () => reserving.fits(tx, house, book, { id, body, day: dayAsked(house, clock, undefined) });
          const put = granted(await chooseWay(tx, householdId, { id, body, ifMatch: ifMatchOf(request), fits }));
          return { made: put.made, ...(await one(tx, householdId, id)) };
        }),
      );
      reply.header("etag", etag);
      if (made) return reply.code(201).header("location", `/api/plan-lines/${id}`).send(line);
      return reply.code(200).send(line);
    },
  );

  app.delete("/api/plan-lines/:id", { schema: { tags, summary: "Take a chosen way back", params: IdParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    await within(request, async (tx, householdId) => {
      const row = await lockPlanLine(tx, householdId, request.params.id);
      if (!row) throw notFound("plan line");
      refuseStaleDelete(ifMatchOf(request), tagOf(row));
      await deletePlanLine(tx, row);
    });
    return reply.code(204).send();
  });
};
