/** As a season goes on its forecast narrows: warmth that has come is no longer uncertain, and a sighting takes away what lay before it. Real years, the forecasts of a day reading nothing after it. */
import { describe, expect, it } from "vitest";
import { forecastPlanting, summarise, weatherYears } from "#shared/engines/harvest-forecast/index.ts";
import type { ForecastSummary, Planting } from "#shared/engines/harvest-forecast/index.ts";
import { day, plantingOf, questionOf } from "./plantings.ts";
import { cropOf, dailyRecordOf, DE_BILT, longRecordsAtHand, MILWAUKEE, NEEDS_RECORDS } from "./records.ts";

const asked = (file: string, planting: Planting, began: number, asOf: number): ForecastSummary => {
  const weather = weatherYears({ record: dailyRecordOf(file), normals: null, asOf, from: began - 31, until: began + 300, seed: 1 }).value;
  return summarise(forecastPlanting(questionOf(planting, weather, { asOf, latitudeDeg: 48 })).value);
};
const width = ({ firstPick }: ForecastSummary): number => (firstPick ? firstPick.high - firstPick.low : NaN);
const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

describe.runIf(longRecordsAtHand)(`a season that goes on (${NEEDS_RECORDS})`, () => {
  const YEARS = Array.from({ length: 8 }, (_, i) => 2012 + i);

  it.each(["french-bean", "courgette", "pea"])("%s: with the requirement known, six weeks of its own weather take a sixth of the spread away", (slug) => {
    for (const file of [DE_BILT, MILWAUKEE]) {
      // no spread but that of the weather, of coming up and of the first fruit
      const crop = { ...cropOf(slug), sigmaLn: 0, quotedMeanC: Infinity };
      const widths = [0, 21, 42].map((later) => mean(YEARS.map((year) => width(asked(file, plantingOf(slug, { crop, sownOn: day(`${year}-05-20`) }), day(`${year}-05-20`), day(`${year}-05-20`) + later)))));
      expect(widths[1]).toBeLessThan(widths[0] as number);
      expect(widths[2]).toBeLessThan((5 / 6) * (widths[0] as number));
    }
  });

  it("flowers seen halve the span of beans", () => {
    const spans = YEARS.map((year) => {
      const began = day(`${year}-05-20`);
      const likely = asked(DE_BILT, plantingOf("french-bean", { sownOn: began }), began, began).firstPick?.likely ?? NaN;
      const seen = likely - 16;
      const flowering = plantingOf("french-bean", { sownOn: began, sightings: [{ stage: "flowering", day: seen }] });
      return width(asked(DE_BILT, flowering, began, seen)) / width(asked(DE_BILT, plantingOf("french-bean", { sownOn: began }), began, seen));
    });
    expect(mean(spans)).toBeLessThan(0.5);
  });
});
