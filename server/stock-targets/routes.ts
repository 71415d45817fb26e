import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import type { Tx } from "#db/client.ts";
import { IdParams } from "#shared/contracts/common.ts";
import { NewStockTarget, StockTarget, StockTargets, SuggestedTargets } from "#shared/contracts/stock-targets.ts";
import { portionsInStore } from "#shared/planning/larder-lots.ts";
import { suggestedTargets } from "#shared/planning/season-suggested.ts";
import { dayAsked, loadHouse } from "../facts/house.ts";
import { loadLarder } from "../facts/larder.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { tagOf } from "../http/etag.ts";
import { ifMatchOf } from "../http/if-match.ts";
import { refuseStaleDelete } from "../http/put-once.ts";
import { granted, notFound } from "../problems.ts";
import { recordTarget } from "./record-target.ts";
import { deleteTarget, findTarget, listTargets, lockTarget, titlesOf, type TargetOfRecipe } from "./store.ts";

const tags = ["stock-targets"];

export const stockTargetRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, clock, books }) => {
  const todayOf = async (tx: Tx, householdId: string) => dayAsked(await loadHouse(tx, householdId), clock, undefined);
  const inWords = async (tx: Tx, householdId: string, rows: readonly TargetOfRecipe[]): Promise<StockTarget[]> => {
    const today = await todayOf(tx, householdId);
    const store = portionsInStore(await loadLarder(tx, await books(), today));
    return rows.map((row) => toContract(row, store.get(row.recipeId) ?? 0, today));
  };
  const one = async (tx: Tx, householdId: string, id: string) => {
    const row = await findTarget(tx, householdId, id);
    if (!row) throw notFound("target");
    return { row, target: (await inWords(tx, householdId, [row]))[0] as StockTarget };
  };

  app.get("/api/stock-targets", { schema: { tags, summary: "How much is to be in store by when, the soonest first", response: { 200: StockTargets, ...refusals } } }, (request) =>
    within(request, async (tx, householdId) => inWords(tx, householdId, await listTargets(tx, householdId))),
  );

  app.get("/api/stock-targets/suggested", { schema: { tags, summary: "Targets that rest on what was eaten last winter; nothing is stored", response: { 200: SuggestedTargets, ...refusals } } }, async (request) => {
    const book = await books();
    const { larder, titles, southern } = await within(request, async (tx, householdId) => {
      const house = await loadHouse(tx, householdId);
      return { larder: await loadLarder(tx, book, dayAsked(house, clock, undefined)), titles: await titlesOf(tx, householdId), southern: house.latitude < 0 };
    });
    return suggestedTargets(larder, southern, titles).map((target) => ({ ...target }));
  });

  app.get("/api/stock-targets/:id", { schema: { tags, summary: "One target", params: IdParams, response: { 200: StockTarget, ...refusals } } }, async (request, reply) => {
    const { row, target } = await within(request, (tx, householdId) => one(tx, householdId, request.params.id));
    return reply.header("etag", tagOf(row)).send(target);
  });

  app.put(
    "/api/stock-targets/:id",
    { schema: { tags, summary: "Say how much is to be in store by a day, or change it", params: IdParams, body: NewStockTarget, response: { 200: StockTarget, 201: StockTarget, ...refusals } } },
    async (request, reply) => {
      const { id } = request.params;
      const { made, row, target } = await within(request, async (tx, householdId) => {
        const put = granted(await recordTarget(tx, householdId, { id, body: request.body, ifMatch: ifMatchOf(request) }, await todayOf(tx, householdId)));
        return { made: put.made, ...(await one(tx, householdId, id)) };
      });
      reply.header("etag", tagOf(row));
      if (made) return reply.code(201).header("location", `/api/stock-targets/${id}`).send(target);
      return reply.code(200).send(target);
    },
  );

  app.delete("/api/stock-targets/:id", { schema: { tags, summary: "Drop a target", params: IdParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    await within(request, async (tx, householdId) => {
      const row = await lockTarget(tx, householdId, request.params.id);
      if (!row) throw notFound("target");
      refuseStaleDelete(ifMatchOf(request), tagOf(row));
      await deleteTarget(tx, row);
    });
    return reply.code(204).send();
  });
};

function toContract({ id, recipeId, title, portions, by }: TargetOfRecipe, inLarderPortions: number, today: string): StockTarget {
  return { id, recipeId, title, portions, by, inLarderPortions, missingPortions: Math.max(0, portions - inLarderPortions), past: by < today };
}
