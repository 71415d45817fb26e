import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import type { Tx } from "#db/client.ts";
import { IdParams } from "#shared/contracts/common.ts";
import { NewPlace, Place, Places, Room, RoomQuery } from "#shared/contracts/places.ts";
import { lotsToday } from "#shared/planning/larder-lots.ts";
import { placesToday, roomFor } from "#shared/planning/larder-rooms.ts";
import { dayAsked, loadHouse } from "../facts/house.ts";
import { loadLarder } from "../facts/larder.ts";
import { placeWords } from "../facts/larder-words.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { tagOf } from "../http/etag.ts";
import { ifMatchOf } from "../http/if-match.ts";
import { granted, notFound } from "../problems.ts";
import { recordPlace, takePlaceAway } from "./record-place.ts";
import { findPlace } from "./store.ts";

const tags = ["places"];

export const placeRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, clock, books }) => {
  const larder = async (tx: Tx, householdId: string, asOf?: string) => {
    const house = await loadHouse(tx, householdId);
    return loadLarder(tx, await books(), dayAsked(house, clock, asOf));
  };
  const all = async (tx: Tx, householdId: string): Promise<Place[]> => {
    const facts = await larder(tx, householdId);
    return placesToday(facts, lotsToday(facts)).map(placeWords);
  };
  const one = async (tx: Tx, householdId: string, id: string): Promise<Place> => (await all(tx, householdId)).find((place) => place.id === id) as Place;

  app.get("/api/places", { schema: { tags, summary: "Where things are kept, by name", response: { 200: Places, ...refusals } } }, (request) => within(request, all));

  app.get("/api/places/:id", { schema: { tags, summary: "One place", params: IdParams, response: { 200: Place, ...refusals } } }, async (request, reply) => {
    const { row, place } = await within(request, async (tx, householdId) => {
      const found = await findPlace(tx, householdId, request.params.id);
      if (!found) throw notFound("place");
      return { row: found, place: await one(tx, householdId, found.id) };
    });
    return reply.header("etag", tagOf(row)).send(place);
  });

  app.get(
    "/api/places/:id/room",
    { schema: { tags, summary: "Whether so many litres, or so many grams that are not frozen yet, fit into a place", params: IdParams, querystring: RoomQuery, response: { 200: Room, ...refusals } } },
    async (request) => {
      const { litres = null, grams = null, asOf } = request.query;
      const facts = await within(request, (tx, householdId) => larder(tx, householdId, asOf));
      const room = roomFor(facts, request.params.id, { litres, grams });
      if (!room) throw notFound("place");
      return { ...room, days: room.days.map((day) => ({ ...day })), eatFirst: room.eatFirst.map((line) => ({ ...line })) };
    },
  );

  app.put(
    "/api/places/:id",
    { schema: { tags, summary: "Name a place, or change it", params: IdParams, body: NewPlace, response: { 200: Place, 201: Place, ...refusals } } },
    async (request, reply) => {
      const { id } = request.params;
      const { made, row, place } = await within(request, async (tx, householdId) => {
        const put = granted(await recordPlace(tx, householdId, { id, body: request.body, ifMatch: ifMatchOf(request) }));
        return { ...put, place: await one(tx, householdId, id) };
      });
      reply.header("etag", tagOf(row));
      if (made) return reply.code(201).header("location", `/api/places/${id}`).send(place);
      return reply.code(200).send(place);
    },
  );

  app.delete("/api/places/:id", { schema: { tags, summary: "Take a place away in which nothing ever stood", params: IdParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    granted(await within(request, (tx, householdId) => takePlaceAway(tx, householdId, request.params.id, ifMatchOf(request))));
    return reply.code(204).send();
  });
};
