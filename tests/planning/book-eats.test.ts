/** The book's appetite, against the figures it is taken from. */
import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { bookEats } from "#shared/planning/book-eats.ts";

const read = (file: string) => parse<Record<string, string>>(readFileSync(new URL(`../../seed-data/${file}`, import.meta.url)), { columns: true });
const rows = read("eats.csv").map((row) => ({ crop: row["crop"] as string, gramsPerPersonWeek: Number(row["grams_per_person_week"]), source: row["source"] as string, note: row["note"] as string }));
const one = bookEats(rows, 1);

describe("what the book thinks is eaten fresh", () => {
  it("has a figure with a source for every crop of the table, and no other", () => {
    expect(rows.map((row) => row.crop)).toEqual(read("crops.csv").map((row) => row["slug"]));
    expect(rows.filter((row) => !(row.gramsPerPersonWeek > 0) || row.source === "" || row.note === "")).toEqual([]);
  });

  // Common practice, no source: 2 to 4 portions of 80 g (British Heart Foundation portion guide) = 160 to 350 g a week in season,
  // tomatoes 500 to 700 g, potatoes 700 to 900 g, garlic 25 g.
  it.each([
    ["tomato", 500, 700],
    ["potato", 700, 900],
    ["potato-early", 700, 900],
    ["garlic", 25, 25],
    ["french-bean", 160, 350],
    ["courgette", 160, 350],
    ["carrot", 160, 350],
    ["strawberry", 160, 350],
    ["chard", 160, 350],
  ])("%s between %i and %i g a person and week", (crop, low, high) => {
    expect(one.get(crop)).toBeGreaterThanOrEqual(low);
    expect(one.get(crop)).toBeLessThanOrEqual(high);
  });

  // USDA ERS per-capita availability 2019, g a person and week over the year; what is bought all year round lies near what is eaten in season.
  it.each([["onion", 178], ["lettuce", 219]])("%s near the average availability of %i g", (crop, grams) => {
    expect(Math.abs((one.get(crop) as number) - grams)).toBeLessThanOrEqual(5);
  });

  it("keeps herbs small", () => {
    for (const herb of ["parsley", "basil", "coriander", "dill", "chives", "mint", "thyme-sage", "lovage"]) expect(one.get(herb)).toBeLessThanOrEqual(20);
  });

  it("grows with the people at the table", () => {
    expect(bookEats(rows, 4).get("tomato")).toBe(4 * (one.get("tomato") as number));
  });
});
