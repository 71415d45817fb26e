/** The season's plan that stands for each household: the last one worked out, in memory only, with the stamps of what it rests on. After a restart none stands. */
import { randomUUID } from "node:crypto";
import type { SeasonAnswerWords } from "#shared/planning/season-answer-types.ts";
import type { Stamps } from "./house.ts";
import { keptUpTo } from "./kept.ts";

export interface StandingPlan {
  readonly answer: SeasonAnswerWords;
  readonly stamps: NonNullable<Stamps>;
  /** Another one for each plan, so that what is kept beside it shows which it was made with. */
  readonly version: string;
}

export interface StandingSeasons {
  find(householdId: string): StandingPlan | undefined;
  keep(householdId: string, answer: SeasonAnswerWords, stamps: NonNullable<Stamps>): void;
}

/** Some two hundred plans of half a year. */
const MOST_BYTES = 16 * 1024 * 1024;

export function standingSeasons(): StandingSeasons {
  const kept = keptUpTo<StandingPlan>(MOST_BYTES);
  // a plan is kept beyond a change of what it rests on, and then says so
  const at = (householdId: string) => ({ name: householdId, stamp: "standing" });
  return {
    find: (householdId) => kept.find(at(householdId)),
    keep: (householdId, answer, stamps) => kept.keep(at(householdId), { answer, stamps, version: randomUUID() }, JSON.stringify(answer).length),
  };
}

/** Nothing that the plan rests on has changed since. */
export function isUpToDate({ stamps }: StandingPlan, now: Stamps): boolean {
  return now !== null && stamps.garden === now.garden && stamps.kitchen === now.kitchen && stamps.weather === now.weather && stamps.larder === now.larder;
}
