/** Seventy-eight ingredient lines that are hard on purpose, each expected by hand; see tests/cases/measures/hard-lines.json. */
import { describe, expect, it } from "vitest";
import { measureTables, readIngredient } from "#shared/engines/measures/index.ts";
import { asNumber } from "#shared/kernel/quantity.ts";
import type { Rational } from "#shared/kernel/quantity.ts";
import { readCases, seedRows } from "#tests/support/reference-rows.ts";

const tables = measureTables(seedRows("measures"));
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
