/** One course of the season replayed by the referee: lots of produce and portions, limits, and what that course scores. Part of check.ts. */
import { batchFaults, useOf, weeklyFaults, type CourseVerdict } from "./check.ts";
import { DUST, Stock } from "./check-stocks.ts";
import type { Course, Season } from "./types.ts";

interface Replay {
  readonly season: Season;
  readonly s: number;
  readonly course: Course;
  readonly faults: string[];
  /** Batches by method index, then week. */
  readonly made: readonly (readonly number[])[];
}

export function replayCourse(season: Season, s: number, course: Course): { faults: string[]; verdict: CourseVerdict } {
  const scenario = season.scenarios[s]?.id ?? "";
  const faults = [...batchFaults(season, course.made, `made, ${scenario}`), ...weeklyFaults(season, course.made, `made, ${scenario}`)];
  const made = season.methods.map(({ id }) => weekly(season, course.made.filter(({ method }) => method === id), ({ batches }) => batches));
  const replay: Replay = { season, s, course, faults, made };
  const produce = replayProduce(replay);
  const store = replayStore(replay);
  consumedFaults(replay);
  heldFaults(replay, store.atEnd);
  const missing = missingOf(replay, store.atEnd);
  const verdict: CourseVerdict = {
    scenario,
    wasteGrams: produce.lost.flat().reduce((sum, grams) => sum + grams, 0),
    targetShort: missing.reduce((sum, share) => sum + share, 0),
    freshShortGrams: produce.freshShort,
    liking: likingOf(replay),
    lostGrams: produce.lost,
    leftGrams: produce.left,
    storePortions: store.atEnd,
    missing,
  };
  return { faults, verdict };
}

function weekly<T extends { readonly week: number }>(season: Season, list: readonly T[], amount: (item: T) => number): number[] {
  const sums = new Array<number>(season.weeks).fill(0);
  for (const item of list) if (item.week >= 0 && item.week < season.weeks) sums[item.week] = (sums[item.week] ?? 0) + amount(item);
  return sums;
}

function replayProduce({ season, s, course, faults, made }: Replay): { lost: number[][]; left: number[]; freshShort: number } {
  let freshShort = 0;
  const left: number[] = [];
  const lost = season.crops.map((crop) => {
    const picked = crop.harvestGrams[s] ?? [];
    const eaten = weekly(season, course.eat.filter((line) => line.crop === crop.crop), ({ grams }) => grams);
    const given = weekly(season, course.give.filter((line) => line.crop === crop.crop), ({ grams }) => grams);
    if ([...eaten, ...given].some((grams) => grams < -1e-6)) faults.push(`${crop.crop}: a negative amount is eaten or given.`);
    const stock = new Stock();
    let account = 0;
    const gone = eaten.map((eat, t) => {
      stock.put(picked[t] ?? 0, t + crop.keepWeeks - 1);
      if (eat > (crop.freshGrams[t] ?? 0) + DUST) faults.push(`${crop.crop}, week ${t}: ${eat} g eaten fresh, ${crop.freshGrams[t]} g at most.`);
      if ((given[t] ?? 0) > (crop.giveGrams[t] ?? 0) + DUST) faults.push(`${crop.crop}, week ${t}: ${given[t]} g given away, ${crop.giveGrams[t]} g at most.`);
      const cooked = season.methods.reduce((sum, method, m) => sum + (made[m]?.[t] ?? 0) * (method.uses.find((use) => use.crop === crop.crop)?.grams ?? 0), 0);
      const short = stock.take(eat + (given[t] ?? 0) + cooked);
      if (short > DUST) faults.push(`${crop.crop}, week ${t}: ${short.toFixed(1)} g more is used than is on hand.`);
      if (picked.slice(Math.max(0, t - crop.keepWeeks + 1), t + 1).some((grams) => grams > 0)) freshShort += Math.max(0, (crop.freshGrams[t] ?? 0) - eat);
      const waste = stock.expire(t);
      account += (picked[t] ?? 0) - eat - (given[t] ?? 0) - cooked + short - waste;
      return waste;
    });
    if (Math.abs(account - stock.onHand) > 0.05) faults.push(`${crop.crop}: the account of its grams does not close.`);
    left.push(stock.onHand);
    return gone;
  });
  return { lost, left, freshShort };
}

function replayStore({ season, course, faults, made }: Replay): { atEnd: number[][] } {
  const drawn = season.methods.map(({ id }) => weekly(season, course.draw.filter(({ method }) => method === id), ({ portions }) => portions));
  for (const { method } of course.draw) if (!season.methods.some(({ id }) => id === method)) faults.push(`There is no method ${method} to eat from.`);
  const atEnd = season.methods.map((method, m) => {
    const stock = new Stock();
    stock.put(method.opening, Infinity);
    return (drawn[m] ?? []).map((portions, t) => {
      if (method.keptIn !== "none") stock.put((made[m]?.[t] ?? 0) * method.portions, method.keepWeeks === null ? Infinity : t + method.keepWeeks - 1);
      if (portions < -1e-6) faults.push(`${method.id}, week ${t}: a negative amount is eaten from the store.`);
      if (portions > (method.eatPortions[t] ?? 0) + 1e-3) faults.push(`${method.id}, week ${t}: ${portions} portions eaten from the store, ${method.eatPortions[t]} at most.`);
      if (stock.take(portions) > 1e-2) faults.push(`${method.id}, week ${t}: more portions are eaten than there are.`);
      if (stock.expire(t) > 1e-2) faults.push(`${method.id}: portions past their keeping time at the end of week ${t}.`);
      return stock.onHand;
    });
  });
  season.eatFromStorePortions.forEach((most, t) => {
    const all = drawn.reduce((sum, weeks) => sum + (weeks[t] ?? 0), 0);
    if (all > most + 1e-3) faults.push(`Week ${t}: ${all} portions eaten from all stores, ${most} at most.`);
  });
  return { atEnd };
}

function consumedFaults({ season, faults, made }: Replay): void {
  for (const { id, kind, unit, amount } of season.resources) {
    if (kind !== "consumed") continue;
    let used = 0;
    amount.forEach((bought, t) => {
      used += season.methods.reduce((sum, method, m) => sum + useOf(method, id, made[m]?.[t] ?? 0), 0);
      if (used > bought + 1e-6) faults.push(`By week ${t} ${used} ${unit} of ${id} are used and ${bought} are there.`);
    });
  }
}

/** At the fullest moment: what was in store, and what was just made, before anything is eaten. */
function heldFaults({ season, faults, made }: Replay, atEnd: readonly (readonly number[])[]): void {
  for (const { id, kind, unit, amount } of season.resources) {
    if (kind !== "held") continue;
    amount.forEach((room, t) => {
      const full = season.methods.reduce((sum, method, m) => {
        const before = method.keptIn === "none" ? 0 : t === 0 ? method.opening : (atEnd[m]?.[t - 1] ?? 0);
        const kept = method.portions > 0 ? (before / method.portions) * (method.perBatch[id] ?? 0) : 0;
        return sum + kept + useOf(method, id, made[m]?.[t] ?? 0);
      }, 0);
      if (full > room + 0.01) faults.push(`Week ${t} ties up ${full.toFixed(2)} ${unit} of ${id} and has ${room}.`);
    });
  }
}

/** What is missing below half counts twice, so all missing is 150. */
function missingOf({ season, made }: Replay, atEnd: readonly (readonly number[])[]): number[] {
  const counted = (have: number, asked: number): number => {
    const share = Math.max(0, 1 - have / asked);
    return 100 * (share + Math.max(0, share - 0.5));
  };
  const sum = (ids: readonly string[], of: (m: number) => number): number => ids.reduce((all, id) => all + of(season.methods.findIndex((method) => method.id === id)), 0);
  return [
    ...season.targets.map(({ methods, portions, atWeek }) => counted(sum(methods, (m) => atEnd[m]?.[atWeek] ?? 0), portions)),
    ...season.wishes.map(({ methods, portions, from, until }) => counted(sum(methods, (m) => portionsMade(season, made, m, from, until)), portions)),
  ];
}

function portionsMade(season: Season, made: readonly (readonly number[])[], m: number, from: number, until: number): number {
  return (made[m] ?? []).slice(from, until).reduce((sum, batches) => sum + batches * (season.methods[m]?.portions ?? 0), 0);
}

function likingOf({ season, made }: Replay): number {
  let points = 0;
  for (const { methods, everyWeeks, tiers } of season.tastes) {
    for (let from = 0; from < season.weeks; from += everyWeeks) {
      let portions = methods.reduce((sum, id) => sum + portionsMade(season, made, season.methods.findIndex((method) => method.id === id), from, from + everyWeeks), 0);
      for (const tier of tiers) {
        points += Math.min(portions, tier.portions) * tier.worth;
        portions = Math.max(0, portions - tier.portions);
      }
    }
  }
  return points;
}
