/** The thread that timetables are worked out in: a short queue (OWASP ASVS 5.0.0, 2.4.1 and 15.2.2: heavy work is bounded), and nothing lost by a fault. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { PROBLEMS, Refusal } from "#server/problems.ts";
import { timetables } from "#server/timetables.ts";
import { preservationTables } from "#shared/engines/preservation/index.ts";
import { seedRows, seedSources } from "#tests/support/reference-rows.ts";
import type { CookDayFacts } from "#shared/planning/facts.ts";

let desk: ReturnType<typeof timetables>;
beforeAll(() => {
  desk = timetables(() => Promise.resolve(preservationTables(seedRows("preservation"), seedSources("preservation"))));
});
afterAll(() => desk.close());

const day = (handsOnMin: number): CookDayFacts => ({
  startsAt: "10:00",
  endsBy: null,
  cooks: 1,
  kitchen: { ovens: [], burners: 2 },
  unavailable: [],
  dishes: [
    {
      batches: 1,
      recipe: {
        id: "soup", title: "Soup", way: "cook", makes: { amount: 4, unit: "portions" }, uses: [], handsOnMin, keeps: [], process: null, holds: [], limits: [], ingredientTexts: [],
        steps: [{ id: "cut", text: "Cut", handsOnMin, handsOffMin: 0, needs: {}, after: [] }],
      },
    },
  ],
});
const codeOf = (outcome: PromiseSettledResult<unknown>): string => (outcome.status === "rejected" && outcome.reason instanceof Refusal ? outcome.reason.problem.code : outcome.status);

describe("timetables", () => {
  it("are worked out one after another, four at most in the queue, each with its own answer", async () => {
    const outcomes = await Promise.allSettled([10, 20, 30, 40, 50, 60].map((minutes) => desk.propose(day(minutes))));
    expect(outcomes.map(codeOf)).toEqual(["fulfilled", "fulfilled", "fulfilled", "fulfilled", "unavailable", "unavailable"]);
    expect(PROBLEMS.unavailable.status).toBe(503);
    expect(outcomes.flatMap((outcome) => (outcome.status === "fulfilled" ? [outcome.value.endMin] : []))).toEqual([10, 20, 30, 40]);
    // and the queue is empty again
    expect((await desk.propose(day(15))).endMin).toBe(15);
  });

  it("go on after a day that cannot be read", async () => {
    const broken = { ...day(5), dishes: null } as unknown as CookDayFacts;
    const outcomes = await Promise.allSettled([desk.propose(broken), desk.propose(day(25))]);
    expect(outcomes.map((outcome) => outcome.status)).toEqual(["rejected", "fulfilled"]);
  });

  it("are given up when the service stops, and whoever waits is told so", async () => {
    const other = timetables(() => Promise.resolve(preservationTables(seedRows("preservation"), seedSources("preservation"))));
    await other.propose(day(5));
    const waits = other.propose(day(10)).then(() => "fulfilled", (error: unknown) => (error instanceof Refusal ? error.problem.code : String(error)));
    await Promise.resolve();
    await other.close();
    expect(["unavailable", "fulfilled"]).toContain(await waits);
  });
});
