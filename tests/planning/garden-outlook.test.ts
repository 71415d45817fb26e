/**
 * From facts to the calendar. Gardens, kitchens and weather are made in code; what is compared is either arithmetic written out beside it,
 * or the same quantity reckoned another way, scenario by scenario, from the forecast's own door.
 */
import { describe, expect, it } from "vitest";
import { weeklySupply } from "#shared/engines/harvest-forecast/index.ts";
import { bandOf, mapBand } from "#shared/kernel/band.ts";
import { dayNumber } from "#shared/kernel/local-date.ts";
import { forecastGarden } from "#shared/planning/garden-forecasts.ts";
import { gardenOutlook } from "#shared/planning/garden-outlook.ts";
import type { GardenOutlook, OutlookWeek } from "#shared/planning/outlook-types.ts";
import { weekSpan, yearWindow } from "#shared/planning/season.ts";
import { garden, kitchen, madeRecord, recipe, type Sown } from "#tests/support/make-garden.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const weekOf = (outlook: GardenOutlook, week: string) => outlook.weeks.find((one) => one.week === week) as OutlookWeek;
const cropIn = (week: OutlookWeek, crop: string) => week.crops.find((one) => one.crop === crop);

const SUMMER: Sown[] = [
  { id: "c", crop: "courgette", sownOn: "2027-05-10", plants: 6 },
  { id: "b", crop: "french-bean", sownOn: "2027-05-20", rowM: 8 },
  { id: "o", crop: "onion", sownOn: "2027-03-20", rowM: 8 },
  { id: "f", crop: "blueberry", plants: 3 },
];
const EATS = { courgette: 1200, "french-bean": 1000, blueberry: 900, onion: 700 };

describe("weeks gone by", () => {
  // The household's worked check with picks for facts: 9 kg a week in W30 … W33, 2 kg eaten, 2 kg planned, so 5 kg over in each; courgettes keep 6 days at best, not a week.
  const picks = ["2027-07-27", "2027-08-03", "2027-08-10", "2027-08-17"].map((day) => [day, 9000] as const);
  const soup = recipe("soup", { courgette: 1000 }, { way: "cook" });
  const planLines = ["2027-W30", "2027-W31", "2027-W32", "2027-W33"].map((week) => ({ id: week, week, recipeId: "soup", batches: 2 }));
  const facts = garden([{ id: "c", crop: "courgette", sownOn: "2027-05-10", plants: 20, picks }], { asOf: "2027-08-23" });
  const outlook = gardenOutlook(facts, kitchen({ courgette: 2000 }, { recipes: [soup], planLines }), { from: "2027-W29", weeks: 5 });

  it("hold what was picked, the same in every scenario, and 5 kg over in each of four", () => {
    const weeks = outlook.weeks.slice(1).map((week) => [week.grams, week.pickedGrams, week.eatsGrams, week.surplusGrams, week.glut]);
    const nine = [{ low: 9000, likely: 9000, high: 9000 }, 9000, 2000, 5000, true];
    expect(weeks).toEqual([nine, nine, nine, nine]);
    expect(outlook.weeks[0]).toMatchObject({ week: "2027-W29", pickedGrams: 0, glut: false, surplusGrams: 0, pairings: [] });
  });
  it("say what was picked, and offer nothing more to do with it", () => {
    expect(plain(weekOf(outlook, "2027-W31").headline)).toBe("Picked: courgettes 9.0 kg.");
    expect(weekOf(outlook, "2027-W31").pairings).toEqual([]);
    expect(weekOf(outlook, "2027-W31").planned).toEqual([{ ...planLines[1], title: "soup", way: "cook", uses: [{ crop: "courgette", grams: 2000 }] }]);
  });
});

it("a week gone by without a pick holds nothing, whatever had been expected of it", () => {
  const unlogged = gardenOutlook(garden(SUMMER, { asOf: "2027-08-20" }), kitchen(EATS), { from: "2027-W31", weeks: 4 });
  expect(gardenOutlook(garden(SUMMER), kitchen(EATS), { from: "2027-W31", weeks: 1 }).weeks[0]?.grams.likely).toBeGreaterThan(1000);
  expect(unlogged.weeks[0]).toMatchObject({ grams: { low: 0, likely: 0, high: 0 }, headline: "Nothing was picked.", surplusGrams: 0 });
});

describe("weeks to come", () => {
  const facts = garden(SUMMER);
  const window = yearWindow(facts.asOf);
  const house = kitchen(EATS);
  const outlook = gardenOutlook(facts, house, window);

  /** Sums over the crops that do not wait, in each scenario, straight from the forecasts. */
  const span = weekSpan(window, 0, facts.asOf);
  const grown = forecastGarden(facts, { fromDay: span.firstMonday, untilDay: span.untilDay });
  const supplies = grown.forecasts.map((one) => ({ crop: one.planting.crop.slug, supply: weeklySupply(one.value, span) }));
  const scenarios = supplies[0]?.supply.scenarios.length ?? 0;

  it("add the crops up in each scenario and take percentiles last", () => {
    let unlikeTheSumOfLows = 0;
    for (let w = span.current; w < span.weeks.length; w++) {
      const kept = supplies.filter((one) => one.crop !== "onion");
      const sums = Array.from({ length: scenarios }, (_, s) => kept.reduce((sum, { supply }) => sum + (supply.scenarios[s]?.[w] as number), 0));
      const week = outlook.weeks[w] as OutlookWeek;
      expect(week.grams).toEqual(mapBand(bandOf(sums), Math.round));
      const sumOfLows = week.crops.filter((one) => !one.waits).reduce((sum, one) => sum + one.grams.low, 0);
      if (week.grams.low > sumOfLows + 20) unlikeTheSumOfLows++;
    }
    expect(unlikeTheSumOfLows).toBeGreaterThan(3);
  });

  it("count each gram that is over once, from now to the end of the last glut", () => {
    // none of these three keeps a week in the fridge, so what is over in a week is what nobody eats of it: max(0, ripe − eaten)
    const last = outlook.weeks.findLastIndex((week) => week.glut);
    const sums = Array.from({ length: scenarios }, (_, s) => {
      let sum = 0;
      for (let w = span.current; w <= last; w++)
        for (const { crop, supply } of supplies) if (crop !== "onion") sum += Math.max(0, (supply.scenarios[s]?.[w] as number) - (EATS[crop as keyof typeof EATS] ?? 0));
      return sum;
    });
    expect(outlook.overGrams).toBe(Math.round(bandOf(sums).likely));
    expect(outlook.overUntil).toBe(outlook.weeks[last]?.ends);
    expect(outlook.headline).toContain(outlook.headlineOver);
    expect(outlook.overGrams).toBeGreaterThan(5000);
  });

  it("never call what waits for the grower over, and mark its lift", () => {
    const onions = outlook.weeks.flatMap((week) => week.crops.filter((one) => one.crop === "onion"));
    expect(onions.length).toBeGreaterThan(10);
    expect(onions.every((one) => one.waits && one.surplusGrams === 0 && one.freshGrams <= 700)).toBe(true);
    const row = outlook.rows.find((one) => one.crop === "onion");
    expect(row?.waits).toBe(true);
    expect(row?.lift && row.lift.low <= row.lift.likely && row.lift.likely <= row.lift.high).toBe(true);
    expect(outlook.rows.find((one) => one.crop === "courgette")?.lift).toBeNull();
  });

  it("stand in rows by first pick, each with its best week and season", () => {
    const firstWeek = (crop: string) => outlook.weeks.findIndex((week) => (cropIn(week, crop)?.chanceInHarvest ?? 0) >= 0.5);
    const order = outlook.rows.map((row) => firstWeek(row.crop));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    for (const row of outlook.rows) {
      // the best week of each season is not always the same week, so it is at least as good as the best likely week
      const likely = Math.max(...outlook.weeks.map((week) => cropIn(week, row.crop)?.grams.likely ?? 0));
      const best = supplies.find((one) => one.crop === row.crop)?.supply.scenarios.map((grams) => Math.max(...grams.subarray(span.current))) ?? [];
      expect(row.bestWeekGrams).toBe(Math.round(bandOf(best).likely));
      expect(row.bestWeekGrams).toBeGreaterThanOrEqual(likely);
      expect(row.seasonGrams.low).toBeLessThanOrEqual(row.seasonGrams.likely);
    }
    expect(outlook.rows.find((row) => row.crop === "blueberry")?.sowings).toEqual([{ id: "f", bedName: "Long bed", from: null, until: null }]);
    expect(outlook.rows.find((row) => row.crop === "courgette")?.sowings[0]).toMatchObject({ id: "c", from: "2027-05-10" });
  });

  it("are the same asked twice, and with the plantings in another order", () => {
    expect(gardenOutlook(facts, house, window)).toEqual(outlook);
    const turned = gardenOutlook(garden([...SUMMER].reverse()), house, window);
    expect(turned.rows).toEqual(outlook.rows);
    expect(turned.weeks.map((week) => [week.grams, week.surplusGrams, week.headline])).toEqual(outlook.weeks.map((week) => [week.grams, week.surplusGrams, week.headline]));
  });

  it("leave the other crops alone when one more is sown", () => {
    const more = gardenOutlook(garden([...SUMMER, { id: "z", crop: "chard", sownOn: "2027-06-01", rowM: 5 }]), kitchen({ ...EATS, chard: 500 }), window);
    let compared = 0;
    outlook.weeks.forEach((week, w) =>
      week.crops.forEach((crop) => {
        expect(cropIn(more.weeks[w] as OutlookWeek, crop.crop)).toEqual(crop);
        compared++;
      }),
    );
    expect(compared).toBeGreaterThan(40);
    expect(more.rows.some((row) => row.crop === "chard")).toBe(true);
  });

  it("lose exactly what a chosen way uses", () => {
    const bags = recipe("bags", { courgette: 500 });
    let lowered = 0;
    for (const week of outlook.weeks.filter((one) => (cropIn(one, "courgette")?.surplusGrams ?? 0) > 1000)) {
      const chosen = gardenOutlook(facts, kitchen(EATS, { recipes: [bags], planLines: [{ id: "p", week: week.week, recipeId: "bags", batches: 2 }] }), { from: week.week, weeks: 1 });
      const [after] = chosen.weeks;
      expect(cropIn(after as OutlookWeek, "courgette")?.surplusGrams).toBe((cropIn(week, "courgette")?.surplusGrams as number) - 1000);
      expect(after?.pairings.find((way) => way.recipeId === "bags")?.batches ?? 0).toBe(Math.floor((cropIn(week, "courgette")?.surplusGrams as number) / 500) - 2);
      lowered++;
    }
    expect(lowered).toBeGreaterThan(3);
  });
});

describe("as of a day", () => {
  it("later sightings, picks and weather change nothing", () => {
    const window = { from: "2027-W27", weeks: 20 };
    const before = gardenOutlook(garden(SUMMER), kitchen(EATS), window);
    const later = SUMMER.map((sown) => ({ ...sown, picks: [["2027-08-01", 4000]] as const, sightings: [["first-pick", "2027-07-30"]] as const }));
    const warmer = madeRecord(2005, "2027-12-31");
    for (let d = dayNumber("2027-07-06") - warmer.firstDay; d < warmer.tmaxC.length; d++) warmer.tmaxC[d] = (warmer.tmaxC[d] as number) + 6;
    expect(gardenOutlook(garden(later, { record: warmer }), kitchen(EATS), window)).toEqual(before);
  });

  it("a sowing seen to be finished later is still forecast for weeks after that", () => {
    const window = { from: "2027-W33", weeks: 4 };
    const later = SUMMER.map((sown) => ({ ...sown, sightings: [["finished", "2027-08-01"]] as const }));
    const outlook = gardenOutlook(garden(later), kitchen(EATS), window);
    expect(outlook).toEqual(gardenOutlook(garden(SUMMER), kitchen(EATS), window));
    expect(outlook.weeks.some((week) => week.grams.likely > 500)).toBe(true);
  });

  it("picks of the running week are facts, what is still to come is not", () => {
    const picked: Sown[] = [{ id: "c", crop: "courgette", sownOn: "2027-05-10", plants: 6, picks: [["2027-07-20", 2000], ["2027-07-27", 3000]] }];
    const outlook = gardenOutlook(garden(picked, { asOf: "2027-07-28" }), kitchen(EATS), { from: "2027-W29", weeks: 4 });
    expect(outlook.weeks.map((week) => week.pickedGrams)).toEqual([2000, 3000, 0, 0]);
    expect(outlook.weeks[0]?.grams).toEqual({ low: 2000, likely: 2000, high: 2000 });
    expect(outlook.weeks[1]?.grams.low).toBeGreaterThanOrEqual(3000);
    expect(plain(outlook.weeks[1]?.headline ?? "")).toMatch(/3\.0 kg of it is picked/);
  });
});

describe("what is missing", () => {
  const window = yearWindow("2027-07-05");
  it("is named, and the sentence says what to do first", () => {
    const empty = gardenOutlook(garden([], { placed: false, record: null, beds: [] }), kitchen({}), window);
    expect(empty.missing).toEqual(["place", "weather", "beds", "sowings"]);
    expect(empty).toMatchObject({ rows: [], overGrams: 0, overUntil: null, headlineOver: "" });
    expect(empty.weeks).toHaveLength(52);
    const blind = gardenOutlook(garden(SUMMER, { record: null }), kitchen(EATS), window);
    expect([blind.missing, blind.headline]).toEqual([["weather"], "Say where the garden lies and how warm its months are, and the year of weeks is drawn here."]);
    const unsown = gardenOutlook(garden([]), kitchen(EATS), window);
    expect([unsown.missing, unsown.headline]).toEqual([["sowings"], "Write down what you sowed, and the year of weeks is drawn here."]);
  });
  it("an appetite nobody has said is noted, and all of the crop counts as over", () => {
    const outlook = gardenOutlook(garden([{ id: "c", crop: "courgette", sownOn: "2027-05-10", plants: 6 }]), kitchen({}), window);
    expect(outlook.notes.join(" ")).toMatch(/Nobody has said how much of the courgettes the household eats/);
    expect(outlook.weeks.every((week) => week.eatsGrams === 0)).toBe(true);
  });
  it("twelve monthly means are enough to begin", () => {
    const normals = Array.from({ length: 12 }, (_, m) => ({ month: m + 1, tmaxC: 12 - 9 * Math.cos((2 * Math.PI * m) / 12), tminC: 4 - 7 * Math.cos((2 * Math.PI * m) / 12) }));
    const outlook = gardenOutlook(garden(SUMMER, { record: null, normals }), kitchen(EATS), window);
    expect(outlook.missing).toEqual([]);
    expect(outlook.weeks.some((week) => week.grams.likely > 500)).toBe(true);
  });
});

it("south of the equator blueberries ripen around the turn of the year, in the season that ends in 2028", () => {
  // the same record moved by half a year: warm in January
  const north = madeRecord(2005, "2027-12-31");
  const record = { ...north, firstDay: north.firstDay + 182 };
  const outlook = gardenOutlook(garden([{ id: "f", crop: "blueberry", plants: 3 }], { latitude: -37, record, asOf: "2027-09-01" }), kitchen(EATS), { from: "2027-W36", weeks: 40 });
  const best = outlook.weeks.reduce((a, b) => (b.grams.likely > a.grams.likely ? b : a));
  expect(best.grams.likely).toBeGreaterThan(500);
  expect(best.starts > "2027-12-01" && best.starts < "2028-02-28").toBe(true);
});
