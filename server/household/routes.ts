import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { emptyHousehold } from "#db/provision.ts";
import { Household, NewHousehold } from "#shared/contracts/household.ts";
import { bookEats } from "#shared/planning/book-eats.ts";
import type { Reference } from "../facts/reference.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { ifMatchOf } from "../http/if-match.ts";
import { granted } from "../problems.ts";
import { changeHousehold, tagOfHousehold } from "./change-household.ts";
import { findHousehold } from "./store.ts";
import { toContract } from "./to-contract.ts";

const tags = ["household"];

export const householdRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, answer, books }) => {
  app.get("/api/household", { schema: { tags, summary: "The household", response: { 200: Household, ...refusals } } }, async (request, reply) => {
    const { eats } = await books();
    return answer(request, reply, {
      restsOn: ["kitchen"],
      load: (tx, { householdId }) => findHousehold(tx, householdId),
      reckon: (row) => ({ body: toContract(row, eatsOf(eats, row.people)), etag: tagOfHousehold(row) }),
    });
  });

  app.put(
    "/api/household",
    { schema: { tags, summary: "Change the household", body: NewHousehold, response: { 200: Household, ...refusals } } },
    async (request, reply) => {
      const { crops, eats } = await books();
      const row = granted(await within(request, (tx, householdId) => changeHousehold(tx, householdId, request.body, ifMatchOf(request), new Set(crops.keys()))));
      return reply.header("etag", tagOfHousehold(row)).send(toContract(row, eatsOf(eats, row.people)));
    },
  );

  app.delete("/api/household", { schema: { tags, summary: "Delete everything the household has and start afresh", response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    await within(request, emptyHousehold);
    return reply.code(204).send();
  });
};

const eatsOf = (eats: Reference["eats"], people: number): Household["eats"] => [...bookEats(eats, people)].map(([crop, gramsPerWeek]) => ({ crop, gramsPerWeek }));
