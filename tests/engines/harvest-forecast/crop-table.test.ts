/** The crop table as facts. Expectations are the printed rows of the table's own sources, by code in seed-data/crop-sources.csv. */
import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { cropFactsOf, waitsForTheGrower } from "#shared/kernel/crop-facts.ts";

type Row = Record<string, string>;
const read = (file: string): Row[] => parse<Row>(readFileSync(new URL(`../../../seed-data/${file}`, import.meta.url)), { columns: true });
const rows = read("crops.csv");
const sources = new Map(read("crop-sources.csv").map((row) => [row["code"], row["text"]]));

describe("crop table", () => {
  it("reads every row and knows every source that a row names", () => {
    const crops = rows.map(cropFactsOf);
    expect(crops.length).toBeGreaterThanOrEqual(74);
    expect(new Set(crops.map((crop) => crop.slug)).size).toBe(crops.length);
    const unknown = crops.flatMap((crop) => crop.sources.filter((code) => !sources.get(code)));
    expect(unknown).toEqual([]);
    expect(crops.filter((crop) => crop.sources.length === 0)).toEqual([]);
  });

  it("keeps spans in order and every crop with a yield", () => {
    for (const crop of rows.map(cropFactsOf)) {
      for (const band of [crop.thermal, crop.gramsPerPlant, crop.gramsPerRowM, crop.gramsPerM2])
        if (band) expect(band.low <= band.likely && band.likely <= band.high, crop.slug).toBe(true);
      expect(crop.gramsPerPlant ?? crop.gramsPerRowM ?? crop.gramsPerM2, crop.slug).not.toBeNull();
      expect(crop.perennial, crop.slug).toBe(crop.daysToMaturity === null);
      expect(crop.upperC > crop.baseC && crop.pickWeeks.low <= crop.pickWeeks.high, crop.slug).toBe(true);
    }
  });

  it("reads tomato, sweetcorn and strawberry as printed", () => {
    const of = (slug: string) => cropFactsOf(rows.find((row) => row["slug"] === slug) as Row);
    // tomato: 68–95 days from transplanting (Encyclopaedia Britannica; North Dakota H-912); base 7, upper 28 °C (AquaCrop)
    expect(of("tomato")).toMatchObject({
      habit: "repeat",
      perennial: false,
      tender: true,
      baseC: 7,
      upperC: 28,
      daysToMaturity: { low: 68, high: 95, from: "transplanting" },
      flowerToPickDays: { low: 45, high: 60 },
      emergence: { thetaCd: 103, baseC: 7.5 },
      gramsPerRowM: null,
    });
    // sweetcorn: 20–27 days from silk (Encyclopaedia Britannica)
    expect(of("sweetcorn").flowerToPickDays).toEqual({ low: 20, high: 27 });
    expect(of("strawberry")).toMatchObject({ perennial: true, habit: "repeat", daysToMaturity: null, killC: -1 });
    expect(waitsForTheGrower(of("carrot"))).toBe(true);
    expect(waitsForTheGrower(of("lettuce-head"))).toBe(false);
  });

  it("names the crop and the column of a cell that cannot be read", () => {
    const row = rows[0] as Row;
    expect(() => cropFactsOf({ ...row, base_c: "warm" })).toThrow(/tomato: base_c/);
    expect(() => cropFactsOf({ ...row, kill_c: "", base_c: "" })).toThrow(/tomato: base_c is empty/);
    expect(() => cropFactsOf({ ...row, habit: "sometimes" })).toThrow(/habit/);
    expect(() => cropFactsOf({ ...row, flower_to_pick_days: "soon" })).toThrow(/flower_to_pick_days/);
  });
});
