/** The measure tables: every row named and sourced, and damaged rows named when read. */
import { describe, expect, it } from "vitest";
import { findFood } from "#shared/engines/measures/find-food.ts";
import { measureTables } from "#shared/engines/measures/index.ts";
import type { ReferenceRow } from "#shared/kernel/reference-row.ts";
import { seedRows, seedSources } from "#tests/support/reference-rows.ts";

const rows = seedRows("measures");
const changed = (kind: string, key: string, facts: Record<string, unknown>): ReferenceRow[] => rows.map((row) => (row.kind === kind && row.key === key ? { ...row, facts: { ...row.facts, ...facts } } : row));

describe("reading the measure tables", () => {
  it("takes every row of seed-data, each with a publication that the files list", () => {
    const known = new Set(seedSources("measures").map((source) => source.id));
    for (const row of rows) expect(known, `${row.kind} ${row.key}`).toContain(row.source);
    expect(measureTables(rows).weights.size).toBeGreaterThan(250);
  });
  it("finds each food by each of its names, and no name twice", () => {
    const tables = measureTables(rows);
    let names = 0;
    for (const food of tables.foods.values()) {
      for (const name of food.names) {
        expect(findFood(name, null, tables), name).toBe(food);
        names++;
      }
    }
    expect(names).toBe(tables.foodByName.size);
    expect(names).toBeGreaterThan(450);
  });
  it("has a density between 0.03 and 1.6 g/ml in every cup and spoon (the range in which a food is not an error)", () => {
    const tables = measureTables(rows);
    let checked = 0;
    for (const row of [...tables.weights.values()].flat()) {
      const unit = row.unit === null ? undefined : tables.units.get(row.unit)?.get("us");
      if (unit?.kind !== "volume") continue;
      const density = row.grams / Number(unit.factor);
      expect(density, row.key).toBeGreaterThan(0.03);
      expect(density, row.key).toBeLessThan(1.6);
      checked++;
    }
    expect(checked).toBeGreaterThan(350);
  });
  it.each([
    ["grams in words", "measures/weights", "plain-flour/cup", { grams: "125" }, /plain-flour\/cup\.grams must be a number/],
    ["a food that is not there", "measures/weights", "plain-flour/cup", { food: "sand" }, /names a food without a row/],
    ["an unknown system", "measures/units", "us-cup", { system: "martian" }, /us-cup\.system must be one of/],
    ["no spellings", "measures/words", "cup", { words: null }, /cup\.words must be a list/],
  ])("refuses %s and names it", (_, kind, key, facts, fault) => expect(() => measureTables(changed(kind, key, facts))).toThrow(fault));
});
