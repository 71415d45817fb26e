/** Forecasts kept from one request to the next, for as long as the weather they were made from is what it was. */
import type { PlantingForecast } from "#shared/engines/harvest-forecast/index.ts";
import type { Outcome } from "#shared/kernel/outcome.ts";
import type { ForecastMemory, KeptOutlook } from "#shared/planning/forecast-memory.ts";
import type { House } from "./house.ts";
import { keptUpTo, type Kept } from "./kept.ts";
import type { Reference } from "./reference.ts";

/** Some thousand forecasts: those of a garden of five years for the calendar, the day's list and the list of sowings. */
const MOST_BYTES = 16 * 1024 * 1024;
/** Days, grams and curve of one scenario. */
const BYTES_A_SCENARIO = 48;

/** The crops of one garden's calendar, added up by week: what is asked for again after every entry. */
const MOST_OUTLOOK_BYTES = 16 * 1024 * 1024;
/** Grams, and whether it is in harvest, of one week in one scenario. */
const BYTES_A_WEEK = 9;

interface Shelf {
  readonly forecasts: Kept<Outcome<PlantingForecast>>;
  readonly outlooks: Kept<KeptOutlook>;
}

/** One shelf for each book, because a crop is known on it by its name alone. */
const shelves = new WeakMap<Reference, Shelf>();

/** Nothing is remembered of a household whose stamps are not known. */
export function rememberedBy({ householdId, stamps, normals }: House, book: Reference): { readonly memory?: ForecastMemory } {
  if (stamps === null) return {};
  let shelf = shelves.get(book);
  if (!shelf) shelves.set(book, (shelf = { forecasts: keptUpTo(MOST_BYTES), outlooks: keptUpTo(MOST_OUTLOOK_BYTES) }));
  const { forecasts, outlooks } = shelf;
  const stamp = `${stamps.weather} ${JSON.stringify(normals)}`;
  // the seed of made weather follows from the household's id
  const at = (question: string) => ({ name: `${householdId} ${question}`, stamp });
  return {
    memory: {
      find: (question) => forecasts.find(at(question)),
      keep: (question, forecast) => forecasts.keep(at(question), forecast, BYTES_A_SCENARIO * forecast.value.firstPickDay.length + question.length),
      outlooks: {
        find: (place) => outlooks.find(at(place)),
        keep: (place, kept) => outlooks.keep(at(place), kept, bytesOf(kept)),
      },
    },
  };
}

function bytesOf({ outlook: { supply, kept } }: KeptOutlook): number {
  return BYTES_A_WEEK * supply.weeks.length * supply.scenarios.length * (supply === kept ? 1 : 2);
}
