/** The season record and a sowing's warmth: words and geometry of their pictures, worked by hand. */
import { describe, expect, it } from "vitest";
import { readPacketDays, packetWords } from "#web/pages/beds/packet-days.ts";
import { liftSentence } from "#web/pages/beds/lifting-words.ts";
import { adviceSentence, bedAdviceSentence, firstPickWords, ripensWords, servesWords, sizeWords } from "#web/pages/beds/advice-words.ts";
import { aheadWords, ownRecordSentence, warmthSentence, type Warmth } from "#web/pages/beds/warmth-words.ts";
import { layOutWarmth } from "#web/pages/beds/warmth-plate.ts";
import { claimOf, monthBeforeSentence, offWords, spanCell, type TrackRow } from "#web/pages/record/record-words.ts";
import { drawn, layOutSpans, MOST_DRAWN } from "#web/pages/record/spans-plate.ts";
import { units } from "#web/units.ts";

const TODAY = "2027-07-26";
const loose = (text: string): string => text.replaceAll("\u00a0", " ");
const band = (low: number, likely: number, high: number) => ({ low, likely, high });
const row = (n: number, daysLater: number | null, low = "2027-06-20", likely = "2027-07-01", high = "2027-07-16", chosen = false): TrackRow => ({
  sowingId: String(n), crop: "pea", name: "Pea", variety: null, season: null, chosen, cameOn: "2027-07-05",
  atSowing: { asOf: "2027-04-01", firstPick: daysLater === null ? null : { low, likely, high }, inside: daysLater !== null && Math.abs(daysLater) < 10, daysLater },
  monthBefore: null,
});

describe("the season record", () => {
  it("puts the claim first and keeps one sentence whole", () => {
    expect(claimOf("31 of 40 first picks fell inside; eight of ten should. The likely day was 6.1 days out on average.")).toEqual({ claim: "31 of 40 first picks fell inside; eight of ten should.", rest: "The likely day was 6.1 days out on average." });
    expect(claimOf("2 sowings have been picked so far.")).toEqual({ claim: "2 sowings have been picked so far.", rest: "" });
  });

  it("claims nothing of a month before with fewer than five", () => {
    const score = (inside: number, of: number) => monthBeforeSentence({ text: "", atSowing: { inside, of, meanDaysOut: 5 }, monthBefore: { inside, of, meanDaysOut: 5 }, rows: [] });
    expect([score(4, 4), score(4, 5)]).toEqual(["", "A month before the pick, 4 of 5 fell inside; the likely day was 5 days out on average."]);
  });

  it("counts days from the likely day in words", () => {
    expect([0, 1, -4, null].map(offWords).map(loose)).toEqual(["on the day", "1 day later", "4 days earlier", ""]);
    expect([spanCell(row(1, 0).atSowing.firstPick, TODAY), spanCell(null, TODAY)].map(loose)).toEqual(["20 Jun – 16 Jul", "no pick expected"]);
  });

  it("draws what was forecast and not chosen, the latest at the foot, forty at most", () => {
    const rows = [row(1, 3), row(2, null), row(3, 2, undefined, undefined, undefined, true), ...Array.from({ length: 50 }, (_, i) => row(10 + i, 0))];
    const shown = drawn(rows).map(({ sowingId }) => sowingId);
    expect(shown).toHaveLength(MOST_DRAWN);
    expect([shown[shown.length - 1], shown[shown.length - 2], shown[0]]).toEqual(["1", "10", "48"]);
  });

  it("lays eleven days before and fifteen after the likely day to one scale, what came among them", () => {
    const plate = layOutSpans([row(1, 5), row(2, -20)], { width: 1000, rem: 16 });
    const [first, second] = plate.rows;
    if (!first || !second) throw new Error("both rows are drawn");
    const perDay = (first.to - plate.zero) / 15;
    expect((plate.zero - first.from) / perDay).toBeCloseTo(11, 6);
    expect((first.came - plate.zero) / perDay).toBeCloseTo(5, 6);
    expect((second.came - plate.zero) / perDay).toBeCloseTo(-20, 6);
    expect([first.inside, second.inside, second.y - first.y]).toEqual([true, false, plate.rowTall]);
    expect(Math.min(first.from, second.came)).toBeGreaterThan(0);
  });
});

const warmth: Warmth = {
  since: "2027-06-01", from: "coming-up", baseC: 10, gainedCd: 480, usualCd: band(360, 400, 450), needsCd: 570, daysAhead: 8,
  points: [0, 1, 2, 3].map((n) => ({ on: `2027-07-${String(5 + 7 * n).padStart(2, "0")}`, gainedCd: n < 3 ? 240 * n : null, usualCd: band(190 * n, 200 * n, 210 * n) })),
};

describe("warmth so far", () => {
  it("is said with the numbers, and as days ahead or behind", () => {
    expect(loose(warmthSentence(warmth, TODAY))).toBe("Since 1 June, when it should have come up, it has had 480 degree-days above 10 °C; by today 400 are usual, in eight years of ten 360 to 450. The first pick needs about 570.");
    expect([8, 1, 0, -3].map((daysAhead) => loose(aheadWords({ ...warmth, daysAhead })))).toEqual(["8 days ahead of usual", "1 day ahead of usual", "As warm as usual by now", "3 days behind usual"]);
  });

  it("counts in the household's degrees: 480 °C d are 864 °F d above 50 °F", () => {
    units.value = "us";
    expect(loose(warmthSentence(warmth, TODAY))).toMatch(/864 degree-days above 50 °F; by today 720/);
    units.value = "metric";
  });

  it("draws this season up to today only, and warmth upwards from nought", () => {
    const plate = layOutWarmth(warmth, { width: 800, rem: 16 });
    expect([plate.own.length, plate.likely.length]).toEqual([3, 4]);
    expect(plate.y(0)).toBe(plate.base);
    expect((plate.base - plate.y(600)) / (plate.base - plate.y(300))).toBeCloseTo(2, 9);
    expect(plate.x("2027-07-19") - plate.x("2027-07-12")).toBeCloseTo(plate.x("2027-07-12") - plate.x("2027-07-05"), 9);
  });

  it("says how many own sowings count and what they did", () => {
    const own = (count: number, percent: number, sameVariety = true) => ({ count, percent, sameVariety });
    expect(ownRecordSentence(undefined)).toBeNull();
    expect(ownRecordSentence({ warmth: null, amount: null })).toBeNull();
    expect(loose(ownRecordSentence({ warmth: own(3, -7), amount: own(2, 10, false) }) ?? "")).toBe(
      "3 finished sowings of your own count here: the warmth it needs is taken 7 % less than the book. By 2 finished seasons of your own, of other varieties, the amount is taken 10 % more than the book.",
    );
    expect(loose(ownRecordSentence({ warmth: own(1, 0), amount: null }) ?? "")).toBe("1 finished sowing of your own counts here: the warmth it needs is taken as the book has it.");
  });
});

describe("the lifting window", () => {
  const days = (low: string, likely: string, high: string) => ({ low, likely, high });
  it("says from when, at its best, and by when to be safe", () => {
    const lift = { ready: days("2027-08-01", "2027-08-10", "2027-08-20"), bestFrom: days("2027-08-10", "2027-08-24", "2027-09-01"), bestUntil: days("2027-09-01", "2027-09-20", "2027-10-01"), outBy: days("2027-10-10", "2027-10-24", "2027-11-20") };
    expect(loose(liftSentence(lift, TODAY))).toBe("Ready from about 10 August, between 1 and 20 August. At its best from about 24 August to 20 September. Most likely it stands well until 24 October; to be safe in nine years of ten, by 10 October.");
  });
});

describe("days on a packet", () => {
  it("are read as printed and written back", () => {
    const read = (text: string) => {
      const found = readPacketDays(text);
      return found.ok ? found.value : "wrong";
    };
    expect(["57", "60–65 days", "60 to 65", "80 days from sowing", "70 d from planting out", ""].map(read)).toEqual([{ low: 57, high: 57 }, { low: 60, high: 65 }, { low: 60, high: 65 }, { low: 80, high: 80, from: "sowing" }, { low: 70, high: 70, from: "transplanting" }, null]);
    expect(["5", "65–60", "early", "400", "57 weeks"].map(read)).toEqual(["wrong", "wrong", "wrong", "wrong", "wrong"]);
    for (const days of [{ low: 57, high: 57 }, { low: 60, high: 65, from: "sowing" as const }, { low: 60, high: 65, from: "transplanting" as const }]) expect(readPacketDays(packetWords(days))).toEqual({ ok: true, value: days });
  });
});

describe("sowing advice", () => {
  const sowing = (sowOn: string, fromWeek: string, untilWeek: string) => ({ sowOn, plantOutOn: null, fromWeek, untilWeek, rowM: 4, plants: 27, areaM2: 1.6, firstPick: { low: "2027-08-01", likely: "2027-08-08", high: "2027-08-20" }, chanceOfPick: 0.9 });

  it("says the sowings, the weeks they serve and those out of reach", () => {
    const advice = { sowings: [sowing("2027-06-01", "2027-W31", "2027-W33"), sowing("2027-06-20", "2027-W34", "2027-W35")], outOfReach: ["2027-W30"], basis: [], notes: [] };
    expect(loose(adviceSentence(advice, "French bean, bush", TODAY))).toBe("2 sowings from 1 June to 20 June bring French beans from week 31 to week 35. No sowing from today on reaches 1 week of those wanted.");
    expect(loose(adviceSentence({ ...advice, sowings: [] }, "Pea", TODAY))).toBe("No sowing from today on brings peas in the weeks wanted.");
  });

  it("says how much, for which weeks and when the first pick falls", () => {
    const one = sowing("2027-06-01", "2027-W31", "2027-W33");
    expect([sizeWords(one), servesWords(one, TODAY), firstPickWords(one, TODAY)].map(loose)).toEqual(["4 m of row, 27 plants", "weeks 31 to 33, from 2 Aug", "between 1 and 20 August, in 18 seasons of 20"]);
  });

  it("says of a bed what still ripens, what is a gamble, and that it is full", () => {
    const ripe = { crop: "radish", name: "Radish", method: "direct" as const, chanceOfPick: 1, firstPick: { low: "2027-08-16", likely: "2027-08-25", high: "2027-09-09" }, gramsPerRowM: { low: 300, likely: 550, high: 1000 }, waits: false, notes: [] };
    const advice = { on: TODAY, freeM2: 2, sensible: [ripe], gamble: [ripe], basis: [], notes: [] };
    expect(loose(bedAdviceSentence(advice))).toBe("1 crop sown or planted here today ripens in at least 16 seasons of 20.");
    expect(bedAdviceSentence({ ...advice, sensible: [] })).toMatch(/Nothing is safe to sow any more/);
    expect(bedAdviceSentence({ ...advice, freeM2: 0 })).toMatch(/The bed is full/);
    expect(loose(ripensWords(ripe, TODAY))).toBe("ready most likely 25 August, between 16 August and 9 September, in every season; 0.3 to 1.0 kg, most likely 550 g from a metre of row");
  });
});
