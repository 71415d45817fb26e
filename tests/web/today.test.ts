/** The picks of the day: their words, their scale, and the weight that is asked about. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Today } from "#shared/contracts/today.ts";
import { choiceName, isOdd, niceMax, since, slipOfDigit } from "#web/pages/today/pick-words.ts";

type Pick = Today["pick"][number];
const pick = (change: Partial<Pick>): Pick => ({ sowingId: "a", crop: "lettuce", name: "Lettuce, leaf", bedName: "Shady bed", grams: { low: 100, likely: 200, high: 300 }, daysSince: 4, gramsPerPiece: null, ...change });

describe("the end of the scale", () => {
  it.each([
    [1, 400],
    [400, 400],
    [401, 600],
    [965, 1000],
    [1001, 1200],
    [2400, 2400],
    [4168, 6000],
    [9999, 10_000],
    [32_000, 32_000],
    [33_000, 40_000],
  ])("for %d g is %d g", (grams, end) => {
    expect(niceMax(grams)).toBe(end);
  });

  it("holds the longest line in more than half of its length, and its quarters are whole 50 g", () => {
    let reached = 0;
    fc.assert(
      fc.property(fc.integer({ min: 300, max: 200_000 }), (grams) => {
        const end = niceMax(grams);
        expect(end).toBeGreaterThanOrEqual(grams);
        expect(grams / end).toBeGreaterThan(0.5);
        expect((end / 4) % 50).toBe(0);
        reached++;
      }),
      { numRuns: 500 },
    );
    expect(reached).toBe(500);
  });

  it("never falls when there is more to pick", () => {
    const ends = Array.from({ length: 500 }, (_, i) => niceMax(100 * (i + 1)));
    expect(ends).toEqual([...ends].sort((a, b) => a - b));
  });
});

describe("a pick", () => {
  it("says when it was picked last, as a gardener does", () => {
    expect([null, 0, 1, 2, 16].map(since)).toEqual([", not picked yet", ", picked today", ", picked yesterday", ", 2 days since", ", 16 days since"]);
  });

  it("is told apart from its namesakes by the bed, and in one bed by its last pick", () => {
    const alone = pick({ sowingId: "b", name: "Dill" });
    const [early, late, elsewhere] = [pick({}), pick({ sowingId: "c", daysSince: 3 }), pick({ sowingId: "d", bedName: "Cold frame" })];
    const picks = [alone, early, late, elsewhere];
    expect(picks.map((one) => choiceName(one, picks))).toEqual(["Dill", "Lettuce, leaf, Shady bed, 4 days since", "Lettuce, leaf, Shady bed, 3 days since", "Lettuce, leaf, Cold frame"]);
  });

  it("is odd above three times the high amount: a slipped digit is ten times", () => {
    const one = pick({ grams: { low: 100, likely: 200, high: 300 } });
    expect(isOdd(900, one)).toBe(false);
    expect(isOdd(901, one)).toBe(true);
    expect(slipOfDigit(4500, one)).toBe(450);
    expect(slipOfDigit(45_000, one)).toBeNull();
    // a handful of herbs is never odd by a few grams
    expect(isOdd(250, pick({ grams: { low: 10, likely: 20, high: 30 } }))).toBe(false);
  });
});
