/** Daily weather as CSV (RFC 4180): columns by name, every bad row named with its line, all or none. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { badFields, testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
});
afterAll(() => stillroom.close());

const send = (csv: string, of: TestApp = stillroom) => of.call("PUT", "/api/weather/days", { body: csv, headers: { "content-type": "text/csv; charset=utf-8" } });
const held = async (of: TestApp = stillroom) => (await of.call("GET", "/api/weather")).json<{ days: number; from: string | null; until: string | null; wholeYears: number }>();

describe("daily weather", () => {
  it("is found by the names of its columns, whatever their order and whatever stands beside them", async () => {
    const answer = await send('\uFEFFstation,tmin_c,DATE,tmax_c,remark\r\n260,-3.4,2026-01-01,1.2,"fog, all day"\r\n260,0,2026-01-03,4.26,\r\n\r\n');
    expect(answer.statusCode, answer.body).toBe(200);
    expect(answer.json()).toEqual({ days: 2 });
    expect(await held()).toMatchObject({ days: 2, from: "2026-01-01", until: "2026-01-03", wholeYears: 0 });
  });

  it("is replaced by date", async () => {
    expect((await send("date,tmax_c,tmin_c\n2026-01-03,6,1\n2026-01-04,7,2\n")).json()).toEqual({ days: 2 });
    expect(await held()).toMatchObject({ days: 3 });
  });

  it("is taken out by its days, the last excluded, and what was reckoned with it as well", async () => {
    const fresh = await stillroom.as();
    await send("date,tmax_c,tmin_c\n1999-12-31,5,1\n2026-01-01,5,1\n2026-01-02,5,1\n2026-01-03,5,1\n", fresh);
    const remove = async (question: string) => fresh.call("DELETE", `/api/weather/days?${question}`);
    expect((await remove("from=2026-01-01&until=2026-01-03")).json()).toEqual({ days: 2 });
    expect((await remove("from=2026-01-01&until=2026-01-03")).json()).toEqual({ days: 0 });
    expect(await held(fresh)).toMatchObject({ days: 2, from: "1999-12-31", until: "2026-01-03" });
    expect((await remove("from=1900-01-01&until=2000-01-01")).json()).toEqual({ days: 1 });
    expect(await held(fresh)).toMatchObject({ days: 1, from: "2026-01-03" });
    for (const [question, path] of [["from=2026-01-03&until=2026-01-03", "until"], ["from=2026-01-03", "until"], ["until=2026-01-03", "from"], ["from=2026-04-31&until=2026-05-03", "from"]] as const) {
      const refused = await remove(question);
      expect([question, refused.statusCode, badFields(refused)]).toEqual([question, 400, [path]]);
    }
    expect(await held(fresh)).toMatchObject({ days: 1 });
  });

  it("counts whole years", async () => {
    const fresh = await stillroom.as();
    const days = Array.from({ length: 730 }, (_, i) => `${new Date(Date.UTC(2025, 0, 1 + i)).toISOString().slice(0, 10)},12.5,3.5`);
    await send(`date,tmax_c,tmin_c\n${days.join("\n")}\n`, fresh);
    expect(await held(fresh)).toMatchObject({ days: 730, wholeYears: 2, from: "2025-01-01", until: "2026-12-31" });
  });

  it("names every bad row by its line in the file, and stores nothing of it", async () => {
    const before = await held();
    const csv = [
      "date,tmax_c,tmin_c",
      "2026-02-01,5.0,1.0",
      "2026-04-31,5.0,1.0", // line 3: there is no 31 April
      "2026-02-03,,1.0", // line 4: not measured
      "2026-02-04,1.0,5.0", // line 5: upside down
      "2026-02-05,5;0,1.0", // line 6: not a number
      "", // line 7 is empty and skipped
      "2026-02-01,6.0,2.0", // line 8: that day stands in line 2
      "2026-02-09,99.9,1.0", // line 9: no garden
      "2026-02-10,5.0", // line 10: a cell is missing
    ].join("\n");
    const answer = await send(csv);
    expect(answer.statusCode).toBe(400);
    expect(badFields(answer)).toEqual(["rows.3.date", "rows.4.tmax_c", "rows.5.tmax_c", "rows.6.tmax_c", "rows.8.date", "rows.9.tmax_c", "rows.10.tmin_c"]);
    expect(await held()).toEqual(before);
  });

  it("needs its columns and at least one row", async () => {
    expect(badFields(await send("date,max,tmin_c\n2026-01-01,5,1\n"))).toEqual(["rows.1.tmax_c"]);
    expect(badFields(await send("date,tmax_c,tmax_c,tmin_c\n2026-01-01,5,1,1\n"))).toEqual(["rows.1.tmax_c"]);
    expect((await send("date,tmax_c,tmin_c\n")).statusCode).toBe(400);
    expect((await send("")).statusCode).toBe(400);
    expect((await send('date,tmax_c,tmin_c\n"2026-01-01,5,1\n')).statusCode).toBe(400);
  });

  it("comes as text/csv and no larger than five mebibytes", async () => {
    expect((await stillroom.call("PUT", "/api/weather/days", { body: { date: "2026-01-01" } })).statusCode).toBe(415);
    expect((await send(`date,tmax_c,tmin_c,remark\n2026-01-01,5,1,${"x".repeat(5 * 1024 * 1024)}\n`)).statusCode).toBe(413);
  });

  it("may be a record of a hundred years in one piece", async () => {
    const fresh = await stillroom.as();
    const days = Array.from({ length: 36_525 }, (_, i) => `${new Date(Date.UTC(1925, 0, 1 + i)).toISOString().slice(0, 10)},${(i % 200) / 10},${-((i % 70) / 10)}`);
    expect((await send(`date,tmax_c,tmin_c\n${days.join("\n")}\n`, fresh)).json()).toEqual({ days: 36_525 });
  });
});

describe("monthly normals", () => {
  const months = Array.from({ length: 12 }, (_, i) => ({ month: i + 1, tmaxC: 10.5, tminC: 2.5 }));
  const put = (body: unknown) => stillroom.call("PUT", "/api/weather/normals", { body });

  it("are twelve, typed by hand, and replaced as a whole", async () => {
    expect((await put({ months })).json()).toEqual({ months });
    expect((await stillroom.call("GET", "/api/weather")).json()).toMatchObject({ normals: { months } });
  });

  it("name what does not fit", async () => {
    expect(badFields(await put({ months: months.slice(1) }))).toEqual(["months"]);
    expect(badFields(await put({ months: months.map((m) => ({ ...m, month: 1 })) }))).toEqual(["months"]);
    expect(badFields(await put({ months: months.map((m, i) => (i === 3 ? { ...m, tmaxC: 1 } : m)) }))).toEqual(["months.3.tmaxC"]);
    expect(badFields(await put({ months: months.map((m, i) => (i === 3 ? { ...m, tmaxC: 12.34 } : m)) }))).toEqual(["months.3.tmaxC"]);
  });
});
