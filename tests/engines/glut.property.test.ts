/** Relations that hold for every season; each counts the cases that reached its assertion. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findGluts, overBetween, type CropBalance, type GlutAnswer, type GlutCrop, type Ledger } from "#shared/engines/glut/index.ts";
import { weeksFrom } from "#shared/kernel/iso-week.ts";

const WEEKS = 7;
const SCENARIOS = 4;
const weeks = weeksFrom("2027-W27", WEEKS);

/** Half of the weeks without a pick, so that seasons begin late, pause and end early. */
const kilos = fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 9 }).map((kg) => kg * 1000));
const rows = fc.array(fc.array(kilos, { minLength: WEEKS, maxLength: WEEKS }), { minLength: SCENARIOS, maxLength: SCENARIOS });
const cropArb: fc.Arbitrary<GlutCrop> = fc
  .record({
    rows,
    keepWeeks: fc.integer({ min: 1, max: 4 }),
    waits: fc.boolean(),
    eatsGrams: kilos,
    plannedGrams: fc.array(fc.oneof(fc.constant(0), kilos), { minLength: WEEKS, maxLength: WEEKS }),
  })
  .map(({ rows: grams, ...rest }) => ({
    supply: {
      crop: "any",
      weeks,
      scenarios: grams.map((row) => Float64Array.from(row)),
      inHarvest: grams.map((row) => Uint8Array.from(row, (g) => (g > 0 ? 1 : 0))),
    },
    ...rest,
  }));

const reckon = (crops: readonly GlutCrop[]): GlutAnswer => findGluts({ weeks, crops, glutGrams: 1000 }).value;
const only = (crop: GlutCrop): CropBalance => reckon([crop]).crops[0] as CropBalance;
const total = (ledger: Ledger, part: "eaten" | "used" | "over", s: number) => ledger[part].slice(s * ledger.weeks, (s + 1) * ledger.weeks).reduce((sum, grams) => sum + grams, 0);
/** What stands for scenario s in week w of the question; 0 in the weeks that a ledger does not hold. */
const inWeek = (ledger: Ledger, part: "available" | "used" | "surplus", s: number, w: number) =>
  w < ledger.from || w >= ledger.from + ledger.weeks || ledger[part].length === 0 ? 0 : (ledger[part][s * ledger.weeks + w - ledger.from] as number);

describe("in every season", () => {
  it("closes the gram account of each scenario, so the weeks' newly over add up to the season's", () => {
    let withSomethingOver = 0;
    fc.assert(
      fc.property(cropArb, (crop) => {
        const { ledger } = only(crop);
        for (let s = 0; s < SCENARIOS; s++) {
          const picked = (crop.supply.scenarios[s] as Float64Array).reduce((sum, grams) => sum + grams, 0);
          const over = total(ledger, "over", s);
          const placed = total(ledger, "eaten", s) + total(ledger, "used", s);
          expect(placed + over + (ledger.onHand[s] as number) + (ledger.leftStanding[s] as number)).toBeCloseTo(picked, 6);
          if (over > 0) withSomethingOver++;
        }
      }),
      { numRuns: 300, seed: 1 },
    );
    expect(withSomethingOver).toBeGreaterThan(200);
  });

  it("never has more over when more is eaten or it keeps longer", () => {
    let lower = 0;
    fc.assert(
      fc.property(cropArb, kilos, (crop, more) => {
        const before = overBetween([only(crop).ledger], 0, WEEKS - crop.keepWeeks);
        const hungrier = overBetween([only({ ...crop, eatsGrams: crop.eatsGrams + more }).ledger], 0, WEEKS - crop.keepWeeks);
        expect(hungrier).toBeLessThanOrEqual(before + 1e-6);
        const longer = overBetween([only({ ...crop, keepWeeks: crop.keepWeeks + 1 }).ledger], 0, WEEKS);
        expect(longer).toBeLessThanOrEqual(overBetween([only(crop).ledger], 0, WEEKS) + 1e-6);
        if (hungrier < before) lower++;
      }),
      { numRuns: 300, seed: 2 },
    );
    expect(lower).toBeGreaterThan(30);
  });

  it("has one more crop change no other", () => {
    let compared = 0;
    fc.assert(
      fc.property(fc.array(cropArb, { minLength: 1, maxLength: 3 }), cropArb, (crops, another) => {
        const alone = reckon(crops);
        const joined = reckon([...crops, another]);
        alone.crops.forEach((crop, c) => {
          expect(joined.crops[c]?.surplusGrams).toEqual(crop.surplusGrams);
          expect(joined.crops[c]?.freshGrams).toEqual(crop.freshGrams);
          compared++;
        });
      }),
      { numRuns: 100, seed: 3 },
    );
    expect(compared).toBeGreaterThanOrEqual(100);
  });

  it("has a way chosen for a week take what it needs, and lower what is over by as much of it as was over", () => {
    let taken = 0;
    fc.assert(
      fc.property(cropArb, fc.integer({ min: 0, max: WEEKS - 1 }), kilos, (crop, w, grams) => {
        const plain = { ...crop, plannedGrams: weeks.map(() => 0) };
        const before = only(plain).ledger;
        const after = only({ ...plain, plannedGrams: weeks.map((_, i) => (i === w ? grams : 0)) }).ledger;
        for (let s = 0; s < SCENARIOS; s++) {
          const used = inWeek(after, "used", s, w);
          expect(used).toBe(Math.min(grams, inWeek(before, "available", s, w)));
          const [was, is] = [inWeek(before, "surplus", s, w), inWeek(after, "surplus", s, w)];
          expect(is).toBe(crop.waits ? 0 : Math.max(0, was - grams));
          if (was > is) taken++;
        }
      }),
      { numRuns: 300, seed: 4 },
    );
    expect(taken).toBeGreaterThan(100);
  });

  it("gives the same answer twice", () => {
    fc.assert(
      fc.property(fc.array(cropArb, { minLength: 1, maxLength: 3 }), (crops) => {
        expect(JSON.stringify(reckon(crops))).toBe(JSON.stringify(reckon(crops)));
      }),
      { numRuns: 30, seed: 5 },
    );
  });
});
