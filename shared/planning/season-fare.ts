/** How a plan fares in another course of the season: its batches are made as far as the produce goes, nothing else is, and the rest is eaten, given or lost. */
import { checkSeasonPlan, planByRule, type Batches, type Season } from "../engines/season-plan/index.ts";

export interface Fare {
  readonly pickedGrams: number;
  readonly lostGrams: number;
  readonly unmadeBatches: number;
}

export function fareIn(season: Season, planned: readonly Batches[]): Fare {
  const booked: Season = { ...season, agreed: planned, agreedUntil: season.weeks, frozenWeeks: season.weeks };
  const plan = planByRule(booked);
  const [course] = checkSeasonPlan(booked, plan).courses;
  const count = (lines: readonly Batches[]): number => lines.reduce((sum, { batches }) => sum + batches, 0);
  return { pickedGrams: pickedGrams(season), lostGrams: Math.round(course?.wasteGrams ?? 0), unmadeBatches: count(planned) - count(plan.planned) };
}

export function pickedGrams({ crops }: Season): number {
  return crops.reduce((sum, { harvestGrams }) => sum + (harvestGrams[0] ?? []).reduce((all, grams) => all + grams, 0), 0);
}
