/**
 * How a plan fares in other years: its batches are the most that is made in each week, methods marked as recourse are free, and eating,
 * giving and the store go on by the simple rule. No solver, so that it can be asked at any time. README, "A good and a poor year".
 */
import { checkSeasonPlan } from "./check.ts";
import { RuleWeek } from "./rule-week.ts";
import type { Course, Season, SeasonPlan } from "./types.ts";

/** What may be picked in one year. */
export interface YearOfHarvest {
  readonly id: string;
  /** Weight among the years; shares are taken of their sum. */
  readonly chance: number;
  /** By crop in the order of the season's, then by week. */
  readonly harvestGrams: readonly (readonly number[])[];
}

export interface YearFare {
  readonly id: string;
  readonly chance: number;
  readonly pickedGrams: number;
  readonly lostGrams: number;
  /** As level 2 counts it. */
  readonly missingPercent: number;
  /** Of the batches planned, so many could not be made. */
  readonly notMade: number;
  /** By week. */
  readonly lostByWeek: readonly number[];
}

export interface PlanFare {
  /** Over all years by their chances. */
  readonly expectedLostGrams: number;
  readonly expectedMissingPercent: number;
  /** One year in ten picks less than the poor one, one in ten more than the good one. */
  readonly poor: YearFare;
  readonly middle: YearFare;
  readonly good: YearFare;
  /** The year that loses most. */
  readonly worst: YearFare;
  readonly years: readonly YearFare[];
}

/** Null where no years are given. Years in the order of what they pick, least first. */
export function fareOf(season: Season, plan: SeasonPlan, years: readonly YearOfHarvest[]): PlanFare | null {
  const all = years.reduce((sum, { chance }) => sum + chance, 0);
  if (years.length === 0 || all <= 0) return null;
  const fares = years.map((year) => fareIn(season, plan, { ...year, chance: year.chance / all }));
  fares.sort((a, b) => a.pickedGrams - b.pickedGrams || (a.id < b.id ? -1 : 1));
  const expected = (of: (fare: YearFare) => number): number => fares.reduce((sum, fare) => sum + fare.chance * of(fare), 0);
  return {
    expectedLostGrams: expected(({ lostGrams }) => lostGrams),
    expectedMissingPercent: expected(({ missingPercent }) => missingPercent),
    poor: atShare(fares, 0.1),
    middle: atShare(fares, 0.5),
    good: atShare(fares, 0.9),
    worst: fares.reduce((worst, fare) => (fare.lostGrams > worst.lostGrams ? fare : worst)),
    years: fares,
  };
}

/** The season as it is in one year, for the referee and whoever wants to look closer. */
export function seasonInYear(season: Season, { id, harvestGrams }: YearOfHarvest): Season {
  return { ...season, scenarios: [{ id, chance: 1 }], crops: season.crops.map((crop, c) => ({ ...crop, harvestGrams: [harvestGrams[c] ?? []] })) };
}

/** What is done in that year. */
export function courseInYear(season: Season, plan: SeasonPlan, year: YearOfHarvest): Course {
  const rule = new RuleWeek({ ...seasonInYear(season, year), agreed: plan.planned }, 0, { booked: plan.planned, recourse: true });
  for (let t = 0; t < season.weeks; t++) {
    rule.begin(t);
    rule.makeAgreed();
    rule.eatFresh();
    rule.saveWhatGoesOff();
    rule.give();
    rule.end();
  }
  return rule.course();
}

function fareIn(season: Season, plan: SeasonPlan, year: YearOfHarvest): YearFare {
  const course = courseInYear(season, plan, year);
  const { courses } = checkSeasonPlan(seasonInYear(season, year), { planned: course.made, outcomes: { [year.id]: course } });
  const verdict = courses[0];
  const booked = plan.planned.reduce((sum, { batches }) => sum + batches, 0);
  const recourse = new Set(season.methods.flatMap((method) => (method.recourse ? [method.id] : [])));
  const made = course.made.reduce((sum, { method, batches }) => sum + (recourse.has(method) ? 0 : batches), 0);
  return {
    id: year.id,
    chance: year.chance,
    pickedGrams: year.harvestGrams.reduce((sum, weeks) => sum + weeks.reduce((a, b) => a + b, 0), 0),
    lostGrams: verdict?.wasteGrams ?? 0,
    missingPercent: verdict?.targetShort ?? 0,
    notMade: Math.max(0, booked - made),
    lostByWeek: Array.from({ length: season.weeks }, (_, t) => (verdict?.lostGrams ?? []).reduce((sum, weeks) => sum + (weeks[t] ?? 0), 0)),
  };
}

/** The first year at which so large a share of the chances is reached. */
function atShare(fares: readonly YearFare[], share: number): YearFare {
  let sum = 0;
  for (const fare of fares) {
    sum += fare.chance;
    if (sum >= share - 1e-9) return fare;
  }
  return fares.at(-1) as YearFare;
}
