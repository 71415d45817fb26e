/**
 * The referee: is a plan allowed, and what does it score? It replays every course week by week and lot by lot.
 * It imports nothing of the programme, the rule or the search, and works out for itself what is legal. Order within a week: README.
 */
import { DUST } from "./check-stocks.ts";
import { replayCourse } from "./check-course.ts";
import type { Batches, Level, Method, Score, Season, SeasonPlan } from "./types.ts";

export interface CourseVerdict {
  readonly scenario: string;
  readonly wasteGrams: number;
  readonly targetShort: number;
  readonly freshShortGrams: number;
  readonly liking: number;
  /** Lost grams by crop index, then by week. */
  readonly lostGrams: readonly (readonly number[])[];
  /** On hand at the end of the season, by crop. */
  readonly leftGrams: readonly number[];
  /** Portions in store at the end of each week, by method index. */
  readonly storePortions: readonly (readonly number[])[];
  /** Missing share in percent of each target, then of each wish, as level 2 counts it. */
  readonly missing: readonly number[];
}

export interface SeasonVerdict {
  readonly faults: readonly string[];
  readonly score: Score;
  readonly courses: readonly CourseVerdict[];
}

/** `claimed`: levels that the plan says it reaches; each that differs is a fault. */
export function checkSeasonPlan(season: Season, plan: SeasonPlan, claimed: Partial<Score> = {}): SeasonVerdict {
  const faults = plannedFaults(season, plan);
  const several = season.scenarios.length > 1;
  let expectedRecourse = { minutes: 0, earliness: 0 };
  const courses = season.scenarios.map((scenario, s) => {
    const course = plan.outcomes[scenario.id] ?? { made: [], eat: [], give: [], draw: [] };
    if (!plan.outcomes[scenario.id]) faults.push(`The plan does not say what happens in scenario ${scenario.id}.`);
    const replayed = replayCourse(season, s, course);
    faults.push(...replayed.faults, ...madeFaults(season, plan.planned, course.made, scenario.id));
    if (several) {
      const recourse = workOf(season, course.made.filter(({ method }) => methodOf(season, method)?.recourse));
      expectedRecourse = { minutes: expectedRecourse.minutes + scenario.chance * recourse.minutes, earliness: expectedRecourse.earliness + scenario.chance * recourse.earliness };
    }
    return replayed.verdict;
  });
  const expected = (of: (course: CourseVerdict) => number): number => courses.reduce((sum, course, s) => sum + of(course) * (season.scenarios[s]?.chance ?? 0), 0);
  const work = workOf(season, plan.planned);
  const score: Score = {
    wasteGrams: expected((course) => course.wasteGrams),
    targetShort: expected((course) => course.targetShort),
    freshShortGrams: expected((course) => course.freshShortGrams),
    changes: changesOf(season, plan.planned),
    liking: expected((course) => course.liking),
    minutes: work.minutes + expectedRecourse.minutes,
    earliness: work.earliness + expectedRecourse.earliness,
  };
  return { faults: [...faults, ...claimFaults(score, claimed)], score, courses };
}

function methodOf(season: Season, id: string): Method | undefined {
  return season.methods.find((method) => method.id === id);
}

function refused(season: Season, method: Method): boolean {
  return (method.keptIn === "shelf" && method.process === "none") || method.needs.some((need) => !season.equipment.includes(need));
}

/** What is said about the bookings themselves: whole, of a session's size, legal, once, within the week's limits, frozen weeks kept. */
function plannedFaults(season: Season, { planned }: SeasonPlan): string[] {
  const faults = batchFaults(season, planned, "planned");
  for (const { method, week } of planned) {
    if (season.scenarios.length > 1 && methodOf(season, method)?.recourse) faults.push(`${method} is decided when the course is known, and cannot be planned in week ${week}.`);
  }
  for (const { method, week, batches } of season.atMost ?? []) {
    const booked = planned.find((line) => line.method === method && line.week === week)?.batches ?? 0;
    if (booked > batches) faults.push(`${method} in week ${week}: ${booked} batches, ${batches} at most.`);
  }
  faults.push(...weeklyFaults(season, planned, "planned"));
  const agreed = batchesBy(season.agreed);
  const booked = batchesBy(planned);
  for (const key of new Set([...agreed.keys(), ...booked.keys()])) {
    const week = Number(key.slice(key.lastIndexOf("@") + 1));
    if (week < season.frozenWeeks && (agreed.get(key) ?? 0) !== (booked.get(key) ?? 0)) faults.push(`Week ${week} is fixed, and ${key.slice(0, key.lastIndexOf("@"))} was changed in it.`);
  }
  return faults;
}

export function batchFaults(season: Season, list: readonly Batches[], what: string): string[] {
  const faults: string[] = [];
  const seen = new Set<string>();
  for (const { method: id, week, batches } of list) {
    const method = methodOf(season, id);
    const where = `${id} in week ${week} (${what})`;
    if (seen.has(`${id}@${week}`)) faults.push(`${where} is there twice.`);
    seen.add(`${id}@${week}`);
    if (!method) faults.push(`${where}: there is no such method.`);
    else if (refused(season, method)) faults.push(`${where} is refused.`);
    if (!Number.isInteger(week) || week < 0 || week >= season.weeks) faults.push(`${where}: there is no such week.`);
    if (!Number.isInteger(batches) || batches < 0) faults.push(`${where}: ${batches} is not a number of whole batches.`);
    if (method && batches > 0 && (batches < method.sessionBatches.min || batches > method.sessionBatches.max)) {
      faults.push(`${where}: ${batches} batches, where a session takes ${method.sessionBatches.min} to ${method.sessionBatches.max}.`);
    }
  }
  return faults;
}

export function weeklyFaults(season: Season, list: readonly Batches[], what: string): string[] {
  const faults: string[] = [];
  for (const { id, kind, unit, amount } of season.resources) {
    if (kind !== "weekly") continue;
    for (let t = 0; t < season.weeks; t++) {
      const used = list.reduce((sum, { method, week, batches }) => sum + (week === t ? useOf(methodOf(season, method), id, batches) : 0), 0);
      const most = amount[t] ?? 0;
      if (used > most + 1e-6) faults.push(`Week ${t} takes ${used} ${unit} of ${id} and has ${most} (${what}).`);
    }
  }
  return faults;
}

export function useOf(method: Method | undefined, resource: string, batches: number): number {
  if (!method || batches <= 0) return 0;
  return (method.perSession[resource] ?? 0) + batches * (method.perBatch[resource] ?? 0);
}

function madeFaults(season: Season, planned: readonly Batches[], made: readonly Batches[], scenario: string): string[] {
  const booked = batchesBy(planned);
  const done = batchesBy(made);
  const several = season.scenarios.length > 1;
  const faults: string[] = [];
  for (const key of new Set([...booked.keys(), ...done.keys()])) {
    const method = methodOf(season, key.slice(0, key.lastIndexOf("@")));
    if (several && method?.recourse) continue;
    const [most, is] = [booked.get(key) ?? 0, done.get(key) ?? 0];
    if (several ? is > most : is !== most) faults.push(`${key}: ${is} batches made in ${scenario}, ${most} planned.`);
  }
  return faults;
}

function batchesBy(list: readonly Batches[]): Map<string, number> {
  const sums = new Map<string, number>();
  for (const { method, week, batches } of list) sums.set(`${method}@${week}`, (sums.get(`${method}@${week}`) ?? 0) + batches);
  return sums;
}

function changesOf(season: Season, planned: readonly Batches[]): number {
  const until = ({ week }: Batches): boolean => week < season.agreedUntil;
  const agreed = batchesBy(season.agreed.filter(until));
  const booked = batchesBy(planned.filter(until));
  return [...new Set([...agreed.keys(), ...booked.keys()])].reduce((sum, key) => sum + Math.abs((agreed.get(key) ?? 0) - (booked.get(key) ?? 0)), 0);
}

function workOf(season: Season, list: readonly Batches[]): { minutes: number; earliness: number } {
  return {
    minutes: list.reduce((sum, { method, batches }) => sum + useOf(methodOf(season, method), "hands-on", batches), 0),
    earliness: list.reduce((sum, { week, batches }) => sum + week * batches, 0),
  };
}

/** A claim may be off by the dust of the season's grams, and by a rounded digit of all else. */
function claimFaults(score: Score, claimed: Partial<Score>): string[] {
  const slack = (level: Level): number => (level === "wasteGrams" || level === "freshShortGrams" ? DUST : 0.02);
  return (Object.entries(claimed) as [Level, number][]).flatMap(([level, value]) => (Math.abs(score[level] - value) <= slack(level) ? [] : [`The plan claims ${level} ${value}; it is ${score[level]}.`]));
}
