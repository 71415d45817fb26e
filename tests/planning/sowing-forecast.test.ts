/** One sowing in words. The garden is made in code; the room in a bed is arithmetic on the crop table's spacing. */
import { describe, expect, it } from "vitest";
import { dayNumber } from "#shared/kernel/local-date.ts";
import { freeByBed } from "#shared/planning/bed-room.ts";
import { sowingOutlook, sowingOutlooks } from "#shared/planning/sowing-forecast.ts";
import { CROPS, garden, madeRecord, planting, type Sown } from "#tests/support/make-garden.ts";

const BEANS: Sown = { id: "b", crop: "french-bean", sownOn: "2027-05-20", rowM: 6 };

describe("the forecast of a sowing", () => {
  const facts = garden([BEANS]);
  const { forecast } = sowingOutlook(facts, facts.plantings[0]!);

  it("has ordered spans, and twenty dots whose middle is the likely day", () => {
    expect(forecast.dots).toHaveLength(20);
    expect(forecast.dots).toEqual([...forecast.dots].sort());
    const { low, likely, high } = forecast.firstPick!;
    expect(low <= likely && likely <= high && likely <= forecast.lastPick!.likely).toBe(true);
    // of twenty equal steps of chance two lie below the 10th percentile, and ten on either side of the middle
    expect(forecast.dots.filter((dot) => dot <= likely).length).toBeGreaterThanOrEqual(9);
    expect(forecast.dots[1]! <= low && forecast.dots[2]! >= low).toBe(true);
    expect(forecast.chanceOfPick).toBe(1);
  });
  it("has weeks whose sum lies near the season's", () => {
    // percentiles do not add, but the likely weeks of one sowing cannot bring more than the season's high
    const sum = forecast.weeks.reduce((total, week) => total + week.grams.likely, 0);
    expect(sum).toBeGreaterThan(forecast.totalGrams.low / 2);
    expect(sum).toBeLessThan(forecast.totalGrams.high);
  });
  it("says what it rests on and whose weather it is", () => {
    const named = sowingOutlook(garden([BEANS], { weatherAttribution: "Weather service of the land" }), planting(BEANS)).forecast;
    expect(named.basis.map((source) => source.text)).toContain("Weather service of the land");
    expect(named.basis.map((source) => source.id)).toContain("OVD");
    expect(named.notes.join(" ")).toMatch(/Rests on \d+ past seasons of weather/);
    expect(named.frost.firstAutumn).not.toBeNull();
  });
  it("has nothing to say without weather, and does not fail", () => {
    const blind = sowingOutlook(garden([BEANS], { record: null }), planting(BEANS)).forecast;
    expect(blind).toMatchObject({ firstPick: null, lastPick: null, dots: [], chanceOfPick: 0, totalGrams: { low: 0, likely: 0, high: 0 } });
  });
  it("is the same alone and among all, but for its warmth, which is reckoned of one alone", () => {
    const { forecast: { warmth, ...forecast }, fits } = sowingOutlook(facts, facts.plantings[0]!);
    expect(sowingOutlooks(facts).get("b")).toEqual({ forecast, fits });
    expect(warmth?.points.length).toBeGreaterThan(3);
  });
});

describe("what stands for years", () => {
  const facts = garden([{ id: "f", crop: "blueberry", plants: 3, picks: [["2026-07-20", 900]] }]);
  const inSeason = (season: number | null) => sowingOutlook(facts, facts.plantings[0]!, season).forecast;
  it("is forecast for the season asked for, without one for that of the day", () => {
    expect(inSeason(2028).firstPick?.likely.slice(0, 4)).toBe("2028");
    expect(inSeason(null)).toEqual(inSeason(2027));
    expect(inSeason(2026).firstPick).toEqual({ low: "2026-07-20", likely: "2026-07-20", high: "2026-07-20" });
  });
});

describe("room in the bed", () => {
  // 10 m × 1.2 m = 12 m². Spacing of the crop table (common practice): French beans in rows 45 cm apart, so 6 m take 2.7 m².
  const bean = CROPS.get("french-bean")?.spacingCm?.row as number;
  it("is what the bed has less what stands in it", () => {
    expect(bean).toBe(45);
    expect(freeByBed(garden([BEANS])).get("bed-1")).toBeCloseTo(12 - 2.7, 9);
    expect(freeByBed(garden([BEANS], { asOf: "2027-05-19" })).get("bed-1")).toBe(12);
    expect(freeByBed(garden([{ ...BEANS, sightings: [["finished", "2027-07-01"]] }])).get("bed-1")).toBe(12);
  });
  it("is short in square metres and weeks, for a sowing that is only thought of too", () => {
    const full: Sown = { id: "o", crop: "onion", sownOn: "2027-03-20", areaM2: 10.5 };
    const facts = garden([full]);
    const { fits } = sowingOutlook(facts, planting(BEANS));
    // 10.5 + 2.7 − 12 = 1.2 m² from the day the beans are sown, a Thursday in week 20
    expect(fits.map((text) => text.replaceAll("\u00a0", " "))).toEqual([expect.stringMatching(/^Needs 1\.2 m² more than the bed has in weeks 20–3\d\.$/)]);
    expect(sowingOutlook(garden([{ ...full, areaM2: 9 }]), planting(BEANS)).fits).toEqual([]);
    expect(sowingOutlook(garden([{ ...full, bedId: "bed-2" }]), planting(BEANS)).fits).toEqual([]);
  });
});

describe("the household's own record", () => {
  it("moves the next sowing of the same variety towards what it saw", () => {
    // last year's beans, sown on the same day in much the same weather, were first picked on 25 August, weeks after the book's likely day
    const record = madeRecord(2005, "2027-12-31");
    const asked: Sown = { ...BEANS, variety: "Purple climber" };
    const alone = garden([asked], { record, asOf: "2027-05-20" });
    const book = sowingOutlook(alone, alone.plantings[0]!).forecast.firstPick!;
    const lateLastYear: Sown = { id: "b26", crop: "french-bean", sownOn: "2026-05-20", rowM: 6, variety: "purple climber", picks: [["2026-08-25", 300], ["2026-09-01", 500]], sightings: [["finished", "2026-09-20"]] };
    const taught = garden([asked, lateLastYear], { record, asOf: "2027-05-20" });
    const now = sowingOutlook(taught, taught.plantings[0]!).forecast.firstPick!;
    expect(dayNumber(now.likely)).toBeGreaterThan(dayNumber(book.likely) + 2);
    const other = garden([asked, { ...lateLastYear, crop: "pea" }], { record, asOf: "2027-05-20" });
    expect(sowingOutlook(other, other.plantings[0]!).forecast.firstPick).toEqual(book);
  });

  it("is set aside for the days that stand beside the variety's name", () => {
    const likely = (variety?: string): string => {
      const facts = garden([{ ...BEANS, ...(variety === undefined ? {} : { variety }) }], { asOf: "2027-05-20" });
      return sowingOutlook(facts, facts.plantings[0]!).forecast.firstPick!.likely;
    };
    // the book has 50–65 days, whose middle is 57.5
    expect(dayNumber(likely("Dwarf, 45 days"))).toBeLessThan(dayNumber(likely()) - 7);
    expect(dayNumber(likely("Dwarf, 75 days"))).toBeGreaterThan(dayNumber(likely()) + 7);
    expect(likely("Dwarf")).toBe(likely());
  });
});
