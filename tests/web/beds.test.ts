/** The beds page's own reckoning: the slip from typed words to a sowing, the strip of beds, the twenty seasons. Today is 26 July 2027. */
import { describe, expect, it } from "vitest";
import type { Bed } from "#shared/contracts/beds.ts";
import type { Crop } from "#shared/contracts/crops.ts";
import { NewSowing, type Forecast, type Sowing } from "#shared/contracts/sowings.ts";
import { addDays } from "#shared/kernel/local-date.ts";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import { findCrop } from "#web/pages/beds/find-crop.ts";
import { layOutLanes, type Stand } from "#web/pages/beds/lanes.ts";
import { EMPTY_SLIP, firstBed, readSlip, slipOf, suggestedAmount, type SlipText } from "#web/pages/beds/slip.ts";
import { layOutSeason, type DayMark } from "#web/pages/beds/season-plate.ts";
import { dotsWords, pickingWords, seasonWords, slipSentence, sowingAnswer, startWords } from "#web/pages/beds/sowing-words.ts";
import { layOutDots } from "#web/parts/date-dots.ts";

const TODAY = "2027-07-26";
const BED = "00000000-0000-4000-8000-000000000101";
const loose = (text: string): string => text.replaceAll("\u00a0", " ");

const book = (crop: string, name: string, more: Partial<Crop> = {}): Crop => ({
  crop,
  name,
  family: "Apiaceae",
  habit: "repeat",
  perennial: false,
  usualMethod: "direct",
  baseC: 5,
  upperC: 27,
  daysToMaturity: { low: 60, high: 80, from: "sowing" },
  amounts: ["rowM", "areaM2"],
  keepDays: 14,
  cautions: [],
  sources: [],
  ...more,
});
const CROPS = [
  book("carrot", "Carrot"),
  book("tomato", "Tomato, large", { usualMethod: "transplant", amounts: ["plants"] }),
  book("cherry-tomato", "Cherry tomato", { usualMethod: "transplant", amounts: ["plants"] }),
  book("french-bean", "French bean, bush"),
  book("climbing-bean", "French bean, climbing"),
  book("rhubarb", "Rhubarb", { perennial: true, usualMethod: "established", amounts: ["plants"] }),
];
const slip = (change: Partial<SlipText>) => readSlip({ ...EMPTY_SLIP, bedId: BED, much: "3 m", ...change }, CROPS, TODAY);

const forecast = (more: Partial<Forecast> = {}): Forecast => ({
  firstPick: { low: "2027-10-03", likely: "2027-10-12", high: "2027-10-24" },
  lastPick: { low: "2027-11-20", likely: "2027-12-14", high: "2028-01-10" },
  totalGrams: { low: 2700, likely: 3900, high: 5100 },
  weeks: [],
  dots: [],
  chanceOfPick: 1,
  frost: { lastSpring: null, firstAutumn: null },
  waits: false,
  basis: [],
  notes: [],
  ...more,
});
const sowing = (more: Partial<Sowing> = {}): Sowing => ({
  id: "00000000-0000-4000-8000-000000000201",
  bedId: BED,
  crop: "carrot",
  method: "direct",
  sownOn: "2027-03-31",
  rowM: 3,
  sightings: [],
  pickedGrams: 0,
  fits: [],
  forecast: forecast(),
  ...more,
});

describe("the crop that is meant", () => {
  it.each([
    ["carrot", "carrot"],
    ["Carrots", "carrot"],
    ["tomatoes", "tomato"],
    ["Tomato, large", "tomato"],
    ["cherry", "cherry-tomato"],
    ["climbing", "climbing-bean"],
    ["rhub", "rhubarb"],
  ])("by “%s” is %s", (typed, slug) => {
    const found = findCrop(typed, CROPS);
    expect(found.ok && found.value.crop).toBe(slug);
  });

  it("is asked for where two are called that, and never guessed", () => {
    const found = findCrop("french beans", CROPS);
    expect(found).toMatchObject({ ok: false, works: "Choose “French bean, bush” or “French bean, climbing”." });
    expect(findCrop("oats", CROPS).ok).toBe(false);
  });
});

describe("the slip", () => {
  it("becomes a sowing in place, a planting out or a standing plant, as the crop is usually grown", () => {
    expect(slip({ crop: "carrots" }).body).toEqual({ bedId: BED, crop: "carrot", method: "direct", rowM: 3, sownOn: TODAY });
    expect(slip({ crop: "tomatoes", much: "6", when: "5 May" }).body).toEqual({ bedId: BED, crop: "tomato", method: "transplant", plants: 6, plantedOutOn: "2027-05-05" });
    expect(slip({ crop: "rhubarb", much: "2 plants", when: "", since: "2021" }).body).toEqual({ bedId: BED, crop: "rhubarb", method: "established", plants: 2, standsSince: 2021 });
    expect(slip({ crop: "tomatoes", method: "direct" }).body).toMatchObject({ method: "direct", sownOn: TODAY });
  });

  it("keeps a rough date as rough", () => {
    expect(slip({ crop: "carrots", when: "mid April" }).body).toMatchObject({ sownOn: "2027-04-15", note: "About the day: “mid April” as written, give or take five days." });
  });

  it("names each field that cannot be read, by the id of its control", () => {
    const read = slip({ crop: "oats", when: "31 April", much: "−3 m", bedId: null });
    expect(read.body).toBeNull();
    expect(read.faults.map(({ field }) => field)).toEqual(["slip-crop", "slip-when", "slip-much", "slip-bedId"]);
    expect(slip({ crop: "tomatoes", when: "5 May", raised: "20 May" }).faults).toEqual([{ field: "slip-when", text: "cannot be before the sowing." }]);
  });

  it("gives back, for a stored sowing, words that read as the same sowing", () => {
    const stored: NewSowing[] = [
      { bedId: BED, crop: "carrot", method: "direct", sownOn: "2026-10-05", rowM: 3.5, variety: "Blunt" },
      { bedId: BED, crop: "tomato", method: "transplant", sownOn: "2027-03-10", plantedOutOn: "2027-05-08", plants: 10, note: "by the door" },
      { bedId: BED, crop: "rhubarb", method: "established", plants: 2, standsSince: 2020 },
    ];
    for (const body of stored) {
      const { id, sightings, pickedGrams, fits, forecast: expected } = sowing();
      const text = slipOf({ id, sightings, pickedGrams, fits, forecast: expected, ...body }, CROPS, TODAY);
      expect(readSlip(text, CROPS, TODAY).body).toEqual(body);
      expect(NewSowing.safeParse(readSlip(text, CROPS, TODAY).body).success).toBe(true);
    }
  });

  it("begins with the amount of last time, and with the bed used last or the one with most room", () => {
    const [first, second] = CROPS as [Crop, Crop];
    expect(suggestedAmount(first, [sowing({ rowM: 5, sownOn: "2027-05-01" }), sowing({ rowM: 3 })])).toBe("5 m");
    expect(suggestedAmount(second, [])).toBe("6 plants");
    const bed = (id: string, freeM2: number): Bed => ({ id, name: id, lengthM: 5, widthM: 1, cover: "open", areaM2: 5, freeM2 });
    expect(firstBed([bed("a", 1), bed("b", 4)], null)).toBe("b");
    expect(firstBed([bed("a", 1), bed("b", 4)], "a")).toBe("a");
    expect(firstBed([bed("a", 1), bed("b", 4)], "gone")).toBe("b");
  });
});

describe("the sentence", () => {
  it("asks for what is missing, then says when it is ready, always as a span", () => {
    expect(slipSentence(slip({ crop: "" }), "", null, TODAY)).toBe("Name the crop to see when it is ready.");
    expect(slipSentence(slip({ crop: "carrots", when: "31 April" }), "carrots", null, TODAY)).toBe("Write the day to see when carrots are ready.");
    const read = slip({ crop: "carrots" });
    expect(loose(slipSentence(read, "carrots", forecast(), TODAY))).toBe("Carrots sown today are most likely ready on 12 October, between 3 and 24 October.");
    expect(loose(slipSentence(slip({ crop: "rhubarb", much: "1 plant" }), "rhubarb", forecast(), TODAY))).toMatch(/^Rhubarb is most likely ready on 12 October/);
  });

  it("does not promise a pick that few seasons bring", () => {
    const read = slip({ crop: "carrots" });
    expect(loose(slipSentence(read, "carrots", forecast({ chanceOfPick: 0.35 }), TODAY))).toContain("only in 7 seasons of 20");
    const frost = { lastSpring: null, firstAutumn: { low: "2027-10-02", likely: "2027-10-20", high: "2027-11-08" } };
    expect(slipSentence(read, "carrots", forecast({ firstPick: null, frost }), TODAY)).toBe("Carrots sown today are not likely to come to a pick.");
    expect(slipSentence(read, "carrots", forecast({ firstPick: null }), TODAY)).toBe("Carrots sown today: no dates yet, because no weather is on record.");
  });

  it("under the picture says the same dates and how much comes", () => {
    expect(loose(dotsWords(forecast(), TODAY))).toBe(
      "Earliest likely 3 October, most likely 12 October, latest likely 24 October. Each dot is one season in 20. Over 9 weeks it gives 2.7 to 5.1 kg, most likely 3.9 kg.",
    );
  });

  it("of a stored sowing tells what was sown, what is expected and what was picked", () => {
    expect(loose(startWords(sowing(), TODAY))).toBe("sown 31 March");
    expect(loose(startWords(sowing({ sownOn: "2027-08-10" }), TODAY))).toBe("to be sown 10 August");
    expect(loose(pickingWords(forecast(), TODAY))).toBe("picking about 12 October to 14 December");
    expect(loose(pickingWords(forecast({ lastPick: null, waits: true }), TODAY))).toBe("one lift about 12 October");
  });

  it("on its own page answers when and how much: to come, being picked, over, unlikely", () => {
    const answer = (more: Partial<Sowing>): string => loose(sowingAnswer(sowing(more), CROPS[0], TODAY));
    expect(answer({})).toBe("Carrots are most likely ready on 12 October, between 3 and 24 October, and give 2.7 to 5.1 kg, most likely 3.9 kg.");
    expect(answer({ variety: "Early Oval", forecast: forecast({ waits: true }) })).toMatch(/^Carrots, Early Oval, are most likely ready to lift on 12 October/);
    const begun = forecast({ firstPick: { low: "2027-07-09", likely: "2027-07-09", high: "2027-07-09" } });
    expect(answer({ pickedGrams: 1200, forecast: begun })).toBe("Carrots have been picked since 9 July: 1,200 g so far; in all 2.7 to 5.1 kg, most likely 3.9 kg, until about 14 December.");
    const past = forecast({ lastPick: { low: TODAY, likely: TODAY, high: TODAY } });
    expect(answer({ pickedGrams: 1200, forecast: past })).toBe("Carrots gave 1,200 g, and the picking is over.");
    expect(answer({ forecast: forecast({ firstPick: null, weeks: [{ week: "2027-W40", grams: { low: 0, likely: 0, high: 0 }, chanceInHarvest: 0 }] }) })).toBe("Carrots are not likely to come to a pick.");
    expect(loose(seasonWords(sowing(), TODAY))).toBe("First pick most likely 12 October, between 3 and 24 October. Last pick most likely 14 December, between 20 November and 10 January 2028.");
  });
});

describe("the season of one sowing", () => {
  it("lays no label over another, keeps all within the picture, and stands every mark on its day", () => {
    const random = seededRandom(11);
    let labels = 0;
    for (let n = 0; n < 60; n++) {
      const marks: DayMark[] = Array.from({ length: 1 + random.below(6) }, (_, i) => ({ on: addDays("2027-03-20", random.below(120)), words: "planted out 8 May".slice(0, 6 + random.below(11)), begins: i === 0 }));
      const rem = 16 + 16 * random.below(2);
      const plate = layOutSeason({ marks, picks: [], forecast: forecast(), today: TODAY, weekly: true }, { width: 360 + random.below(900), rem });
      const boxes = plate.marks.map(({ mark, labelX, labelY, end, x }) => {
        expect(x).toBeCloseTo(plate.x(mark.on), 6);
        const wide = mark.words.length * 0.46 * rem;
        return { from: end ? labelX - wide : labelX, to: end ? labelX : labelX + wide, y: labelY };
      });
      for (const [i, a] of boxes.entries()) {
        labels++;
        expect(a.y).toBeGreaterThan(2 * rem);
        expect(a.from).toBeGreaterThan(-rem);
        for (const b of boxes.slice(i + 1)) expect(a.y !== b.y || a.to <= b.from + rem * 0.6 || b.to <= a.from + rem * 0.6).toBe(true);
      }
    }
    expect(labels).toBeGreaterThan(120);
  });

  it("draws what was picked in its own week and what is expected from this week on, on one scale", () => {
    const weeks = ["2027-W29", "2027-W30", "2027-W31"].map((week) => ({ week, grams: { low: 500, likely: 1000, high: 2000 }, chanceInHarvest: 1 }));
    const picks = [{ pickedOn: "2027-07-19", grams: 300 }, { pickedOn: "2027-07-25", grams: 400 }];
    const { lane } = layOutSeason({ marks: [{ on: "2027-05-01", words: "sown", begins: true }], picks, forecast: forecast({ weeks }), today: TODAY, weekly: true }, { width: 800, rem: 16 });
    // 19 and 25 July are the Monday and the Sunday of week 29 (ISO 8601); today, 26 July, is the Monday of week 30
    expect(lane?.picked.filter((grams) => grams > 0)).toEqual([700]);
    expect(lane?.likely.filter((grams) => grams > 0)).toEqual([1000, 1000]);
    expect(lane?.picked.indexOf(700)).toBe((lane?.ground.now ?? 0) - 1);
    expect(lane?.scale).toEqual([500, 1000, 1500, 2000]);
  });
});

describe("the twenty seasons", () => {
  it("stand one above the other and never over each other", () => {
    const random = seededRandom(3);
    let pairs = 0;
    for (let n = 0; n < 30; n++) {
      const dates = Array.from({ length: 20 }, () => addDays("2027-10-01", random.below(1 + random.below(60)))).sort();
      const { dots, radius } = layOutDots({ dates, start: TODAY, width: 300 + random.below(700), rem: 16 });
      expect(dots).toHaveLength(20);
      dots.forEach((a, i) =>
        dots.slice(i + 1).forEach((b) => {
          expect(Math.hypot(a.cx - b.cx, a.cy - b.cy)).toBeGreaterThanOrEqual(2 * radius);
          pairs++;
        }),
      );
    }
    expect(pairs).toBe(30 * 190);
  });

  it("stand within half a column of their day", () => {
    const { dots, radius, x } = layOutDots({ dates: ["2027-10-12"], start: TODAY, width: 500, rem: 16 });
    expect(Math.abs((dots[0]?.cx ?? 0) - x("2027-10-12"))).toBeLessThanOrEqual(1.15 * radius);
  });
});

describe("the strip of beds", () => {
  const beds: Bed[] = ["a", "b"].map((id) => ({ id, name: `Bed ${id}`, lengthM: 5, widthM: 1.2, cover: "open", areaM2: 6, freeM2: 2 }));

  it("never lays two sowings of one bed over each other in one lane", () => {
    const random = seededRandom(11);
    let compared = 0;
    for (let n = 0; n < 25; n++) {
      const stands = Array.from({ length: 12 }, (_, i): Stand => {
        const from = addDays("2027-02-01", random.below(260));
        const pickFrom = addDays(from, 30 + random.below(90));
        return { id: String(i), bedId: random.next() < 0.5 ? "a" : "b", name: "Carrots", from, pickFrom, pickUntil: addDays(pickFrom, random.below(60)), planned: false };
      });
      const plate = layOutLanes(beds, stands, TODAY, { width: 1184, rem: 16 });
      for (const { bars, top, bottom } of plate.beds) {
        for (const bar of bars) {
          expect(bar.y).toBeGreaterThan(top);
          expect(bar.y).toBeLessThan(bottom);
          for (const other of bars.filter((one) => one !== bar && one.y === bar.y)) {
            expect(bar.to <= other.from || other.to <= bar.from).toBe(true);
            compared++;
          }
        }
      }
    }
    expect(compared).toBeGreaterThan(50);
  });

  it("shows the twelve months around today, from six before", () => {
    const plate = layOutLanes(beds, [], TODAY, { width: 1184, rem: 16 });
    expect(plate.months.map(({ first }) => first).slice(0, 2)).toEqual(["2027-01-01", "2027-02-01"]);
    expect(layOutLanes(beds, [], "2027-11-15", { width: 1184, rem: 16 }).months[0]?.first).toBe("2027-05-01");
  });

  it("begins at its left edge what stands from before and leaves out what is over", () => {
    const stand = (more: Partial<Stand>): Stand => ({ id: "x", bedId: "a", name: "Mint", from: null, pickFrom: "2027-05-01", pickUntil: "2027-08-01", planned: false, ...more });
    const bars = (one: Stand) => layOutLanes(beds, [one], TODAY, { width: 1184, rem: 16 }).beds[0]?.bars ?? [];
    expect(bars(stand({}))[0]).toMatchObject({ begins: false, from: 9.5 * 16 });
    expect(bars(stand({ from: "2026-04-01", pickUntil: "2026-10-01" }))).toEqual([]);
  });
});
