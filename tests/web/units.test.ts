/**
 * What a household reads that weighs in pounds and measures in feet. Factors: NIST Handbook 44, appendix C (1 lb = 453.59237 g,
 * 1 ft = 0.3048 m, °F = °C × 9/5 + 32); each expectation is worked from them by hand.
 */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import * as format from "#web/format.ts";
import { niceMax } from "#web/pages/today/pick-words.ts";
import { readGrams, readLength, readSowingAmount } from "#web/parts/typed-amount.ts";
import { units } from "#web/units.ts";

const loose = (text: string): string => text.replaceAll("\u00a0", " ");
const NB = "\u00a0";

beforeEach(() => {
  units.value = "us";
});
afterEach(() => {
  units.value = "metric";
});

describe("in pounds and feet", () => {
  it.each([
    // 3,100 / 453.59 = 6.83
    [() => format.amount(3100), "6.8 lb"],
    // 400 / 28.35 = 14.1
    [() => format.amount(400), "14 oz"],
    // 59,328 / 453.59 = 130.8
    [() => format.amount(59_328), "131 lb"],
    // 1,700 and 4,800: 3.75 and 10.58
    [() => format.expectedAmount({ low: 1700, likely: 3100, high: 4800 }), "3.7 to 10.6 lb, most likely 6.8 lb"],
    [() => format.amountSpan(240, 390), "8 to 14 oz"],
    [() => format.amountSpan(5, 390), "up to 14 oz"],
    // 1,200 g = 42.3 oz
    [() => format.measured(1200), "2 lb 10 oz"],
    [() => format.measured(907), "2 lb"],
    // 100 g = 3.53 oz
    [() => format.measured(100), "3.5 oz"],
    [() => format.weightCell(3100), "6.8"],
    [() => format.seasonCell(11_000, 16_000), "24–35"],
    // 3 m = 9.843 ft, 0.843 ft = 10.1 in
    [() => format.metres(3), "9 ft 10 in"],
    [() => format.metres(0.3048), "1 ft"],
    // 12 m² = 129.2, 4.35 m² = 46.8 sq ft
    [() => format.areaOf(4.35, 12), "47 of 129 sq ft"],
    // 190 °C = 374 °F, on the dial 375
    [() => format.degrees(190), "375 °F"],
    [() => format.degrees(-1), "30 °F"],
    [() => format.made({ amount: 500, unit: "g" }), "1 lb 2 oz"],
  ])("%s", (write, expected) => {
    expect(loose(write())).toBe(expected);
  });

  it("says the service's sentences over, also ranges, and leaves what gives both already", () => {
    const over = (text: string): string => loose(format.inOurUnits(text));
    // 42 kg = 92.6 lb, 8 kg = 17.6 lb
    expect(over(`gives about 42${NB}kg more than we eat, up to 8.0${NB}kg a week`)).toBe("gives about 93 lb more than we eat, up to 17.6 lb a week");
    expect(over(`1.7 to 4.8${NB}kg`)).toBe("3.7 to 10.6 lb");
    expect(over(`Cold frame, 2${NB}m of row`)).toBe("Cold frame, 6 ft 7 in of row");
    // a difference: 1.3 × 9/5 = 2.3, 4.2 × 9/5 = 7.6, without the 32
    expect(over("The polytunnel is taken to add 1.3 °C by night and 4.2 °C by day.")).toBe("The polytunnel is taken to add 2 °F by night and 8 °F by day.");
    expect(over("Indoors is taken as 16 °C by night and 20 °C by day.")).toBe("Indoors is taken as 61 °F by night and 68 °F by day.");
    for (const kept of ["Freeze at −18 °C (0 °F) or colder.", "Takes 35 min on 12 plants, in 5 weeks of 20.", "Sown 5 May, 400 °C d."]) expect(over(kept)).toBe(kept);
  });

  it("reads a bare number in the household's unit and every other unit as it is written", () => {
    // 12 oz = 340.2 g; 2 lb 3 oz = 992.2 g
    expect(readGrams("12")).toMatchObject({ value: 340 });
    expect(readGrams("2 lb 3 oz")).toMatchObject({ value: 992 });
    expect(readGrams("450 g")).toMatchObject({ value: 450 });
    // 20 ft = 6.096 m; 3 ft 11 in = 1.194 m
    expect(readLength("20")).toMatchObject({ value: 6.1 });
    expect(readLength("3 ft 11 in")).toMatchObject({ value: 1.19 });
    expect(readLength("3' 11\"")).toMatchObject({ value: 1.19 });
    expect(readLength("7 m")).toMatchObject({ value: 7 });
    expect(readSowingAmount("10", "rowM")).toMatchObject({ value: { rowM: 3.05 } });
    expect(readSowingAmount("20 sq ft", "rowM")).toMatchObject({ value: { areaM2: 1.86 } });
    expect(readSowingAmount("12", "plants")).toMatchObject({ value: { plants: 12 } });
  });

  it("an untouched field gives back the stored length and area, to the centimetre", () => {
    const random = seededRandom(7);
    let reached = 0;
    for (let n = 0; n < 500; n++) {
      const stored = Math.round(random.next() * 3000 + 1) / 100;
      expect(readLength(format.typedMetres(stored))).toMatchObject({ ok: true, value: stored });
      expect(readSowingAmount(format.typedArea(stored), "rowM")).toMatchObject({ ok: true, value: { areaM2: stored } });
      reached++;
    }
    expect(reached).toBe(500);
  });

  it("ends its scales on round pounds", () => {
    const pounds = [200, 900, 2500, 6000].map((grams) => niceMax(grams) / 453.59237);
    expect(pounds.map((lb) => Math.round(lb * 100) / 100)).toEqual([1, 2, 6, 15]);
  });
});
