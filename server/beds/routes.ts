import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { Bed, Beds, NewBed } from "#shared/contracts/beds.ts";
import { IdParams } from "#shared/contracts/common.ts";
import { freeByBed } from "#shared/planning/bed-room.ts";
import { loadGarden, type KnownGarden } from "../facts/garden.ts";
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

export const bedRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, answer, clock, books }) => {
  /** Beds with what stands free in them, in the order of the rows. */
  const withRoom = (rows: readonly BedRow[], garden: KnownGarden): Bed[] => {
    const asked = new Set(rows.map((row) => row.id));
    const free = freeByBed({ ...garden, plantings: garden.plantings.filter(({ bedId }) => asked.has(bedId)) });
    return rows.map((row) => toContract(row, free.get(row.id) ?? 0));
  };

  app.get("/api/beds", { schema: { tags, summary: "The beds, by name", response: { 200: Beds, ...refusals } } }, async (request, reply) => {
    const book = await books();
    return answer(request, reply, {
      restsOn: ["garden", "weather"],
      load: async (tx, house, day) => ({ rows: await listBeds(tx), garden: await loadGarden(tx, house, book, day) }),
      reckon: ({ rows, garden }) => ({ body: withRoom(rows, garden) }),
    });
  });

  app.get("/api/beds/:id", { schema: { tags, summary: "One bed", params: IdParams, response: { 200: Bed, ...refusals } } }, async (request, reply) => {
    const book = await books();
    return answer(request, reply, {
      restsOn: ["garden", "weather"],
      load: async (tx, house, day) => {
        const row = await findBed(tx, house.householdId, request.params.id);
        if (!row) throw notFound("bed");
        return { row, garden: await loadGarden(tx, house, book, day) };
      },
      reckon: ({ row, garden }) => ({ body: withRoom([row], garden)[0], etag: tagOf(row) }),
    });
  });

  app.put(
    "/api/beds/:id",
    { schema: { tags, summary: "Lay a bed out, or change it", params: IdParams, body: NewBed, response: { 200: Bed, 201: Bed, ...refusals } } },
    async (request, reply) => {
      const { id } = request.params;
      const book = await books();
      const { made, row, garden } = await within(request, async (tx, householdId) => {
        const put = granted(await recordBed(tx, householdId, { id, body: request.body, ifMatch: ifMatchOf(request) }));
        const house = await loadHouse(tx, householdId);
        return { ...put, garden: await loadGarden(tx, house, book, dayAsked(house, clock, undefined)) };
      });
      const [bed] = withRoom([row], garden) as [Bed];
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
