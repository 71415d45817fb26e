/** The larder's pages: what is said of a lot, what is typed, where lines and bars stand. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CropAccount } from "#shared/contracts/gram-account.ts";
import type { LarderLot } from "#shared/contracts/lots.ts";
import type { Place } from "#shared/contracts/places.ts";
import { barOf, longestOf, PARTS } from "#web/pages/larder/account-bars.ts";
import { layOutAges } from "#web/pages/larder/age-lines.ts";
import { amountOf, bestWords, doneWords, isUrgent, lotName, readyAmounts } from "#web/pages/larder/lot-words.ts";
import { readPutIn, type PutInFields } from "#web/pages/larder/put-in-form.ts";
import { readAmount } from "#web/pages/larder/read-amount.ts";
import { roomOf, roomWords } from "#web/pages/larder/room.ts";

const TODAY = "2027-07-26";
const lotOf = (change: Partial<LarderLot>): LarderLot => ({
  id: "lot",
  title: "French beans",
  madeOn: "2026-08-20",
  placeId: "p",
  placeName: "Drawer 2",
  grams: null,
  portions: 2,
  countedIn: "portions",
  stands: [],
  bestUntil: "2027-08-20",
  useFirst: true,
  discard: false,
  state: "in store",
  short: null,
  forgotten: false,
  lastMovedOn: null,
  keepsWhy: [],
  sources: [],
  ...change,
});

describe("a lot", () => {
  it("is said with its year, its amount in its own count first, and how long still", () => {
    expect(lotName(lotOf({}), TODAY)).toBe("French beans of 2026");
    expect(lotName(lotOf({ title: "Beans 2026" }), TODAY)).toBe("Beans 2026");
    expect(lotName(lotOf({ madeOn: "2027-07-01" }), TODAY)).toBe("French beans");
    expect(amountOf({ portions: 2, grams: 600 }, "portions")).toBe("2\u00a0portions, 600\u00a0g");
    expect(amountOf({ portions: 2, grams: 600 }, "grams")).toBe("600\u00a0g, 2\u00a0portions");
    expect(amountOf({ portions: null, grams: null }, null)).toBe("nobody knows how much");
    // 26 July to 20 August is 25 days
    expect(bestWords(lotOf({}), TODAY)).toBe("best within 25\u00a0days");
    expect(bestWords(lotOf({ bestUntil: "2028-03-06" }), TODAY)).toBe("best until 6\u00a0March 2028");
    expect(bestWords(lotOf({ bestUntil: "2027-07-01" }), TODAY)).toBe("past its best since 1\u00a0July");
    expect(bestWords(lotOf({ discard: true, safeUntil: "2027-07-20" }), TODAY)).toBe("not safe after 20\u00a0July: throw it away");
    expect(bestWords(lotOf({ bestUntil: null }), TODAY)).toBe("nobody knows how long it keeps");
    expect([lotOf({}), lotOf({ bestUntil: "2027-08-25" }), lotOf({ bestUntil: null }), lotOf({ bestUntil: null, discard: true })].map((lot) => isUrgent(lot, TODAY))).toEqual([true, false, false, true]);
  });

  it("offers amounts to press that are never more than there is", () => {
    let reached = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), fc.constantFrom("grams" as const, "portions" as const), (n, countedIn) => {
        const ready = readyAmounts({ grams: countedIn === "grams" ? n : null, portions: countedIn === "portions" ? n : null }, countedIn, true);
        const amounts = ready.map((one) => one.grams ?? one.portions ?? 0);
        reached += amounts.length;
        expect(amounts.every((amount) => amount >= 1 && amount <= n)).toBe(true);
        expect(amounts.at(-1)).toBe(n);
        expect(new Set(amounts).size).toBe(amounts.length);
      }),
    );
    expect(reached).toBeGreaterThan(150);
    expect(readyAmounts({ grams: null, portions: 0 }, "portions", true)).toEqual([]);
    expect(readyAmounts({ grams: null, portions: 5 }, "portions", false).map(({ words }) => words)).toEqual(["1", "2", "3"]);
  });
});

describe("an amount as typed", () => {
  it("counts in the lot's own way when it is bare", () => {
    const read = (text: string, countedIn: "grams" | "portions", zero = false): unknown => {
      const amount = readAmount(text, countedIn, zero);
      return amount.ok ? amount.value : amount.wrong;
    };
    expect(read("3", "portions")).toEqual({ portions: 3 });
    expect(read("3 jars", "grams")).toEqual({ portions: 3 });
    expect(read("450", "grams")).toEqual({ grams: 450 });
    expect(read("1,2 kg", "portions")).toEqual({ grams: 1200 });
    expect(read("0", "portions", true)).toEqual({ portions: 0 });
    expect(read("0", "grams", true)).toEqual({ grams: 0 });
    expect(read("0", "portions")).toBe("That is nothing.");
    expect(read("", "portions")).toBe("No amount is written yet.");
    expect(read("some", "portions")).toBe("That is not a weight we can read.");
    expect(doneWords("take", { portions: 1 }, "Peas")).toBe("1\u00a0portion taken out: Peas.");
  });

  it("makes a lot and its first movement, or names each field", () => {
    const known = { crops: [{ crop: "courgette", name: "Courgette" }], recipes: [{ id: "r1", title: "Courgette soup" }] };
    const fields = (change: Partial<PutInFields>): PutInFields => ({ what: "Courgette soup", much: "6", each: "", on: "today", placeId: "p", ...change });
    expect(readPutIn(fields({ each: "300 g" }), known, TODAY)).toEqual({ ok: true, lot: { title: "Courgette soup", placeId: "p", madeOn: TODAY, recipeId: "r1", portionGrams: 300 }, movement: { kind: "put", on: TODAY, portions: 6 } });
    expect(readPutIn(fields({ what: "courgette", much: "1.8 kg", on: "24 July" }), known, TODAY)).toMatchObject({ ok: true, lot: { crop: "courgette", madeOn: "2027-07-24" }, movement: { grams: 1800 } });
    expect(readPutIn(fields({ what: "Shop peas" }), known, TODAY)).toMatchObject({ ok: true, lot: { title: "Shop peas" } });
    const bad = readPutIn(fields({ what: " ", much: "", each: "x", on: "31 April", placeId: "" }), known, TODAY);
    expect(!bad.ok && bad.faults.map(({ field }) => field)).toEqual(["in-what", "in-much", "in-each", "in-on", "in-placeId"]);
  });
});

describe("the pictures", () => {
  const place = (change: Partial<Place>): Place => ({ id: "p", name: "Chest", kind: "freezer", litres: 140, usedLitres: 96, freeLitres: 44, state: "has room", lots: 3, unmeasuredLots: 0, loadGrams: null, inTodayGrams: 0, notes: [], ...change });

  it("room: what is in it and what is free share one scale; more than it holds is said, not drawn over the edge", () => {
    const rule = roomOf(place({}), 280, 282);
    expect(rule).toMatchObject({ used: 96, all: 140, over: false, words: { left: "96\u00a0l in it", right: "44\u00a0l free of 140\u00a0l" } });
    expect(roomOf(place({ usedLitres: 150 }), 140, 142)).toMatchObject({ used: 140, all: 140, over: true, words: { right: "10\u00a0l over, of 140\u00a0l" } });
    expect(roomWords({ usedLitres: 1, unmeasuredLots: 2, state: null })).toBe("2 without a known size");
  });

  it("ages: every line runs from the day made to the day it is best until, on one axis with today", () => {
    const plate = layOutAges([lotOf({}), lotOf({ id: "b", madeOn: "2027-07-24", bestUntil: "2028-06-04" }), lotOf({ id: "c", bestUntil: null })], TODAY, 100, 900, 60);
    expect(plate.lines.map(({ id }) => id)).toEqual(["lot", "b"]);
    expect(plate.lines[0]?.from).toBe(100);
    expect(plate.lines[1]?.until).toBe(900);
    expect(plate.lines.map(({ from, until }) => from < until)).toEqual([true, true]);
    expect(plate.today > (plate.lines[1]?.from ?? 0) && plate.today < (plate.lines[0]?.until ?? 0)).toBe(true);
    const labels = plate.months.filter(({ labelled }) => labelled).map(({ x }) => x);
    expect(labels.slice(1).every((x, i) => x - (labels[i] ?? 0) >= 60)).toBe(true);
    expect(labels.length).toBeGreaterThan(4);
  });

  // the account adds up to the gram (product: picked = trimmed + eaten + into batches + given + composted + on hand + unaccounted)
  it("grams: the parts of a bar lie end to end and are as long as what was picked", () => {
    let reached = 0;
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 5_000 }), { minLength: PARTS.length, maxLength: PARTS.length }), (grams) => {
        const crop = { crop: "pea", name: "Pea", pickedGrams: grams.reduce((a, b) => a + b, 0), ...Object.fromEntries(PARTS.map(({ key }, i) => [key, grams[i] ?? 0])) } as CropAccount;
        const bar = barOf(crop, longestOf([crop]), 700);
        reached += bar.length;
        for (const [i, part] of bar.entries()) expect(part.x).toBeCloseTo(i === 0 ? 0 : (bar[i - 1]?.x ?? 0) + (bar[i - 1]?.width ?? 0), 6);
        if (crop.pickedGrams > 0) expect(bar.reduce((sum, { width }) => sum + width, 0)).toBeCloseTo(700, 6);
      }),
    );
    expect(reached).toBeGreaterThan(400);
  });
});
