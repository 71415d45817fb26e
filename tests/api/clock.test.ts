/** Days and zones. Offsets by the IANA time zone database (tzdata): Kiritimati UTC+14, Pago Pago UTC−11, Amsterdam UTC+1, in summer UTC+2. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { dayAt, type Clock } from "#server/clock.ts";
import { testApp, type TestApp } from "#tests/support/build-app.ts";

const at = (instant: string, zone: string) => dayAt(Date.parse(instant), zone);

describe("the calendar day of an instant", () => {
  it.each([
    ["2027-07-25T21:59:59Z", "Europe/Amsterdam", "2027-07-25"],
    ["2027-07-25T22:00:00Z", "Europe/Amsterdam", "2027-07-26"],
    ["2027-01-01T22:59:59Z", "Europe/Amsterdam", "2027-01-01"],
    ["2027-01-01T23:00:00Z", "Europe/Amsterdam", "2027-01-02"],
    ["2027-07-26T10:00:00Z", "Pacific/Kiritimati", "2027-07-27"],
    ["2027-07-26T10:59:59Z", "Pacific/Pago_Pago", "2027-07-25"],
    // the night of the change to summer time (EU directive 2000/84/EC: last Sunday of March, 01:00 UTC)
    ["2027-03-28T00:59:59Z", "Europe/Amsterdam", "2027-03-28"],
    ["2027-03-28T21:59:59Z", "Europe/Amsterdam", "2027-03-28"],
    ["2027-03-28T22:00:00Z", "Europe/Amsterdam", "2027-03-29"],
    ["2028-02-29T12:00:00Z", "Etc/UTC", "2028-02-29"],
  ])("%s in %s is %s", (instant, zone, day) => {
    expect(at(instant, zone)).toBe(day);
  });
});

describe("today", () => {
  const clock: Clock = { today: (zone) => at("2027-07-26T10:30:00Z", zone), now: () => Date.parse("2027-07-26T10:30:00Z") };
  let stillroom: TestApp;
  beforeAll(async () => {
    stillroom = await testApp({ clock });
  });
  afterAll(() => stillroom.close());

  it("is the day where the household lives", async () => {
    const days: string[] = [];
    for (const zone of ["Pacific/Kiritimati", "Pacific/Pago_Pago"]) {
      const etag = String((await stillroom.call("GET", "/api/household")).headers.etag);
      const body = { name: "Mill house", zone, latitude: 1, longitude: 1, altitudeM: 4, people: 3, weekStart: "monday", units: "metric" };
      expect((await stillroom.call("PUT", "/api/household", { body, headers: { "if-match": etag } })).statusCode).toBe(200);
      days.push((await stillroom.call("GET", "/api/health")).json<{ today: string }>().today);
    }
    expect(days).toEqual(["2027-07-27", "2027-07-25"]);
  });
});
