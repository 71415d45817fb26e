/** Sowings planned back from the weeks in which a crop is wanted, in a made garden; sizes are arithmetic on the crop table. */
import { describe, expect, it } from "vitest";
import { dayNumber } from "#shared/kernel/local-date.ts";
import { addWeeks, weekStart } from "#shared/kernel/iso-week.ts";
import { frostDatesOf } from "#shared/planning/frost-calendar.ts";
import { sowingAdviceForWeeks, type WantedPicks } from "#shared/planning/sowing-advice.ts";
import { garden } from "#tests/support/make-garden.ts";

const spring = garden([], { asOf: "2027-03-01" });
const beans: WantedPicks = { crop: "french-bean", cover: "open", from: "2027-W30", weeks: 6, gramsPerWeek: 1_000 };

describe("weeks in which a crop is wanted", () => {
  const advice = sowingAdviceForWeeks(spring, beans);

  it("become sowings that each serve two weeks, in order, with their first pick near the week", () => {
    expect(advice.sowings.map((one) => [one.fromWeek, one.untilWeek])).toEqual([["2027-W30", "2027-W31"], ["2027-W32", "2027-W33"], ["2027-W34", "2027-W35"]]);
    for (const one of advice.sowings) {
      expect(Math.abs(dayNumber(one.firstPick?.likely ?? "1970-01-01") - dayNumber(weekStart(one.fromWeek)))).toBeLessThanOrEqual(4);
      expect(one.chanceOfPick).toBeGreaterThan(0.9);
    }
    expect(advice.sowings.map((one) => one.sowOn)).toEqual([...advice.sowings.map((one) => one.sowOn)].sort());
    expect(advice.outOfReach).toEqual([]);
  });

  it("are spaced by warmth: the sowings of spring lie further apart than the picks", () => {
    const early = sowingAdviceForWeeks(spring, { ...beans, crop: "pea", from: "2027-W25", weeks: 4 }).sowings;
    const gap = dayNumber(early[1]?.sowOn ?? "") - dayNumber(early[0]?.sowOn ?? "");
    const picks = dayNumber(early[1]?.firstPick?.likely ?? "") - dayNumber(early[0]?.firstPick?.likely ?? "");
    expect(gap).toBeGreaterThan(1.3 * picks);
  });

  it("want so many metres: 2 kg in two weeks at 1.79 kg a metre (University of Kentucky ID-128) are 1.2 m, 24 plants 5 cm apart at the table's spacing", () => {
    const crop = spring.crops.get("french-bean");
    const { plant, row } = crop?.spacingCm ?? { plant: NaN, row: NaN };
    for (const one of advice.sowings) expect([one.rowM, one.plants, one.areaM2]).toEqual([1.2, Math.ceil(120 / plant), Math.ceil(12 * row / 100 - 1e-9) / 10]);
  });

  it("that no sowing from today on can serve are named", () => {
    const late = sowingAdviceForWeeks(garden([], { asOf: "2027-07-05" }), { ...beans, from: "2027-W29", weeks: 8 });
    // sown today the beans begin about the end of August: the weeks before it are lost, the rest are served
    expect(late.outOfReach.length).toBeGreaterThanOrEqual(2);
    expect(late.outOfReach).toEqual(Array.from({ length: late.outOfReach.length }, (_, w) => addWeeks("2027-W29", w)));
    expect(late.sowings[0]?.fromWeek).toBe(addWeeks("2027-W29", late.outOfReach.length));
    expect(late.sowings.every((one) => one.sowOn >= "2027-07-05")).toBe(true);
    expect(late.notes.join(" ")).toMatch(/\d of the 8 weeks wanted cannot be served/);
    const winter = sowingAdviceForWeeks(spring, { ...beans, from: addWeeks("2027-W30", 26) });
    expect([winter.sowings, winter.outOfReach.length]).toEqual([[], 6]);
  });

  it("of a crop raised in trays want a day for the tray and one for the bed", () => {
    const [tomato] = sowingAdviceForWeeks(spring, { ...beans, crop: "cherry-tomato", from: "2027-W34", weeks: 4 }).sowings;
    expect(dayNumber(tomato?.plantOutOn ?? "") - dayNumber(tomato?.sowOn ?? "")).toBe(55);
  });

  it("of something that stands for years want no sowing", () => {
    expect(sowingAdviceForWeeks(spring, { ...beans, crop: "raspberry" })).toMatchObject({ sowings: [], notes: [expect.stringMatching(/stands for years/)] });
  });
});

describe("frost dates of a garden", () => {
  it("are said in words with their span, hard frosts inside them", () => {
    const frost = frostDatesOf(spring);
    expect(frost.season).toBe(2027);
    expect(frost.text.replaceAll("\u00a0", " ")).toMatch(/^The last frost of spring comes between .* in eight years of ten, most likely on \d+ \w+\. The first frost of autumn/);
    expect((frost.lastHardSpring?.likely ?? "") <= (frost.lastSpring?.likely ?? "")).toBe(true);
    expect((frost.firstHardAutumn?.likely ?? "") >= (frost.firstAutumn?.likely ?? "")).toBe(true);
    expect(frostDatesOf(garden([], { record: null })).text).toMatch(/not known/);
  });
  it("of a season asked for keep what was observed and lie six months away in the south", () => {
    expect(frostDatesOf(garden([], { asOf: "2027-07-05" }), 2026).lastSpring?.low).toBe(frostDatesOf(garden([], { asOf: "2027-07-05" }), 2026).lastSpring?.high);
    expect(frostDatesOf(garden([], { latitude: -38 }), 2028).season).toBe(2028);
  });
});
