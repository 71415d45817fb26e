/** Units, weights and ingredient lines against published tables; the source of each case stands beside it in tests/cases/measures. */
import { describe, expect, it } from "vitest";
import { asPicked, measureTables, readIngredient, weighIngredient } from "#shared/engines/measures/index.ts";
import { asNumber, rationalOf, times } from "#shared/kernel/quantity.ts";
import type { Rational } from "#shared/kernel/quantity.ts";
import { celsius, celsiusDifference, converted, fahrenheit, inBase } from "#shared/kernel/units.ts";
import type { MeasureSystem, UnitDefinition } from "#shared/kernel/units.ts";
import { readCases, seedRows } from "#tests/support/reference-rows.ts";

const tables = measureTables(seedRows("measures"));
const unit = (name: string, system: MeasureSystem): UnitDefinition => {
  const systems = tables.units.get(name);
  return (systems?.get(system) ?? systems?.get("any")) as UnitDefinition;
};

interface Check {
  readonly id: string;
  readonly check: string;
  readonly expected: number;
  readonly tolerance: number;
  readonly source: string;
  readonly ask: {
    readonly unit?: { unit: string; system: MeasureSystem; per?: number };
    readonly grams?: string;
    readonly celsius?: number;
    readonly fahrenheit?: number;
    readonly celsiusDifference?: number;
    readonly convert?: readonly [string, string, string];
    readonly edible?: string;
    readonly times?: readonly [string, string];
  };
}

function answerOf({ ask }: Check): number | undefined {
  if (ask.unit) return asNumber(inBase({ n: 1, d: 1 }, unit(ask.unit.unit, ask.unit.system))) / (ask.unit.per ?? 1);
  if (ask.grams) return weighIngredient(readIngredient(ask.grams, tables), tables).value?.exactGrams;
  if (ask.celsius !== undefined) return celsius(ask.celsius);
  if (ask.fahrenheit !== undefined) return fahrenheit(ask.fahrenheit);
  if (ask.celsiusDifference !== undefined) return celsiusDifference(ask.celsiusDifference);
  if (ask.convert) return asNumber(converted(rationalOf(ask.convert[0]), unit(ask.convert[1], "us"), unit(ask.convert[2], "us")));
  if (ask.times) return asNumber(times(rationalOf(ask.times[0]), rationalOf(ask.times[1])));
  // of 1000 g as picked so much is used: what must be picked for it is 1000 g again
  const used = 1000 - 10 * (tables.produce.get(ask.edible as string)?.refusePercent ?? NaN);
  expect(asPicked(used, ask.edible as string, tables).value).toBeCloseTo(1000, 6);
  return used;
}

describe("published check values of units and weights", () => {
  const checks = readCases<Check>("measures/check-values.json");
  it("carries 58 of them", () => expect(checks.length).toBe(58));
  it.each(checks.map((check) => [check.id, check.check, check] as const))("%s %s", (_, __, check) => {
    const answer = answerOf(check);
    expect(answer, check.source).toBeDefined();
    expect(Math.abs((answer as number) - check.expected), `${answer} against ${check.expected}, ${check.source}`).toBeLessThanOrEqual(check.tolerance);
  });
});

interface HardLine {
  readonly line: string;
  readonly amount: number | null;
  readonly max: number | null;
  readonly unit: string | null;
  readonly foodHolds: string;
  readonly case: string;
}

describe("hard ingredient lines", () => {
  const lines = readCases<HardLine>("measures/hard-lines.json");
  /** As the list prints them. */
  const THREE_DECIMALS = 0.0005 + 1e-9;
  it("holds 78 of them", () => expect(lines.length).toBe(78));
  it.each(lines.map((line) => [line.case, line.line, line] as const))("%s: %s", (_, __, hard) => {
    const read = readIngredient(hard.line, tables);
    expect(read.text).toBe(hard.line);
    if (hard.amount === null) expect(read.amount).toBeNull();
    else expect(Math.abs(asNumber(read.amount as Rational) - hard.amount)).toBeLessThanOrEqual(THREE_DECIMALS);
    if (hard.max === null) expect(read.amountMax).toBeNull();
    else expect(Math.abs(asNumber(read.amountMax as Rational) - hard.max)).toBeLessThanOrEqual(THREE_DECIMALS);
    expect(read.unit).toBe(hard.unit);
    expect(read.food.toLowerCase()).toContain(hard.foodHolds.toLowerCase());
  });
});
