/** The account of every gram (design, item 10): the worked case through the interface, and random histories reckoned by the core and by SQL. */
import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closes, type CropSeason } from "#shared/engines/larder/index.ts";
import { accountRows } from "#shared/planning/season-account.ts";
import { accountBySql, pickedUntil } from "#server/gram-account/store.ts";
import { loadLarder } from "#server/facts/larder.ts";
import { referenceBooks } from "#server/facts/reference.ts";
import { lots, movements, picks, places, sowings } from "#db/schema/index.ts";
import type { GramAccount } from "#shared/contracts/gram-account.ts";
import { dateOf, dayNumber } from "#shared/kernel/local-date.ts";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import { badFields, putBed, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom);
});
afterAll(() => stillroom.close());

const account = async (of: TestApp, question = ""): Promise<GramAccount> => (await of.call("GET", `/api/gram-account${question}`)).json<GramAccount>();

describe("the gram account", () => {
  it("of 5,000 g of tomatoes closes with 100 g on hand and nothing unaccounted", async () => {
    const sowingId = await putNew(stillroom, "sowings", { bedId: await putBed(stillroom), crop: "tomato", method: "transplant", plantedOutOn: "2027-05-20", plants: 6 });
    await putNew(stillroom, "picks", { sowingId, pickedOn: "2027-07-20", grams: 5000 });
    const placeId = await putNew(stillroom, "places", { name: "Larder shelf", kind: "shelf" });
    const lot = await putNew(stillroom, "lots", { title: "Tomatoes", crop: "tomato", placeId, madeOn: "2027-07-20" });
    const moves = [{ kind: "put", grams: 5000 }, { kind: "take", grams: 300, for: "trim" }, { kind: "take", grams: 1100, for: "eat" }, { kind: "take", grams: 3000, for: "batch" }, { kind: "give", grams: 400 }, { kind: "compost", grams: 100 }];
    for (const movement of moves) await putNew(stillroom, `lots/${lot}/movements`, { on: "2027-07-20", ...movement });
    const refused = await stillroom.call("PUT", `/api/lots/${lot}/movements/${randomUUID()}`, { body: { kind: "take", grams: 250, on: "2027-07-21" } });
    expect([refused.statusCode, refused.json<{ left: { grams: number } }>().left.grams]).toEqual([409, 100]);
    const whole = await account(stillroom);
    expect(whole).toMatchObject({ season: 2027, seasons: [2027] });
    expect(whole.crops).toEqual([
      expect.objectContaining({ crop: "tomato", pickedGrams: 5000, trimmedGrams: 300, eatenGrams: 1100, batchGrams: 3000, givenGrams: 400, compostedGrams: 100, onHandGrams: 100, unaccountedGrams: 0 }),
    ]);
    expect((await account(stillroom, "?season=2026")).crops).toEqual([]);
    expect((await account(stillroom, "?crop=leek")).crops).toEqual([]);
    // what was only done later is not known on an earlier day
    expect((await account(stillroom, "?asOf=2027-07-19")).crops).toEqual([]);
    expect(badFields(await stillroom.call("GET", "/api/gram-account?season=soon"))).toEqual(["season"]);
  });

  it("is the same by the core and by SQL after random histories, whatever the order of arrival, north and south", async () => {
    const random = seededRandom(20270726);
    const whole = (until: number): number => Math.floor(random.next() * until);
    const pick = <T>(some: readonly T[]): T => some[whole(some.length)] as T;
    const book = await referenceBooks(stillroom.test.db)();
    const start = dayNumber("2026-04-01");
    const counted = { movements: 0, owed: 0, missing: 0, seasons: 0, undone: 0 };
    for (let round = 0; round < 6; round += 1) {
      const home = await stillroom.as();
      const householdId = home.householdId;
      const bedId = await putBed(home);
      await home.test.db.inHousehold(householdId, async (tx) => {
        const placeIds = [randomUUID(), randomUUID()];
        await tx.insert(places).values(placeIds.map((id, i) => ({ householdId, id, name: `Place ${i}`, kind: "cellar" })));
        for (const crop of ["tomato", "potato", "leek"]) {
          const sowingId = randomUUID();
          await tx.insert(sowings).values({ householdId, id: sowingId, bedId, crop, method: "established", plants: 5 });
          await tx.insert(picks).values(Array.from({ length: 6 }, () => ({ householdId, id: randomUUID(), sowingId, pickedOn: dateOf(start + whole(480)), grams: 1 + whole(9000), undoneAt: random.next() < 0.1 ? "2027-07-25T00:00:00Z" : null })));
          for (let n = 0; n < 8; n += 1) {
            const [lotId, made] = [randomUUID(), start + whole(400)];
            await tx.insert(lots).values({ householdId, id: lotId, title: crop, crop, placeId: pick(placeIds), madeOn: dateOf(made) });
            const entries = Array.from({ length: 70 }, () => {
              const kind = pick(["put", "put", "put", "take", "take", "give", "compost", "move", "recount"]);
              const amount = kind === "recount" ? whole(4000) : 1 + whole(kind === "put" ? 3000 : 1200);
              const undone = random.next() < 0.1;
              counted.movements += 1;
              counted.undone += undone ? 1 : 0;
              return {
                householdId, id: randomUUID(), lotId, kind, on: dateOf(made + whole(60)), grams: amount, amount, countedIn: "grams",
                wholeAmount: kind === "recount" ? amount + whole(500) : null,
                takenFor: kind === "take" ? pick(["eat", "trim", "batch"]) : null,
                placeId: kind === "move" ? (placeIds[0] as string) : random.next() < 0.3 ? pick(placeIds) : null,
                toPlaceId: kind === "move" ? (placeIds[1] as string) : null,
                at: random.next() < 0.5 ? `2027-01-01T0${whole(10)}:00:00.000Z` : null,
                undoneAt: undone ? "2027-07-25T00:00:00Z" : null,
              };
            });
            await tx.insert(movements).values(entries);
          }
        }
        for (const [southern, today] of [[false, "2027-07-26"], [true, "2027-07-26"], [false, "2026-09-15"]] as const) {
          const larder = await loadLarder(tx, book, today);
          const rows: CropSeason[] = accountRows({ larder, picks: await pickedUntil(tx, householdId, today), southern, names: new Map() });
          expect(await accountBySql(tx, householdId, southern, today)).toEqual(rows);
          expect(rows.every(closes)).toBe(true);
          counted.seasons += rows.length;
          counted.owed += rows.filter((row) => row.owed > 0).length;
          counted.missing += rows.filter((row) => row.missingAtRecounts !== 0).length;
        }
      });
    }
    expect(counted.movements).toBe(6 * 3 * 8 * 70);
    expect(counted.owed).toBeGreaterThanOrEqual(15);
    expect(counted.missing).toBeGreaterThanOrEqual(70);
    expect(counted.undone).toBeGreaterThanOrEqual(300);
    expect(counted.seasons).toBeGreaterThanOrEqual(80);
  });
});
