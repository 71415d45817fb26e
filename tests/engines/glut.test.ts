/** The cohort reckoning on cases worked by hand; the arithmetic stands beside each. */
import { describe, expect, it } from "vitest";
import { findGluts, keepWeeksOf, overBetween, type GlutCrop } from "#shared/engines/glut/index.ts";
import { middleOf } from "#shared/engines/glut/middle.ts";
import { quantile } from "#shared/kernel/band.ts";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import { addWeeks, weeksFrom } from "#shared/kernel/iso-week.ts";

const FIRST = "2027-W30";

function crop(slug: string, scenarios: number[][], rest: Partial<Omit<GlutCrop, "supply">> = {}): GlutCrop {
  const weeks = weeksFrom(FIRST, (scenarios[0] as number[]).length);
  return {
    supply: {
      crop: slug,
      weeks,
      scenarios: scenarios.map((row) => Float64Array.from(row)),
      inHarvest: scenarios.map((row) => Uint8Array.from(row, (grams) => (grams > 0 ? 1 : 0))),
    },
    keepWeeks: 1,
    waits: false,
    eatsGrams: 0,
    plannedGrams: weeks.map(() => 0),
    ...rest,
  };
}

const reckon = (crops: GlutCrop[], glutGrams = 1000) => findGluts({ weeks: (crops[0] as GlutCrop).supply.weeks, crops, glutGrams }).value;
const list = (values: ArrayLike<number>) => Array.from(values);

describe("a crop that does not keep a week", () => {
  // The household's worked check: likely 9 kg a week in W30 … W33, 2 kg eaten, 2 kg planned, so 5 kg over in each; weeks under the threshold are no glut.
  const picks = [9000, 9000, 9000, 9000, 4500];
  const answer = reckon([crop("courgette", [picks], { eatsGrams: 2000, plannedGrams: [2000, 2000, 2000, 2000, 2000] })]);

  it("leaves 5 kg over in each of the four weeks", () => {
    expect(list(answer.crops[0]!.surplusGrams)).toEqual([5000, 5000, 5000, 5000, 500]);
    expect(answer.weeks.map((week) => week.glut)).toEqual([true, true, true, true, false]);
  });

  it("counts each gram over once: 4 × 5 kg + 0.5 kg", () => {
    expect(overBetween([answer.crops[0]!.ledger], 0, 5)).toBe(20_500);
    expect(overBetween([answer.crops[0]!.ledger], 1, 3)).toBe(10_000);
  });
});

describe("what still keeps from earlier weeks", () => {
  it("is eaten oldest first and counted over when its weeks are up", () => {
    // K = 2, appetite 2. W1: 5 − 2 = 3 left. W2: 3 there, 2 eaten, 1 left of W1 and its time is up: 1 over. W3: 4 − 2 = 2 on hand.
    const { crops } = reckon([crop("tomato", [[5000, 0, 4000]], { keepWeeks: 2, eatsGrams: 2000 })]);
    expect(list(crops[0]!.availableGrams)).toEqual([5000, 3000, 4000]);
    expect(list(crops[0]!.freshGrams)).toEqual([2000, 2000, 2000]);
    expect(list(crops[0]!.surplusGrams)).toEqual([3000, 1000, 2000]);
    expect(list(crops[0]!.ledger.over)).toEqual([1000, 0, 0]);
    expect(list(crops[0]!.ledger.onHand)).toEqual([2000]);
  });

  it("spares the newer pick when an older one can be eaten", () => {
    // K = 3, appetite 1, picks 2 2 0 0. W1: 1 left. W2: eats the 1 of W1; 2 of W2 left. W3: eats 1 of W2; 1 left. W4: eats it. Nothing is ever over.
    // Newest first would have eaten W2's in W2 and W3 and let 1 of W1 spoil after W3.
    const { crops } = reckon([crop("pepper", [[2000, 2000, 0, 0]], { keepWeeks: 3, eatsGrams: 1000 })]);
    expect(list(crops[0]!.surplusGrams)).toEqual([1000, 2000, 1000, 0]);
    expect(list(crops[0]!.ledger.over)).toEqual([0, 0, 0, 0]);
  });

  it("goes to a chosen way before the table, and no more than there is", () => {
    // K = 2, appetite 1, planned 0 5. W1: 3 − 1 = 2 left. W2: 2 + 1 = 3 there, all 3 of the planned 5 that can be had, nothing to eat fresh.
    const { crops } = reckon([crop("tomato", [[3000, 1000]], { keepWeeks: 2, eatsGrams: 1000, plannedGrams: [0, 5000] })]);
    expect(list(crops[0]!.ledger.used)).toEqual([0, 3000]);
    expect(list(crops[0]!.freshGrams)).toEqual([1000, 0]);
    expect(list(crops[0]!.surplusGrams)).toEqual([2000, 0]);
  });
});

describe("several scenarios and several crops", () => {
  // Worked example of the horticultural reference, "From dates to grams per week": A 0 200 500 900 1400, B 1200 800 400 300 100;
  // sums 1200 1000 900 1200 1500, middle 1200; the middles alone are 500 and 400, which would add to 900.
  const a = [0, 200, 500, 900, 1400];
  const b = [1200, 800, 400, 300, 100];

  it("takes the middle of the sums, not the sum of the middles", () => {
    const answer = reckon([crop("a", a.map((g) => [g])), crop("b", b.map((g) => [g]))], 1000);
    expect(answer.crops[0]!.surplusGrams[0]).toBe(500);
    expect(answer.crops[1]!.surplusGrams[0]).toBe(400);
    expect(answer.weeks[0]!.surplusGrams).toBe(1200);
    expect(overBetween(answer.crops.map((c) => c.ledger), 0, 1)).toBe(1200);
  });

  it("is a glut from the threshold on, and never where nothing is over", () => {
    const question = [crop("a", a.map((g) => [g])), crop("b", b.map((g) => [g]))];
    expect(reckon(question, 1200).weeks[0]!.glut).toBe(true);
    expect(reckon(question, 1201).weeks[0]!.glut).toBe(false);
    expect(reckon([crop("a", [[0]])], 0).weeks[0]!.glut).toBe(false);
  });
});

describe("a crop that waits for the grower", () => {
  it("is never over; what is wanted is taken from the stem week after week", () => {
    // Lifted 13 in W1, appetite 2: the heap is 13, 11, 9, 7 when the week begins.
    const { crops, weeks } = reckon([crop("onion", [[13_000, 0, 0, 0]], { waits: true, keepWeeks: 25, eatsGrams: 2000 })]);
    expect(list(crops[0]!.availableGrams)).toEqual([13_000, 11_000, 9000, 7000]);
    expect(list(crops[0]!.freshGrams)).toEqual([2000, 2000, 2000, 2000]);
    expect(list(crops[0]!.surplusGrams)).toEqual([0, 0, 0, 0]);
    expect(weeks.map((week) => week.surplusGrams + week.freshGrams)).toEqual([0, 0, 0, 0]);
    expect(list(crops[0]!.ledger.onHand)).toEqual([5000]);
  });

  it("goes on from what lies in store before the first week", () => {
    // 4 in store, appetite 1.5, keeps 3 weeks from the first: 4, 2.5, 1, then the rest is used up or gone; nothing else is harvested
    const { crops } = reckon([crop("onion", [[0, 0, 0, 0]], { waits: true, keepWeeks: 3, eatsGrams: 1500, openingGrams: [4000] })]);
    expect(list(crops[0]!.availableGrams)).toEqual([4000, 2500, 1000, 0]);
    expect(list(crops[0]!.freshGrams)).toEqual([1500, 1500, 1000, 0]);
  });

  it("is gone when its keeping time has passed since the harvest", () => {
    // Keeps 2 weeks: W1 harvest, W2 still there, W3 gone with the 3 that are left.
    const { crops } = reckon([crop("leek", [[5000, 0, 0, 0]], { waits: true, keepWeeks: 2, eatsGrams: 1000 })]);
    expect(list(crops[0]!.availableGrams)).toEqual([5000, 4000, 0, 0]);
    expect(list(crops[0]!.ledger.leftStanding)).toEqual([3000]);
  });
});

describe("the middle of the scenarios", () => {
  it("is that of the kernel's quantile, for odd and even counts, ties and orders", () => {
    const random = seededRandom(3);
    let compared = 0;
    for (let n = 1; n <= 60; n++) {
      const values = Float64Array.from({ length: n }, () => random.below(12) * 100);
      expect(middleOf(new Float64Array(values))).toBe(quantile(values.sort(), 0.5));
      compared++;
    }
    expect(compared).toBe(60);
  });
});

describe("keeping in whole weeks", () => {
  // FoodKeeper data of USDA FSIS: green beans keep 3 to 5 days in the refrigerator, so they are dealt with in the week of picking.
  it.each([
    ["french-bean, 8 days at best", 8, false, 1],
    ["parsley, 45 days at best, half in the fridge", 45, false, 3],
    ["summer cabbage, 30 days at best", 30, false, 2],
    ["raspberry, 3 days at best", 3, false, 1],
    ["onion in its own store, 180 days", 180, true, 25],
  ])("%s", (_, keepDays, waits, weeks) => {
    expect(keepWeeksOf({ keepDays }, waits)).toBe(weeks);
  });
});

it("refuses supplies of different shape", () => {
  const odd = crop("b", [[1, 2], [3, 4]]);
  expect(() => findGluts({ weeks: [FIRST, addWeeks(FIRST, 1)], crops: [crop("a", [[1, 2]]), odd], glutGrams: 1 })).toThrow(RangeError);
});
