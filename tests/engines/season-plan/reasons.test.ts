/**
 * Each reason shown is true: the line is taken out and the season planned anew by another road (all weeks frozen as the rest says; or the
 * line closed), and the same loss comes out. Seasons: the worked ones, with plans that other programs proved.
 */
import { expect, test, vi } from "vitest";
import { checkSeasonPlan, lineReasons, planSeason, replaceLine, weeksWithoutAnswer, withLess, withMore, type SeasonPlan } from "#shared/engines/season-plan/index.ts";
import { workedSeason } from "#tests/support/seasons.ts";
import { solver } from "./solver.ts";

/** Proofs take as long as the machine is busy; the answers are what is tested. */
vi.setConfig({ testTimeout: 300_000, hookTimeout: 60_000 });

const { season, known } = workedSeason("4-tested-only");
const plan = known.plan as SeasonPlan;
const effort = { allowance: 0, secondsPerLevel: 30 };

test.each(["1-glut-full-freezer", "3-keepers-and-berries", "4-tested-only"])("what would be lost without a line is lost without it: %s", (name) => {
  const worked = workedSeason(name);
  const whole = worked.known.plan as SeasonPlan;
  const reasons = lineReasons(worked.season, whole, solver);
  expect(reasons.length).toBe(whole.planned.length);
  const dust = checkSeasonPlan(worked.season, whole).score;
  for (const { line, lostGrams, lost, missing } of reasons) {
    const frozen = { ...worked.season, agreed: withLess(worked.season, whole, line).planned, frozenWeeks: worked.season.weeks };
    const { verdict } = planSeason(frozen, solver, effort);
    expect(verdict.faults).toEqual([]);
    expect(verdict.score.wasteGrams - dust.wasteGrams).toBeCloseTo(lostGrams, -1);
    expect(lost.reduce((sum, { grams }) => sum + grams, 0)).toBeGreaterThanOrEqual(Math.floor(lostGrams) - 1);
    expect(verdict.score.targetShort - dust.targetShort).toBeCloseTo(missing.reduce((sum, { percent }) => sum + percent, 0), 1);
  }
  expect(reasons.some(({ lostGrams, missing }) => lostGrams > 1 || missing.length > 0)).toBe(true);
});

test("what takes a line's place is what a new plan without it has more of, at the loss it says", () => {
  let replaced = 0;
  for (const line of plan.planned) {
    const told = replaceLine(season, plan, line, solver, effort);
    if (!told) continue;
    replaced++;
    const least = planSeason({ ...season, atMost: [{ ...line, batches: line.batches - 1 }] }, solver, { ...effort, levels: 1 });
    expect(least.verdict.score.wasteGrams - checkSeasonPlan(season, plan).score.wasteGrams).toBeCloseTo(told.lostGrams, -1);
    expect(told.lostGrams).toBeGreaterThanOrEqual(-1);
    for (const one of told.instead) expect([one.method, one.week]).not.toEqual([line.method, line.week]);
  }
  expect(replaced).toBe(plan.planned.length);
});

test("a limit that is said to help does help by so much, and the weeks are those in which something is lost", () => {
  const weeks = weeksWithoutAnswer(season, plan, solver, { secondsPerLevel: 30, mostWeeks: 3 });
  expect(weeks.length).toBeGreaterThan(0);
  let helped = 0;
  const { score } = checkSeasonPlan(season, plan);
  for (const { week, lostGrams, helps } of weeks) {
    expect(lostGrams).toBeGreaterThan(0);
    for (const { resource, more, savesGrams } of helps) {
      const limit = season.resources.find(({ id }) => id === resource);
      if (!limit) throw new Error(resource);
      const { verdict } = planSeason(withMore(season, limit, week, more), solver, { ...effort, levels: 1 });
      expect(score.wasteGrams - verdict.score.wasteGrams).toBeCloseTo(savesGrams, 0);
      helped++;
    }
  }
  expect(helped).toBeGreaterThan(0);
});
