import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { IdParams } from "#shared/contracts/common.ts";
import { NewSighting, Sighting, SightingParams } from "#shared/contracts/sightings.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { tagOf } from "../http/etag.ts";
import { ifMatchOf } from "../http/if-match.ts";
import { refuseStaleDelete } from "../http/put-once.ts";
import { granted, notFound } from "../problems.ts";
import { recordSighting } from "./record-sighting.ts";
import { deleteSighting, findSighting, listSightings, lockSighting, sowingIsThere, type SightingRow } from "./store.ts";

const tags = ["sightings"];
const one = "/api/sowings/:id/sightings/:sightingId";

export const sightingRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, clock }) => {
  app.get(
    "/api/sowings/:id/sightings",
    { schema: { tags, summary: "What was seen of a sowing, oldest first", params: IdParams, response: { 200: z.array(Sighting), ...refusals } } },
    (request) =>
      within(request, async (tx, householdId) => {
        if (!(await sowingIsThere(tx, householdId, request.params.id))) throw notFound("sowing");
        return (await listSightings(tx, householdId, request.params.id)).map(toContract);
      }),
  );

  app.put(
    one,
    { schema: { tags, summary: "Write down what was seen, or change it", params: SightingParams, body: NewSighting, response: { 200: Sighting, 201: Sighting, ...refusals } } },
    async (request, reply) => {
      const { id: sowingId, sightingId: id } = request.params;
      const asked = { id, sowingId, body: request.body, ifMatch: ifMatchOf(request) };
      const { made, row } = granted(await within(request, (tx, householdId) => recordSighting(tx, householdId, asked, clock)));
      reply.header("etag", tagOf(row));
      if (made) return reply.code(201).header("location", `/api/sowings/${sowingId}/sightings/${id}`).send(toContract(row));
      return reply.code(200).send(toContract(row));
    },
  );

  app.get(one, { schema: { tags, summary: "One sighting", params: SightingParams, response: { 200: Sighting, ...refusals } } }, async (request, reply) => {
    const { id: sowingId, sightingId } = request.params;
    const row = await within(request, (tx, householdId) => findSighting(tx, householdId, sightingId));
    if (row?.sowingId !== sowingId) throw notFound("sighting");
    return reply.header("etag", tagOf(row)).send(toContract(row));
  });

  app.delete(one, { schema: { tags, summary: "Take a sighting back", params: SightingParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    const { id: sowingId, sightingId } = request.params;
    await within(request, async (tx, householdId) => {
      const row = await lockSighting(tx, householdId, sightingId);
      if (row?.sowingId !== sowingId) throw notFound("sighting");
      refuseStaleDelete(ifMatchOf(request), tagOf(row));
      await deleteSighting(tx, row);
    });
    return reply.code(204).send();
  });
};

const toContract = (row: SightingRow): Sighting => ({ id: row.id, stage: row.stage as Sighting["stage"], seenOn: row.seenOn });
