/** From facts to a season for the planner and back to words: what is never planned, what is agreed, who is away, what is wanted. Gardens are invented. */
import { describe, expect, it } from "vitest";
import { checkSeasonPlan, planByRule } from "#shared/engines/season-plan/index.ts";
import type { LotFacts } from "#shared/planning/larder-facts.ts";
import { calendarWays } from "#shared/planning/season-calendar.ts";
import { lossWords } from "#shared/planning/season-answer-words.ts";
import { seasonAnswer } from "#shared/planning/season-answer.ts";
import type { SeasonAnswerWords } from "#shared/planning/season-answer-types.ts";
import type { SeasonFacts, SeasonRecipe } from "#shared/planning/season-facts.ts";
import { seasonInstance } from "#shared/planning/season-instance.ts";
import { leftOf, leftOfCrop, refereeOf, shortagesOf, thereToReserve } from "#shared/planning/season-reserve.ts";
import { garden, kitchen, recipe, TABLES } from "#tests/support/make-garden.ts";

const made = (id: string, uses: Record<string, number>, more: Partial<SeasonRecipe> = {}): SeasonRecipe => ({ ...recipe(id, uses, { handsOnNextMin: 15 }), ovenMin: 0, allergens: [], supplies: {}, ...more });
const beans = made("beans", { "french-bean": 1000 });
const tart = made("tart", { "french-bean": 500 }, { way: "cook", makes: { amount: 4, unit: "portions" }, allergens: ["Nuts"] });
const jars = made("jars", { "french-bean": 800 }, { way: "bottle", makes: { amount: 4, unit: "jars" }, keeps: [{ place: "shelf", days: 365 }] });
const lot = (grams: number, madeOn: string): LotFacts => ({
  id: `lot ${madeOn}`, title: "Beans", crop: "french-bean", recipe: null, homePlaceId: "fridge", madeOn, portionGrams: null, portionMl: null, bestUntil: null, countedIn: "grams",
  entries: [{ id: "put", kind: "put", on: madeOn, writtenAt: 1, arrivedAt: 1, amount: grams, whole: null, takenFor: null, placeId: null, toPlaceId: null }],
});

function facts(more: Partial<SeasonFacts> = {}, planLines: SeasonFacts["kitchen"]["planLines"] = []): SeasonFacts {
  const recipes = more.recipes ?? [beans, tart, jars];
  return {
    garden: garden([{ id: "row", crop: "french-bean", sownOn: "2027-05-10", rowM: 8 }]),
    kitchen: kitchen({ "french-bean": 500 }, { recipes, planLines }),
    larder: { today: "2027-07-05", places: [{ id: "chest", name: "Chest", kind: "freezer", litres: 60 }, { id: "fridge", name: "Fridge", kind: "fridge", litres: null }], lots: [], preservation: TABLES },
    supplies: [{ kind: "bag", amount: 100, bestUntil: null }],
    recipes,
    targets: [],
    wishes: [],
    tastes: new Map(),
    settings: { kitchenMinPerWeek: 120, ovens: 1, away: [], avoids: { crops: [], allergens: [] } },
    ...more,
  };
}
const ask = { from: "2027-W27", weeks: 10, allowance: 0.02 };
const line = (week: string, batches: number, id = "line") => ({ id, week, recipeId: "beans", batches });

function planned(some: SeasonFacts): SeasonAnswerWords {
  const instance = seasonInstance(some, ask);
  const season = instance.toPlan[0];
  if (!season) throw new Error("there is nothing to plan");
  const plan = planByRule(season);
  const verdict = checkSeasonPlan(season, plan);
  expect(verdict.faults).toEqual([]);
  return seasonAnswer(some, instance, { status: "rule", plan, verdict, byRule: verdict, gapPct: null, instead: [], helps: [] });
}
const recipesIn = (answer: SeasonAnswerWords): string[] => [...new Set(answer.weeks.flatMap(({ lines }) => lines.map(({ recipeId }) => recipeId)))].sort();

describe("what is planned", () => {
  it("leaves out what nobody eats, what states an allergen, what somebody never wants and what may not stand on a shelf, and says why", () => {
    expect(planned(facts()).refused.map(({ recipeId }) => recipeId)).toEqual(["jars"]);
    const never = planned(facts({ tastes: new Map([["beans", "never" as const]]), settings: { ...facts().settings, avoids: { crops: [], allergens: ["nuts"] } } }));
    expect(recipesIn(never)).toEqual([]);
    expect(never.refused.map(({ recipeId, why }) => [recipeId, why])).toEqual([["beans", "Somebody has said: never."], ["tart", "It states Nuts, which is never eaten here."], ["jars", expect.stringMatching(/fridge or freezer/)]]);
    const shunned = planned(facts({ settings: { ...facts().settings, avoids: { crops: ["french-bean"], allergens: [] } } }));
    expect(shunned.refused.map(({ why }) => why)).toEqual(Array<string>(3).fill("Nobody here eats French beans."));
  });

  it("has no hands while everybody is away, and no recipe is an answer too", () => {
    const away = planned(facts({ settings: { ...facts().settings, away: [{ firstDay: "2027-07-12", lastDay: "2027-08-08" }] } }));
    const gone = away.weeks.filter((week) => week.away);
    expect(gone.map(({ week }) => week)).toEqual(["2027-W28", "2027-W29", "2027-W30", "2027-W31"]);
    expect(gone.flatMap(({ lines }) => lines)).toEqual([]);
    expect(gone.every(({ handsOnMostMin, freshGrams }) => handsOnMostMin === 0 && freshGrams === 0)).toBe(true);
    const none = planned(facts({ recipes: [] }));
    expect(none.headline).toMatch(/^There is no recipe to plan with/);
    expect(none.withoutAnswer.every(({ text }) => text.includes("no recipe takes it"))).toBe(true);
  });

  it("keeps what is agreed to the batch, takes its produce off, and says what clashes", () => {
    const free = planned(facts());
    const kept = planned(facts({}, [line("2027-W29", 2)]));
    expect(kept.weeks[2]?.lines.find(({ agreedIds }) => agreedIds.includes("line"))?.batches).toBeGreaterThanOrEqual(2);
    expect(kept.pickedGrams).toBe(free.pickedGrams);
    expect(kept.clashes).toEqual([]);
    const much = planned(facts({}, [line("2027-W29", 60)]));
    expect(much.status).toBe("infeasible");
    expect(much.clashes.join(" ")).toMatch(/hours in the kitchen.*week 29/);
    expect(much.clashes.join(" ")).toMatch(/room in the freezer/);
  });

  it("counts a target down by what is in store and agreed, and says of one that lies behind that it is not planned for", () => {
    const targets = [{ id: "t", recipeId: "beans", portions: 8, by: "2027-08-20" }, { id: "late", recipeId: "beans", portions: 8, by: "2027-06-01" }];
    const answer = planned(facts({ targets }));
    expect(answer.asked).toMatchObject([{ id: "t", portions: 8, missingPortions: 0 }]);
    expect(answer.asked[0]?.byWeek).toHaveLength(10);
    expect(answer.asked[0]?.text).toBe("beans: 8 wanted in store by 20\u00a0August, all there.");
    expect(answer.notes.join(" ")).toContain("beans by 1\u00a0June lies before these weeks");
  });

  it("goes off with its age: beans of last week are lost at the end of this one unless something is made of them", () => {
    const old = facts({ recipes: [], larder: { ...facts().larder, lots: [lot(5000, "2027-07-02")] } });
    const instance = seasonInstance(old, ask);
    const crop = instance.whole.crops.find(({ crop: slug }) => slug === "french-bean");
    expect(crop?.harvestGrams[0]?.reduce((sum, grams, t) => sum + (t <= instance.weeks.running ? grams : 0), 0)).toBeGreaterThanOrEqual(5000);
    expect(planned(old).weeks[0]?.lostGrams).toBeGreaterThan(4000);
  });
});

describe("sentences of the plan", () => {
  it("name what is in the way as a plain list, and agree in number", () => {
    const lost = (limits: string[]) => lossWords({ lostGrams: 6600, crops: ["beans"], limits, noRecipe: false }, "week 31").split(". ")[1];
    expect(lost(["lid", "bag", "vinegar"])).toBe("The lids, bags and vinegar are in the way.");
    expect(lost(["hands-on"])).toBe("The hours in the kitchen are in the way.");
    expect(lost(["freezer"])).toBe("The room in the freezer is in the way.");
    expect(planned(facts()).headline).toMatch(/^Of [\d.]+\skg in weeks 27–36, /);
  });
});

describe("what may be agreed", () => {
  it("is what is there less what is agreed, crop by crop, litre by litre, and the referee says the same", () => {
    const there = thereToReserve(facts({ larder: { ...facts().larder, lots: [lot(3000, "2027-07-05")] } }));
    const week = "2027-W27";
    const one = { recipe: beans, week, batches: 1 };
    const all = leftOfCrop(there, [], "french-bean", week) ?? 0;
    expect(all).toBeGreaterThanOrEqual(3000);
    const agreed: (typeof one)[] = [];
    while (shortagesOf(there, agreed, one).length === 0) agreed.push({ ...one });
    expect(agreed).toHaveLength(Math.min(Math.floor(all / 1000), Math.floor(60 / 1.2)));
    expect(leftOfCrop(there, agreed, "french-bean", week)).toBe(all - 1000 * agreed.length);
    expect(leftOf(there, agreed, "freezer").left).toBeCloseTo(60 - 1.2 * agreed.length, 5);
    expect(leftOf(there, agreed, "bag").left).toBe(100 - 2 * agreed.length);
    expect(refereeOf(there, agreed, { kitchen: facts().kitchen })).toEqual([]);
    expect(refereeOf(there, [...agreed, one], { kitchen: facts().kitchen }).join(" ")).toMatch(/more is used than is on hand|ties up/);
    // a crop that neither grows nor lies here is bought, and nobody can take it twice
    expect(leftOfCrop(there, [], "leek", week)).toBeNull();
    expect(refereeOf(there, [{ ...one, recipe: jars }], { kitchen: facts().kitchen }).join(" ")).toMatch(/is refused/);
  });
});

describe("the calendar's ways", () => {
  it("are first what the plan has beyond what is chosen, then the others in their order", () => {
    const plan = planned(facts());
    const week = plan.weeks.find(({ lines }) => lines.some(({ recipeId, batches }) => recipeId === "beans" && batches >= 2));
    const first = week?.lines.find(({ recipeId }) => recipeId === "beans");
    if (!week || !first) throw new Error("the plan has no week with two batches");
    const other = { recipeId: "soup", title: "Soup", way: "cook" as const, batches: 1, uses: [], makes: { amount: 4, unit: "portions" }, handsOnMin: 10, why: "", cautions: [] };
    const outlook = { week: week.week, planned: [], pairings: [other, { ...other, recipeId: "beans" }] } as unknown as Parameters<typeof calendarWays>[0]["week"];
    const ways = calendarWays({ week: outlook, plan, cautions: new Map([["beans", ["Blanch first."]]]), parts: new Map([["soup", [{ id: "stock", title: "Stock" }]]]) });
    expect(ways.pairings.map(({ recipeId, planned: stands }) => [recipeId, stands])).toEqual([...week.lines.map(({ recipeId }) => [recipeId, true]), ["soup", false]]);
    expect(ways.pairings.find(({ recipeId }) => recipeId === "beans")?.cautions).toEqual(["Blanch first."]);
    expect(ways.pairings.at(-1)?.parts).toEqual([{ id: "stock", title: "Stock" }]);
    const chosen = [{ id: "l", week: week.week, recipeId: "beans", title: "beans", way: "freeze" as const, batches: 1, uses: [] }];
    const after = calendarWays({ week: { ...outlook, planned: chosen }, plan, cautions: new Map(), parts: new Map() });
    expect(after.pairings.find(({ recipeId }) => recipeId === "beans")?.batches).toBe(first.batches - 1);
    expect(after.cookDay).toEqual([{ recipeId: "beans", batches: 1 }]);
    expect(calendarWays({ week: outlook, plan: null, cautions: new Map(), parts: new Map() }).cookDay).toEqual([]);
  });
});
