/**
 * A plan in other years. Its own year must come out no better than what was proved least for it (tests/support/seasons.ts); by hand: with
 * nothing picked nothing is lost, and with one crop and one method the loss is a subtraction.
 */
import { expect, test } from "vitest";
import { checkSeasonPlan, courseInYear, fareOf, seasonInYear, type SeasonPlan, type YearOfHarvest } from "#shared/engines/season-plan/index.ts";
import { read, workedSeasons } from "#tests/support/seasons.ts";

const worked = workedSeasons().flatMap(({ name, season, known }) => (season.scenarios.length === 1 && known.plan ? [{ name, season, plan: known.plan as SeasonPlan, least: known.levels?.[0]?.value ?? 0 }] : []));
const yearsOf = (season: (typeof worked)[number]["season"]): YearOfHarvest[] =>
  [0, 0.7, 1, 1.4].map((times, i) => ({ id: `times-${times}`, chance: [1, 3, 4, 2][i] as number, harvestGrams: season.crops.map(({ harvestGrams }) => (harvestGrams[0] ?? []).map((grams) => times * grams)) }));

test.each(worked)("what is done in another year is allowed, and makes no more than was planned: $name", ({ season, plan, least }) => {
  for (const year of yearsOf(season)) {
    const course = courseInYear(season, plan, year);
    const { faults, score } = checkSeasonPlan(seasonInYear({ ...season, agreed: [], frozenWeeks: 0 }, year), { planned: course.made, outcomes: { [year.id]: course } });
    expect(faults).toEqual([]);
    for (const { method, week, batches } of course.made) expect(plan.planned.find((line) => line.method === method && line.week === week)?.batches ?? 0).toBeGreaterThanOrEqual(batches);
    if (year.id === "times-1") expect(score.wasteGrams).toBeGreaterThanOrEqual(least - 0.6);
  }
  const fare = fareOf(season, plan, yearsOf(season));
  expect([fare?.poor.id, fare?.middle.id, fare?.good.id]).toEqual(["times-0", "times-1", "times-1.4"]);
  expect([fare?.years[0]?.lostGrams, fare?.years[0]?.notMade]).toEqual([0, plan.planned.reduce((sum, { batches }) => sum + batches, 0)]);
  expect(fare?.expectedLostGrams).toBeCloseTo([0.1, 0.3, 0.4, 0.2].reduce((sum, chance, i) => sum + chance * (fare?.years[i]?.lostGrams ?? NaN), 0), 6);
});

test("one crop, one method, by hand; recourse is free, other methods are not", () => {
  const season = read({
    format: "season-plan/1", firstWeek: "2027-W30", weeks: 1, scenarios: [{ id: "likely", weight: 1 }], equipment: [], resources: [],
    crops: [{ crop: "bean", keepWeeks: 1, freshGrams: 500, giveGrams: 200, harvestGrams: { likely: [2500] } }],
    methods: ["cook", "freeze"].map((way) => ({ id: way, title: way, way, keptIn: "freezer", process: "not-needed", uses: [{ crop: "bean", grams: 1000 }], sessionBatches: { min: 1, max: 9 }, portions: 4, recourse: way === "freeze" })),
  });
  const plan: SeasonPlan = { planned: [{ method: "cook", week: 0, batches: 2 }], outcomes: {} };
  const in4kg = [{ id: "good", chance: 1, harvestGrams: [[4000]] }];
  // 4,000 = 2 × 1,000 cooked + 500 eaten + 1,000 frozen + 200 given + 300 lost
  expect(fareOf(season, plan, in4kg)?.worst).toMatchObject({ lostGrams: 300, notMade: 0, lostByWeek: [300] });
  // without recourse a kilogram more is lost
  const fixed = { ...season, methods: season.methods.map((method) => ({ ...method, recourse: false })) };
  expect(fareOf(fixed, plan, in4kg)?.worst.lostGrams).toBe(1300);
  expect(fareOf(season, plan, [])).toBeNull();
});
