import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import type { Tx } from "#db/client.ts";
import { Bed, Beds, NewBed } from "#shared/contracts/beds.ts";
import { IdParams } from "#shared/contracts/common.ts";
import { freeByBed } from "#shared/planning/bed-room.ts";
import { loadGarden } from "../facts/garden.ts";
import { dayAsked, loadHouse } from "../facts/house.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { tagOf } from "../http/etag.ts";
import { ifMatchOf } from "../http/if-match.ts";
import { granted, notFound } from "../problems.ts";
import { recordBed, takeBedAway } from "./record-bed.ts";
import { findBed, listBeds, type BedRow } from "./store.ts";
import { toContract } from "./to-contract.ts";

const tags = ["beds"];

export const bedRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, clock, books }) => {
  const withRoom = async (tx: Tx, householdId: string, rows: readonly BedRow[]): Promise<Bed[]> => {
    const house = await loadHouse(tx, householdId);
    const garden = await loadGarden(tx, house, await books(), dayAsked(house, clock, undefined));
    const asked = new Set(rows.map((row) => row.id));
    const free = freeByBed({ ...garden, plantings: garden.plantings.filter(({ bedId }) => asked.has(bedId)) });
    return rows.map((row) => toContract(row, free.get(row.id) ?? 0));
  };
  const oneWithRoom = async (tx: Tx, householdId: string, row: BedRow): Promise<Bed> => {
    const [bed] = await withRoom(tx, householdId, [row]);
    return bed as Bed;
  };

  app.get("/api/beds", { schema: { tags, summary: "The beds, by name", response: { 200: Beds, ...refusals } } }, (request) =>
    within(request, async (tx, householdId) => withRoom(tx, householdId, await listBeds(tx))),
  );

  app.get("/api/beds/:id", { schema: { tags, summary: "One bed", params: IdParams, response: { 200: Bed, ...refusals } } }, async (request, reply) => {
    const { row, bed } = await within(request, async (tx, householdId) => {
      const found = await findBed(tx, householdId, request.params.id);
      if (!found) throw notFound("bed");
      return { row: found, bed: await oneWithRoom(tx, householdId, found) };
    });
    return reply.header("etag", tagOf(row)).send(bed);
  });

  app.put(
    "/api/beds/:id",
    { schema: { tags, summary: "Lay a bed out, or change it", params: IdParams, body: NewBed, response: { 200: Bed, 201: Bed, ...refusals } } },
    async (request, reply) => {
      const { id } = request.params;
      const { made, row, bed } = await within(request, async (tx, householdId) => {
        const put = granted(await recordBed(tx, householdId, { id, body: request.body, ifMatch: ifMatchOf(request) }));
        return { ...put, bed: await oneWithRoom(tx, householdId, put.row) };
      });
      reply.header("etag", tagOf(row));
      if (made) return reply.code(201).header("location", `/api/beds/${id}`).send(bed);
      return reply.code(200).send(bed);
    },
  );

  app.delete("/api/beds/:id", { schema: { tags, summary: "Take a bed away in which nothing stands", params: IdParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    granted(await within(request, (tx, householdId) => takeBedAway(tx, householdId, request.params.id, ifMatchOf(request))));
    return reply.code(204).send();
  });
};
