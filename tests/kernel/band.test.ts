import { describe, expect, it } from "vitest";
import { bandOf, quantile } from "#shared/kernel/band.ts";
import { addSupplies, chanceInHarvest, type CropSupply } from "#shared/kernel/supply.ts";
import { seededRandom, seedOf, shuffledIndexes } from "#shared/kernel/seeded-random.ts";

describe("bands", () => {
  it("interpolates between order statistics as Hyndman and Fan's type 7 does", () => {
    // worked by hand on four values: h = (n − 1)p = 0.3, 1.5, 2.7 (Hyndman and Fan, The American Statistician 50 (1996) 361)
    expect(bandOf([40, 10, 30, 20])).toEqual({ low: 13, likely: 25, high: 37 });
    expect(quantile([7], 0.9)).toBe(7);
  });

  it("adds sowings scenario by scenario, percentiles last", () => {
    // horticulture reference §8, worked example: A and B alone 80/500/1200 and 180/400/1040, together 940/1200/1380
    const supply = (grams: number[]): CropSupply => ({
      crop: "courgette",
      weeks: ["2027-W30"],
      scenarios: grams.map((g) => Float64Array.of(g)),
      inHarvest: grams.map((g) => Uint8Array.of(g > 0 ? 1 : 0)),
    });
    const a = supply([0, 200, 500, 900, 1400]);
    const b = supply([1200, 800, 400, 300, 100]);
    const alone = (s: CropSupply) => bandOf(s.scenarios.map((grams) => grams[0] as number));
    expect(alone(a)).toEqual({ low: 80, likely: 500, high: 1200 });
    expect(alone(b)).toEqual({ low: 180, likely: 400, high: 1040 });
    const sum = addSupplies("courgette", [a, b]);
    expect(alone(sum)).toEqual({ low: 940, likely: 1200, high: 1380 });
    expect(chanceInHarvest(a)).toEqual([0.8]);
    expect(chanceInHarvest(sum)).toEqual([1]);
  });
});

describe("seeded numbers", () => {
  it("repeat for a seed, differ between seeds, and fill the unit interval evenly", () => {
    const draw = (seed: number) => Array.from({ length: 5 }, ((random) => () => random.next())(seededRandom(seed)));
    expect(draw(7)).toEqual(draw(7));
    expect(draw(7)).not.toEqual(draw(8));
    const random = seededRandom(seedOf("a garden"));
    // chi-square with 9 degrees of freedom stays under 27.9 in 999 of 1,000 fair cases (standard table)
    const counts = new Array<number>(10).fill(0);
    for (let i = 0; i < 20_000; i++) {
      const bin = Math.floor(random.next() * 10);
      counts[bin] = (counts[bin] as number) + 1;
    }
    const chi = counts.reduce((sum, n) => sum + (n - 2_000) ** 2 / 2_000, 0);
    expect(chi).toBeLessThan(27.9);
  });

  it("normal draws have mean 0 and spread 1", () => {
    const random = seededRandom(11);
    const values = Array.from({ length: 20_000 }, () => random.normal());
    const mean = values.reduce((a, b) => a + b, 0) / values.length;
    const spread = Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / values.length);
    // four standard errors: 4/√20000 = 0.028 for the mean, 4/√40000 = 0.02 for the spread
    expect(Math.abs(mean)).toBeLessThan(0.028);
    expect(Math.abs(spread - 1)).toBeLessThan(0.02);
  });

  it("a shuffle holds every index once", () => {
    expect([...shuffledIndexes(50, seededRandom(3))].sort((a, b) => a - b)).toEqual(Array.from({ length: 50 }, (_, i) => i));
  });
});
