import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { GramAccount, GramAccountQuery } from "#shared/contracts/gram-account.ts";
import { seasonOfDay } from "#shared/engines/larder/index.ts";
import { seasonAccount, type CropAccountRow } from "#shared/planning/season-account.ts";
import { dayAsked, loadHouse } from "../facts/house.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { loadAccount } from "./load-account.ts";

export const gramAccountRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, clock, books }) => {
  app.get(
    "/api/gram-account",
    { schema: { tags: ["gram-account"], summary: "Where every gram of a season's picking went, crop by crop; this season unless asked otherwise", querystring: GramAccountQuery, response: { 200: GramAccount, ...refusals } } },
    async (request) => {
      const { season, crop, asOf } = request.query;
      const book = await books();
      const { facts, today } = await within(request, async (tx, householdId) => {
        const house = await loadHouse(tx, householdId);
        const day = dayAsked(house, clock, asOf);
        return { facts: await loadAccount(tx, house, book, day), today: day };
      });
      const account = seasonAccount(facts, season ?? seasonOfDay(today, facts.southern));
      return { ...account, seasons: [...account.seasons], crops: account.crops.filter((row) => crop === undefined || row.crop === crop).map(toContract) };
    },
  );
};

function toContract(row: CropAccountRow): GramAccount["crops"][number] {
  return {
    crop: row.crop,
    name: row.name,
    pickedGrams: row.picked,
    trimmedGrams: row.trimmed,
    eatenGrams: row.eaten,
    batchGrams: row.batches,
    givenGrams: row.given,
    compostedGrams: row.composted,
    onHandGrams: row.onHand,
    unaccountedGrams: row.unaccounted,
    unaccounted: { notPutAwayGrams: row.notPutAway, missingAtRecountGrams: row.missingAtRecounts, takenButNotThereGrams: row.owed },
    onHandPastGrams: row.onHandPast,
    text: row.text,
  };
}
