/**
 * The simple rule and the referee against the worked seasons. What the rule scores there, and one best plan with its levels, was worked out
 * by other programs before these were written (tests/support/seasons.ts); the published plans carry up to half a gram of dust.
 */
import { describe, expect, test } from "vitest";
import { checkSeasonPlan, LEVELS, planByRule, type SeasonPlan } from "#shared/engines/season-plan/index.ts";
import { workedSeason, workedSeasons } from "#tests/support/seasons.ts";

describe.each(workedSeasons())("$name", ({ season, known }) => {
  test("the rule's plan is allowed and scores what is known of it", () => {
    const { faults, score } = checkSeasonPlan(season, planByRule(season));
    expect(faults).toEqual([]);
    for (const level of LEVELS) expect([level, score[level]]).toEqual([level, expect.closeTo(known.rule[level], 2)]);
  });

  test("the published plan is allowed and scores what is published", () => {
    const published = known.plan ?? known.reference?.plan;
    const { faults, score } = checkSeasonPlan(season, published as SeasonPlan);
    expect(faults).toEqual([]);
    const values = Object.fromEntries(known.levels?.map(({ level, value }) => [level, value]) ?? Object.entries(known.reference?.score ?? {}));
    for (const level of LEVELS) expect(Math.abs(score[level] - (values[level] as number))).toBeLessThanOrEqual(0.6);
  });
});

describe("what the referee refuses", () => {
  const { season, known } = workedSeason("4-tested-only");
  const good = known.plan as SeasonPlan;
  const course = good.outcomes["likely"] as SeasonPlan["outcomes"][string];
  const changed = (change: Partial<typeof course>, planned = change.made ?? good.planned): SeasonPlan => ({ planned, outcomes: { likely: { ...course, ...change } } });
  const [first, ...rest] = good.planned;
  if (!first) throw new Error("the published plan makes nothing");

  test.each([
    ["an unknown method", changed({ made: [...good.planned, { method: "nothing", week: 0, batches: 1 }] }), "no such method"],
    ["a method without a tested process", changed({ made: [...good.planned, { method: "bean-bottled-water-bath", week: 1, batches: 1 }] }), "is refused"],
    ["a method that needs what is not there", changed({ made: [...good.planned, { method: "bean-bottled-pressure", week: 1, batches: 1 }] }), "is refused"],
    ["half a batch", changed({ made: [{ ...first, batches: 0.5 }, ...rest] }), "not a number of whole batches"],
    ["more than a session takes", changed({ made: [{ ...first, batches: 40 }, ...rest] }), "where a session takes"],
    ["a week that is not in the season", changed({ made: [...good.planned, { ...first, week: 9 }] }), "no such week"],
    ["a line twice", changed({ made: [...good.planned, first] }), "is there twice"],
    ["more than is on hand", changed({ made: [...good.planned.filter(({ week }) => week !== 0), { method: "bean-frozen", week: 0, batches: 4 }] }), "more is used than is on hand"],
    ["more than is eaten fresh", changed({ eat: [...course.eat, { crop: "onion", week: 0, grams: 2000 }] }), "eaten fresh"],
    ["more than others take", changed({ give: [...course.give, { crop: "french-bean", week: 2, grams: 2000 }] }), "given away"],
    ["a negative amount", changed({ eat: [...course.eat, { crop: "tomato", week: 0, grams: -5000 }] }), "negative amount"],
    ["a hob that is not free", changed({ made: [...good.planned.filter(({ week, method }) => week !== 3 || method !== "bean-dilly"), { method: "bean-dilly", week: 3, batches: 3 }] }), "hands-on"],
    ["more than the store holds eaten", changed({ draw: [...course.draw, { method: "bean-frozen", week: 0, portions: 900 }] }), "from the store"],
    ["made and not planned", changed({}, rest), "made in likely"],
  ])("%s", (_, plan, words) => {
    expect(checkSeasonPlan(season, plan).faults.join("\n")).toContain(words);
  });

  test("a claim that is not so", () => {
    expect(checkSeasonPlan(season, good, { wasteGrams: 1900 }).faults).toEqual([]);
    expect(checkSeasonPlan(season, good, { wasteGrams: 1800 }).faults.join()).toContain("claims wasteGrams 1800");
  });

  test("room, lids and frozen weeks that are not kept", () => {
    const small = { ...season, resources: season.resources.map((one) => (one.kind === "weekly" ? one : { ...one, amount: one.amount.map(() => 1) })) };
    const faults = checkSeasonPlan(small, good).faults.join("\n");
    for (const words of ["of freezer", "of jars", "of lids", "of vinegar"]) expect(faults).toContain(words);
    expect(checkSeasonPlan({ ...season, frozenWeeks: 5 }, good).faults.join()).toContain("is fixed");
  });

  test("portions past their keeping time", () => {
    const short = { ...season, methods: season.methods.map((method) => ({ ...method, keepWeeks: 1 })) };
    expect(checkSeasonPlan(short, good).faults.join()).toContain("past their keeping time");
  });
});
