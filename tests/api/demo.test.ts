/** The invented household moves in by the same verbs as everybody, and its pages have something to show. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { DEMO_DAY, fillWithDemo } from "#server/demo-household.ts";
import { HOUSEHOLD_ID } from "#server/http/member.ts";
import type { GramAccount } from "#shared/contracts/gram-account.ts";
import type { Larder } from "#shared/contracts/larder.ts";
import type { Today } from "#shared/contracts/today.ts";
import { testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  const first = await testApp();
  stillroom = await first.as(HOUSEHOLD_ID);
  await fillWithDemo(first.test.db, DEMO_DAY, () => undefined);
});
afterAll(() => stillroom.close());

const get = async <T>(address: string): Promise<T> => (await stillroom.call("GET", address)).json<T>();

describe("the demo household", () => {
  it("has a larder with something to use first, something split, forgotten and to be counted again", async () => {
    const larder = await get<Larder>("/api/larder");
    expect(larder.useFirst.length).toBeGreaterThanOrEqual(2);
    expect(larder.useFirst.map((line) => line.title)).toContain("French beans of last summer");
    expect(larder.forgotten.length).toBeGreaterThanOrEqual(1);
    expect(larder.toRecount.map((line) => line.title)).toEqual(["Spinach lasagne"]);
    expect(larder.lots.filter((lot) => lot.stands.length > 1).length).toBeGreaterThanOrEqual(2);
    expect(larder.lots.filter((lot) => lot.state !== "not put in yet" && lot.state !== "to recount" && (lot.grams ?? lot.portions) === 0)).toEqual([]);
    expect(larder.places.filter((place) => place.state !== null).length).toBeGreaterThanOrEqual(4);
    expect((await get<Today>("/api/today")).useFirst.length).toBeGreaterThanOrEqual(2);
  });

  it("has accounted for its strawberries to the gram, and not for everything else", async () => {
    const { crops } = await get<GramAccount>("/api/gram-account");
    const of = (crop: string) => crops.find((row) => row.crop === crop);
    expect(of("strawberry")).toMatchObject({ pickedGrams: 10_620, unaccountedGrams: 0 });
    expect(of("raspberry")?.unaccounted.missingAtRecountGrams).toBeGreaterThan(0);
    expect(of("pea")?.unaccounted.notPutAwayGrams).toBeGreaterThan(0);
    expect(crops.filter((row) => row.onHandGrams > 0).length).toBeGreaterThanOrEqual(3);
  });
});
