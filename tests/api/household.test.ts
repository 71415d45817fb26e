import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { badFields, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
});
afterAll(() => stillroom.close());

const household = { name: "Mill house", zone: "Europe/Amsterdam", latitude: 52.1, longitude: 5.18, altitudeM: 4, people: 3, weekStart: "monday", units: "metric" };
const tag = async (of: TestApp) => String((await of.call("GET", "/api/household")).headers.etag);
const change = async (of: TestApp, body: unknown) => of.call("PUT", "/api/household", { body, headers: { "if-match": await tag(of) } });

describe("the household", () => {
  it("is there from the start, not yet placed, and eats by the book for two", async () => {
    const fresh = await stillroom.as();
    const read = await fresh.call("GET", "/api/household");
    expect(read.statusCode).toBe(200);
    expect(read.json()).toMatchObject({ placed: false, people: 2, eatsFrom: "book", glutGrams: 1000 });
    expect(read.json<{ eats: unknown[] }>().eats.length).toBeGreaterThan(40);
  });

  it("is changed by naming its version, and eats by the book for as many as there are", async () => {
    expect((await stillroom.call("PUT", "/api/household", { body: household })).statusCode).toBe(428);
    expect((await stillroom.call("PUT", "/api/household", { body: household, headers: { "if-match": '"0"' } })).statusCode).toBe(412);
    const forTwo = (await stillroom.call("GET", "/api/household")).json<{ eats: { crop: string; gramsPerWeek: number }[] }>().eats;
    const changed = await change(stillroom, household);
    expect(changed.statusCode, changed.body).toBe(200);
    expect(changed.json()).toMatchObject({ ...household, placed: true, eatsFrom: "book" });
    const forThree = changed.json<{ eats: { crop: string; gramsPerWeek: number }[] }>().eats;
    const potato = (eats: typeof forTwo) => eats.find((one) => one.crop === "potato")?.gramsPerWeek ?? 0;
    expect(potato(forThree) / potato(forTwo)).toBeCloseTo(1.5, 2);
  });

  it.each(["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"])("may begin its week on a %s", async (weekStart) => {
    const changed = await change(await stillroom.as(), { ...household, weekStart });
    expect([changed.statusCode, changed.json<{ weekStart: string }>().weekStart]).toEqual([200, weekStart]);
  });

  it("takes the same again without a version, and without effect", async () => {
    const before = await tag(stillroom);
    const again = await stillroom.call("PUT", "/api/household", { body: { ...household, glutGrams: 1000 } });
    expect([again.statusCode, again.headers.etag]).toEqual([200, before]);
  });

  it("takes back what it answered, unchanged, and changes nothing: placed or not, by the book or by its own figures", async () => {
    const fresh = await stillroom.as();
    const sendBack = async (more = {}) => {
      const read = await fresh.call("GET", "/api/household");
      const sent = await fresh.call("PUT", "/api/household", { body: { ...read.json<object>(), ...more }, headers: { "if-match": String(read.headers.etag) } });
      return { before: read.json<object>(), tag: read.headers.etag, sent };
    };
    for (const settle of [null, household, { ...household, eats: [{ crop: "tomato", gramsPerWeek: 900 }], kitchen: { ovens: [], burners: 3 }, cooks: 2 }]) {
      if (settle !== null) await change(fresh, settle);
      const { before, tag: was, sent } = await sendBack();
      expect([sent.statusCode, sent.headers.etag, sent.json()]).toEqual([200, was, before]);
    }
    // a change among what is sent back is taken, the rest stays what it was
    await change(fresh, household);
    expect((await sendBack({ people: 4 })).sent.json()).toMatchObject({ people: 4, eatsFrom: "book", placed: true });
  });

  it("that has no place yet stays without one when only its name is changed, and has one when it is moved", async () => {
    const fresh = await stillroom.as();
    const { eats: _eats, ...unplaced } = (await fresh.call("GET", "/api/household")).json<Record<string, unknown>>();
    expect((await change(fresh, { ...unplaced, name: "Our garden" })).json()).toMatchObject({ name: "Our garden", placed: false });
    expect((await change(fresh, { ...unplaced, latitude: 52.1 })).json()).toMatchObject({ latitude: 52.1, placed: true });
  });

  it("says its own figures of what it eats, and takes them back", async () => {
    const own = await change(stillroom, { ...household, eats: [{ crop: "tomato", gramsPerWeek: 900 }], glutGrams: 500, cooks: 2, kitchen: { ovens: [], burners: 2 } });
    expect(own.json()).toMatchObject({ eats: [{ crop: "tomato", gramsPerWeek: 900 }], eatsFrom: "household", glutGrams: 500, cooks: 2, kitchen: { ovens: [], burners: 2 } });
    const back = await change(stillroom, household);
    expect(back.json()).toMatchObject({ eatsFrom: "book", glutGrams: 1000, cooks: 1 });
  });

  it.each([
    [{ zone: "Europe/Nowhere" }, "zone"],
    [{ latitude: 91 }, "latitude"],
    [{ people: 0 }, "people"],
    [{ people: 2.5 }, "people"],
    [{ weekStart: "someday" }, "weekStart"],
    [{ eats: [{ crop: "triffid", gramsPerWeek: 10 }] }, "eats.0.crop"],
    [{ eats: [{ crop: "tomato", gramsPerWeek: 10 }, { crop: "tomato", gramsPerWeek: 20 }] }, "eats.1.crop"],
    [{ eats: [{ crop: "tomato", gramsPerWeek: -10 }] }, "eats.0.gramsPerWeek"],
    [{ pets: 2 }, "pets"],
    [{ kitchen: { ovens: [{ trays: 0, preheatMin: 10, changeMin: 5 }], burners: 4 } }, "kitchen.ovens.0.trays"],
  ])("refuses %j and names %s", async (fault, path) => {
    const before = await tag(stillroom);
    const refused = await change(stillroom, { ...household, ...fault });
    expect(refused.statusCode, refused.body).toBe(400);
    expect(badFields(refused)).toEqual([path]);
    expect(await tag(stillroom)).toBe(before);
  });

  it("is emptied by DELETE: everything goes, and it starts afresh", async () => {
    const fresh = await stillroom.as();
    await change(fresh, household);
    const bedId = randomUUID();
    await fresh.call("PUT", `/api/beds/${bedId}`, { body: { name: "Long bed", lengthM: 10, widthM: 1.2, cover: "open" } });
    await fresh.call("PUT", "/api/weather/days", { body: "date,tmax_c,tmin_c\n2027-07-01,20,10\n", headers: { "content-type": "text/csv" } });
    const before = await tag(fresh);
    expect((await fresh.call("DELETE", "/api/household")).statusCode).toBe(204);
    expect((await fresh.call("GET", "/api/household")).json()).toMatchObject({ placed: false });
    expect((await fresh.call("GET", "/api/beds")).json()).toEqual([]);
    expect((await fresh.call("GET", "/api/weather")).json()).toMatchObject({ days: 0, normals: null });
    // a page that still holds the old version must not write over the new start
    expect((await fresh.call("PUT", "/api/household", { body: household, headers: { "if-match": before } })).statusCode).toBe(412);
  });
});

describe("health", () => {
  it("names the database, the mode and the day where the household lives", async () => {
    const health = await stillroom.call("GET", "/api/health");
    expect(health.json()).toMatchObject({ status: "ok", version: "0.0.0", mode: "test", today: "2027-07-26" });
    expect(["embedded", "server"]).toContain(health.json<{ database: string }>().database);
  });
});
