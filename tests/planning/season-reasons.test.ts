/** Reasons and reservations of the season's plan: each difference that is told, found again by another road, on seasons drawn at random. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { checkSeasonPlan, planByRule, readSeason, type Season, type SeasonCrop, type SeasonPlan } from "#shared/engines/season-plan/index.ts";
import type { LarderFacts } from "#shared/planning/larder-facts.ts";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import { leastLost } from "#shared/planning/season-least-lost.ts";
import { SeasonWhy } from "#shared/planning/season-why.ts";
import { suggestedTargets } from "#shared/planning/season-suggested.ts";
import { TABLES } from "#tests/support/make-garden.ts";

const random = seededRandom(30);
const whole = (until: number): number => Math.floor(random.next() * until);

function drawnCrop(weeks: number): SeasonCrop {
  const fresh = whole(4);
  return { crop: "pea", keepWeeks: 1 + whole(3), freshGrams: Array.from({ length: weeks }, () => (random.next() < 0.2 ? 0 : fresh)), giveGrams: Array.from({ length: weeks }, () => whole(2)), harvestGrams: [Array.from({ length: weeks }, () => (random.next() < 0.4 ? 0 : whole(7)))] };
}

/** Most that can be eaten beside what the batches take, by trying every amount in every week; grams are few. */
function leastByTrying(crop: SeasonCrop, takes: readonly number[]): number {
  const picked = crop.harvestGrams[0] ?? [];
  let least = Infinity;
  const go = (t: number, lots: readonly { last: number; grams: number }[], lost: number): void => {
    if (lost >= least) return;
    if (t === picked.length) {
      least = lost;
      return;
    }
    const there = [...lots, { last: t + crop.keepWeeks - 1, grams: picked[t] ?? 0 }];
    const all = there.reduce((sum, lot) => sum + lot.grams, 0);
    const free = all - (takes[t] ?? 0);
    if (free < 0) return;
    for (let eaten = 0; eaten <= Math.min(free, (crop.freshGrams[t] ?? 0) + (crop.giveGrams[t] ?? 0)); eaten += 1) {
      let open = (takes[t] ?? 0) + eaten;
      const left = there.map((lot) => {
        const some = Math.min(lot.grams, open);
        open -= some;
        return { ...lot, grams: lot.grams - some };
      });
      const gone = left.filter(({ last }) => last <= t).reduce((sum, lot) => sum + lot.grams, 0);
      go(t + 1, left.filter(({ last, grams }) => last > t && grams > 0), lost + gone);
    }
  };
  go(0, [], 0);
  return least;
}

describe("the least that is lost with the batches fixed", () => {
  it("is the least of all ways to eat and give, tried one by one", () => {
    const counted = { tried: 0, lost: 0, later: 0 };
    for (let round = 0; round < 4000; round += 1) {
      const crop = drawnCrop(5);
      const takes = Array.from({ length: 5 }, () => (random.next() < 0.5 ? 0 : whole(5)));
      const least = leastByTrying(crop, takes);
      // batches that cannot be made are not planned
      if (least === Infinity) continue;
      const found = leastLost(crop, takes).reduce((sum, grams) => sum + grams, 0);
      // what keeps beyond the last week is on hand, and a crop that keeps throughout is never lost
      expect(found).toBe(least);
      counted.tried += 1;
      counted.lost += least > 0 ? 1 : 0;
      counted.later += takes.some((grams, t) => t > 0 && grams > 0) ? 1 : 0;
    }
    expect(counted.tried).toBeGreaterThan(500);
    expect(counted.lost).toBeGreaterThan(200);
    expect(counted.later).toBeGreaterThan(300);
  });
});

describe("the reason of a line", () => {
  it("is the difference of two plans that the referee takes, on the worked seasons", () => {
    let lines = 0;
    for (const name of ["1-glut-full-freezer", "2-jars-short", "4-tested-only"]) {
      const read: unknown = JSON.parse(readFileSync(new URL(`../cases/season/${name}.json`, import.meta.url), "utf8"));
      const found = readSeason(read);
      if (!found.ok) throw new Error(found.problem.detail);
      const season = found.value;
      const plan = planByRule(season);
      const why = new SeasonWhy(season, plan);
      // eating is free in the reason, so no more is lost than by the rule, and no less than nothing
      expect(why.lostGrams).toBeLessThanOrEqual(checkSeasonPlan(season, plan).score.wasteGrams + 0.5);
      for (const line of plan.planned) {
        const without: SeasonPlan = { ...plan, planned: plan.planned.flatMap((one) => (one === line ? (one.batches > 1 ? [{ ...one, batches: one.batches - 1 }] : []) : [one])) };
        const again = new SeasonWhy(season, without);
        expect(Math.abs(why.of(line).lostGrams - (again.lostGrams - why.lostGrams))).toBeLessThanOrEqual(season.weeks);
        expect(why.of(line).lostGrams).toBeGreaterThanOrEqual(-season.weeks);
        lines += 1;
      }
    }
    expect(lines).toBeGreaterThan(20);
  });

  it("says nothing of a loss where what a batch takes would be eaten", () => {
    const season = { weeks: 2, crops: [{ crop: "pea", keepWeeks: 1, freshGrams: [900, 900], giveGrams: [0, 0], harvestGrams: [[1000, 500]] }], methods: [{ id: "soup", uses: [{ crop: "pea", grams: 500 }], portions: 4, opening: 0, keepWeeks: null }], targets: [], wishes: [] } as unknown as Season;
    const why = new SeasonWhy(season, { planned: [{ method: "soup", week: 0, batches: 1 }] });
    // 1,000 picked: with the soup 500 are eaten; without it 900 are, and 100 lost
    expect(why.of({ method: "soup", week: 0, batches: 1 })).toEqual({ lostGrams: 100, lost: [{ crop: "pea", week: 0, grams: 100 }], missing: [] });
  });
});

describe("targets from last winter", () => {
  it("count what was eaten from October to April, and half a year later in the south", () => {
    const entry = (on: string, amount: number, kind = "take") => ({ id: on, kind, on, writtenAt: 1, arrivedAt: 1, amount, whole: null, takenFor: kind === "take" ? "eat" : null, placeId: null, toPlaceId: null });
    const lot = { id: "lot", title: "Sauce", crop: null, recipe: { id: "sauce", way: "cook", keeps: [], reheat: null }, homePlaceId: "drawer", madeOn: "2026-08-01", portionGrams: null, portionMl: null, bestUntil: null, countedIn: "portions", entries: [entry("2026-08-01", 30, "put"), entry("2026-09-30", 2), entry("2026-10-01", 5), entry("2027-04-30", 7), entry("2027-05-01", 3)] };
    const larder = { today: "2027-07-26", places: [{ id: "drawer", name: "Drawer", kind: "freezer", litres: null }], lots: [lot], preservation: TABLES } as unknown as LarderFacts;
    const suggested = (southern: boolean) => suggestedTargets(larder, southern, new Map([["sauce", "Sauce"]]));
    expect(suggested(false)).toMatchObject([{ portions: 12, eatenPortions: 12, by: "2027-11-01" }]);
    expect(suggested(true)).toMatchObject([{ portions: 7, by: "2028-05-01" }]);
  });
});
