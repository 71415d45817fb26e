import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Today } from "#shared/contracts/today.ts";
import { badFields, putBed, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
});
afterAll(() => stillroom.close());

const today = async (of: TestApp, question = "") => (await of.call("GET", `/api/today${question}`)).json<Today>();

describe("today", () => {
  it("begins by saying what must be set up", async () => {
    const list = await today(await stillroom.as());
    expect(list).toMatchObject({ today: "2027-07-26", pick: [], sow: [], useFirst: [], cook: [] });
    expect(list.urgent.map((one) => one.kind)).toContain("setup");
  });

  it("names what is ripe, what is to be sown soon, and the cook day that comes", async () => {
    await settle(stillroom);
    const bedId = await putBed(stillroom);
    const ripe = await putNew(stillroom, "sowings", { bedId, crop: "french-bean", method: "direct", sownOn: "2027-05-10", rowM: 8 });
    await putNew(stillroom, `sowings/${ripe}/sightings`, { stage: "first-pick", seenOn: "2027-07-18" });
    await putNew(stillroom, "picks", { sowingId: ripe, pickedOn: "2027-07-18", grams: 600 });
    const planned = await putNew(stillroom, "sowings", { bedId, crop: "spinach", method: "direct", sownOn: "2027-08-02", rowM: 3 });
    const day = await putNew(stillroom, "cook-days", { on: "2027-07-31", startsAt: "10:00", cooks: 1, kitchen: { ovens: [], burners: 4 }, dishes: [], title: "Beans, all of them" });
    const list = await today(stillroom);
    expect(list.pick.find((one) => one.sowingId === ripe)).toMatchObject({ crop: "french-bean", bedName: "Long bed", daysSince: 8 });
    expect(list.sow.map((one) => [one.sowingId, one.on])).toEqual([[planned, "2027-08-02"]]);
    expect(list.cook.map((one) => [one.cookDayId, one.on])).toEqual([[day, "2027-07-31"]]);
    expect((await today(stillroom, "?asOf=2027-04-01")).pick).toEqual([]);
    expect(badFields(await stillroom.call("GET", "/api/today?asOf=soon"))).toEqual(["asOf"]);
  });
});
