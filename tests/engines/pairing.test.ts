/** Pairings of one week, on cases worked by hand. Recipes here are invented; the rule they are judged by is the engine's README. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { needsTestedProcess, pairWeek, type Candidate, type Pairing, type RipeCrop } from "#shared/engines/pairing/index.ts";
import type { RecipeUse } from "#shared/kernel/recipe.ts";
import { WAYS } from "#shared/kernel/way.ts";

const crop = (slug: string, name: string, surplusGrams: number, rest: Partial<RipeCrop> = {}): RipeCrop => ({
  crop: slug, name, surplusGrams, ripensGrams: surplusGrams + 1000, availableGrams: surplusGrams + 1000, keepWeeks: 1, waits: false, ...rest,
});

const recipe = (id: string, rest: Partial<RecipeUse> = {}): RecipeUse => ({
  id, title: id, way: "freeze", makes: { amount: 1, unit: "boxes" }, uses: [{ crop: "courgette", grams: 1000 }], handsOnMin: 10, keeps: [{ place: "freezer", days: 300 }], process: null, ...rest,
});

const may = (use: RecipeUse, rest: Partial<Candidate> = {}): Candidate => ({ recipe: use, tested: false, cautions: [], askedFor: false, ...rest });

/** USDA, Complete Guide to Home Canning (2015), Guide 1, p. 1-17: a canner usually holds 8 to 9 pint jars at once. */
const LOAD_JARS = 9;

const pair = (ripe: RipeCrop[], candidates: Candidate[]): Pairing[] =>
  pairWeek({ ripe, candidates, loadJars: LOAD_JARS, weekSurplusGrams: ripe.reduce((sum, c) => sum + c.surplusGrams, 0) });

const plain = (sentence: string): string => sentence.replaceAll("\u00a0", " ");

const courgette = (surplusGrams: number, rest: Partial<RipeCrop> = {}) => crop("courgette", "Courgette", surplusGrams, rest);
const tomato = (surplusGrams: number, rest: Partial<RipeCrop> = {}) => crop("tomato", "Tomato, large", surplusGrams, rest);

describe("whole batches", () => {
  it("are the floor of what is over, never a part of one", () => {
    // 3.9 kg over: ⌊3.9 ÷ 1.2⌋ = 3 batches, which take 3.6 kg, make 3 × 6 portions and 3 × 30 min
    const [soup] = pair([courgette(3900)], [may(recipe("soup", { uses: [{ crop: "courgette", grams: 1200 }], makes: { amount: 6, unit: "portions" }, handsOnMin: 30 }))]);
    expect(soup).toMatchObject({ batches: 3, uses: [{ crop: "courgette", grams: 3600 }], makes: { amount: 18, unit: "portions" }, handsOnMin: 90 });
  });

  it("take the pot out once: a further batch costs only what comes again", () => {
    // 30 min for the first, 12 for each of two more
    const soup = recipe("soup", { uses: [{ crop: "courgette", grams: 1200 }], handsOnMin: 30, handsOnNextMin: 12 });
    expect(pair([courgette(3900)], [may(soup)])[0]?.handsOnMin).toBe(54);
  });

  it("are those of the scarcest main crop", () => {
    // ⌊5 ÷ 1⌋ = 5 of courgettes, ⌊1.3 ÷ 0.6⌋ = 2 of tomatoes
    const [both] = pair([courgette(5000), tomato(1300)], [may(recipe("both", { uses: [{ crop: "courgette", grams: 1000 }, { crop: "tomato", grams: 600 }] }))]);
    expect(both?.batches).toBe(2);
  });

  it("do not wait for a pinch of something that is not ripe", () => {
    const withHerb = recipe("sauce", { uses: [{ crop: "courgette", grams: 1000 }, { crop: "basil", grams: 20 }] });
    expect(pair([courgette(2500)], [may(withHerb)])[0]).toMatchObject({ batches: 2, uses: [{ crop: "courgette", grams: 2000 }, { crop: "basil", grams: 40 }] });
    expect(pair([crop("basil", "Basil", 500)], [may(withHerb)])).toEqual([]);
  });

  it("come to one of what is eaten or cooked when nothing is over but enough is there", () => {
    const ripe = [courgette(0, { ripensGrams: 1500, availableGrams: 1500 })];
    const ways = pair(ripe, [may(recipe("fritters", { way: "eat" })), may(recipe("stew", { way: "cook" })), may(recipe("slices", { way: "freeze" })), may(recipe("gift", { way: "give" }))]);
    expect(ways.map((way) => [way.way, way.batches])).toEqual([["eat", 1], ["cook", 1]]);
    expect(pair([courgette(0, { availableGrams: 900 })], [may(recipe("stew", { way: "cook" }))])).toEqual([]);
  });

  it("of a tested process are one canner load at most, whatever is over", () => {
    // 20 kg over, 2 kg a batch: ten batches of 8 jars would be 80 jars; 9 jars of 2 a batch are four batches, and what does not count in jars is one
    const jars = (amount: number, unit = "jars") => recipe("jars", { way: "bottle", process: "tomato-crushed", uses: [{ crop: "tomato", grams: 2000 }], makes: { amount, unit }, keeps: [{ place: "shelf", days: 365 }] });
    const batches = (use: RecipeUse) => pair([tomato(20_000)], [may(use, { tested: true })])[0]?.batches;
    expect([batches(jars(8)), batches(jars(9)), batches(jars(2)), batches(jars(30)), batches(jars(4, "l"))]).toEqual([1, 1, 4, 1, 1]);
    expect(batches({ ...jars(8), process: null, keeps: [{ place: "freezer", days: 365 }] })).toBe(10);
  });

  it("say what is over when it is less than a batch", () => {
    const stew = recipe("stew", { way: "cook", makes: { amount: 4, unit: "portions" }, keeps: [{ place: "fridge", days: 3 }] });
    const why = (surplus: number) => plain(pair([courgette(surplus, { availableGrams: 1500 })], [may(stew)])[0]?.why ?? "");
    expect(why(0)).toBe("Nothing of the courgettes is over; 1.0 kg of what there is makes 4 portions, which keep 3 days in the fridge; 10 min of work.");
    expect(why(400)).toBe("400 g of courgettes over is less than a batch takes; 1.0 kg of what there is makes 4 portions, which keep 3 days in the fridge; 10 min of work.");
  });

  it("come twice to the table in a week at most", () => {
    expect(pair([courgette(9000)], [may(recipe("fritters", { way: "eat" }))])[0]?.batches).toBe(2);
  });

  it("store what is lifted this week, and put up one batch of what stands", () => {
    const onion = crop("onion", "Onion, sets", 0, { waits: true, ripensGrams: 13_500, availableGrams: 13_500, keepWeeks: 25 });
    const store = recipe("strings", { way: "store", uses: [{ crop: "onion", grams: 3000 }], keeps: [{ place: "cellar", days: 180 }] });
    const rings = recipe("rings", { way: "freeze", uses: [{ crop: "onion", grams: 500 }] });
    expect(pair([onion], [may(store), may(rings)]).map((way) => [way.recipeId, way.batches, plain(way.why)])).toEqual([
      ["strings", 4, "12.0 kg of the onions lifted this week, which keep 5 months in the cellar; 40 min of work."],
      ["rings", 1, "Onions wait for you: 500 g makes 1 box, which keeps 9 months in the freezer; 10 min of work."],
    ]);
    // from the store in December: nothing is lifted, nothing is put up, a dish can be cooked
    const stored = { ...onion, ripensGrams: 0, availableGrams: 5000 };
    const soup = recipe("soup", { way: "cook", uses: [{ crop: "onion", grams: 800 }] });
    expect(pair([stored], [may(store), may(rings), may(soup)]).map((way) => way.recipeId)).toEqual(["soup"]);
  });
});

describe("the order and its reason", () => {
  const deciding = (ripe: RipeCrop[], first: Candidate, second: Candidate): string => {
    const ways = pair(ripe, [second, first]);
    expect(ways.map((way) => way.recipeId)).toEqual([first.recipe.id, second.recipe.id]);
    return plain((ways[0] as Pairing).why);
  };

  it("puts what somebody asked for first", () => {
    const little = recipe("b", { uses: [{ crop: "courgette", grams: 3000 }] });
    expect(deciding([courgette(8000)], may(little, { askedFor: true }), may(recipe("a")))).toBe("Somebody asked for it. Takes 6.0 kg of the 8.0 kg of courgettes over this week and makes 2 boxes, which keep 9 months in the freezer; 20 min of work.");
  });

  it("puts what uses a surplus before a meal of what there is", () => {
    expect(deciding([courgette(1000), tomato(0)], may(recipe("b")), may(recipe("a", { way: "cook", uses: [{ crop: "tomato", grams: 500 }] })))).toBe("Takes all 1.0 kg of courgettes over this week and makes 1 box, which keeps 9 months in the freezer; 10 min of work.");
  });

  it("gives away last", () => {
    const ways = pair([courgette(4000)], [may(recipe("a", { way: "give", handsOnMin: 0 })), may(recipe("b"))]);
    expect(ways.map((way) => way.way)).toEqual(["freeze", "give"]);
    expect(plain(ways[1]?.why ?? "")).toBe("For what is left when the rest has its place: 4.0 kg of courgettes to give.");
  });

  it("prefers the way that takes more, by thirds of what is over", () => {
    // 3 of 4 kg (the last third) against 1 of 4 kg (the first)
    const small = recipe("a", { uses: [{ crop: "tomato", grams: 1000 }] });
    expect(deciding([courgette(3000), tomato(1000)], may(recipe("b")), may(small))).toMatch(/^Takes all 3\.0 kg of courgettes over this week and makes 3 boxes,/);
  });

  it("then what spoils sooner, then what keeps longer, then less work, then more crops together", () => {
    const ripe = [courgette(2000, { keepWeeks: 1 }), tomato(2000, { keepWeeks: 2 })];
    const uses = (slug: string) => [{ crop: slug, grams: 2000 }];
    expect(deciding(ripe, may(recipe("b", { uses: uses("courgette") })), may(recipe("a", { uses: uses("tomato") })))).toBe("Courgettes keep a week at most. Takes all 2.0 kg of courgettes over this week and makes 1 box, which keeps 9 months in the freezer; 10 min of work.");
    expect(deciding([courgette(2000)], may(recipe("b")), may(recipe("a", { keeps: [{ place: "freezer", days: 90 }] })))).toBe("Takes all 2.0 kg of courgettes over this week and makes 2 boxes, which keep 9 months in the freezer, longer than the next way; 20 min of work.");
    expect(deciding([courgette(2000)], may(recipe("b", { handsOnMin: 5 })), may(recipe("a", { handsOnMin: 25 })))).toMatch(/which keep 9 months in the freezer; 10 min of work, less for each kilo than the next way\.$/);
    const mixed = recipe("b", { uses: [{ crop: "courgette", grams: 900 }, { crop: "thyme-sage", grams: 100 }] });
    expect(deciding([courgette(1800), crop("thyme-sage", "Thyme, sage, oregano", 0)], may(mixed), may(recipe("a", { uses: [{ crop: "courgette", grams: 900 }], handsOnMin: 9 })))).toMatch(/; 20 min of work, and brings courgettes and thyme together\.$/);
  });

  it("stands by title where nothing else parts two ways", () => {
    expect(pair([courgette(2000)], [may(recipe("x", { title: "Slices" })), may(recipe("y", { title: "Cubes" }))]).map((way) => way.title)).toEqual(["Cubes", "Slices"]);
  });
});

describe("the shelf", () => {
  // USDA, Complete Guide to Home Canning (2015), Guide 4: courgettes have no tested process; Guide 1, p. 1-31: none for one's own recipe.
  const jar = (way: RecipeUse["way"], keeps: RecipeUse["keeps"]) => recipe("jar", { way, keeps });

  it("is offered only with a tested process, whatever else speaks for the recipe", () => {
    const onShelf = jar("bottle", [{ place: "fridge", days: 14 }, { place: "shelf", days: 365 }]);
    expect(pair([courgette(9000)], [may(onShelf, { askedFor: true })])).toEqual([]);
    expect(pair([courgette(9000)], [may(onShelf, { tested: true, cautions: ["Set your altitude first."] })])).toMatchObject([{ way: "bottle", cautions: ["Set your altitude first."] }]);
  });

  it.each([
    ["pickles for the fridge", "pickle", [{ place: "fridge", days: 60 }], false],
    ["pickles for the cellar", "pickle", [{ place: "cellar", days: 60 }], true],
    ["a sauce said to stand a month", "cook", [{ place: "shelf", days: 30 }], true],
    ["a cake for three days", "cook", [{ place: "shelf", days: 3 }], false],
    ["dried slices", "dry", [{ place: "shelf", days: 365 }], false],
    ["roots in a clamp", "store", [{ place: "clamp", days: 120 }], false],
  ] as const)("%s", (_, way, keeps, needed) => {
    expect(needsTestedProcess(jar(way, [...keeps]))).toBe(needed);
  });

  const recipes = fc.array(
    fc.record({
      way: fc.constantFrom(...WAYS),
      grams: fc.integer({ min: 100, max: 3000 }),
      place: fc.constantFrom("fridge", "freezer", "shelf", "cellar", "clamp" as const),
      days: fc.integer({ min: 1, max: 400 }),
      tested: fc.boolean(),
      handsOnMin: fc.integer({ min: 0, max: 60 }),
    }),
    { minLength: 1, maxLength: 8 },
  );

  it("never holds a jar without one, and the order of the lists changes nothing", () => {
    let offered = 0;
    let heldBack = 0;
    fc.assert(
      fc.property(recipes, fc.integer({ min: 0, max: 9000 }), (list, surplus) => {
        const candidates = list.map(({ grams, place, days, tested, ...rest }, i) => may(recipe(`r${i}`, { ...rest, uses: [{ crop: "courgette", grams }], keeps: [{ place, days }] }), { tested }));
        const ways = pair([courgette(surplus)], candidates);
        expect(pair([courgette(surplus)], [...candidates].reverse())).toEqual(ways);
        for (const way of ways) {
          const from = candidates.find((c) => c.recipe.id === way.recipeId) as Candidate;
          const unchilled = from.recipe.keeps.some((keep) => keep.place !== "fridge" && keep.place !== "freezer");
          if (way.way === "bottle" || way.way === "pickle") expect(unchilled && !from.tested).toBe(false);
          const takes = (way.uses[0] as { grams: number }).grams;
          if (way.batches > 1) expect(takes).toBeLessThanOrEqual(surplus);
          expect(takes).toBeLessThanOrEqual(surplus + 1000);
          offered++;
        }
        heldBack += candidates.length - ways.length;
      }),
      { numRuns: 200, seed: 11 },
    );
    expect(offered).toBeGreaterThan(200);
    expect(heldBack).toBeGreaterThan(100);
  });
});
