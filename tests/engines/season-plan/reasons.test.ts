/**
 * Each reason shown is true: the line is taken out and the season planned anew by another road (all weeks frozen as the rest says; or the
 * line closed), and the same loss comes out. Seasons: the worked ones, with plans that other programs proved.
 */
import { expect, test, vi } from "vitest";
import { checkSeasonPlan, lineReasons, planSeason, replaceLine, weeksWithoutAnswer, withLess, withMore, type Batches, type SeasonPlan } from "#shared/engines/season-plan/index.ts";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import { smallSeason } from "#tests/support/every-season.ts";
import { read, workedSeason } from "#tests/support/seasons.ts";
import { solver } from "./solver.ts";

/** Proofs take as long as the machine is busy; the answers are what is tested. */
vi.setConfig({ testTimeout: 300_000, hookTimeout: 60_000 });

const { season, known } = workedSeason("4-tested-only");
const plan = known.plan as SeasonPlan;
const effort = { allowance: 0, secondsPerLevel: 30 };
const random = seededRandom(20_270_801);
/** Small seasons and their best plans: each line of each of them is looked at. */
const small = Array.from({ length: 12 }, () => read(smallSeason(random))).map((one) => ({ season: one, plan: planSeason(one, solver, effort).plan }));

test("what would be lost without a line is lost without it", () => {
  let told = 0;
  for (const { season: of, plan: whole } of [{ season, plan }, ...small]) {
    const reasons = lineReasons(of, whole, solver);
    expect(reasons.length).toBe(whole.planned.length);
    const dust = checkSeasonPlan(of, whole).score;
    for (const { line, lostGrams, lost, missing } of reasons) {
      const frozen = { ...of, agreed: withLess(of, whole, line).planned, frozenWeeks: of.weeks };
      const { verdict } = planSeason(frozen, solver, { ...effort, levels: 2 });
      expect(verdict.faults).toEqual([]);
      expect(verdict.score.wasteGrams - dust.wasteGrams).toBeCloseTo(lostGrams, -1);
      expect(lost.reduce((sum, { grams }) => sum + grams, 0)).toBeGreaterThanOrEqual(Math.floor(lostGrams) - 1);
      expect(verdict.score.targetShort - dust.targetShort).toBeCloseTo(missing.reduce((sum, { percent }) => sum + percent, 0), 1);
      if (lostGrams > 1 || missing.length > 0) told++;
    }
  }
  expect(told).toBeGreaterThan(10);
});

test("what takes a line's place is what a new plan without it has more of, at the loss it says", () => {
  let replaced = 0;
  let displacing = 0;
  for (const { season: of, plan: whole } of small) {
    for (const line of whole.planned) {
      const told = replaceLine(of, whole, line, solver, effort);
      if (!told) throw new Error("nothing is frozen here");
      replaced++;
      const before = checkSeasonPlan(of, whole).score;
      // by another road: a season in which that session cannot be larger, as a limit of its own and not as a closed line
      const own = `only-${line.method}`;
      const left = withLess(of, whole, line).planned.find(({ method, week }) => method === line.method && week === line.week)?.batches ?? 0;
      const methods = of.methods.map((method) => (method.id === line.method ? { ...method, perBatch: { ...method.perBatch, [own]: 1 } } : method));
      const amount = Array.from({ length: of.weeks }, (_, week) => (week === line.week ? left : 99));
      const closed = { ...of, methods, resources: [...of.resources, { id: own, kind: "weekly" as const, unit: "batches", amount }], agreed: whole.planned, agreedUntil: of.weeks };
      const { verdict, plan: anew } = planSeason(closed, solver, { ...effort, levels: 4 });
      expect(verdict.score.wasteGrams - before.wasteGrams).toBeCloseTo(told.lostGrams, -1);
      expect(verdict.score.targetShort - before.targetShort).toBeCloseTo(told.missingPercent, 1);
      // as few changes either way, so as many batches take its place
      const had = (one: Batches): number => whole.planned.find(({ method, week }) => method === one.method && week === one.week)?.batches ?? 0;
      expect(batchesOf(told.instead)).toBe(batchesOf(anew.planned.map((one) => ({ ...one, batches: Math.max(0, one.batches - had(one)) }))));
      for (const one of told.instead) expect([one.method, one.week]).not.toEqual([line.method, line.week]);
      if (told.instead.length > 0) displacing++;
    }
  }
  expect(replaced).toBeGreaterThan(12);
  expect(displacing).toBeGreaterThan(3);
});

test("a limit that is said to help does help by so much, and the weeks are those in which something is lost", () => {
  const weeks = weeksWithoutAnswer(season, plan, solver, { secondsPerLevel: 30, mostWeeks: 1 });
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

function batchesOf(lines: readonly Batches[]): number {
  return lines.reduce((sum, { batches }) => sum + batches, 0);
}
