import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { Calendar, CalendarQuery } from "#shared/contracts/calendar.ts";
import { gardenOutlook } from "#shared/planning/garden-outlook.ts";
import { yearWindow } from "#shared/planning/season.ts";
import { loadHomestead } from "../facts/homestead.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { toContract } from "./to-contract.ts";

export const calendarRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, clock, books }) => {
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
    async (request) => {
      const { from, weeks, asOf } = request.query;
      const book = await books();
      const { garden, kitchen } = await within(request, (tx, householdId) => loadHomestead(tx, householdId, book, clock, asOf));
      const year = yearWindow(garden.asOf);
      return toContract(gardenOutlook(garden, kitchen, { from: from ?? year.from, weeks: weeks ?? year.weeks }));
    },
  );
};
