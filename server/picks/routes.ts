import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { IdParams } from "#shared/contracts/common.ts";
import { NewPick, Pick, Picks, PicksQuery } from "#shared/contracts/picks.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { granted, notFound } from "../problems.ts";
import { recordPick } from "./record-pick.ts";
import { findPick, listPicks, undoPick, type PickOfCrop } from "./store.ts";

const tags = ["picks"];

export const pickRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, answer, clock }) => {
  app.get(
    "/api/picks",
    { schema: { tags, summary: "Picks by day, until excluded; with undone=true those that were undone", querystring: PicksQuery, response: { 200: Picks, ...refusals } } },
    async (request, reply) => {
      const { undone, ...wanted } = request.query;
      return answer(request, reply, {
        restsOn: ["garden"],
        load: (tx, { householdId }) => listPicks(tx, householdId, { ...wanted, undone: undone === "true" }),
        reckon: (rows) => ({ body: rows.map(toContract) }),
      });
    },
  );

  app.get("/api/picks/:id", { schema: { tags, summary: "One pick", params: IdParams, response: { 200: Pick, ...refusals } } }, async (request, reply) =>
    answer(request, reply, {
      restsOn: ["garden"],
      load: async (tx, { householdId }) => {
        const row = await findPick(tx, householdId, request.params.id);
        if (!row) throw notFound("pick");
        return row;
      },
      reckon: (row) => ({ body: toContract(row) }),
    }),
  );

  app.put(
    "/api/picks/:id",
    { schema: { tags, summary: "Write a pick down, once", params: IdParams, body: NewPick, response: { 200: Pick, 201: Pick, ...refusals } } },
    async (request, reply) => {
      const { id } = request.params;
      const { made, row } = granted(await within(request, (tx, householdId) => recordPick(tx, householdId, id, request.body, clock)));
      if (made) return reply.code(201).header("location", `/api/picks/${id}`).send(toContract(row));
      return reply.code(200).send(toContract(row));
    },
  );

  app.delete("/api/picks/:id", { schema: { tags, summary: "Undo a pick; its row stays, marked", params: IdParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    if (!(await within(request, (tx, householdId) => undoPick(tx, householdId, request.params.id)))) throw notFound("pick");
    return reply.code(204).send();
  });
};

function toContract(row: PickOfCrop): Pick {
  const { id, sowingId, crop, pickedOn, grams, pieces, undoneAt } = row;
  return { id, sowingId, crop, pickedOn, grams, ...(pieces === null ? {} : { pieces }), undone: undoneAt !== null };
}
