/** The reader of `season-plan/1`: every fault by its path, and what may be left out. */
import { expect, test } from "vitest";
import { readSeason, refusedMethods } from "#shared/engines/season-plan/index.ts";
import { workedSeason } from "#tests/support/seasons.ts";

const { json, season } = workedSeason("4-tested-only");

function faultsOf(change: (copy: Record<string, never>) => void): string[] {
  const copy = structuredClone(json) as Record<string, never>;
  change(copy);
  const result = readSeason(copy);
  return result.ok ? [] : (result.problem.fields ?? []).map(({ path }) => path);
}

test.each<[string, (season: any) => void]>([
  ["format", (s) => (s.format = "season-plan/9")],
  ["weeks", (s) => (s.weeks = 0)],
  ["scenarios", (s) => (s.scenarios = [])],
  ["crops.0.keepWeeks", (s) => (s.crops[0].keepWeeks = 0)],
  ["crops.0.harvestGrams.likely", (s) => s.crops[0].harvestGrams.likely.pop()],
  ["crops.1.harvestGrams.likely.2", (s) => (s.crops[1].harvestGrams.likely[2] = -4)],
  ["crops.1.crop", (s) => (s.crops[1].crop = s.crops[0].crop)],
  ["resources.0.kind", (s) => (s.resources[0].kind = "daily")],
  ["resources.5.amount", (s) => (s.resources[5].amount = -3)],
  ["methods.0.uses.0", (s) => (s.methods[0].uses[0].crop = "quince")],
  ["methods.0.sessionBatches.max", (s) => (s.methods[0].sessionBatches.max = 1.5)],
  ["methods.0.perBatch.freezer", (s) => (s.methods[0].perBatch.freezer = "much")],
  ["targets.0.methods.0", (s) => (s.targets[0].methods = ["no-such-method"])],
  ["targets.0.atWeek", (s) => (s.targets[0].atWeek = 5)],
  ["tastes.0.everyWeeks", (s) => (s.tastes[0].everyWeeks = 0)],
  ["frozenWeeks", (s) => (s.frozenWeeks = 6)],
])("names %s", (path, change) => {
  expect(faultsOf(change)).toContain(path);
});

test("reads what is not a season at all, and several faults at once", () => {
  for (const nothing of [null, 3, "x", [], {}]) expect(readSeason(nothing).ok).toBe(false);
  expect(faultsOf((s: any) => ((s.weeks = -1), (s.crops[0].crop = 3))).length).toBeGreaterThan(1);
});

test("refuses plain beans from a water bath and what needs a canner that is not there, and says what to make of them instead", () => {
  const refused = refusedMethods(season);
  expect(refused.map(({ method }) => method)).toEqual(["bean-bottled-pressure", "bean-bottled-water-bath"]);
  expect(refused[0]?.reason).toContain("pressure canner");
  expect(refused[1]?.reason).toContain("No tested process");
  expect(refused[1]?.instead).toContain("bean-dilly");
  expect(refused[1]?.instead).not.toContain("bean-bottled-pressure");
});
