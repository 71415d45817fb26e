/** Amounts: the book's figure for the size given, bearing of young plants, and picks that correct what is to come. Worked by hand from the table. */
import { describe, expect, it } from "vitest";
import { pickCorrection, seasonYield } from "#shared/engines/harvest-forecast/amounts.ts";
import { bearingOf } from "#shared/engines/harvest-forecast/bearing.ts";
import { plantingOf } from "./plantings.ts";
import { cropOf } from "./records.ts";

describe("size × yield", () => {
  it("takes the figure for the unit that was given", () => {
    // tomato: 1.8 / 3.5 / 7 kg a plant; French bean 1.79 kg a metre (University of Kentucky ID-128)
    expect(seasonYield(plantingOf("tomato", { plants: 4 }), 1)).toMatchObject({ likelyGrams: 14_000, notes: [] });
    expect(seasonYield(plantingOf("french-bean", { rowM: 3 }), 1).likelyGrams).toBe(5_370);
    expect(seasonYield(plantingOf("tomato", { plants: 4 }), 1).sigmaLn).toBeCloseTo(Math.log(7000 / 1800) / 2.563, 9);
  });

  it("goes through the usual spacing where the table lacks the unit, and says so", () => {
    // 5 m of tomatoes 50 cm apart are ten plants
    const byRow = seasonYield(plantingOf("tomato", { rowM: 5 }), 1);
    expect(byRow.likelyGrams).toBeCloseTo(35_000, 6);
    expect(byRow.notes.join(" ")).toMatch(/50 cm apart/);
    // pea: 300 g a metre, rows 60 cm apart: 1 m² holds 1.67 m
    expect(seasonYield(plantingOf("pea", { areaM2: 3 }), 1).likelyGrams).toBeCloseTo((3 * 300) / 0.6, 6);
    // carrot: 1,490 g a metre, 5 cm apart
    expect(seasonYield(plantingOf("carrot", { plants: 20 }), 1).likelyGrams).toBeCloseTo(1490, 6);
  });
});

describe("young perennials", () => {
  it("soft fruit bears nothing, 30 %, 70 % and then fully (common practice); blueberry two years later", () => {
    const shares = (slug: string): number[] => [2024, 2025, 2026, 2027, 2028, 2029].map((season) => bearingOf(cropOf(slug), 2024, season).share);
    expect(shares("raspberry")).toEqual([0, 0.3, 0.7, 1, 1, 1]);
    expect(shares("blueberry")).toEqual([0, 0, 0, 0.3, 0.7, 1]);
    expect(bearingOf(cropOf("raspberry"), null, 2027).share).toBe(1);
  });

  it("asparagus is not cut in its first year, for 2–4 weeks in the next two (UC ANR), rhubarb for 1–2 in its second (Illinois)", () => {
    expect(bearingOf(cropOf("asparagus"), 2025, 2026).pickWeeks).toEqual({ low: 2, high: 4 });
    expect(bearingOf(cropOf("asparagus"), 2025, 2028)).toEqual({ share: 1, pickWeeks: { low: 6, high: 8 } });
    expect(bearingOf(cropOf("rhubarb"), 2025, 2026).pickWeeks).toEqual({ low: 1, high: 2 });
    expect(bearingOf(cropOf("asparagus"), 2025, 2025).share).toBe(0);
  });

  it("an apple bush bears from its third year and fully from its sixth (common practice)", () => {
    expect([2024, 2025, 2026, 2027, 2028, 2029].map((season) => bearingOf(cropOf("apple"), 2024, season).share)).toEqual([0, 0, 0.2, 0.4, 0.7, 1]);
  });

  it("a sown crop is not younger for the year it is in", () => {
    expect(bearingOf(cropOf("carrot"), 2027, 2027).share).toBe(1);
  });
});

describe("picks correct what is to come", () => {
  it("by exp(B ln(G / (q T))) with B = σ² / (σ² + 0.35² / weeks)", () => {
    // σ 0.5, four weeks, half the season gone, 1,000 of 4,000 g picked: B = 0.25 / (0.25 + 0.030625) = 0.89087
    const { factor, sigmaLn } = pickCorrection(1000, 0.5, 4000, 4, 0.5);
    expect(factor).toBeCloseTo(0.5 ** 0.89087, 4);
    expect(sigmaLn).toBeCloseTo(0.5 * Math.sqrt(1 - 0.89087), 4);
  });

  it("leaves the plan where the picks are what was planned, and trusts a week less than a month", () => {
    expect(pickCorrection(2000, 0.5, 4000, 4, 0.5).factor).toBe(1);
    expect(pickCorrection(4000, 0.5, 4000, 1, 0.5).factor).toBeLessThan(pickCorrection(4000, 0.5, 4000, 6, 0.5).factor);
  });

  it("says nothing before the season has begun in earnest", () => {
    expect(pickCorrection(500, 0.001, 4000, 0.2, 0.5)).toEqual({ factor: 1, sigmaLn: 0.5 });
  });
});
