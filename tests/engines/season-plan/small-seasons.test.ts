/** The optimum of small random seasons against trying everything (tests/support/every-season.ts), and relations that must hold between seasons. */
import { describe, expect, test, vi } from "vitest";
import { checkSeasonPlan, LEVELS, planByRule, planSeason, isWorse, type Season, type SeasonAnswer } from "#shared/engines/season-plan/index.ts";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import { smallSeason, tryEverything } from "#tests/support/every-season.ts";
import { read } from "#tests/support/seasons.ts";
import { solver } from "./solver.ts";

/** Proofs take as long as the machine is busy; the answers are what is tested. */
vi.setConfig({ testTimeout: 300_000, hookTimeout: 60_000 });

const random = seededRandom(20_270_726);
const seasons = Array.from({ length: 60 }, () => smallSeason(random));
const effort = { allowance: 0, secondsPerLevel: 20 };
const planned = (season: Season): SeasonAnswer => planSeason(season, solver, effort);
const answers = seasons.map((json) => planned(read(json)));

test("loses and misses the least of all plans there are", () => {
  let reached = 0;
  let betterThanRule = 0;
  seasons.forEach((json, i) => {
    const season = read(json);
    const least = tryEverything(season);
    if (least.tried < 20) return;
    const answer = answers[i] as SeasonAnswer;
    expect([answer.status, answer.verdict.faults]).toEqual(["optimal", []]);
    expect(answer.verdict.score.wasteGrams).toBeCloseTo(least.lost, 3);
    expect(answer.verdict.score.targetShort).toBeCloseTo(least.missing, 3);
    reached++;
    if (isWorse(answer.byRule.score, answer.verdict.score)) betterThanRule++;
  });
  expect(reached).toBeGreaterThan(30);
  expect(betterThanRule).toBeGreaterThan(5);
});

test("says of every level that its value is the bound, and the rule is never better", () => {
  seasons.forEach((json, i) => {
    const { levels, verdict } = answers[i] as SeasonAnswer;
    expect(levels.map(({ level }) => level)).toEqual([...LEVELS]);
    for (const { value, bound, proven } of levels) expect([proven, bound]).toEqual([true, expect.closeTo(value, 2)]);
    expect(isWorse(verdict.score, checkSeasonPlan(read(json), planByRule(read(json))).score)).toBe(false);
  });
});

describe("relations", () => {
  const loss = (season: Season): number => planSeason(season, solver, { ...effort, levels: 1 }).verdict.score.wasteGrams;
  const each = (change: (season: Season) => Season, holds: (before: number, after: number) => void, count = 25): number => {
    let changed = 0;
    seasons.slice(0, count).forEach((json, i) => {
      const before = (answers[i] as SeasonAnswer).verdict.score.wasteGrams;
      const after = loss(change(read(json)));
      holds(before, after);
      if (Math.abs(before - after) > 1e-3) changed++;
    });
    return changed;
  };

  test("more of any limit never loses more", () => {
    const more = each((season) => ({ ...season, resources: season.resources.map((one) => ({ ...one, amount: one.amount.map((x) => x + 4) })) }), (before, after) => expect(after).toBeLessThanOrEqual(before + 1e-3));
    expect(more).toBeGreaterThan(2);
  });

  test("a week longer in keeping never loses more", () => {
    const longer = each((season) => ({ ...season, crops: season.crops.map((crop) => ({ ...crop, keepWeeks: crop.keepWeeks + 1 })) }), (before, after) => expect(after).toBeLessThanOrEqual(before + 1e-3));
    expect(longer).toBeGreaterThan(2);
  });

  test("a method that is not used can go, and none can be added that loses more", () => {
    let removed = 0;
    seasons.slice(0, 25).forEach((json, i) => {
      const season = read(json);
      const answer = answers[i] as SeasonAnswer;
      const unused = season.methods.find(({ id }) => !season.targets.some(({ methods }) => methods.includes(id)) && !answer.plan.planned.some(({ method }) => method === id));
      if (!unused) return;
      removed++;
      const without = planned({ ...season, methods: season.methods.filter(({ id }) => id !== unused.id) });
      for (const level of LEVELS) expect(without.verdict.score[level]).toBeCloseTo(answer.verdict.score[level], 2);
    });
    expect(removed).toBeGreaterThan(3);
  });

  test("more eaten fresh or taken by others never loses more, nor does a method that needs nothing", () => {
    const more = (list: readonly number[]): number[] => list.map((grams) => grams + 100);
    const noMore = (before: number, after: number): void => expect(after).toBeLessThanOrEqual(before + 1e-3);
    const taken = each((season) => ({ ...season, crops: season.crops.map((crop) => ({ ...crop, freshGrams: more(crop.freshGrams), giveGrams: more(crop.giveGrams) })) }), noMore);
    const made = each((season) => ({ ...season, methods: [...season.methods, ...season.methods.slice(0, 1).map((method) => ({ ...method, id: "free", perSession: {}, perBatch: {} }))] }), noMore);
    expect(Math.min(taken, made)).toBeGreaterThan(5);
  });

  test("weeks frozen as the best plan has them change nothing, and the referee lets nothing else into them", () => {
    let refused = 0;
    seasons.slice(0, 25).forEach((json, i) => {
      const { plan, verdict } = answers[i] as SeasonAnswer;
      const frozen = { ...read(json), agreed: plan.planned, frozenWeeks: 1 };
      const again = planSeason(frozen, solver, { ...effort, levels: 2 });
      expect(again.verdict.faults).toEqual([]);
      expect(again.verdict.score.wasteGrams).toBeCloseTo(verdict.score.wasteGrams, 3);
      expect(again.verdict.score.targetShort).toBeCloseTo(verdict.score.targetShort, 3);
      expect(checkSeasonPlan(frozen, plan).faults).toEqual([]);
      const later = plan.planned.filter(({ week }) => week > 0);
      if (later.length === plan.planned.length) return;
      refused++;
      expect(checkSeasonPlan(frozen, { ...plan, planned: later }).faults.join()).toContain("is fixed");
    });
    expect(refused).toBeGreaterThan(5);
  });

  test("doubled grams lose the double", () => {
    const twice = (list: readonly number[]): number[] => list.map((x) => 2 * x);
    each(
      (season) => ({
        ...season,
        crops: season.crops.map((crop) => ({ ...crop, freshGrams: twice(crop.freshGrams), giveGrams: twice(crop.giveGrams), harvestGrams: crop.harvestGrams.map(twice) })),
        methods: season.methods.map((method) => ({ ...method, uses: method.uses.map((use) => ({ ...use, grams: 2 * use.grams })) })),
      }),
      (before, after) => expect(after).toBeCloseTo(2 * before, 3),
    );
  });

  test("the order of the lists changes nothing", () => {
    seasons.slice(0, 25).forEach((json, i) => {
      const season = read(json);
      const turned = planned({ ...season, crops: season.crops.toReversed(), methods: season.methods.toReversed(), resources: season.resources.toReversed() });
      for (const level of LEVELS) expect(turned.verdict.score[level]).toBeCloseTo((answers[i] as SeasonAnswer).verdict.score[level], 2);
    });
  });

  test("a crop without harvest, or a scenario cut in two equal halves, changes nothing that is lost", () => {
    each((season) => ({ ...season, crops: [...season.crops, { crop: "none", keepWeeks: 2, freshGrams: season.crops[0]?.freshGrams ?? [], giveGrams: [], harvestGrams: [new Array<number>(season.weeks).fill(0)] }] }), (before, after) => expect(after).toBeCloseTo(before, 3));
    each(
      (season) => ({ ...season, scenarios: [{ id: "a", chance: 0.5 }, { id: "b", chance: 0.5 }], crops: season.crops.map((crop) => ({ ...crop, harvestGrams: [...crop.harvestGrams, ...crop.harvestGrams] })) }),
      (before, after) => expect(after).toBeCloseTo(before, 3),
      10,
    );
  });
});
