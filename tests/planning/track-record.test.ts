/** Past forecasts against what came, and what still ripens in a bed, in a made garden. The count 31 of 40 is set up here: 31 picks on the likely day, nine ten weeks late. */
import { describe, expect, it } from "vitest";
import { dateOf, dayNumber } from "#shared/kernel/local-date.ts";
import { sowingOutlook } from "#shared/planning/sowing-forecast.ts";
import { sowingAdviceForBed } from "#shared/planning/still-ripens.ts";
import { trackRecordOf } from "#shared/planning/track-record.ts";
import { garden, madeRecord, type Sown } from "#tests/support/make-garden.ts";

const record = madeRecord(1995, "2027-12-31");
const CROPS = ["pea", "french-bean", "broccoli", "kohlrabi", "courgette"];

function pickedOn(sown: Sown, later: number): Sown {
  const facts = garden([sown], { record, asOf: sown.sownOn as string });
  const likely = sowingOutlook(facts, facts.plantings[0]!).forecast.firstPick!.likely;
  return { ...sown, picks: [[dateOf(dayNumber(likely) + later), 400]] };
}

const history = (onTime: number, late: number): Sown[] =>
  Array.from({ length: onTime + late }, (_, i) => {
    // five crops, one sowing of each in a year; the late ones are the last of all, so that nothing learns from them before
    const year = 2019 + Math.floor(i / CROPS.length);
    return pickedOn({ id: `s${i}`, crop: CROPS[i % CROPS.length] as string, sownOn: `${year}-05-15`, rowM: 3 }, i < onTime ? 0 : 70);
  });

describe("the track record", () => {
  const forty = history(31, 9);
  const track = trackRecordOf(garden(forty, { record, asOf: "2027-12-30" }));

  it("says 31 of 40 where 31 of 40 fell inside the span forecast at sowing", () => {
    expect(track.atSowing).toMatchObject({ inside: 31, of: 40 });
    expect(track.text).toMatch(/^31 of 40 first picks fell inside the span forecast on the day of sowing/);
    // 31 within a few days and nine ten weeks out: the mean lies a little above 9 × 70 / 40
    expect(track.atSowing.meanDaysOut).toBeGreaterThan(14);
    expect(track.atSowing.meanDaysOut).toBeLessThan(19);
  });

  it("has a row for each, latest first, with the forecast of a month before", () => {
    expect(track.rows).toHaveLength(40);
    expect(track.rows.map((row) => row.cameOn)).toEqual([...track.rows.map((row) => row.cameOn)].sort().reverse());
    for (const row of track.rows) {
      expect(dayNumber(row.cameOn) - dayNumber(row.monthBefore?.asOf ?? "1970-01-01")).toBe(30);
      expect(row.atSowing.asOf.slice(5)).toBe("05-15");
    }
    expect(track.monthBefore.of).toBe(40);
  });

  it("claims nothing under five", () => {
    expect(trackRecordOf(garden(history(4, 0), { record, asOf: "2027-12-30" })).text).toMatch(/^4 sowings have been .* nothing can be said/);
    expect(trackRecordOf(garden(history(5, 0), { record, asOf: "2027-12-30" })).text).toMatch(/^5 of 5 /);
    expect(trackRecordOf(garden([], { record })).rows).toEqual([]);
  });

  it("is not moved by anything dated later: other picks, other weather, other sowings", () => {
    const few = history(6, 0);
    const until = "2021-01-01";
    const honest = trackRecordOf(garden(few, { record, asOf: until }));
    const hot = { ...record, tmaxC: record.tmaxC.map((t, d) => (record.firstDay + d > dayNumber(until) ? 40 : t)) };
    const poisoned = few.map((sown): Sown => ({ ...sown, picks: [...(sown.picks ?? []), ["2026-08-01", 90_000]], sightings: [["flowering", "2026-07-01"]] }));
    expect(trackRecordOf(garden(poisoned, { record: hot, asOf: until }))).toEqual(honest);
    expect(honest.rows).toHaveLength(6);
    // and each row is what was forecast then, whatever the household has learnt since
    const first = trackRecordOf(garden(few.slice(0, 1), { record, asOf: until })).rows[0];
    expect(honest.rows.find((row) => row.plantingId === "s0")).toEqual(first);
  });

  it("shows what the grower chose the day of, and does not count it", () => {
    const leek = trackRecordOf(garden([{ id: "l", crop: "leek", plantedOutOn: "2026-06-10", rowM: 4, picks: [["2026-12-10", 900]] }], { record, asOf: "2027-12-30" }));
    expect([leek.rows[0]?.chosen, leek.atSowing.of]).toEqual([true, 0]);
  });

  it("takes each season of a standing plant once, forecast from its new year", () => {
    const berries: Sown = { id: "f", crop: "blueberry", plants: 3, picks: [["2025-07-20", 900], ["2025-07-27", 500], ["2026-07-22", 800]] };
    const { rows } = trackRecordOf(garden([berries], { record, asOf: "2027-01-30" }));
    expect(rows.map((row) => [row.season, row.cameOn, row.atSowing.asOf])).toEqual([[2026, "2026-07-22", "2026-01-01"], [2025, "2025-07-20", "2025-01-01"]]);
  });
});

describe("what still ripens in a bed", () => {
  const on = (date: string) => sowingAdviceForBed(garden([], { record, asOf: date }), "bed-1");
  const slugs = (list: readonly { readonly crop: string }[]): string[] => list.map((one) => one.crop);

  it("in May is nearly everything, in August the quick and the hardy", () => {
    expect(slugs(on("2027-05-15").sensible)).toEqual(expect.arrayContaining(["french-bean", "courgette", "carrot", "radish"]));
    const august = slugs(on("2027-08-10").sensible);
    expect(august).toEqual(expect.arrayContaining(["radish", "spinach", "lettuce"]));
    for (const slug of ["sweetcorn", "pumpkin", "tomato", "courgette"]) expect(august).not.toContain(slug);
  });

  it("comes surest first, with its chance and span, and says how much room there is", () => {
    const { sensible, gamble, freeM2 } = on("2027-07-15");
    expect(freeM2).toBe(12);
    expect(sensible.map((one) => one.chanceOfPick)).toEqual([...sensible.map((one) => one.chanceOfPick)].sort((a, b) => b - a));
    expect(sensible.every((one) => one.chanceOfPick >= 0.8) && gamble.every((one) => one.chanceOfPick < 0.8 && one.chanceOfPick >= 0.3)).toBe(true);
    expect(sensible.every((one) => one.firstPick.low >= "2027-07-15")).toBe(true);
  });

  it("has no longer list the later it gets, from midsummer to the first frost", () => {
    const counts = ["2027-07-01", "2027-08-01", "2027-09-01"].map((date) => on(date).sensible.filter((one) => one.crop !== "garlic").length);
    expect(counts).toEqual([...counts].sort((a, b) => b - a));
  });
});
