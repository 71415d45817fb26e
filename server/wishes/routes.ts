import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import type { Tx } from "#db/client.ts";
import { IdParams } from "#shared/contracts/common.ts";
import { NewWish, Wish, Wishes } from "#shared/contracts/wishes.ts";
import { portionsInStore } from "#shared/planning/larder-lots.ts";
import { dayAsked, loadHouse } from "../facts/house.ts";
import { loadLarder } from "../facts/larder.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { tagOf } from "../http/etag.ts";
import { ifMatchOf } from "../http/if-match.ts";
import { refuseStaleDelete } from "../http/put-once.ts";
import { granted, notFound } from "../problems.ts";
import { recordWish } from "./record-wish.ts";
import { deleteWish, findWish, listWishes, lockWish, type WishOfRecipe } from "./store.ts";

const tags = ["wishes"];

export const wishRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, clock, books }) => {
  const todayOf = async (tx: Tx, householdId: string) => dayAsked(await loadHouse(tx, householdId), clock, undefined);
  const inWords = async (tx: Tx, householdId: string, rows: readonly WishOfRecipe[]): Promise<Wish[]> => {
    const store = portionsInStore(await loadLarder(tx, await books(), await todayOf(tx, householdId)));
    return rows.map((row) => toContract(row, store.get(row.recipeId) ?? 0));
  };
  const one = async (tx: Tx, householdId: string, id: string) => {
    const row = await findWish(tx, householdId, id);
    if (!row) throw notFound("wish");
    return { row, wish: (await inWords(tx, householdId, [row]))[0] as Wish };
  };

  app.get("/api/wishes", { schema: { tags, summary: "What was asked for, the first asked first", response: { 200: Wishes, ...refusals } } }, (request) =>
    within(request, async (tx, householdId) => inWords(tx, householdId, await listWishes(tx, householdId))),
  );

  app.get("/api/wishes/:id", { schema: { tags, summary: "One wish", params: IdParams, response: { 200: Wish, ...refusals } } }, async (request, reply) => {
    const { row, wish } = await within(request, (tx, householdId) => one(tx, householdId, request.params.id));
    return reply.header("etag", tagOf(row)).send(wish);
  });

  app.put(
    "/api/wishes/:id",
    { schema: { tags, summary: "Write down that somebody asked for something, or change it", params: IdParams, body: NewWish, response: { 200: Wish, 201: Wish, ...refusals } } },
    async (request, reply) => {
      const { id } = request.params;
      const { made, row, wish } = await within(request, async (tx, householdId) => {
        const put = granted(await recordWish(tx, householdId, { id, body: request.body, ifMatch: ifMatchOf(request) }, await todayOf(tx, householdId)));
        return { made: put.made, ...(await one(tx, householdId, id)) };
      });
      reply.header("etag", tagOf(row));
      if (made) return reply.code(201).header("location", `/api/wishes/${id}`).send(wish);
      return reply.code(200).send(wish);
    },
  );

  app.delete("/api/wishes/:id", { schema: { tags, summary: "Take a wish back", params: IdParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    await within(request, async (tx, householdId) => {
      const row = await lockWish(tx, householdId, request.params.id);
      if (!row) throw notFound("wish");
      refuseStaleDelete(ifMatchOf(request), tagOf(row));
      await deleteWish(tx, row);
    });
    return reply.code(204).send();
  });
};

function toContract({ id, recipeId, title, portions, by, from, recordedAt }: WishOfRecipe, inLarderPortions: number): Wish {
  return { id, recipeId, title, portions, ...(by === null ? {} : { by }), ...(from === null ? {} : { from }), inLarderPortions, askedOn: recordedAt.slice(0, 10) };
}
