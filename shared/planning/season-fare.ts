/**
 * How a plan fares in another course of the season: its batches are made as far as the produce goes, and what is over is frozen plainly as far as
 * freezer, bags and hands go, because everybody does that on the day. The rest is eaten, given or lost.
 */
import { courseInYear, fareOf, type Method, type Season, type SeasonPlan } from "../engines/season-plan/index.ts";

export interface Fare {
  readonly pickedGrams: number;
  readonly lostGrams: number;
  /** Of the batches planned, so many could not be made. */
  readonly unmadeBatches: number;
  /** Frozen besides, as it comes. */
  readonly moreBatches: number;
}

const MORE = "more ";

/** `inYear`: the same season with that year's harvests. */
export function fareIn(season: Season, inYear: Season, plan: SeasonPlan): Fare {
  const freely = season.methods.filter(({ way, sessionBatches }) => way === "freeze" && sessionBatches.max > 0).map((method): Method => ({ ...method, id: `${MORE}${method.id}`, recourse: true }));
  const asked: Season = { ...season, methods: [...season.methods, ...freely] };
  const year = { id: inYear.scenarios[0]?.id ?? "", chance: 1, harvestGrams: inYear.crops.map(({ harvestGrams }) => harvestGrams[0] ?? []) };
  const fare = fareOf(asked, plan, [year])?.middle;
  const more = courseInYear(asked, plan, year).made.filter(({ method }) => method.startsWith(MORE));
  return { pickedGrams: pickedGrams(inYear), lostGrams: Math.round(fare?.lostGrams ?? 0), unmadeBatches: fare?.notMade ?? 0, moreBatches: more.reduce((sum, { batches }) => sum + batches, 0) };
}

export function pickedGrams({ crops }: Season): number {
  return crops.reduce((sum, { harvestGrams }) => sum + (harvestGrams[0] ?? []).reduce((all, grams) => all + grams, 0), 0);
}
