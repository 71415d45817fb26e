import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { Today, TodayQuery } from "#shared/contracts/today.ts";
import { todayList } from "#shared/planning/today-list.ts";
import { loadHomestead } from "../facts/homestead.ts";
import { loadLarder } from "../facts/larder.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { toContract } from "./to-contract.ts";

export const todayRoutes: FastifyPluginAsyncZod<Deps> = async (app, { answer, books }) => {
  app.get(
    "/api/today",
    { schema: { tags: ["today"], summary: "What is urgent, ripe, to be sown, done and cooked", querystring: TodayQuery, response: { 200: Today, ...refusals } } },
    async (request, reply) => {
      const book = await books();
      return answer(request, reply, {
        restsOn: ["garden", "kitchen", "weather", "larder"],
        asOf: request.query.asOf,
        load: async (tx, house, day) => ({ ...(await loadHomestead(tx, house, book, day)), larder: await loadLarder(tx, book, day) }),
        reckon: ({ garden, kitchen, larder }) => ({ body: toContract(todayList(garden, kitchen, larder)) }),
      });
    },
  );
};
