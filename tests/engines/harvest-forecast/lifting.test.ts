/** Lifting windows: ready, at its best, out by. Made weather with one frost; the rules are common practice, without a source, and the days worked by hand. */
import { describe, expect, it } from "vitest";
import { forecastPlanting, summarise } from "#shared/engines/harvest-forecast/index.ts";
import type { ForecastSummary, Planting } from "#shared/engines/harvest-forecast/index.ts";
import { day, plantingOf, questionOf, weatherFrom } from "./plantings.ts";
import { allCrops } from "./records.ts";

/** 18 / 8 °C all year, and single nights as given. */
const liftingOf = (planting: Planting, nights: Record<string, number> = {}): NonNullable<ForecastSummary["lifting"]> => {
  const cold = new Map(Object.entries(nights).map(([date, c]) => [day(date), c]));
  const weather = weatherFrom(day("2027-01-01"), 800, 30, (d) => [18, cold.get(d) ?? 8]);
  const found = summarise(forecastPlanting(questionOf(planting, weather)).value).lifting;
  if (!found) throw new Error("no lifting window");
  return found;
};

describe("a lifting window", () => {
  it("of bulbs is the fortnight after half the tops have fallen; they are out within their five weeks", () => {
    const { ready, bestFrom, bestUntil, outBy } = liftingOf(plantingOf("onion", { sownOn: day("2027-03-20") }));
    expect(bestFrom).toEqual(ready);
    expect([bestUntil.low - ready.low, outBy.likely - ready.likely]).toEqual([14, 5 * 7 - 1]);
  });

  it("of parsnips is best from the first night of −2 °C, and ends with April, when they run to seed", () => {
    const { ready, bestFrom, outBy } = liftingOf(plantingOf("parsnip", { sownOn: day("2027-03-20") }), { "2027-11-20": -2 });
    expect(ready.high).toBeLessThan(day("2027-11-20"));
    expect([bestFrom.low, bestFrom.high]).toEqual([day("2027-11-20"), day("2027-11-20")]);
    expect(outBy).toEqual({ low: day("2028-04-30"), likely: day("2028-04-30"), high: day("2028-04-30") });
  });

  it("of carrots ends the day before the frost that kills them, of potatoes begins when their skins have set", () => {
    const carrots = liftingOf(plantingOf("carrot", { sownOn: day("2027-07-01") }), { "2027-11-10": -5 });
    expect(carrots.outBy.high).toBe(day("2027-11-09"));
    const potatoes = liftingOf(plantingOf("potato", { sownOn: day("2027-04-10") }), { "2027-10-20": -5 });
    expect([potatoes.bestFrom.low - potatoes.ready.low, potatoes.outBy.high]).toEqual([14, day("2027-10-19")]);
  });

  it("of squash begins a fortnight after it is ripe and ends with the frost", () => {
    const squash = liftingOf(plantingOf("winter-squash", { plantedOutOn: day("2027-05-15") }), { "2027-11-05": -1 });
    expect(squash.bestFrom.low - squash.ready.low).toBe(14);
    expect([squash.bestUntil.high, squash.outBy.high]).toEqual([day("2027-11-04"), day("2027-11-04")]);
  });

  it("is in order for every crop that waits, and there is none for the rest", () => {
    let waiting = 0;
    for (const crop of allCrops().filter((one) => !one.perennial)) {
      const planted = crop.usualMethod === "transplant" || crop.usualMethod === "slips";
      const weather = weatherFrom(day("2027-01-01"), 800, 12, (d, y) => [18 + y / 3, d === day("2027-11-15") ? -6 : 8]);
      const forecast = forecastPlanting(questionOf(plantingOf(crop.slug, planted ? { plantedOutOn: day("2027-05-20") } : { sownOn: day("2027-04-20") }), weather)).value;
      expect(forecast.lifting !== undefined).toBe(forecast.waits);
      forecast.firstPickDay.forEach((ready, s) => {
        if (!forecast.lifting || ready < 0) return;
        const { bestFrom, bestUntil, outBy } = forecast.lifting;
        const inOrder = [ready, bestFrom[s] as number, bestUntil[s] as number, outBy[s] as number];
        expect(inOrder, crop.slug).toEqual([...inOrder].sort((a, b) => a - b));
        waiting++;
      });
    }
    expect(waiting).toBeGreaterThan(1_000);
  });
});
