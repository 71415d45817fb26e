/** How numbers are written: the cases of the product's own table of spellings (its look, “How numbers are written”). */
import { describe, expect, it } from "vitest";
import * as format from "#web/format.ts";

/** Blanks that hold number and unit together read as blanks here. */
const loose = (text: string): string => text.replaceAll("\u00a0", " ");
const TODAY = "2027-07-26";

describe("amounts", () => {
  it.each([
    [format.expectedAmount({ low: 1700, likely: 3100, high: 4800 }), "1.7 to 4.8 kg, most likely 3.1 kg"],
    [format.amount(410), "400 g"],
    [format.amount(926), "950 g"],
    [format.amount(960), "1.0 kg"],
    [format.amount(59_328), "59 kg"],
    [format.amountSpan(240, 610), "250 to 600 g"],
    [format.measured(1200), "1,200 g"],
    [format.weightCell(3100), "3.1"],
    [format.weightCell(400), "0.4"],
    [format.weightSpanCell(1700, 4800), "1.7–4.8"],
    [format.weightCell(14_000), "14.0"],
    [format.seasonCell(146_200, 254_800), "146–255"],
    [format.seasonCell(11_000, 16_000), "11–16"],
    [format.area(2.5), "2.5 m²"],
    [format.metres(3), "3 m"],
  ])("%s", (written, expected) => {
    expect(loose(written)).toBe(expected);
  });

  it("never lets a number part from its unit", () => {
    const written = [format.amount(400), format.amount(3100), format.measured(1200), format.area(2), format.metres(3), format.length(35), format.degrees(190), format.count(3, "jar", "jars")];
    for (const text of written) expect(text).not.toContain(" ");
  });
});

describe("weeks and days", () => {
  it.each([
    [format.weekTitle("2027-W30"), "Week 30 · 26 July – 1 August"],
    [format.weekTitle("2027-W30", "short"), "Week 30 · 26 Jul – 1 Aug"],
    [format.weekSpan("2027-W33", "short"), "16–22 Aug"],
    // ISO 8601: the week of 1 January 2027 is the 53rd of 2026
    [format.weekTitle("2026-W53"), "Week 53 · 28 December – 3 January"],
    [format.day("2027-07-26", TODAY), "26 July"],
    [format.day("2026-08-02", TODAY), "2 August 2026"],
    [format.monthYear("2026-08-02"), "Aug 2026"],
    [format.betweenDays("2027-10-03", "2027-10-24", TODAY), "between 3 and 24 October"],
    [format.expectedDay({ low: "2027-10-03", likely: "2027-10-12", high: "2027-10-24" }, TODAY), "most likely 12 October, between 3 and 24 October"],
    [format.threeDays({ low: "2027-10-03", likely: "2027-10-12", high: "2027-10-24" }, TODAY), "Earliest likely 3 October, most likely 12 October, latest likely 24 October."],
  ])("%s", (written, expected) => {
    expect(loose(written)).toBe(expected);
  });
});

describe("the rest of the table", () => {
  it.each([
    [format.clock(14 * 60), "14:00"],
    [format.clock(25 * 60 + 5), "01:05"],
    [format.length(160), "2 h 40"],
    [format.length(35), "35 min"],
    [format.degrees(190), "190 °C"],
    [format.degrees(-1), "−1 °C"],
    [format.made({ amount: 2, unit: "jar of 500 ml" }), "2 jars of 500 ml"],
    [format.made({ amount: 1, unit: "loaf" }), "1 loaf"],
    [format.made({ amount: 3, unit: "loaf" }), "3 loaves"],
    [format.made({ amount: 2, unit: "batch" }), "2 batches"],
    [format.made({ amount: 1, unit: "jars" }), "1 jar"],
    [format.made({ amount: 1, unit: "loaves" }), "1 loaf"],
    [format.made({ amount: 4, unit: "loaves" }), "4 loaves"],
    [format.made({ amount: 1, unit: "pasties" }), "1 pasty"],
    [format.made({ amount: 2, unit: "litres" }), "2 litres"],
    [format.made({ amount: 100, unit: "g" }), "100 g"],
    [format.listed(["a", "b", "c"]), "a, b and c"],
  ])("%s", (written, expected) => {
    expect(loose(written)).toBe(expected);
  });
});
