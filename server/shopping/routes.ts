import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { Shopping, ShoppingQuery, TakeOut, TakeOutQuery } from "#shared/contracts/shopping.ts";
import { weekEnd, weekOf } from "#shared/kernel/iso-week.ts";
import { addDays, yearOf } from "#shared/kernel/local-date.ts";
import { dayWords } from "#shared/kernel/words.ts";
import { gardenOutlook } from "#shared/planning/garden-outlook.ts";
import { batchesOfWeek, furtherLines, reservedBefore, shareUntil } from "#shared/planning/week-dishes.ts";
import { shoppingList } from "#shared/planning/shopping-list.ts";
import { takeOutTonight } from "#shared/planning/take-out.ts";
import { loadHomestead } from "../facts/homestead.ts";
import { dayAsked, loadHouse, systemOf } from "../facts/house.ts";
import { loadLarder } from "../facts/larder.ts";
import { readIngredients, recipeUse } from "../facts/recipe-use.ts";
import { partsOf, recipeOf } from "../facts/stored-recipe.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { dishesOn, recipesOf, suppliesThere } from "./store.ts";

const tags = ["shopping"];

export const shoppingRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, clock, books }) => {
  app.get(
    "/api/shopping",
    { schema: { tags, summary: "What a week's dishes need, split in larder, garden and shop; this week unless asked otherwise", querystring: ShoppingQuery, response: { 200: Shopping, ...refusals } } },
    async (request) => {
      const book = await books();
      const { loaded, week } = await within(request, async (tx, householdId) => {
        const house = await loadHouse(tx, householdId);
        const day = dayAsked(house, clock, request.query.asOf);
        const asked = request.query.week ?? weekOf(day);
        const homestead = await loadHomestead(tx, house, book, day);
        const batches = batchesOfWeek(homestead.kitchen, asked);
        const rows = await recipesOf(tx, [...batches.keys()]);
        const dishes = rows.map((row) => ({ recipe: recipeUse(row, book, systemOf(house)), batches: batches.get(row.id) ?? 1, further: furtherLines(readIngredients(recipeOf(row), book, systemOf(house))) }));
        return { week: asked, loaded: { ...homestead, dishes, larder: await loadLarder(tx, book, day), supplies: await suppliesThere(tx) } };
      });
      const { garden, kitchen, ...facts } = loaded;
      const crops = gardenOutlook(garden, kitchen, { from: week, weeks: 1 }).weeks[0]?.crops ?? [];
      const by = request.query.by ?? weekEnd(week);
      const gardenLow = new Map(crops.map((crop) => [crop.crop, Math.max(0, crop.grams.low - crop.pickedGrams) * shareUntil(by, week, garden.asOf)]));
      const list = shoppingList({ ...facts, gardenLow, reserved: reservedBefore(kitchen, week, garden.asOf), byWords: `by ${dayWords(by, yearOf(garden.asOf))}`, names: new Map([...book.crops].map(([slug, crop]) => [slug, crop.name])) });
      return { week, headline: list.headline, crops: list.crops.map((row) => ({ ...row })), further: list.further.map((row) => ({ ...row })), supplies: list.supplies.map((row) => ({ ...row })), shop: list.shop.map((row) => ({ ...row })), garden: list.garden.map((row) => ({ ...row })), larder: list.larder.map((row) => ({ ...row })) };
    },
  );

  app.get(
    "/api/take-out",
    { schema: { tags, summary: "What comes out of the freezer tonight for the dishes of tomorrow", querystring: TakeOutQuery, response: { 200: TakeOut, ...refusals } } },
    async (request) => {
      const book = await books();
      const { on, lines } = await within(request, async (tx, householdId) => {
        const day = dayAsked(await loadHouse(tx, householdId), clock, request.query.asOf);
        const rows = await recipesOf(tx, await dishesOn(tx, addDays(day, 1)));
        const parts = rows.flatMap((row) => partsOf(recipeOf(row)).map((recipeId) => ({ dish: row.title, recipeId })));
        return { on: day, lines: parts.length === 0 ? [] : takeOutTonight(await loadLarder(tx, book, day), parts) };
      });
      const lots = lines.map(({ one, place, amount, dish, text }) => ({ lotId: one.lot.id, title: one.lot.title, placeId: place.id, placeName: place.name, ...amount, for: dish, text }));
      return { on, headline: lots.length === 0 ? "Nothing has to come out of the freezer tonight." : `${lots.length} ${lots.length === 1 ? "lot comes" : "lots come"} out of the freezer tonight.`, lots };
    },
  );
};
