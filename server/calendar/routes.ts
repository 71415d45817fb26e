import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { Calendar, CalendarQuery } from "#shared/contracts/calendar.ts";
import { gardenOutlook } from "#shared/planning/garden-outlook.ts";
import type { GardenOutlook } from "#shared/planning/outlook-types.ts";
import { yearWindow } from "#shared/planning/season.ts";
import { loadHomestead } from "../facts/homestead.ts";
import { keptUpTo } from "../facts/kept.ts";
import { loadRecipeParts } from "../facts/recipe-parts.ts";
import { isUpToDate, type StandingSeasons } from "../facts/standing-season.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { toContract } from "./to-contract.ts";

export interface CalendarDeps extends Deps {
  readonly standing: StandingSeasons;
}

/** What the weeks hold does not change with what is put into the larder; only what is said of parts in store does. */
const OUTLOOK_BYTES = 8 * 1024 * 1024;
const BYTES_A_WEEK = 12_000;

export const calendarRoutes: FastifyPluginAsyncZod<CalendarDeps> = async (app, { answer, books, standing }) => {
  const outlooks = keptUpTo<GardenOutlook>(OUTLOOK_BYTES);

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
        restsOn: ["garden", "kitchen", "weather", "larder"],
        also: (householdId) => standing.find(householdId)?.version ?? "",
        asOf,
        load: async (tx, house, day) => {
          const { householdId, stamps } = house;
          const year = yearWindow(day);
          const window = { from: from ?? year.from, weeks: weeks ?? year.weeks };
          const place = { name: `${householdId} ${day} ${window.from} ${window.weeks}`, stamp: stamps && `${stamps.garden} ${stamps.kitchen} ${stamps.weather}` };
          const known = outlooks.find(place);
          const homestead = known ? null : await loadHomestead(tx, house, book, day);
          const stood = standing.find(householdId);
          const plan = stood && stood.answer.asOf === day ? { answer: stood.answer, upToDate: isUpToDate(stood, stamps) } : null;
          return { window, place, known, homestead, plan, parts: await loadRecipeParts(tx, householdId, book, day) };
        },
        reckon: ({ window, place, known, homestead, plan, parts }) => {
          const outlook = known ?? gardenOutlook((homestead as NonNullable<typeof homestead>).garden, (homestead as NonNullable<typeof homestead>).kitchen, window);
          if (!known) outlooks.keep(place, outlook, BYTES_A_WEEK * window.weeks);
          return { body: toContract(outlook, plan, parts) };
        },
      });
    },
  );
};
