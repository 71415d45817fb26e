/** Levels of the worked seasons against their proved values (tests/support/seasons.ts), and what an allowance buys. All levels of all of them: `npm run bench -- season --instances tests/cases/season`. */
import { expect, test, vi } from "vitest";
import { checkSeasonPlan, isWorse, LEVELS, planSeason, type SeasonPlan } from "#shared/engines/season-plan/index.ts";
import { workedSeason } from "#tests/support/seasons.ts";
import { solver } from "./solver.ts";

/** Proofs take as long as the machine is busy; the answers are what is tested. */
vi.setConfig({ testTimeout: 300_000, hookTimeout: 60_000 });


const tested = workedSeason("4-tested-only");
const told: SeasonPlan[] = [];
const full = planSeason(tested.season, solver, { allowance: 0, secondsPerLevel: 60, onBetter: ({ plan }) => told.push(plan) });

test("all seven levels of the season of tested recipes reach what was proved, and are said to be proved", () => {
  expect([full.status, full.stoppedEarly, full.verdict.faults]).toEqual(["optimal", false, []]);
  expect(tested.known.levels?.length).toBe(LEVELS.length);
  for (const { level, value } of tested.known.levels ?? []) expect([level, full.verdict.score[level]]).toEqual([level, expect.closeTo(value, 2)]);
  expect(full.gapPct).toBeCloseTo(0, 6);
});

test("keepers and berries with an agreed and a frozen week: loss as proved", () => {
  const { season, known } = workedSeason("3-keepers-and-berries");
  const { levels, verdict } = planSeason(season, solver, { allowance: 0, secondsPerLevel: 60, levels: 1 });
  expect([verdict.faults, levels.map(({ proven }) => proven)]).toEqual([[], [true]]);
  expect(verdict.score.wasteGrams).toBeCloseTo(known.levels?.[0]?.value ?? NaN, 0);
});

test("told plans are allowed, never worse than the rule's; a stopped plan is still an answer and says so", () => {
  expect(told.length).toBeGreaterThan(1);
  for (const plan of told) {
    const { faults, score } = checkSeasonPlan(tested.season, plan);
    expect(faults).toEqual([]);
    expect(isWorse(score, full.byRule.score)).toBe(false);
  }
  const stopped = planSeason(tested.season, solver, { allowance: 0, secondsPerLevel: 60, stop: () => true });
  expect([stopped.status, stopped.stoppedEarly, stopped.verdict.faults]).toEqual(["feasible", true, []]);
  expect(isWorse(stopped.verdict.score, stopped.byRule.score)).toBe(false);
});

test("an effort counted in steps ends alike twice, and no clock was asked", () => {
  const { season } = workedSeason("2-jars-short");
  const twice = [0, 1].map(() => planSeason(season, solver, { allowance: 0, secondsPerLevel: 1e6, stepsPerLevel: 150, levels: 2 }));
  expect(twice.map(({ status, stoppedEarly }) => [status, stoppedEarly])).toEqual([["feasible", false], ["feasible", false]]);
  expect(twice[0]?.plan).toEqual(twice[1]?.plan);
  expect(twice[0]?.steps).toBe(twice[1]?.steps);
});

test("an allowance may cost so much of what is picked and no more than the rule loses, and misses no more", () => {
  const { season, known } = tested;
  const strict = known.levels?.[0]?.value ?? 0;
  const { verdict, byRule } = planSeason(season, solver, { allowance: 0.05, secondsPerLevel: 60, levels: 2 });
  const picked = season.crops.reduce((sum, { harvestGrams }) => sum + (harvestGrams[0] ?? []).reduce((a, b) => a + b, 0), 0);
  expect(verdict.score.wasteGrams).toBeGreaterThanOrEqual(strict - 0.6);
  expect(verdict.score.wasteGrams).toBeLessThanOrEqual(Math.min(byRule.score.wasteGrams, strict + 0.05 * picked) + 0.6);
  expect(verdict.score.targetShort).toBeLessThanOrEqual((known.levels?.[1]?.value ?? 0) + 0.01);
});

test("a frozen week that cannot be is infeasible and says what clashes; without a solver the rule answers", () => {
  const { season } = tested;
  const frozen = { ...season, agreed: [{ method: "bean-frozen", week: 0, batches: 4 }], frozenWeeks: 1 };
  const answer = planSeason(frozen, solver, { allowance: 0, secondsPerLevel: 30 });
  expect(answer.status).toBe("infeasible");
  expect(answer.verdict.faults.join()).toContain("is fixed");
  expect(planSeason(season, null, { allowance: 0, secondsPerLevel: 1 }).status).toBe("rule");
});
