/** Shapes of the picking season (common practice, no source; the shares are worked from the Beta distributions named) and the adding of sowings. */
import { describe, expect, it } from "vitest";
import { shapeOf, shareBy } from "#shared/engines/harvest-forecast/yield-curve.ts";
import type { CurveShape } from "#shared/engines/harvest-forecast/index.ts";
import { equalSteps, normalProbability, normalQuantile } from "#shared/engines/harvest-forecast/normal-quantile.ts";
import { bandOf } from "#shared/kernel/band.ts";
import { addSupplies } from "#shared/kernel/supply.ts";
import type { CropSupply } from "#shared/kernel/supply.ts";
import { cropOf } from "./records.ts";

const weekly = (shape: CurveShape, weeks: number): number[] =>
  Array.from({ length: weeks }, (_, w) => shareBy(shape, 7 * (w + 1), 7 * weeks) - shareBy(shape, 7 * w, 7 * weeks));

describe("shares of the season by week", () => {
  it.each([
    ["repeat", 8, [0.06, 0.148, 0.193, 0.201, 0.177, 0.131, 0.072, 0.018]],
    ["concentrated", 3, [0.456, 0.43, 0.114]],
    ["cut-again", 12, [0.04, 0.069, 0.086, 0.096, 0.102, 0.106, 0.106, 0.102, 0.096, 0.086, 0.069, 0.04]],
    ["even", 4, [0.25, 0.25, 0.25, 0.25]],
  ] as const)("%s over %d weeks", (shape, weeks, shares) => {
    weekly(shape, weeks).forEach((share, w) => expect(Math.abs(share - (shares[w] as number))).toBeLessThan(0.001));
  });

  it("cut-again is Beta(1.5, 1.5), which has a closed form", () => {
    const share = (t: number): number => (2 / Math.PI) * (Math.asin(Math.sqrt(t)) - (1 - 2 * t) * Math.sqrt(t * (1 - t)));
    for (let t = 0.05; t < 1; t += 0.05) expect(shareBy("cut-again", 100 * t, 100)).toBeCloseTo(share(t), 5);
  });

  it("repeat is Beta(2, 2.5): its distribution function has a closed form for whole a", () => {
    // I_t(2, b) = 1 − (1 − t)^b (1 + b t)
    for (let t = 0; t <= 1; t += 0.01) expect(shareBy("repeat", 100 * t, 100)).toBeCloseTo(1 - (1 - t) ** 2.5 * (1 + 2.5 * t), 5);
  });

  it("head and shoots give 60 % in the first ten days and the rest evenly", () => {
    expect(shareBy("head+shoots", 10, 38)).toBeCloseTo(0.6, 9);
    expect(shareBy("head+shoots", 24, 38)).toBeCloseTo(0.8, 9);
  });

  it.each(["repeat", "concentrated", "cut-again", "head+shoots", "one-cut", "even"] as const)("%s rises from 0 to 1", (shape) => {
    expect([shareBy(shape, -3, 20), shareBy(shape, 0, 20), shareBy(shape, 20, 20), shareBy(shape, 50, 20)]).toEqual([0, 0, 1, 1]);
    for (let d = 1; d <= 20; d++) expect(shareBy(shape, d, 20)).toBeGreaterThan(shareBy(shape, d - 1, 20));
  });

  it("follows the crop: a burst of beans, a long courgette, standing leeks and stored onions taken evenly", () => {
    const shapes = ["french-bean", "courgette", "leek", "onion", "cabbage", "broccoli", "kale", "blackcurrant", "sweetcorn", "potato-early"].map((slug) => shapeOf(cropOf(slug)));
    expect(shapes).toEqual(["concentrated", "repeat", "even", "even", "one-cut", "head+shoots", "cut-again", "concentrated", "concentrated", "even"]);
  });
});

describe("adding sowings", () => {
  const supplyOf = (grams: readonly number[]): CropSupply => ({
    crop: "tomato",
    weeks: ["2027-W32"],
    scenarios: grams.map((g) => Float64Array.of(g)),
    inHarvest: grams.map((g) => Uint8Array.of(g > 0 ? 1 : 0)),
  });
  const a = supplyOf([0, 200, 500, 900, 1400]);
  const b = supplyOf([1200, 800, 400, 300, 100]);
  const bandsOf = (supply: CropSupply): number[] => Object.values(bandOf(supply.scenarios.map((grams) => grams[0] as number))).map(Math.round);

  it("adds scenario by scenario and takes percentiles last: 940 / 1200 / 1380, worked by hand", () => {
    expect(bandsOf(a)).toEqual([80, 500, 1200]);
    expect(bandsOf(b)).toEqual([180, 400, 1040]);
    expect(bandsOf(addSupplies("tomato", [a, b]))).toEqual([940, 1200, 1380]);
  });
});

describe("the normal distribution", () => {
  it("has the printed quantiles (NIST/SEMATECH e-Handbook, table 1.3.6.7.1, and its inverse)", () => {
    for (const [p, z] of [
      [0.5, 0],
      [0.9, 1.281552],
      [0.975, 1.959964],
      [0.99, 2.326348],
      [0.999, 3.090232],
      [0.01, -2.326348],
    ] as const) {
      expect(normalQuantile(p)).toBeCloseTo(z, 5);
      expect(normalProbability(z)).toBeCloseTo(p, 6);
    }
  });

  it("in equal steps of chance is balanced about 0", () => {
    const steps = equalSteps(11);
    expect(steps[5]).toBeCloseTo(0, 9);
    steps.forEach((z, i) => expect(z).toBeCloseTo(-(steps[10 - i] as number), 7));
  });
});
