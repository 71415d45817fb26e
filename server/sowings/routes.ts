import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import type { Tx } from "#db/client.ts";
import { IdParams } from "#shared/contracts/common.ts";
import { Forecast, ForecastQuery, NewSowing, Sowing, SowingPreview, Sowings, SowingsQuery } from "#shared/contracts/sowings.ts";
import { sowingOutlook, sowingOutlooks, type SowingOutlook } from "#shared/planning/sowing-forecast.ts";
import { loadGarden, type KnownGarden, type KnownPlanting } from "../facts/garden.ts";
import { dayAsked, loadHouse } from "../facts/house.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { tagOf } from "../http/etag.ts";
import { ifMatchOf } from "../http/if-match.ts";
import { granted, notFound, Refusal } from "../problems.ts";
import { missing, recordSowing } from "./record-sowing.ts";
import { findSowing, listSowings, type SowingRow } from "./store.ts";
import { takeSowingOut } from "./take-sowing-out.ts";
import { thoughtOf } from "./thought-of.ts";
import { toContract, toForecast } from "./to-contract.ts";

const tags = ["sowings"];

export const sowingRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, answer, clock, books }) => {
  const gardenOf = async (tx: Tx, householdId: string): Promise<KnownGarden> => {
    const house = await loadHouse(tx, householdId);
    return loadGarden(tx, house, await books(), dayAsked(house, clock, undefined));
  };
  const slugs = async (): Promise<ReadonlySet<string>> => new Set((await books()).crops.keys());

  app.get("/api/sowings", { schema: { tags, summary: "Sowings and standing plants, each with its forecast", querystring: SowingsQuery, response: { 200: Sowings, ...refusals } } }, async (request, reply) => {
    const { asOf, crop } = request.query;
    const book = await books();
    return answer(request, reply, {
      restsOn: ["garden", "weather"],
      asOf,
      load: async (tx, house, day) => ({ rows: await listSowings(tx, house.householdId, crop), garden: await loadGarden(tx, house, book, day) }),
      reckon: ({ rows, garden }) => {
        const outlooks = sowingOutlooks(garden, new Set(rows.map((row) => row.id)));
        return { body: rows.map((row) => toContract(row, plantingIn(garden, row.id), outlooks.get(row.id) as SowingOutlook)) };
      },
    });
  });

  app.get("/api/sowings/:id", { schema: { tags, summary: "One sowing with its forecast", params: IdParams, response: { 200: Sowing, ...refusals } } }, async (request, reply) => {
    const book = await books();
    return answer(request, reply, {
      restsOn: ["garden", "weather"],
      load: async (tx, house, day) => {
        const row = await findSowing(tx, house.householdId, request.params.id);
        if (!row) throw notFound("sowing");
        return { row, garden: await loadGarden(tx, house, book, day) };
      },
      reckon: ({ row, garden }) => ({ body: sowingOf(row, garden), etag: tagOf(row) }),
    });
  });

  app.put(
    "/api/sowings/:id",
    { schema: { tags, summary: "Write a sowing down, or change it", params: IdParams, body: NewSowing, response: { 200: Sowing, 201: Sowing, ...refusals } } },
    async (request, reply) => {
      const { id } = request.params;
      const crops = await slugs();
      const { made, row, garden } = await within(request, async (tx, householdId) => {
        const put = granted(await recordSowing(tx, householdId, { id, body: request.body, ifMatch: ifMatchOf(request) }, crops));
        return { ...put, garden: await gardenOf(tx, householdId) };
      });
      const sowing = sowingOf(row, garden);
      reply.header("etag", tagOf(row));
      if (made) return reply.code(201).header("location", `/api/sowings/${id}`).send(sowing);
      return reply.code(200).send(sowing);
    },
  );

  app.delete("/api/sowings/:id", { schema: { tags, summary: "Take a sowing out of which no pick stands", params: IdParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    granted(await within(request, (tx, householdId) => takeSowingOut(tx, householdId, request.params.id, ifMatchOf(request))));
    return reply.code(204).send();
  });

  app.get(
    "/api/sowings/:id/forecast",
    { schema: { tags, summary: "The forecast of one sowing, as known on a day; of a standing plant for a season", params: IdParams, querystring: ForecastQuery, response: { 200: Forecast, ...refusals } } },
    async (request, reply) => {
      const { asOf, season } = request.query;
      const book = await books();
      return answer(request, reply, {
        restsOn: ["garden", "weather"],
        asOf,
        load: async (tx, house, day) => {
          if (!(await findSowing(tx, house.householdId, request.params.id))) throw notFound("sowing");
          return loadGarden(tx, house, book, day);
        },
        reckon: (garden) => ({ body: toForecast(sowingOutlook(garden, plantingIn(garden, request.params.id), season ?? null).forecast) }),
      });
    },
  );

  app.post(
    "/api/sowings/preview",
    { schema: { tags, summary: "What a sowing would come to; nothing is stored", body: NewSowing, response: { 200: SowingPreview, ...refusals } } },
    async (request) => {
      const { body } = request;
      const crops = await slugs();
      const garden = await within(request, async (tx, householdId) => {
        const problem = await missing(tx, householdId, body, crops);
        if (problem) throw new Refusal(problem);
        return gardenOf(tx, householdId);
      });
      const { forecast, fits } = sowingOutlook(garden, thoughtOf(body, garden));
      return { fits: [...fits], forecast: toForecast(forecast) };
    },
  );
};

function sowingOf(row: SowingRow, garden: KnownGarden): Sowing {
  const known = plantingIn(garden, row.id);
  return toContract(row, known, sowingOutlook(garden, known));
}

function plantingIn(garden: KnownGarden, id: string): KnownPlanting {
  const known = garden.plantings.find((planting) => planting.id === id);
  if (!known) throw notFound("sowing");
  return known;
}
