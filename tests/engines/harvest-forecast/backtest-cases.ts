/** The fixed list of crops and start days of the back-test; the engine's README carries the same list. */
import type { Planting } from "#shared/engines/harvest-forecast/index.ts";
import type { CropFacts } from "#shared/kernel/crop-facts.ts";
import { cropOf } from "./records.ts";

export interface BacktestCase {
  readonly crop: CropFacts;
  /** Month and day. */
  readonly start: string;
  readonly method: "direct" | "transplant";
}

const LIST: readonly (readonly [slug: string, method: "direct" | "transplant", ...starts: string[]])[] = [
  ["broad-bean", "direct", "03-10"],
  ["pea", "direct", "04-01", "05-01"],
  ["spinach", "direct", "04-01"],
  ["radish", "direct", "04-15"],
  ["lettuce", "direct", "04-15", "06-01"],
  ["carrot", "direct", "04-15", "06-01"],
  ["beetroot", "direct", "04-20", "06-10"],
  ["onion", "direct", "04-05"],
  ["potato-early", "direct", "04-10"],
  ["kohlrabi", "direct", "05-01"],
  ["cabbage", "transplant", "05-05"],
  ["broccoli", "transplant", "05-10", "07-01"],
  ["cauliflower", "transplant", "05-10"],
  ["french-bean", "direct", "05-20", "06-20"],
  ["courgette", "direct", "05-20"],
  ["cucumber", "direct", "05-25"],
  ["tomato", "transplant", "06-01"],
  ["cherry-tomato", "transplant", "06-01"],
];

export const BACKTEST_CASES: readonly BacktestCase[] = LIST.flatMap(([slug, method, ...starts]) => starts.map((start) => ({ crop: cropOf(slug), method, start })));

/** A planting of a case on a day; its size does not matter for dates. */
export function plantingOn(day: number, { crop, method }: Pick<BacktestCase, "crop" | "method">): Planting {
  return {
    id: `${crop.slug} ${method}`,
    crop,
    method,
    sownOn: method === "direct" ? day : null,
    plantedOutOn: method === "transplant" ? day : null,
    rowM: 5,
    plants: null,
    areaM2: null,
    standsSince: null,
    season: null,
    cover: "open",
    sightings: [],
    picks: [],
  };
}
