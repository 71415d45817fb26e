/**
 * From when warmth counts and how much is needed: the crop table's figures by the way a crop is grown, sightings in place of what came before, and the
 * household's own sowings. Expectations are worked by hand from the published days (named beside each).
 */
import { describe, expect, it } from "vitest";
import { clockOf } from "#shared/engines/harvest-forecast/clock.ts";
import { knownFacts } from "#shared/engines/harvest-forecast/known-facts.ts";
import { finishedSowingOf } from "#shared/engines/harvest-forecast/index.ts";
import type { ForecastQuestion, Planting } from "#shared/engines/harvest-forecast/index.ts";
import { withOwnYield } from "#shared/engines/harvest-forecast/amounts.ts";
import { learnedFrom, learnedYield } from "#shared/engines/harvest-forecast/learned.ts";
import { isMaritime, requirementOf } from "#shared/engines/harvest-forecast/requirement.ts";
import { covered } from "#shared/engines/harvest-forecast/thermal-time.ts";
import type { Clock } from "#shared/engines/harvest-forecast/clock.ts";
import { day, plantingOf, questionOf, steadyWeather, weatherFrom } from "./plantings.ts";

const weather = steadyWeather(20, 10, day("2027-01-01"), 500);
const ask = (planting: Planting, change: Partial<ForecastQuestion> = {}): Clock => {
  const q = questionOf(planting, weather, { asOf: day("2027-07-26"), ...change });
  return clockOf(q, knownFacts(q), covered(weather, planting.cover), true) as Clock;
};

describe("by the book", () => {
  it("counts a crop of the table's own kind from its own day", () => {
    expect(ask(plantingOf("tomato", { plantedOutOn: day("2027-06-01") }))).toMatchObject({ startDay: day("2027-06-01"), emerges: false, likelyCd: 975, sigmaLn: 0.28 });
    expect(ask(plantingOf("pea", { sownOn: day("2027-04-01") }))).toMatchObject({ startDay: day("2027-04-01"), emerges: true, likelyCd: 715 });
    expect(ask(plantingOf("garlic", { sownOn: day("2027-02-20") }))).toMatchObject({ startDay: day("2027-02-20"), emerges: false, likelyCd: 2230 });
  });

  it("takes a plant of three to four weeks as 14 days ahead of a crop counted from sowing (common practice)", () => {
    // courgette 735 °C d from sowing, quoted at 20.3 °C, base 7.2 °C: 735 − 14 × 13.1
    expect(ask(plantingOf("courgette", { plantedOutOn: day("2027-05-20") })).likelyCd).toBeCloseTo(735 - 14 * 13.1, 6);
  });

  it("takes a crop counted from planting out, but sown in place, as 25 days behind after it comes up (common practice)", () => {
    const clock = ask(plantingOf("tomato", { sownOn: day("2027-05-20") }));
    expect([clock.emerges, clock.likelyCd]).toEqual([true, 975 + 25 * (20.3 - 7)]);
  });

  it("supposes a day of planting out where only the sowing is known, for tender crops after the last frost", () => {
    const cold = weatherFrom(day("2027-01-01"), 500, 10, (d) => (d < day("2027-05-25") ? [12, -1] : [20, 10]));
    const q = questionOf(plantingOf("tomato", { method: "transplant", sownOn: day("2027-03-10") }), cold, { asOf: day("2027-03-20") });
    const clock = clockOf(q, knownFacts(q), covered(cold, "open"), true);
    expect(clock?.startDay).toBe(day("2027-05-25"));
    expect(clock?.notes.join(" ")).toMatch(/planting out is not known/);
    expect(ask(plantingOf("cabbage", { method: "transplant", sownOn: day("2027-03-10") })).startDay).toBe(day("2027-03-10") + 35);
  });

  it("counts what stands for years from 1 February of its season, 1 August of the year before in the south", () => {
    expect(ask(plantingOf("strawberry"))).toMatchObject({ startDay: day("2027-02-01"), likelyCd: 615 });
    expect(ask(plantingOf("strawberry", { season: 2028 })).startDay).toBe(day("2028-02-01"));
    expect(ask(plantingOf("strawberry"), { southern: true }).startDay).toBe(day("2027-08-01"));
    expect(ask(plantingOf("strawberry", { season: 2027 }), { southern: true }).startDay).toBe(day("2026-08-01"));
  });

  it("has no clock for an annual said to stand for years", () => {
    const q = questionOf(plantingOf("carrot", { method: "established" }), weather);
    expect(clockOf(q, knownFacts(q), covered(weather, "open"), true)).toBeNull();
  });
});

describe("sightings", () => {
  const seen = (slug: string, stage: "emerged" | "flowering" | "fruit-set" | "planted-out", change: Partial<Planting> = {}): Clock =>
    ask(plantingOf(slug, { sownOn: day("2027-05-01"), ...change, sightings: [{ stage, day: day("2027-06-20") }] }));

  it("tomato in flower: 45–60 days (Encyclopaedia Britannica) × 13.3 °C are about 690 °C d, spread 0.15", () => {
    const clock = seen("tomato", "flowering");
    expect(clock).toMatchObject({ startDay: day("2027-06-20"), emerges: false, sigmaLn: 0.15, restsOn: "flowering" });
    expect(Math.abs(clock.likelyCd - 690)).toBeLessThan(10);
    // 69 days in a July of 17 °C and 49 in one of 21 °C
    expect([clock.likelyCd / 10, clock.likelyCd / 14].map(Math.round)).toEqual([70, 50]);
  });

  it.each([
    ["french-bean", 120, 180],
    ["pea", 225, 265],
    ["sweetcorn", 200, 270],
  ])("%s in flower: between %d and %d °C d", (slug, low, high) => {
    const { likelyCd } = seen(slug, "flowering");
    expect(likelyCd).toBeGreaterThanOrEqual(low);
    expect(likelyCd).toBeLessThanOrEqual(high);
  });

  it("fruit seen is five days nearer than the flower (common practice), spread 0.12; blueberry flowers spread 0.20", () => {
    expect(seen("tomato", "flowering").likelyCd - seen("tomato", "fruit-set").likelyCd).toBeCloseTo(5 * 13.3, 6);
    expect(seen("tomato", "fruit-set").sigmaLn).toBe(0.12);
    expect(seen("blueberry", "flowering").sigmaLn).toBe(0.2);
  });

  it("coming up leaves what the book needs after emergence; in a tray it says nothing", () => {
    expect(seen("pea", "emerged")).toMatchObject({ startDay: day("2027-06-20"), emerges: false, likelyCd: 715, sigmaLn: 0.19 });
    expect(seen("tomato", "emerged", { sownOn: null, plantedOutOn: day("2027-06-01") }).startDay).toBe(day("2027-06-01"));
  });

  it("shoots seen take the weeks before them (common practice: sets 14, tubers 25, cloves 30 days) off what counts from planting", () => {
    // onion 1550 at 18.5 − 4.4 °C, potato 1445 at 16.9 − 2 °C, garlic 2230 at 9 °C a day
    expect(seen("onion", "emerged")).toMatchObject({ startDay: day("2027-06-20"), restsOn: "emerged" });
    expect(seen("onion", "emerged").likelyCd).toBeCloseTo(1550 - 14 * 14.1, 6);
    expect(seen("potato", "emerged").likelyCd).toBeCloseTo(1445 - 25 * 14.9, 6);
    expect(seen("garlic", "emerged").likelyCd).toBeCloseTo(2230 - 30 * 9, 6);
    // leek sown in place: 1905 °C d and 25 days of 18.5 − 4.4 °C, all of it after coming up
    expect(seen("leek", "emerged")).toMatchObject({ startDay: day("2027-06-20"), restsOn: "emerged" });
    expect(seen("leek", "emerged").likelyCd).toBeCloseTo(1905 + 25 * 14.1, 6);
  });

  it("planting out seen goes before the day that was planned", () => {
    expect(seen("tomato", "planted-out", { plantedOutOn: day("2027-06-01") })).toMatchObject({ startDay: day("2027-06-20"), restsOn: "planted-out" });
  });

  it("dated after the day asked about count for nothing", () => {
    const planting = plantingOf("pea", { sownOn: day("2027-04-01"), sightings: [{ stage: "flowering", day: day("2027-06-01") }] });
    expect(ask(planting, { asOf: day("2027-05-31") }).restsOn).toBe("book");
    expect(ask(planting, { asOf: day("2027-06-01") }).restsOn).toBe("flowering");
  });
});

describe("the household's own sowings", () => {
  const ratio = (took: number): { lnRequirementRatio: number; sameVariety: boolean } => ({ lnRequirementRatio: Math.log(took / 544), sameVariety: true });

  it("book 544, own 500, 480 and 515: weight 0.885, requirement 503, spread 0.114 (worked by hand)", () => {
    const learned = learnedFrom([500, 480, 515].map(ratio));
    expect(544 * Math.exp(learned?.shiftLn ?? 0)).toBeCloseTo(503, 0);
    expect(learned?.sigmaLn).toBeCloseTo(0.114, 3);
  });

  it("the first alone: weight 0.719, requirement 512", () => {
    expect(544 * Math.exp(learnedFrom([ratio(500)])?.shiftLn ?? 0)).toBeCloseTo(512, 0);
  });

  it("of other varieties move the middle less and leave the spread", () => {
    const other = learnedFrom([500, 480, 515].map((took) => ({ ...ratio(took), sameVariety: false })));
    expect(other?.sigmaLn).toBeNull();
    expect(Math.abs(other?.shiftLn ?? 9)).toBeLessThan(0.0779);
  });

  it("an odd one is cut at half on the logarithm", () => {
    expect(learnedFrom([ratio(5_000)])?.shiftLn).toBeCloseTo(0.719 * 0.5, 3);
  });

  it("are read from the weather that really was: 20 / 10 °C brings 7.9 °C d a day to a courgette", () => {
    const observed = { ...steadyWeather(20, 10, day("2027-01-01"), 400, 1), asOf: day("2027-12-31") };
    const planting = plantingOf("courgette", { plantedOutOn: day("2027-05-20"), picks: [{ day: day("2027-08-01"), grams: 300 }] });
    const found = finishedSowingOf(questionOf(planting, observed, { asOf: day("2027-12-31") }), true);
    expect(found?.lnRequirementRatio).toBeCloseTo(Math.log((73 * (15 - 7.2)) / (0.95 * (735 - 14 * 13.1))), 6);
  });

  it("teach no requirement where the grower chose the day", () => {
    const observed = { ...steadyWeather(20, 10, day("2027-01-01"), 400, 1), asOf: day("2027-12-31") };
    const planting = plantingOf("carrot", { sownOn: day("2027-04-15"), picks: [{ day: day("2027-08-01"), grams: 300 }] });
    expect(finishedSowingOf(questionOf(planting, observed, { asOf: day("2027-12-31") }), true)).toBeNull();
  });
});

describe("the household's own yields", () => {
  const brought = (ratio: number, sameVariety = true) => ({ lnRequirementRatio: null, lnYieldRatio: Math.log(ratio), sameVariety });

  it("move the book's by B·mean(r), B = nτ²/(nτ² + ω²), τ 0.5, ω 0.35, and never widen it", () => {
    // two seasons of twice the book: B = 2 · 0.25 / (0.5 + 0.1225) = 0.80321; ln 2 · B = 0.55674, so × 1.745
    const learned = learnedYield([brought(2), brought(2)]);
    expect(learned?.shiftLn).toBeCloseTo(0.55674, 4);
    const yields = withOwnYield({ likelyGrams: 1000, sigmaLn: 0.3, notes: [] }, learned);
    expect(yields.likelyGrams).toBeCloseTo(1745, 0);
    expect(yields.sigmaLn).toBe(0.3);
    expect(yields.notes.join(" ")).toMatch(/By 2 finished seasons of your own the amount is taken 74 % above the book's/);
    // of other varieties τ is halved: B = 0.0625 / (0.0625 + 0.1225) = 0.33784
    expect(learnedYield([brought(2, false)])?.shiftLn).toBeCloseTo(0.33784 * Math.log(2), 4);
    expect(learnedFrom([brought(2)])).toBeNull();
  });

  const observed = { ...steadyWeather(20, 10, day("2026-01-01"), 800, 1), asOf: day("2027-12-31") };
  const lesson = (change: Partial<Planting>) => finishedSowingOf(questionOf(plantingOf("french-bean", { sownOn: day("2027-05-20"), rowM: 2, ...change }), observed, { asOf: day("2027-12-31") }), true);
  const finished = { stage: "finished", day: day("2027-09-20") } as const;
  const picks = (...grams: number[]) => grams.map((g, i) => ({ day: day("2027-08-10") + 3 * i, grams: g }));

  it("are read from a season that is over: 2 m of beans are 3.58 kg by the book (University of Kentucky ID-128)", () => {
    expect(lesson({ picks: picks(2_000, 3_370), sightings: [finished] })?.lnYieldRatio).toBeCloseTo(Math.log(5_370 / 3_580), 9);
    expect(lesson({ picks: picks(2_000, 3_370) })?.lnYieldRatio).toBeNull();
  });
  it("are not read from a sowing that failed or was eaten: nothing, or next to nothing, was picked", () => {
    expect(lesson({ sightings: [finished] })).toBeNull();
    expect(lesson({ picks: picks(120), sightings: [finished] })?.lnYieldRatio).toBeNull();
  });
  it("are read of what waits for the grower too", () => {
    const leeks = finishedSowingOf(questionOf(plantingOf("leek", { plantedOutOn: day("2026-06-10"), rowM: 2, picks: [{ day: day("2026-12-10"), grams: 1_800 }], sightings: [{ stage: "finished", day: day("2027-02-10") }] }), observed, { asOf: day("2027-12-31") }), true);
    expect(leeks).toEqual({ lnRequirementRatio: null, lnYieldRatio: Math.log(1_800 / 3_600), sameVariety: true });
  });
});

describe("what adds to the book's spread", () => {
  const sigmaOf = (planting: Planting, change: Partial<ForecastQuestion> = {}): number => {
    const q = questionOf(planting, weather, { asOf: day("2027-07-26"), ...change });
    return requirementOf(q, clockOf(q, knownFacts(q), covered(weather, planting.cover), true) as Clock).sigmaLn;
  };

  it("a degree between garden and station, over the warmth of a day: sweetcorn 1 / (20 − 10), and a quarter of the 65 of 955 °C d before it comes up", () => {
    expect(sigmaOf(plantingOf("sweetcorn", { sownOn: day("2027-05-15") }))).toBeCloseTo(Math.sqrt(0.17 ** 2 + 0.1 ** 2 + (0.25 * (65 / 955)) ** 2), 9);
    expect(sigmaOf(plantingOf("tomato", { plantedOutOn: day("2027-05-20") }))).toBeCloseTo(Math.sqrt(0.28 ** 2 + (1 / 13.3) ** 2 + 0.03 ** 2), 9);
    expect(sigmaOf(plantingOf("tomato", { plantedOutOn: day("2027-05-20"), cover: "indoors" }))).toBeCloseTo(Math.hypot(0.28, 0.03), 9);
  });
  it("a cover that warms by half as much again or half as much, in eight cases of ten: a tunnel's mean gain 2.75 °C (Savage 1980), half of it over 1.2816", () => {
    const tunnel = Math.sqrt(0.28 ** 2 + (1 / 13.3) ** 2 + 0.03 ** 2 + (1.375 / 1.2816 / 13.3) ** 2);
    expect(sigmaOf(plantingOf("tomato", { plantedOutOn: day("2027-05-20"), cover: "polytunnel" }))).toBeCloseTo(tunnel, 9);
  });
  it("a day of planting out that nobody has given, seven days either way", () => {
    const guessed = sigmaOf(plantingOf("tomato", { method: "transplant", sownOn: day("2027-03-10") }));
    expect(guessed).toBeCloseTo(Math.sqrt(0.28 ** 2 + (1 / 13.3) ** 2 + 0.03 ** 2 + ((7 * 13.3) / 975) ** 2), 9);
  });
  it("the choice of the first leaves, from baby leaf to full growth; a sighting or the same variety of one's own takes all of it away", () => {
    const lettuce = questionOf(plantingOf("lettuce", { sownOn: day("2027-04-15") }), weather, { asOf: day("2027-07-26") });
    const clock = clockOf(lettuce, knownFacts(lettuce), covered(weather, "open"), true) as Clock;
    expect(requirementOf(lettuce, clock).likelyCd).toBeCloseTo(0.82 * 570, 9);
    // even chances between 0.64 and 1 of the figure: mean 0.82, spread 0.36 / √12 / 0.82
    expect(Math.abs(0.36 / Math.sqrt(12) / 0.82 - 0.13)).toBeLessThan(0.005);
    expect(sigmaOf(plantingOf("tomato", { plantedOutOn: day("2027-05-20"), sightings: [{ stage: "flowering", day: day("2027-06-20") }] }))).toBe(0.15);
    expect(sigmaOf(plantingOf("tomato", { plantedOutOn: day("2027-05-20") }), { ownSowings: [{ lnRequirementRatio: 0, sameVariety: true }] })).toBeLessThan(0.17);
  });
});

describe("a climate by the sea", () => {
  const winter = (d: number): boolean => d < day("2027-04-01") || d > day("2027-11-01");
  const mild = weatherFrom(day("2027-01-01"), 500, 2, (d) => (winter(d) ? [6, 2] : [22, 12]));
  const hard = weatherFrom(day("2027-01-01"), 500, 2, (d) => (winter(d) ? [-2, -8] : [27, 17]));

  it("is one whose July and January differ by 20 °C at most (common practice)", () => {
    expect([isMaritime(mild), isMaritime(hard)]).toEqual([true, false]);
  });

  it("takes long-season crops as early varieties, 15 % quicker, and says so", () => {
    const planting = plantingOf("sweetcorn", { sownOn: day("2027-05-15") });
    const q = questionOf(planting, mild);
    const clock = clockOf(q, knownFacts(q), covered(mild, "open"), true) as Clock;
    expect(requirementOf(q, clock).likelyCd).toBeCloseTo(890 * 0.85, 9);
    expect(requirementOf(q, clock).notes.join(" ")).toMatch(/15 % lower/);
    expect(requirementOf(questionOf(planting, hard), clock).likelyCd).toBe(890);
  });
});
