import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { Larder, LarderQuery, OldestFirst, OldestQuery } from "#shared/contracts/larder.ts";
import { drawOldest, larderOverview } from "#shared/planning/larder-overview.ts";
import { dayAsked, loadHouse } from "../facts/house.ts";
import { loadLarder } from "../facts/larder.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { toContract, toOldestFirst } from "./to-contract.ts";

const tags = ["larder"];

export const larderRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, clock, books }) => {
  app.get(
    "/api/larder",
    { schema: { tags, summary: "What stands where, oldest first, and what to use first; with all=true what is used up too", querystring: LarderQuery, response: { 200: Larder, ...refusals } } },
    async (request) => {
      const { asOf, all } = request.query;
      const book = await books();
      const facts = await within(request, async (tx, householdId) => loadLarder(tx, book, dayAsked(await loadHouse(tx, householdId), clock, asOf)));
      return toContract(larderOverview(facts), all === "true");
    },
  );

  app.get(
    "/api/larder/oldest-first",
    { schema: { tags, summary: "From which lots so much of a crop or a recipe is taken, the oldest first; nothing is stored", querystring: OldestQuery, response: { 200: OldestFirst, ...refusals } } },
    async (request) => {
      const { crop = null, recipeId = null, grams = null, portions = null, asOf } = request.query;
      const book = await books();
      const facts = await within(request, async (tx, householdId) => loadLarder(tx, book, dayAsked(await loadHouse(tx, householdId), clock, asOf)));
      return toOldestFirst(drawOldest(facts, { crop, recipeId, amount: { grams, portions } }), portions !== null);
    },
  );
};
