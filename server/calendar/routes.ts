import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { Calendar, CalendarQuery } from "#shared/contracts/calendar.ts";
import { gardenOutlook } from "#shared/planning/garden-outlook.ts";
import { yearWindow } from "#shared/planning/season.ts";
import { loadHomestead } from "../facts/homestead.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { toContract } from "./to-contract.ts";

export const calendarRoutes: FastifyPluginAsyncZod<Deps> = async (app, { answer, books }) => {
  app.get(
    "/api/calendar",
    {
      schema: {
        tags: ["calendar"],
        summary: "Weeks in a row: what ripens, what is over, what to do with it; a year unless asked otherwise",
        querystring: CalendarQuery,
        response: { 200: Calendar, ...refusals },
      },
    },
    async (request, reply) => {
      const { from, weeks, asOf } = request.query;
      const book = await books();
      return answer(request, reply, {
        restsOn: ["garden", "kitchen", "weather"],
        asOf,
        load: (tx, house, day) => loadHomestead(tx, house, book, day),
        reckon: ({ garden, kitchen }) => {
          const year = yearWindow(garden.asOf);
          return { body: toContract(gardenOutlook(garden, kitchen, { from: from ?? year.from, weeks: weeks ?? year.weeks })) };
        },
      });
    },
  );
};
