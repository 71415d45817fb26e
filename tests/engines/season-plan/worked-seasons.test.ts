/** All seven levels of the worked seasons against their proved values (tests/support/seasons.ts), and what an allowance buys. */
import { expect, test, vi } from "vitest";
import { checkSeasonPlan, isWorse, planSeason, type SeasonPlan } from "#shared/engines/season-plan/index.ts";
import { workedSeason } from "#tests/support/seasons.ts";
import { solver } from "./solver.ts";

/** Proofs take as long as the machine is busy; the answers are what is tested. */
vi.setConfig({ testTimeout: 300_000, hookTimeout: 60_000 });


test.each(["3-keepers-and-berries", "4-tested-only"])("%s reaches every proved level, and says it is proved", (name) => {
  const { season, known } = workedSeason(name);
  const answer = planSeason(season, solver, { allowance: 0, secondsPerLevel: 60 });
  expect([answer.status, answer.verdict.faults]).toEqual(["optimal", []]);
  for (const { level, value } of known.levels ?? []) expect([level, answer.verdict.score[level]]).toEqual([level, expect.closeTo(value, 2)]);
  expect(answer.gapPct).toBeCloseTo(0, 6);
});

test("told plans are allowed, never worse than the one before or the rule's; a stopped plan is still an answer", () => {
  const { season } = workedSeason("4-tested-only");
  const told: SeasonPlan[] = [];
  const full = planSeason(season, solver, { allowance: 0, secondsPerLevel: 60, onBetter: ({ plan }) => told.push(plan) });
  expect(told.length).toBeGreaterThan(1);
  for (const plan of told) {
    const { faults, score } = checkSeasonPlan(season, plan);
    expect(faults).toEqual([]);
    expect(isWorse(score, full.byRule.score)).toBe(false);
  }
  const stopped = planSeason(season, solver, { allowance: 0, secondsPerLevel: 60, stop: () => true });
  expect(stopped.verdict.faults).toEqual([]);
  expect(stopped.status).toBe("feasible");
  expect(isWorse(stopped.verdict.score, stopped.byRule.score)).toBe(false);
});

test("an allowance may cost so much of what is picked and no more than the rule loses, and misses no more", () => {
  const { season, known } = workedSeason("4-tested-only");
  const strict = known.levels?.[0]?.value ?? 0;
  const { verdict, byRule } = planSeason(season, solver, { allowance: 0.05, secondsPerLevel: 60 });
  const picked = season.crops.reduce((sum, { harvestGrams }) => sum + (harvestGrams[0] ?? []).reduce((a, b) => a + b, 0), 0);
  expect(verdict.score.wasteGrams).toBeGreaterThanOrEqual(strict - 0.6);
  expect(verdict.score.wasteGrams).toBeLessThanOrEqual(Math.min(byRule.score.wasteGrams, strict + 0.05 * picked) + 0.6);
  expect(verdict.score.targetShort).toBeLessThanOrEqual((known.levels?.[1]?.value ?? 0) + 0.01);
});

test("a frozen week that cannot be is infeasible and says what clashes; without a solver the rule answers", () => {
  const { season } = workedSeason("4-tested-only");
  const frozen = { ...season, agreed: [{ method: "bean-frozen", week: 0, batches: 4 }], frozenWeeks: 1 };
  const answer = planSeason(frozen, solver, { allowance: 0, secondsPerLevel: 30 });
  expect(answer.status).toBe("infeasible");
  expect(answer.verdict.faults.join()).toContain("is fixed");
  expect(planSeason(season, null, { allowance: 0, secondsPerLevel: 1 }).status).toBe("rule");
});
