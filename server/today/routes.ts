import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { Today, TodayQuery } from "#shared/contracts/today.ts";
import { todayList } from "#shared/planning/today-list.ts";
import { loadHomestead } from "../facts/homestead.ts";
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
        restsOn: ["garden", "kitchen", "weather"],
        asOf: request.query.asOf,
        load: (tx, house, day) => loadHomestead(tx, house, book, day),
        reckon: ({ garden, kitchen }) => ({ body: toContract(todayList(garden, kitchen)) }),
      });
    },
  );
};
