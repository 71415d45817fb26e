import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { DaysRemoved, DaysStored, Normals, WeatherDaysQuery, WeatherHeld } from "#shared/contracts/weather.ts";
import { granted } from "../problems.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { readDays } from "./read-days.ts";
import { deleteDays, replaceDays, replaceNormals, weatherHeld } from "./store.ts";

const MOST_BYTES = 5 * 1024 * 1024;
const tags = ["weather"];

export const weatherRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, answer }) => {
  app.get("/api/weather", { schema: { tags, summary: "What weather is known", response: { 200: WeatherHeld, ...refusals } } }, async (request, reply) =>
    answer(request, reply, {
      // the normals stand with the household
      restsOn: ["garden", "weather"],
      load: (tx, { householdId }) => weatherHeld(tx, householdId),
      reckon: ({ normals, ...held }) => ({ body: { ...held, normals: normals ? { months: normals } : null } }),
    }),
  );

  app.put(
    "/api/weather/normals",
    { schema: { tags, summary: "Twelve monthly means, typed in by hand", body: Normals, response: { 200: Normals, ...refusals } } },
    (request) =>
      within(request, async (tx, householdId) => {
        await replaceNormals(tx, householdId, request.body);
        return request.body;
      }),
  );

  app.delete(
    "/api/weather/days",
    { schema: { tags, summary: "Take days out of the record, until excluded", querystring: WeatherDaysQuery, response: { 200: DaysRemoved, ...refusals } } },
    async (request) => ({ days: await within(request, (tx, householdId) => deleteDays(tx, householdId, request.query)) }),
  );

  // daily weather is the one thing that does not come as JSON
  await app.register(async (csvOnly: typeof app) => {
    csvOnly.removeAllContentTypeParsers();
    csvOnly.addContentTypeParser("text/csv", { parseAs: "string", bodyLimit: MOST_BYTES }, (_request, body, done) => done(null, body));
    csvOnly.put(
      "/api/weather/days",
      {
        bodyLimit: MOST_BYTES,
        schema: {
          tags,
          summary: "Daily minima and maxima as CSV with the columns date, tmax_c and tmin_c; replaced by date, all or none",
          consumes: ["text/csv"],
          body: z.string("must be CSV with the columns date, tmax_c and tmin_c"),
          response: { 200: DaysStored, ...refusals },
        },
      },
      (request) => {
        const rows = granted(readDays(request.body));
        return within(request, async (tx, householdId) => {
          await replaceDays(tx, householdId, rows);
          return { days: rows.length };
        });
      },
    );
  });
};
