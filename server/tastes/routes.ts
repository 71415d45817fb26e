import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { NewTaste, Taste, TasteParams, Tastes } from "#shared/contracts/tastes.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { notFound } from "../problems.ts";
import { deleteTaste, listTastes, titleOfRecipe, writeTaste } from "./store.ts";

const tags = ["tastes"];

/** One opinion for each recipe, so the recipe's id is its address, and saying it again or otherwise needs no version. */
export const tasteRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, answer }) => {
  app.get("/api/tastes", { schema: { tags, summary: "What the household thinks of its dishes", response: { 200: Tastes, ...refusals } } }, async (request, reply) =>
    answer(request, reply, { restsOn: ["kitchen"], load: (tx, { householdId }) => listTastes(tx, householdId), reckon: (body) => ({ body }) }),
  );

  app.put(
    "/api/tastes/:recipeId",
    { schema: { tags, summary: "Say what you think of a dish", params: TasteParams, body: NewTaste, response: { 200: Taste, 201: Taste, ...refusals } } },
    async (request, reply) => {
      const { recipeId } = request.params;
      const { made, taste } = await within(request, async (tx, householdId) => {
        const title = await titleOfRecipe(tx, householdId, recipeId);
        if (title === undefined) throw notFound("recipe");
        return { made: await writeTaste(tx, householdId, recipeId, request.body), taste: { recipeId, title, ...request.body } };
      });
      return reply.code(made ? 201 : 200).send(taste);
    },
  );

  app.delete("/api/tastes/:recipeId", { schema: { tags, summary: "Take an opinion back", params: TasteParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    await within(request, async (tx, householdId) => {
      if (!(await deleteTaste(tx, householdId, request.params.recipeId))) throw notFound("opinion");
    });
    return reply.code(204).send();
  });
};
