/** The reader of `season-plan/1`: every fault by its path, and what may be left out. */
import { expect, test } from "vitest";
import { readSeason, refusedMethods } from "#shared/engines/season-plan/index.ts";
import { workedSeason } from "#tests/support/seasons.ts";

const { json, season } = workedSeason("4-tested-only");

/** Paths of the faults of the worked season with some of its fields set to something else. */
function faultsOf(changes: readonly (readonly [path: string, value: unknown])[]): string[] {
  const copy = structuredClone(json);
  for (const [path, value] of changes) {
    const keys = path.split(".");
    const last = keys.pop() as string;
    const at = keys.reduce<Record<string, unknown>>((within, key) => within[key] as Record<string, unknown>, copy);
    at[last] = value;
  }
  const result = readSeason(copy);
  return result.ok ? [] : (result.problem.fields ?? []).map(({ path }) => path);
}

test.each<[fault: string, set: string, value: unknown]>([
  ["format", "format", "season-plan/9"],
  ["weeks", "weeks", 0],
  ["scenarios", "scenarios", []],
  ["crops.0.keepWeeks", "crops.0.keepWeeks", 0],
  ["crops.0.harvestGrams.likely", "crops.0.harvestGrams.likely", [1, 2]],
  ["crops.1.harvestGrams.likely.2", "crops.1.harvestGrams.likely.2", -4],
  ["crops.1.crop", "crops.1.crop", "french-bean"],
  ["resources.0.kind", "resources.0.kind", "daily"],
  ["resources.5.amount", "resources.5.amount", -3],
  ["methods.0.uses.0", "methods.0.uses.0.crop", "quince"],
  ["methods.0.sessionBatches.max", "methods.0.sessionBatches.max", 1.5],
  ["methods.0.perBatch.freezer", "methods.0.perBatch.freezer", "much"],
  ["targets.0.methods.0", "targets.0.methods", ["no-such-method"]],
  ["targets.0.atWeek", "targets.0.atWeek", 5],
  ["tastes.0.everyWeeks", "tastes.0.everyWeeks", 0],
  ["frozenWeeks", "frozenWeeks", 6],
])("names %s", (fault, set, value) => {
  expect(faultsOf([])).toEqual([]);
  expect(faultsOf([[set, value]])).toContain(fault);
});

test("reads what is not a season at all, and several faults at once", () => {
  for (const nothing of [null, 3, "x", [], {}]) expect(readSeason(nothing).ok).toBe(false);
  expect(faultsOf([["weeks", -1], ["crops.0.crop", 3]]).length).toBeGreaterThan(1);
});

test("refuses plain beans from a water bath and what needs a canner that is not there, and says what to make of them instead", () => {
  const refused = refusedMethods(season);
  expect(refused.map(({ method }) => method)).toEqual(["bean-bottled-pressure", "bean-bottled-water-bath"]);
  expect(refused[0]?.reason).toContain("pressure canner");
  expect(refused[1]?.reason).toContain("No tested process");
  expect(refused[1]?.instead).toContain("bean-dilly");
  expect(refused[1]?.instead).not.toContain("bean-bottled-pressure");
});
