import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import type { Tx } from "#db/client.ts";
import { IdParams } from "#shared/contracts/common.ts";
import { NewSupply, Supplies, Supply } from "#shared/contracts/supplies.ts";
import { dayAsked, loadHouse } from "../facts/house.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { tagOf } from "../http/etag.ts";
import { ifMatchOf } from "../http/if-match.ts";
import { refuseStaleDelete } from "../http/put-once.ts";
import { granted, notFound } from "../problems.ts";
import { recordSupply } from "./record-supply.ts";
import { deleteSupply, findSupply, listSupplies, lockSupply, type SupplyRow } from "./store.ts";

const tags = ["supplies"];

export const supplyRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, clock }) => {
  const todayOf = async (tx: Tx, householdId: string) => dayAsked(await loadHouse(tx, householdId), clock, undefined);

  app.get("/api/supplies", { schema: { tags, summary: "Jars, lids, bags and dry goods, by kind and name", response: { 200: Supplies, ...refusals } } }, (request) =>
    within(request, async (tx, householdId) => {
      const today = await todayOf(tx, householdId);
      return (await listSupplies(tx, householdId)).map((row) => toContract(row, today));
    }),
  );

  app.get("/api/supplies/:id", { schema: { tags, summary: "One of them", params: IdParams, response: { 200: Supply, ...refusals } } }, async (request, reply) => {
    const { row, today } = await within(request, async (tx, householdId) => ({ row: await findSupply(tx, householdId, request.params.id), today: await todayOf(tx, householdId) }));
    if (!row) throw notFound("supply");
    return reply.header("etag", tagOf(row)).send(toContract(row, today));
  });

  app.put(
    "/api/supplies/:id",
    { schema: { tags, summary: "Write down what there is of it, or change it", params: IdParams, body: NewSupply, response: { 200: Supply, 201: Supply, ...refusals } } },
    async (request, reply) => {
      const { id } = request.params;
      const { made, row, today } = await within(request, async (tx, householdId) => ({
        ...granted(await recordSupply(tx, householdId, { id, body: request.body, ifMatch: ifMatchOf(request) })),
        today: await todayOf(tx, householdId),
      }));
      reply.header("etag", tagOf(row));
      if (made) return reply.code(201).header("location", `/api/supplies/${id}`).send(toContract(row, today));
      return reply.code(200).send(toContract(row, today));
    },
  );

  app.delete("/api/supplies/:id", { schema: { tags, summary: "Take it off the list", params: IdParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    await within(request, async (tx, householdId) => {
      const row = await lockSupply(tx, householdId, request.params.id);
      if (!row) throw notFound("supply");
      refuseStaleDelete(ifMatchOf(request), tagOf(row));
      await deleteSupply(tx, row);
    });
    return reply.code(204).send();
  });
};

function toContract({ id, kind, name, amount, unit, holdsMl, bestUntil, note }: SupplyRow, today: string): Supply {
  return {
    id,
    kind: kind as Supply["kind"],
    name,
    amount,
    unit: unit as Supply["unit"],
    ...(holdsMl === null ? {} : { holdsMl }),
    ...(bestUntil === null ? {} : { bestUntil }),
    ...(note === null ? {} : { note }),
    past: bestUntil !== null && bestUntil < today,
  };
}
