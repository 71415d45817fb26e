import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { BedAdvice, BedAdviceQuery, FrostDates, FrostQuery, SowingAdvice, SowingAdviceQuery, TrackRecord, TrackRecordQuery } from "#shared/contracts/advice.ts";
import { IdParams } from "#shared/contracts/common.ts";
import { frostDatesOf } from "#shared/planning/frost-calendar.ts";
import { sowingAdviceForWeeks } from "#shared/planning/sowing-advice.ts";
import { sowingAdviceForBed } from "#shared/planning/still-ripens.ts";
import { trackRecordOf } from "#shared/planning/track-record.ts";
import { loadGarden } from "../facts/garden.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { notFound, Refusal } from "../problems.ts";
import { toBedAdvice, toSowingAdvice, toTrackRecord } from "./to-contract.ts";

const tags = ["advice"];

export const adviceRoutes: FastifyPluginAsyncZod<Deps> = async (app, { answer, books }) => {
  app.get("/api/frost-dates", { schema: { tags, summary: "Last frost of spring and first of autumn, of a season", querystring: FrostQuery, response: { 200: FrostDates, ...refusals } } }, async (request, reply) => {
    const { season, asOf } = request.query;
    const book = await books();
    return answer(request, reply, {
      restsOn: ["garden", "weather"],
      asOf,
      load: (tx, house, day) => loadGarden(tx, house, book, day),
      reckon: (garden) => ({ body: frostDatesOf(garden, season ?? null) }),
    });
  });

  app.get(
    "/api/sowing-advice",
    { schema: { tags, summary: "When to sow a crop, and how much, for the weeks in which it is wanted", querystring: SowingAdviceQuery, response: { 200: SowingAdvice, ...refusals } } },
    async (request, reply) => {
      const { asOf, cover = "open", variety = null, method, ...wanted } = request.query;
      const book = await books();
      if (!book.crops.has(wanted.crop)) throw new Refusal({ code: "bad-request", detail: "There is no such crop.", fields: [{ path: "crop", message: "is not a crop of the book" }] });
      return answer(request, reply, {
        restsOn: ["garden", "weather"],
        asOf,
        load: (tx, house, day) => loadGarden(tx, house, book, day),
        reckon: (garden) => ({ body: toSowingAdvice(sowingAdviceForWeeks(garden, { ...wanted, cover, variety, ...(method ? { method } : {}) })) }),
      });
    },
  );

  app.get(
    "/api/beds/:id/advice",
    { schema: { tags, summary: "What still makes sense to sow in a bed, with the chance that it ripens", params: IdParams, querystring: BedAdviceQuery, response: { 200: BedAdvice, ...refusals } } },
    async (request, reply) => {
      const { on, asOf } = request.query;
      const book = await books();
      return answer(request, reply, {
        restsOn: ["garden", "weather"],
        asOf,
        load: async (tx, house, day) => {
          const garden = await loadGarden(tx, house, book, day);
          if (!garden.beds.some((bed) => bed.id === request.params.id)) throw notFound("bed");
          return garden;
        },
        reckon: (garden) => ({ body: toBedAdvice(sowingAdviceForBed(garden, request.params.id, on ?? garden.asOf)) }),
      });
    },
  );

  app.get("/api/track-record", { schema: { tags, summary: "What was forecast for finished sowings, against what came", querystring: TrackRecordQuery, response: { 200: TrackRecord, ...refusals } } }, async (request, reply) => {
    const { asOf } = request.query;
    const book = await books();
    return answer(request, reply, {
      restsOn: ["garden", "weather"],
      asOf,
      load: (tx, house, day) => loadGarden(tx, house, book, day),
      reckon: (garden) => ({ body: toTrackRecord(trackRecordOf(garden)) }),
    });
  });
};
