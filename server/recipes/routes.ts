import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { IdParams } from "#shared/contracts/common.ts";
import { RecipeDraft, RecipeToRead } from "#shared/contracts/recipe-reading.ts";
import { NewRecipe, Recipe, RecipeBriefs, Recipes, RecipesQuery } from "#shared/contracts/recipes.ts";
import { Scaled, ScaleAsked } from "#shared/contracts/scaling.ts";
import { loadHouse, systemOf } from "../facts/house.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { tagOf } from "../http/etag.ts";
import { ifMatchOf } from "../http/if-match.ts";
import { granted, notFound } from "../problems.ts";
import { takeRecipeOut } from "./delete-recipe.ts";
import { readRecipe } from "./read-recipe.ts";
import { saveRecipe } from "./save-recipe.ts";
import { scaleRecipe } from "./scale-recipe.ts";
import { findRecipe, listRecipes } from "./store.ts";
import { toBrief, toContract } from "./to-contract.ts";

const tags = ["recipes"];

export const recipeRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, answer, books }) => {
  app.get("/api/recipes", { schema: { tags, summary: "The recipes and plain methods, by title", querystring: RecipesQuery, response: { 200: Recipes, ...refusals } } }, async (request, reply) => {
    const { crop, way } = request.query;
    const book = await books();
    return answer(request, reply, {
      restsOn: ["kitchen"],
      load: async (tx, house) => ({ house, rows: await listRecipes(tx, house.householdId, { crop, way }) }),
      reckon: ({ house, rows }) => ({ body: rows.map((row) => toContract(row, book, house)) }),
    });
  });

  app.get("/api/recipes/brief", { schema: { tags, summary: "The recipes by title, as much of each as a list shows", response: { 200: RecipeBriefs, ...refusals } } }, async (request, reply) => {
    const book = await books();
    return answer(request, reply, {
      restsOn: ["kitchen"],
      load: async (tx, house) => ({ house, rows: await listRecipes(tx, house.householdId, { crop: undefined, way: undefined }) }),
      reckon: ({ house, rows }) => ({ body: rows.map((row) => toBrief(row, book, house)) }),
    });
  });

  app.get("/api/recipes/:id", { schema: { tags, summary: "One recipe, each ingredient as read", params: IdParams, response: { 200: Recipe, ...refusals } } }, async (request, reply) => {
    const book = await books();
    return answer(request, reply, {
      restsOn: ["kitchen"],
      load: async (tx, house) => {
        const row = await findRecipe(tx, house.householdId, request.params.id);
        if (!row) throw notFound("recipe");
        return { house, row };
      },
      reckon: ({ house, row }) => ({ body: toContract(row, book, house), etag: tagOf(row) }),
    });
  });

  app.put(
    "/api/recipes/:id",
    { schema: { tags, summary: "Write a recipe down, or change it", params: IdParams, body: NewRecipe, response: { 200: Recipe, 201: Recipe, ...refusals } } },
    async (request, reply) => {
      const { id } = request.params;
      const book = await books();
      const { house, put } = await within(request, async (tx, householdId) => ({
        put: granted(await saveRecipe(tx, householdId, { id, body: request.body, ifMatch: ifMatchOf(request) }, book)),
        house: await loadHouse(tx, householdId),
      }));
      const recipe = toContract(put.row, book, house);
      reply.header("etag", tagOf(put.row));
      if (put.made) return reply.code(201).header("location", `/api/recipes/${id}`).send(recipe);
      return reply.code(200).send(recipe);
    },
  );

  app.post(
    "/api/recipes/read",
    { schema: { tags, summary: "Read a pasted recipe into a draft; nothing is stored", body: RecipeToRead, response: { 200: RecipeDraft, ...refusals } } },
    async (request) => {
      const book = await books();
      const house = await within(request, (tx, householdId) => loadHouse(tx, householdId));
      return readRecipe(request.body, book, systemOf(house));
    },
  );

  app.post(
    "/api/recipes/:id/scaled",
    { schema: { tags, summary: "A recipe for more or less: both unit systems, what does not scale, whether it fits", params: IdParams, body: ScaleAsked, response: { 200: Scaled, ...refusals } } },
    async (request) => {
      const book = await books();
      const { house, row } = await within(request, async (tx, householdId) => ({ house: await loadHouse(tx, householdId), row: await findRecipe(tx, householdId, request.params.id) }));
      if (!row) throw notFound("recipe");
      return granted(scaleRecipe(row, request.body, book, house));
    },
  );

  app.delete("/api/recipes/:id", { schema: { tags, summary: "Take a recipe of one's own out", params: IdParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    const book = await books();
    granted(await within(request, (tx, householdId) => takeRecipeOut(tx, householdId, request.params.id, ifMatchOf(request), book)));
    return reply.code(204).send();
  });
};
