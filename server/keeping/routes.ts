import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { KeepingAnswer, KeepingFoods, KeepingQuery } from "#shared/contracts/keeping.ts";
import { keepAnswer } from "#shared/engines/preservation/index.ts";
import { loadHouse } from "../facts/house.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { foodMeant } from "./find-food.ts";
import { keepingFoods } from "./foods.ts";
import { toContract } from "./to-contract.ts";

const tags = ["keeping"];

export const keepingRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, books }) => {
  app.get("/api/keeping/foods", { schema: { tags, summary: "What can be asked about keeping: crops and tested foods", response: { 200: KeepingFoods, ...refusals } } }, async () => keepingFoods(await books()));

  app.get("/api/keeping", { schema: { tags, summary: "Can I keep this? Tested figures with their source, or what to do instead", querystring: KeepingQuery, response: { 200: KeepingAnswer, ...refusals } } }, async (request) => {
    const { food, way, jar, canner, altitudeM } = request.query;
    const book = await books();
    const house = await within(request, (tx, householdId) => loadHouse(tx, householdId));
    const meant = foodMeant(food, way, book);
    // minutes rise with the height above the sea, so a height that nobody gave may not choose them
    const height = altitudeM ?? (house.placed ? house.altitudeM : null);
    const answer = keepAnswer({ ...meant, words: food, way, jar: jar ?? null, canner: canner ?? null, altitudeM: height }, book.preservation);
    return toContract(meant.name, way, height, answer);
  });
};
