/** A dish put away: what is typed becomes a batch that adds up to the portion, or each field says what is open. */
import { describe, expect, it } from "vitest";
import { NewBatch } from "#shared/contracts/batches.ts";
import type { CounterDish } from "#shared/contracts/counter.ts";
import { closeField, closeFields, readClose, type CloseFields } from "#web/pages/counter/close-form.ts";

const id = (n: number): string => `00000000-0000-4000-8000-${String(n).padStart(12, "0")}`;
const STEW = id(1);
const [FRIDGE, FREEZER] = [{ id: id(11), kind: "fridge" }, { id: id(12), kind: "freezer" }];
const dish = (keeps: { place: string; days: number }[]): CounterDish => ({ dish: STEW, draft: { portions: 8, keeps, took: [{ lotId: id(21), title: "Courgettes", crop: "courgette", placeName: "Fridge", grams: 1500 }], missing: [] } }) as unknown as CounterDish;
const fresh = (): CloseFields => closeFields(dish([{ place: "freezer", days: 120 }]), [FRIDGE, FREEZER], () => id(31));
const faultsOf = (change: Partial<CloseFields>): string[] => {
  const read = readClose({ ...fresh(), ...change }, STEW);
  return read.ok ? [] : read.faults.map(({ field }) => field);
};

describe("putting away", () => {
  it("begins with everything where the recipe keeps, and taken as the recipe takes", () => {
    const read = readClose(fresh(), STEW);
    expect(read).toEqual({ ok: true, batch: { recipeId: STEW, portions: 8, eatenPortions: 0, givenPortions: 0, lots: [{ id: id(31), placeId: FREEZER.id, portions: 8 }], took: [{ lotId: id(21), grams: 1500 }] } });
    expect(read.ok && NewBatch.safeParse(read.batch).success).toBe(true);
  });

  it("begins as eaten where the recipe keeps nowhere", () => {
    expect(closeFields(dish([]), [FRIDGE], () => id(31))).toMatchObject({ eaten: "8", lots: [{ portions: "" }] });
  });

  it("takes portions, weights and loss, and two places", () => {
    const read = readClose({ ...fresh(), each: "400 g", whole: "3.25 kg", loss: "50", eaten: "2", lots: [{ id: id(31), placeId: FREEZER.id, portions: "5" }, { id: id(32), placeId: FRIDGE.id, portions: "1" }], took: [{ lotId: id(21), grams: "" }] }, STEW);
    expect(read.ok && read.batch).toMatchObject({ portions: 8, portionGrams: 400, weighedGrams: 3250, lossGrams: 50, eatenPortions: 2, lots: [{ portions: 5 }, { portions: 1 }], took: [] });
    expect(read.ok && NewBatch.safeParse(read.batch).success).toBe(true);
  });

  it("says what is open, and at which field something cannot be read", () => {
    expect(faultsOf({ eaten: "2" })).toEqual(["close-portions"]);
    expect(faultsOf({ portions: "10" })).toEqual(["close-portions"]);
    expect(faultsOf({ each: "much", given: "half", took: [{ lotId: id(21), grams: "a bit" }] })).toEqual(["close-given", "close-each", "close-took-0"]);
    expect(faultsOf({ lots: [{ id: id(31), placeId: "", portions: "8" }] })).toEqual(["close-place-0"]);
  });

  it("finds the field of what the service refuses", () => {
    expect(["portions", "weighedGrams", "lots.1.placeId", "lots.0.portions", "took.2.grams", "recipeId"].map(closeField)).toEqual(["close-portions", "close-whole", "close-place-1", "close-lot-0", "close-took-2", "close-portions"]);
  });
});
