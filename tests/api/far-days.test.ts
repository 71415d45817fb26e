/** Days and weeks so far off that reckoning from them leaves the four digits of a year (ISO 8601-1 §4.1.2) are refused, not stored. */
import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import { badFields, putBed, putNew, settle, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
let bedId: string;
beforeAll(async () => {
  stillroom = await testApp();
  await settle(stillroom);
  bedId = await putBed(stillroom);
});
afterAll(() => stillroom.close());

const beans = (sownOn: string) => ({ bedId, crop: "french-bean", method: "direct", sownOn, rowM: 6 });

it("refuses a sowing in 9999, and the list of sowings goes on answering", async () => {
  const refused = await stillroom.call("PUT", `/api/sowings/${randomUUID()}`, { body: beans("9999-12-31") });
  expect([refused.statusCode, badFields(refused)]).toEqual([400, ["sownOn"]]);
  expect(refused.json<{ detail: string }>().detail).toBe("The body does not fit. sownOn: must lie in the years 1900 to 2199.");
  for (const day of ["1900-01-01", "2199-12-31"]) await putNew(stillroom, "sowings", beans(day));
  expect((await stillroom.call("GET", "/api/sowings")).statusCode).toBe(200);
});

it("refuses such a day or week in a question", async () => {
  const id = await putNew(stillroom, "sowings", beans("2027-05-20"));
  for (const address of [`/api/sowings/${id}/forecast?asOf=9999-12-31`, "/api/calendar?asOf=9999-12-31", "/api/calendar?from=9999-W52&weeks=60", "/api/calendar?asOf=1899-12-31"])
    expect([address, (await stillroom.call("GET", address)).statusCode]).toEqual([address, 400]);
  expect((await stillroom.call("GET", "/api/calendar?from=2199-W52&weeks=60")).statusCode).toBe(200);
});

it("refuses such a day in a file of weather", async () => {
  const answer = await stillroom.call("PUT", "/api/weather/days", { body: "date,tmax_c,tmin_c\n9999-12-31,5,1\n", headers: { "content-type": "text/csv" } });
  expect([answer.statusCode, badFields(answer)]).toEqual([400, ["rows.2.date"]]);
});
