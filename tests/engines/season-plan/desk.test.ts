/** The desks where seasons are planned: a queue for each household, better plans told on the way, cancelling, closing. */
import { afterAll, expect, test, vi } from "vitest";
import { seasonDesks } from "#server/season-desks.ts";
import { checkSeasonPlan, LEVELS } from "#shared/engines/season-plan/index.ts";
import { seededRandom } from "#shared/kernel/seeded-random.ts";
import { smallSeason, tryEverything } from "#tests/support/every-season.ts";
import { read, workedSeason } from "#tests/support/seasons.ts";

/** Proofs take as long as the machine is busy; the answers are what is tested. */
vi.setConfig({ testTimeout: 300_000, hookTimeout: 60_000 });

const desks = seasonDesks();
afterAll(() => desks.close());
/** Two crops in two weeks: over at once, so that only the waiting is looked at. */
const season = read(smallSeason(seededRandom(3)));
/** Four courses: minutes to its proof, so that it is still running when it is cancelled. */
const long = workedSeason("6-scenarios").season;
const request = { allowance: 0, secondsPerLevel: 60 };

test("the rule's plan is there at once, better ones and the level in hand are told, and the last is the proved one", async () => {
  const told: number[] = [];
  const levels = new Set<string>();
  const work = desks.plan("a", season, { ...request, onBetter: (_, lost) => told.push(lost), onProgress: ({ level }) => levels.add(level) });
  expect(checkSeasonPlan(season, work.first).faults).toEqual([]);
  const answer = await work.answer;
  expect([answer.status, answer.stoppedEarly, Math.round(answer.verdict.score.wasteGrams)]).toEqual(["optimal", false, Math.round(tryEverything(season).lost)]);
  expect(told.length).toBeGreaterThan(0);
  expect(Math.min(...told)).toBeCloseTo(answer.verdict.score.wasteGrams, 0);
  expect([...levels]).toEqual([...LEVELS]);
});

test("a second request of one household comes after its first, another household does not wait; a cancel ends a run of the solver", async () => {
  const order: string[] = [];
  const first = desks.plan("b", long, request);
  const second = desks.plan("b", season, request);
  expect(desks.waiting("b")).toBe(2);
  const noted = [first.answer.then(() => order.push("b first")), second.answer.then(() => order.push("b second"))];
  await desks.plan("c", season, request).answer.then(() => order.push("c"));
  expect(order).toEqual(["c"]);
  first.cancel();
  await Promise.all(noted);
  expect(order).toEqual(["c", "b first", "b second"]);
  const ended = await first.answer;
  expect([ended.status, ended.stoppedEarly, ended.verdict.faults]).toEqual(["feasible", true, []]);
});

test("what is cancelled while it waits is not begun, and too many of one household are refused", async () => {
  let begun = (): void => undefined;
  const running = new Promise<void>((resolve) => (begun = resolve));
  const first = desks.plan("d", long, { ...request, onProgress: () => begun() });
  const waiting = [desks.plan("d", season, request), desks.plan("d", season, request)];
  expect(() => desks.plan("d", season, request)).toThrow("worked out already");
  await running;
  for (const one of [...waiting, first]) one.cancel();
  const ended = await Promise.allSettled([first.answer, ...waiting.map(({ answer }) => answer)]);
  expect(ended.map(({ status }) => status)).toEqual(["fulfilled", "rejected", "rejected"]);
  expect(desks.waiting("d")).toBe(0);
});

test("a run that does not end by itself is ended with its thread: the best so far stands, and the next is planned", async () => {
  const impatient = seasonDesks({ graceMs: 0 });
  let begun = (): void => undefined;
  const running = new Promise<void>((resolve) => (begun = resolve));
  const first = impatient.plan("e", long, { ...request, onProgress: () => begun() });
  const second = impatient.plan("e", season, request);
  await running;
  first.cancel();
  const ended = await first.answer;
  expect([ended.status, ended.stoppedEarly, ended.verdict.faults]).toEqual(["feasible", true, []]);
  expect((await second.answer).status).toBe("optimal");
  await impatient.close();
});
