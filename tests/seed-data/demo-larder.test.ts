/** The larder of the demo household is whole: every reference is there, nothing is dated before it was made or after today, and no lot has less than nothing unless it says so. */
import { describe, expect, test } from "vitest";
import { NewLot, NewMovement } from "#shared/contracts/lots.ts";
import { NewPlace } from "#shared/contracts/places.ts";
import { NewStockTarget } from "#shared/contracts/stock-targets.ts";
import { NewSupply } from "#shared/contracts/supplies.ts";
import { NewWish } from "#shared/contracts/wishes.ts";
import { cropSlugs, readJson, readRecipes } from "./read.ts";
import { readDemo } from "./read-demo.ts";

type Entry = Readonly<Record<string, unknown>> & { readonly id: string };
type List = "places" | "lots" | "movements" | "wishes" | "stockTargets" | "supplies";
const larder = readJson<Record<List, Entry[]> & { invented: string }>("demo/larder.json");
const demo = readDemo();
const TODAY = "2027-07-26";

describe("the demo household's larder", () => {
  test("says that it is invented, and is large enough to show", () => {
    expect(larder.invented).toMatch(/invented/);
    expect(larder.places.length).toBeGreaterThanOrEqual(5);
    expect(larder.lots.length).toBeGreaterThanOrEqual(30);
    expect(larder.movements.length).toBeGreaterThanOrEqual(100);
    expect(larder.wishes.length).toBeGreaterThanOrEqual(2);
    expect(larder.supplies.map((supply) => supply["kind"])).toEqual(expect.arrayContaining(["jar", "lid", "bag", "vinegar", "sugar", "yeast"]));
  });

  test("has every entry in the shape of the interface", () => {
    const faults: string[] = [];
    const fits = (list: List, contract: { safeParse: (value: unknown) => { success: boolean } }): void => {
      for (const { id, lotId: _lot, ...body } of larder[list]) if (!contract.safeParse(body).success) faults.push(`${list} ${id}`);
    };
    fits("places", NewPlace);
    fits("lots", NewLot);
    fits("movements", NewMovement);
    fits("wishes", NewWish);
    fits("stockTargets", NewStockTarget);
    fits("supplies", NewSupply);
    expect(faults).toEqual([]);
  });

  test("points only at what is there, and uses each id once", () => {
    const lists: List[] = ["places", "lots", "movements", "wishes", "stockTargets", "supplies"];
    const ids = lists.flatMap((list) => larder[list].map(({ id }) => id));
    expect(new Set(ids).size).toBe(ids.length);
    const recipes = new Set([...readRecipes(), ...demo.recipes].map(({ id }) => id));
    const places = new Set(larder.places.map(({ id }) => id));
    const lots = new Map(larder.lots.map((lot) => [lot.id, lot]));
    const slugs = cropSlugs();
    for (const lot of larder.lots) expect(places.has(lot["placeId"] as string) && (lot["crop"] === undefined ? recipes.has(lot["recipeId"] as string) : slugs.has(lot["crop"] as string)), lot.id).toBe(true);
    for (const one of [...larder.wishes, ...larder.stockTargets]) expect(recipes.has(one["recipeId"] as string), one.id).toBe(true);
    for (const movement of larder.movements) {
      const madeOn = lots.get(movement["lotId"] as string)?.["madeOn"] as string;
      expect((movement["on"] as string) >= madeOn && (movement["on"] as string) <= TODAY, movement.id).toBe(true);
      if (movement["toPlaceId"] !== undefined) expect(places.has(movement["toPlaceId"] as string)).toBe(true);
    }
  });

  test("says of nearly every gram that was picked where it went", () => {
    const sum = (entries: readonly Entry[]): number => entries.reduce((grams, { grams: more }) => grams + (more as number), 0);
    const picked = sum(demo.picks);
    const ofCrops = new Set(larder.lots.filter(({ crop }) => crop !== undefined).map(({ id }) => id));
    const put = sum(larder.movements.filter(({ kind, lotId }) => kind === "put" && ofCrops.has(lotId as string)));
    expect(picked).toBeGreaterThan(80_000);
    // herbs from the pot and a handful in passing are never weighed in
    expect(put).toBeGreaterThan(0.95 * picked);
    expect(put).toBeLessThanOrEqual(picked);
  });
});
