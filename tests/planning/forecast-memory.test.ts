import { expect, it } from "vitest";
import type { PlantingForecast } from "#shared/engines/harvest-forecast/index.ts";
import type { Outcome } from "#shared/kernel/outcome.ts";
import type { ForecastMemory, KeptOutlook } from "#shared/planning/forecast-memory.ts";
import type { GardenFacts } from "#shared/planning/facts.ts";
import { gardenOutlook } from "#shared/planning/garden-outlook.ts";
import { sowingOutlooks } from "#shared/planning/sowing-forecast.ts";
import { trackRecordOf } from "#shared/planning/track-record.ts";
import { todayList } from "#shared/planning/today-list.ts";
import { garden, kitchen, recipe, type Sown } from "#tests/support/make-garden.ts";

function memory(): ForecastMemory & { reckoned: number; found: number } {
  const held = new Map<string, Outcome<PlantingForecast>>();
  const outlooks = new Map<string, KeptOutlook>();
  const counts = { reckoned: 0, found: 0 };
  return {
    ...counts,
    find(question) {
      const known = held.get(question);
      if (known) this.found++;
      return known;
    },
    keep(question, forecast) {
      this.reckoned++;
      held.set(question, forecast);
    },
    outlooks: { find: (place) => outlooks.get(place), keep: (place, outlook) => void outlooks.set(place, outlook) },
  };
}

const SOWN: Sown[] = [
  { id: "b", crop: "french-bean", sownOn: "2027-05-10", rowM: 6, picks: [["2027-07-01", 300]] },
  { id: "b2", crop: "french-bean", sownOn: "2027-06-10", rowM: 6 },
  { id: "c", crop: "courgette", sownOn: "2027-04-20", plantedOutOn: "2027-05-25", plants: 3 },
  { id: "p", crop: "potato", sownOn: "2027-04-10", rowM: 8 },
  { id: "g", crop: "gooseberry", plants: 2 },
  { id: "o", crop: "onion", sownOn: "2026-04-01", rowM: 5 },
];
const KITCHEN = kitchen({ "french-bean": 800, courgette: 600 }, { recipes: [recipe("blanched", { "french-bean": 1000 })] });
const all = (facts: GardenFacts) => ({ year: gardenOutlook(facts, KITCHEN, { from: "2027-W01", weeks: 52 }), day: todayList(facts, KITCHEN), list: [...sowingOutlooks(facts)] });

const withChange = (id: string, change: Partial<Sown>): Sown[] => SOWN.map((sown) => (sown.id === id ? { ...sown, ...change } : sown));
/** What may be asked about next: the same, then one thing changed at a time. */
const NEXT: [what: string, facts: GardenFacts][] = [
  ["the same again", garden(SOWN)],
  ["one more pick", garden(withChange("b", { picks: [["2027-07-01", 300], ["2027-07-03", 500]] }))],
  ["a pick that teaches the other sowing", garden(withChange("b", { picks: [["2027-06-25", 300]] }))],
  ["a sighting", garden(withChange("c", { sightings: [["flowering", "2027-06-20"]] }))],
  ["a longer row", garden(withChange("b2", { rowM: 9 }))],
  ["another day of sowing", garden(withChange("p", { sownOn: "2027-04-25" }))],
  ["a later day", garden(SOWN, { asOf: "2027-07-25" })],
  ["another latitude", garden(SOWN, { latitude: 45 })],
  ["the south", garden(SOWN, { latitude: -45 })],
  ["no place", garden(SOWN, { placed: false })],
  ["nothing picked", garden(withChange("b", { picks: [] }))],
  ["under cover", { ...garden(SOWN), plantings: garden(SOWN).plantings.map((one) => ({ ...one, cover: "polytunnel" as const })) }],
];

it("changes nothing in an answer, whatever was asked before", () => {
  const remembered = memory();
  const first: [string, GardenFacts] = ["first", garden(SOWN)];
  for (const [what, facts] of [first, ...NEXT, first]) expect({ what, ...all({ ...facts, memory: remembered }) }).toEqual({ what, ...all(facts) });
  expect(remembered.found).toBeGreaterThan(50);
});

it("changes nothing in the track record, which after a pick of something else is not reckoned anew", () => {
  const remembered = memory();
  const first = garden(SOWN);
  expect(trackRecordOf({ ...first, memory: remembered })).toEqual(trackRecordOf(first));
  const before = remembered.reckoned;
  const later = garden(withChange("c", { picks: [["2027-07-02", 900]] }));
  expect(trackRecordOf({ ...later, memory: remembered })).toEqual(trackRecordOf(later));
  // the courgette's own two forecasts, and none of the beans'
  expect(remembered.reckoned - before).toBe(2);
});

it("reckons after one more pick only the crop that was picked", () => {
  const remembered = memory();
  gardenOutlook({ ...garden(SOWN), memory: remembered }, KITCHEN, { from: "2027-W01", weeks: 52 });
  const before = remembered.reckoned;
  gardenOutlook({ ...garden(withChange("b", { picks: [["2027-07-01", 300], ["2027-07-03", 500]] })), memory: remembered }, KITCHEN, { from: "2027-W01", weeks: 52 });
  expect(remembered.reckoned - before).toBeGreaterThanOrEqual(1);
  expect(remembered.reckoned - before).toBeLessThanOrEqual(2);
});

it("adds up only the crop that was picked", () => {
  const remembered = memory();
  const added: string[] = [];
  const facts = (sown: Sown[]): GardenFacts => ({
    ...garden(sown),
    memory: { ...remembered, find: (asked) => remembered.find(asked), keep: (asked, made) => remembered.keep(asked, made), outlooks: { find: (place) => remembered.outlooks?.find(place), keep: (place, kept) => (added.push(kept.outlook.crop.slug), remembered.outlooks?.keep(place, kept)) } },
  });
  gardenOutlook(facts(SOWN), KITCHEN, { from: "2027-W01", weeks: 52 });
  expect(new Set(added).size).toBe(5);
  added.length = 0;
  gardenOutlook(facts(withChange("b", { picks: [["2027-07-01", 300], ["2027-07-03", 500]] })), KITCHEN, { from: "2027-W01", weeks: 52 });
  expect(added).toEqual(["french-bean"]);
});
