/** How amounts, days and crops are written: the table of the look's fifth section, line by line. */
import { describe, expect, it } from "vitest";
import { cropWord } from "#shared/kernel/crop-words.ts";
import { amountSpanWords, amountWords, dayWords, listWords, measuredWords, minutesWords, nearDayWords, seasonsWords, spreadWords, weekSpanWords, weekWords } from "#shared/kernel/words.ts";

/** Shown here with a plain space; that number and unit cannot part is checked once below. */
const plain = (text: string) => text.replaceAll("\u00a0", " ");

describe("amounts", () => {
  it.each([
    [400, "400 g"],
    [424, "400 g"],
    [925, "950 g"],
    [949, "950 g"],
    [950, "1.0 kg"],
    [3100, "3.1 kg"],
    [19_940, "19.9 kg"],
    [19_960, "20 kg"],
    [58_700, "59 kg"],
  ])("%i g is %s", (grams, words) => expect(plain(amountWords(grams))).toBe(words));

  it("a spread says low, high and most likely", () => {
    expect(plain(amountSpanWords({ low: 1700, likely: 3100, high: 4800 }))).toBe("1.7 to 4.8 kg, most likely 3.1 kg");
    expect(plain(amountSpanWords({ low: 120, likely: 400, high: 620 }))).toBe("100 to 600 g, most likely 400 g");
    expect(plain(amountSpanWords({ low: 400, likely: 1200, high: 2000 }))).toBe("0.4 to 2.0 kg, most likely 1.2 kg");
    expect(plain(amountSpanWords({ low: 2000, likely: 2010, high: 2020 }))).toBe("2.0 kg");
  });

  it("a measured amount stays as entered", () => expect(plain(measuredWords(1200))).toBe("1,200 g"));
  it("number and unit cannot part at a line end", () => expect(amountWords(400) + dayWords("2027-07-26", 2027) + minutesWords(35)).not.toMatch(/\d \D/));
});

describe("days and weeks", () => {
  it("a day has its year only when it is not this one", () => {
    expect(plain(dayWords("2027-07-26", 2027))).toBe("26 July");
    expect(plain(dayWords("2028-01-02", 2027))).toBe("2 January 2028");
  });
  it("a week has its dates, short inside one month", () => {
    expect(plain(weekWords("2027-W30", 2027))).toBe("week 30, 26 July – 1 August");
    expect(plain(weekWords("2027-W33", 2027))).toBe("week 33, 16–22 August");
    expect(weekSpanWords("2027-W24", "2027-W31")).toBe("weeks 24–31");
  });
  it("a spread of dates is said in words", () => {
    expect(plain(spreadWords({ low: "2027-10-03", likely: "2027-10-12", high: "2027-10-24" }, 2027))).toBe("most likely 12 October, between 3 and 24 October");
    expect(plain(spreadWords({ low: "2027-09-28", likely: "2027-10-12", high: "2027-10-24" }, 2027))).toBe("most likely 12 October, between 28 September and 24 October");
  });
  it("a near day is named by its weekday", () => {
    // 26 July 2027 is a Monday
    expect(["2027-07-26", "2027-07-27", "2027-07-30", "2027-08-02"].map((date) => plain(nearDayWords(date, "2027-07-26")))).toEqual(["today", "tomorrow", "on Friday", "on 2 August"]);
  });
  it("lengths and chances", () => {
    expect([160, 35, 120].map((min) => plain(minutesWords(min)))).toEqual(["2 h 40", "35 min", "2 h"]);
    expect([1, 0.8, 0.05, 0.001].map(seasonsWords)).toEqual(["in every season", "in 16 seasons of 20", "in 1 season of 20", "in less than 1 season of 20"]);
  });
});

describe("crops", () => {
  it.each([
    ["Tomato, large", "tomatoes"],
    ["French bean, bush", "French beans"],
    ["Strawberry, June bearing", "strawberries"],
    ["Garlic, autumn planted", "garlic"],
    ["Brussels sprouts", "Brussels sprouts"],
    ["Winter radish", "winter radishes"],
    ["Beetroot", "beetroot"],
  ])("%s is spoken of as %s", (name, words) => expect(cropWord(name)).toBe(words));
  it("several are listed with and", () => expect([listWords([]), listWords(["a"]), listWords(["a", "b"]), listWords(["a", "b", "c"])]).toEqual(["", "a", "a and b", "a, b and c"]));
});
