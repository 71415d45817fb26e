/** Minutes at the counter come from instants alone, over reloads, sleep, and the nights when the clock is put forward or back. */
import { describe, expect, it } from "vitest";
import type { Counter, CounterStep } from "#shared/contracts/counter.ts";
import type { Timer } from "#shared/contracts/timers.ts";
import { clockIn } from "#web/parts/instants.ts";
import { partsIn } from "#web/parts/live-changes.ts";
import { changed, leftFigure, overWords, potsOf, rings, timerFor } from "#web/pages/counter/pots.ts";
import { byWords, deviceWords } from "#web/pages/counter/words.ts";

const at = (time: string): number => Date.parse(`2027-08-01T${time}Z`);
const timer = (change: Partial<Timer> = {}): Timer => ({ id: "t1", label: "Blanch the beans", pot: "Bean water", minutes: 15, endsAt: "2027-08-01T13:45:00.000Z", endsAtClock: "15:45", state: "running", etag: '"1"', ...change });
const step = (key: string, change: Partial<CounterStep> = {}): CounterStep => ({ key, dish: "stew", step: key, text: `${key} it; well`, startMin: 0, handsOnMin: 2, handsOffMin: 15, burner: 1, state: "minding itself", startsAt: "2027-08-01T13:30:00.000Z", handsUntil: "2027-08-01T13:32:00.000Z", endsAt: "2027-08-01T13:47:00.000Z", waitsFor: [], ...change });
const counter = (change: Partial<Counter>): Counter => ({ zone: "Europe/Amsterdam", steps: [], minding: [], timers: [], dishes: [{ dish: "stew", title: "Stew" }], ...change }) as unknown as Counter;

describe("what is left", () => {
  it("is rounded up to the minute, and counted in seconds in the last one", () => {
    const end = "2027-08-01T13:45:00.000Z";
    expect(["13:34:59", "13:35:00", "13:44:00", "13:44:01", "13:44:59.200", "13:45:00", "13:50:00"].map((time) => Object.values(leftFigure(end, at(time))).join(" "))).toEqual(["11 min", "10 min", "60 s", "59 s", "1 s", "0 min", "0 min"]);
    expect(leftFigure(end, at("12:25:00")).figure).toBe("1\u00a0h\u00a020");
    expect(["13:44:59", "13:45:30", "13:52:10"].map((time) => overWords(end, at(time)))).toEqual(["", "over just now", "over for 7\u00a0min"]);
  });

  it("is the same on a phone whose clock is wrong: the service's time decides", () => {
    const pot = { timer: timer() };
    expect(rings(pot, at("13:44:59"))).toBe(false);
    expect(rings(pot, at("13:45:00"))).toBe(true);
    expect(rings({ timer: timer({ state: "heard" }) }, at("13:50:00"))).toBe(false);
  });

  it("is right over the nights on which the clock changes (Europe: last Sunday of March and of October, at 01:00 UTC)", () => {
    const night = (end: string, now: string): string => leftFigure(end, Date.parse(now)).figure;
    expect(night("2027-03-28T01:30:00Z", "2027-03-28T00:30:00Z")).toBe("1\u00a0h");
    expect([clockIn("Europe/Amsterdam", "2027-03-28T00:30:00Z"), clockIn("Europe/Amsterdam", "2027-03-28T01:30:00Z")]).toEqual(["01:30", "03:30"]);
    expect(night("2027-10-31T01:30:00Z", "2027-10-31T00:30:00Z")).toBe("1\u00a0h");
    expect([clockIn("Europe/Amsterdam", "2027-10-31T00:30:00Z"), clockIn("Europe/Amsterdam", "2027-10-31T01:30:00Z")]).toEqual(["02:30", "02:30"]);
  });
});

describe("the pots", () => {
  it("are the timers and what minds itself without one, soonest first, each once", () => {
    const held = counter({ steps: [step("simmer"), step("rise", { endsAt: "2027-08-01T13:40:00.000Z" }), step("box", { state: "waiting", waitsFor: ["simmer"], handsOffMin: 0 })], minding: ["simmer", "rise"], timers: [timer({ step: { dish: "stew", step: "simmer" } }), timer({ id: "t2", label: "Eggs", state: "stopped" })] });
    expect(potsOf(held).map(({ name, endsAt }) => `${name} ${endsAt.slice(11, 16)}`)).toEqual(["Stew, burner 1 13:40", "Bean water 13:45"]);
    expect(potsOf(held)[1]?.step?.key).toBe("simmer");
  });

  it("get a timer that names the pot and what comes then, for hands and the rest together", () => {
    const held = counter({ steps: [step("simmer"), step("box", { state: "waiting", waitsFor: ["simmer"] })] });
    expect(timerFor(held, step("simmer", { load: 2 }))).toEqual({ label: "Box it", pot: "Stew, burner 1", step: { dish: "stew", step: "simmer", load: 2 }, minutes: 17 });
    expect(timerFor(held, step("chop", { handsOffMin: 0 }))).toBeNull();
  });

  it("send a timer back as it was said, with one of minutes, clock and instant", () => {
    expect(changed(timer(), { heard: true })).toEqual({ label: "Blanch the beans", pot: "Bean water", minutes: 15, heard: true });
    expect(changed(timer({ clock: "15:45", minutes: undefined }), { stopped: true })).toEqual({ label: "Blanch the beans", pot: "Bean water", clock: "15:45", stopped: true });
    expect(changed(timer(), { endsAt: "2027-08-01T14:00:00.000Z" })).toEqual({ label: "Blanch the beans", pot: "Bean water", endsAt: "2027-08-01T14:00:00.000Z" });
  });
});

describe("what the counter says", () => {
  it("says by when a step has to begin where little play is left, and when that is past", () => {
    const late = step("shape", { mustStartBy: "2027-08-01T13:45:00.000Z", state: "ready" });
    const of = (time: string): string => byWords({ zone: "Europe/Amsterdam" }, late, at(time));
    expect([of("13:00:00"), of("13:31:00"), of("13:46:00")]).toEqual(["", "Begin by 15:45 at the latest.", "Should have begun by 15:45."]);
  });

  it("does not promise what the device cannot do", () => {
    expect(deviceWords("cannot", false, "saved")).toMatch(/cannot keep the screen on.*No sound here yet/);
    expect(deviceWords("on", true, "not-sent")).toMatch(/^Screen stays on\. .*not while it is locked\. The last press was not sent\.$/);
  });

  it("reads which parts have changed, and nothing from what it cannot read", () => {
    expect(partsIn('{"parts":["counter","larder"],"now":"2027-08-01T13:45:00Z"}')).toEqual(["counter", "larder"]);
    expect([partsIn("{"), partsIn("null"), partsIn('{"parts":"counter"}')]).toEqual([[], [], []]);
  });
});
