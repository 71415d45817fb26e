/** The steps in which a level can change at all: two plans differ by a multiple of it, so a proof may stop just short of one step. */
import { KG } from "./model-columns.ts";
import type { Level, Season } from "./types.ts";

/** In the programme's units; 0 where nothing is known. */
export function grainOf(season: Season, level: Level): number {
  const shares = sharesOf(season);
  if (shares === 0) return 0;
  switch (level) {
    case "wasteGrams":
    case "freshShortGrams": {
      // all grams of a crop flow in whole amounts of what its harvests, limits and batches have in common
      const all = season.crops.flatMap(({ crop, freshGrams, giveGrams, harvestGrams }) => [...freshGrams, ...giveGrams, ...harvestGrams.flat(), ...season.methods.flatMap(({ uses }) => uses.filter((use) => use.crop === crop).map(({ grams }) => grams))]);
      return common(all) / shares / KG;
    }
    case "minutes":
      return common(season.methods.flatMap(({ perBatch, perSession }) => [perBatch["hands-on"] ?? 0, perSession["hands-on"] ?? 0])) / (season.methods.some(({ recourse }) => recourse) ? shares : 1);
    case "earliness":
      return 1 / (season.methods.some(({ recourse }) => recourse) ? shares : 1);
    case "changes":
      return 1;
    case "liking":
      if (season.methods.some(({ portions }) => !Number.isInteger(portions))) return 0;
      return common(season.tastes.flatMap(({ tiers }) => tiers.flatMap(({ portions, worth }) => [worth, portions * worth]))) / shares;
    case "targetShort":
      return 0;
  }
}

/** Chances in whole parts of this number; 0 where they are not simple shares. */
function sharesOf(season: Season): number {
  for (let parts = 1; parts <= 1000; parts++) {
    if (season.scenarios.every(({ chance }) => Math.abs(chance * parts - Math.round(chance * parts)) < 1e-9)) return parts;
  }
  return 0;
}

/** Greatest common divisor; 0 for anything that is not whole. */
function common(amounts: readonly number[]): number {
  let divisor = 0;
  for (const amount of amounts) {
    if (!Number.isInteger(amount)) return 0;
    let [a, b] = [divisor, amount];
    while (b > 0) [a, b] = [b, a % b];
    divisor = a;
  }
  return divisor;
}
