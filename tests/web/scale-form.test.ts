/** For how much a recipe is shown: what is typed becomes one question, and what cannot be read names its control. */
import { describe, expect, it } from "vitest";
import type { Scaled } from "#shared/contracts/scaling.ts";
import { askedOf, kitchenNumber, NOT_SCALED, readyAmounts, scaleFault, scaleFields, type ScaleFields } from "#web/pages/recipes/scale-form.ts";
import { dishWords, scaledSentence } from "#web/pages/recipes/scaled-words.ts";
import { readDish } from "#web/parts/typed-dish.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";

const typed = (change: Partial<ScaleFields>): ScaleFields => ({ ...NOT_SCALED, ...change });
const read = (text: string): unknown => {
  const dish = readDish(text);
  return dish.ok ? dish.value : dish.wrong;
};

describe("a dish", () => {
  it("is read as people say it", () => {
    expect(read("24 cm round")).toEqual({ shape: "round", acrossCm: 24 });
    expect(read("20 × 34 cm")).toEqual({ shape: "rectangle", longCm: 34, wideCm: 20 });
    expect(read("34 x 20 x 5")).toEqual({ shape: "rectangle", longCm: 34, wideCm: 20, deepCm: 5 });
    expect(read("20 cm square")).toEqual({ shape: "square", sideCm: 20 });
    expect(read("two 20 cm round tins")).toEqual({ shape: "round", acrossCm: 20, tins: 2 });
    // 2.54 cm to the inch, exact since 1959: 9 in is 22.86 cm, 13 in is 33.02 cm
    expect(read("9 x 13 in")).toEqual({ shape: "rectangle", longCm: 33, wideCm: 22.9 });
  });

  it("that says too little, or is none, is answered in words", () => {
    expect(read("24 cm")).toBe("Round or square?");
    expect(read("the blue one")).toBe("That is not a dish we can read.");
    expect(read("900 cm round")).toBe("No tin has that size.");
    expect(read("")).toBe("No dish is written yet.");
  });

  it("is said back shortly", () => {
    expect(dishWords({ shape: "rectangle", longCm: 34, wideCm: 20 })).toBe("20 × 34\u00a0cm");
    expect(dishWords({ shape: "round", acrossCm: 20, tins: 2 })).toBe("2 of 20\u00a0cm round");
  });
});

describe("the question", () => {
  it("is none for one batch as written", () => {
    expect(askedOf(NOT_SCALED).kind).toBe("as written");
    expect(askedOf(typed({ batches: "1" })).kind).toBe("as written");
    expect(askedOf(scaleFields(new URLSearchParams("crop=courgette"))).kind).toBe("as written");
  });

  it("is exactly one of batches, yield, dish and what is at hand", () => {
    const bodies = [typed({ batches: "1.5" }), typed({ yield: "12", batches: "2" }), typed({ hand: "3.4 kg", crop: "courgette" }), typed({ from: "24 round", to: "20 × 30" }), typed({ pot: "5" })].map(askedOf);
    expect(bodies.map((one) => (one.kind === "ask" ? one.body : one))).toEqual([
      { batches: 1.5 },
      { yield: 12 },
      { atHand: { crop: "courgette", grams: 3400 } },
      { dish: { from: { shape: "round", acrossCm: 24 }, to: { shape: "rectangle", longCm: 30, wideCm: 20 } } },
      { batches: 1, potLitres: 5 },
    ]);
  });

  it("names each control that cannot be read", () => {
    const faults = (change: Partial<ScaleFields>): string[] => {
      const asked = askedOf(typed(change));
      return asked.kind === "wrong" ? asked.faults.map(({ field }) => field) : [];
    };
    expect(faults({ batches: "none" })).toEqual(["batches"]);
    expect(faults({ yield: "0" })).toEqual(["yield"]);
    expect(faults({ hand: "a few", crop: "courgette" })).toEqual(["hand"]);
    expect(faults({ hand: "2 kg" })).toEqual(["crop"]);
    expect(faults({ from: "24", pot: "-1" })).toEqual(["pot", "from", "to"]);
    expect(faults({ batches: "5000" })).toEqual(["batches"]);
  });

  it("refused by the service stands at its own control", () => {
    expect(scaleFault(["atHand", "grams"], "less than a batch")).toEqual({ field: "hand", text: "less than a batch" });
    expect(scaleFault(["dish", "to", "longCm"], "no").field).toBe("to");
    expect(scaleFault([], "no").field).toBe("batches");
  });
});

describe("amounts to press", () => {
  it("halves and thirds as a kitchen writes them", () => {
    expect([0.5, 1, 1.5, 2 / 3, 2.25, 1.7].map(kitchenNumber)).toEqual(["½", "1", "1½", "⅔", "2¼", "1.7"]);
  });

  // no tested process may be halved or stretched (USDA Complete Guide to Home Canning, guide 1)
  it("are whole batches for a tested preserving recipe", () => {
    const makes = { amount: 4, unit: "jars" };
    expect(readyAmounts({ makes }).map(({ words }) => words)).toEqual(["½: 2\u00a0jars", "1: 4\u00a0jars", "1½: 6\u00a0jars", "2: 8\u00a0jars", "3: 12\u00a0jars"]);
    expect(readyAmounts({ makes, process: "tomatoes-crushed" }).map(({ value }) => value)).toEqual(["1", "2", "3"]);
  });
});

describe("the sentence", () => {
  const recipe = { title: "Courgette gratin" } as Recipe;
  const scaled = (change: Partial<Scaled>): Scaled => ({ batches: 1.5, apart: false, makes: { amount: 12, unit: "portions", text: "" }, uses: [{ crop: "courgette", grams: 3200 }], leftGrams: null, ...change }) as Scaled;
  const names = new Map([["courgette", "Courgette"]]);

  it("says how many times the amounts, one batch after the other, or what is left over", () => {
    expect(scaledSentence(recipe, scaled({}), NOT_SCALED, names)).toBe("Courgette gratin for 12\u00a0portions takes 1½ times the amounts.");
    expect(scaledSentence(recipe, scaled({ makes: { amount: 12.03, unit: "portions", text: "" } }), NOT_SCALED, names)).toContain("for 12\u00a0portions");
    expect(scaledSentence(recipe, scaled({ batches: 2 }), NOT_SCALED, names)).toContain("takes twice the amounts");
    expect(scaledSentence(recipe, scaled({ batches: 2, apart: true }), NOT_SCALED, names)).toBe("Courgette gratin: 2\u00a0batches, one after the other, make 12\u00a0portions.");
    expect(scaledSentence(recipe, scaled({ leftGrams: 200 }), typed({ hand: "3.4 kg", crop: "courgette" }), names)).toBe("3,200\u00a0g of courgettes make 12\u00a0portions; 200\u00a0g are left.");
  });
});
