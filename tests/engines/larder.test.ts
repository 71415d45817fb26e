/** Balances, the oldest first, room, and the account of every gram: worked cases of the household's day, and random histories in every order against a second reckoning. */
import { describe, expect, it } from "vitest";
import { balanceOf, closes, differencesOf, freezingLoad, gramAccount, leftFor, litresOf, mostOwed, oldestFirst, overDays, roomState, seasonOfDay, type CropLot, type LotEntry } from "#shared/engines/larder/index.ts";
import { dateOf, dayNumber } from "#shared/kernel/local-date.ts";
import { seededRandom } from "#shared/kernel/seeded-random.ts";

let written = 0;
const entry = (kind: LotEntry["kind"], amount: number, more: Partial<LotEntry> = {}): LotEntry => {
  written += 1;
  return { id: `e${String(written).padStart(6, "0")}`, kind, on: "2027-07-20", writtenAt: written, arrivedAt: written, amount, whole: kind === "recount" ? amount : null, takenFor: kind === "take" ? "eat" : null, placeId: null, toPlaceId: null, ...more };
};
const history = (...entries: LotEntry[]) => ({ homePlaceId: "home", entries });

describe("the household's tomatoes", () => {
  // 5,000 g picked; 300 trimmed, 1,100 eaten, 3,000 into a batch, 400 given, 100 composted: 100 are on hand (the design's own worked case)
  const lot: CropLot = {
    crop: "tomato",
    madeOn: "2027-07-20",
    ...history(entry("put", 5000), entry("take", 300, { takenFor: "trim" }), entry("take", 1100), entry("take", 3000, { takenFor: "batch" }), entry("give", 400), entry("compost", 100)),
  };

  it("are accounted for to the gram", () => {
    const [row] = gramAccount([{ crop: "tomato", on: "2027-07-20", grams: 5000 }], [lot], false);
    expect(row).toMatchObject({ season: 2027, picked: 5000, trimmed: 300, eaten: 1100, batches: 3000, given: 400, composted: 100, onHand: 100, unaccounted: 0 });
  });

  it("leave 100 g, so 250 g cannot be eaten", () => {
    expect(leftFor(lot, entry("take", 250))).toBe(100);
  });

  it("picked and not put away, or missing at a recount, are shown as unaccounted and in no other line", () => {
    const counted = { ...lot, entries: [...lot.entries, entry("recount", 30)] };
    const [row] = gramAccount([{ crop: "tomato", on: "2027-07-20", grams: 5200 }], [counted], false);
    expect(row).toMatchObject({ onHand: 30, unaccounted: 270, notPutAway: 200, missingAtRecounts: 70, owed: 0 });
    const taken = { ...lot, entries: [...lot.entries, entry("take", 250)] };
    expect(gramAccount([{ crop: "tomato", on: "2027-07-20", grams: 5000 }], [taken], false)[0]).toMatchObject({ eaten: 1350, onHand: 0, unaccounted: -150, owed: 150 });
  });
});

describe("a balance", () => {
  it("never stands below nothing: what is taken beyond it is owed and shown", () => {
    expect(balanceOf(history(entry("put", 3), entry("take", 5)))).toMatchObject({ left: 0, owed: 2, short: 2, stands: [] });
    expect(balanceOf(history(entry("put", 3), entry("take", 5), entry("put", 4)))).toMatchObject({ left: 2, owed: 0, short: 2 });
    expect(balanceOf(history(entry("put", 3), entry("take", 5), entry("recount", 1)))).toMatchObject({ left: 1, owed: 0, short: 0, missingAtRecounts: -3 });
  });

  it("is set by a recount at its own time, whatever of an earlier day arrives later", () => {
    const late = entry("take", 2, { on: "2027-07-21" });
    const lot = history(entry("put", 10, { on: "2027-07-20", arrivedAt: 0 }), entry("recount", 7, { on: "2027-07-22", arrivedAt: 1 }), entry("take", 1, { on: "2027-07-23" }), late);
    expect(balanceOf(lot)).toMatchObject({ left: 6, missingAtRecounts: 1, late: [late.id] });
  });

  it("is split over places by moves, drawn from its own place first, counted place by place", () => {
    const split = [entry("put", 10), entry("move", 4, { toPlaceId: "b" })];
    expect(balanceOf(history(...split)).stands).toEqual([{ placeId: "home", amount: 6 }, { placeId: "b", amount: 4 }]);
    expect(balanceOf(history(...split, entry("take", 8))).stands).toEqual([{ placeId: "b", amount: 2 }]);
    expect(balanceOf(history(...split, entry("take", 3, { placeId: "b" }))).stands).toEqual([{ placeId: "home", amount: 6 }, { placeId: "b", amount: 1 }]);
    expect(balanceOf(history(...split, entry("recount", 1, { placeId: "b", whole: 7 })))).toMatchObject({ left: 7, missingAtRecounts: 3, stands: [{ placeId: "home", amount: 6 }, { placeId: "b", amount: 1 }] });
    expect(leftFor(history(...split), entry("move", 9, { toPlaceId: "b" }))).toBe(6);
    expect(leftFor(history(...split), entry("take", 9, { placeId: "b" }))).toBe(4);
  });

  it("lets no more be taken on an earlier day than is left on every later one", () => {
    const lot = history(entry("put", 10, { on: "2027-07-20" }), entry("take", 9, { on: "2027-07-24" }), entry("put", 5, { on: "2027-07-25" }));
    expect(leftFor(lot, entry("take", 1, { on: "2027-07-19" }))).toBe(0);
    expect(leftFor(lot, entry("take", 1, { on: "2027-07-22" }))).toBe(1);
    expect(leftFor(lot, entry("take", 1, { on: "2027-07-25" }))).toBe(6);
    const counted = history(...lot.entries, entry("recount", 2, { on: "2027-07-23" }));
    expect(leftFor(counted, entry("take", 1, { on: "2027-07-22" }))).toBe(10);
    expect(mostOwed(counted)).toBe(7);
  });
});

describe("the oldest first", () => {
  // soup of 1 February (4) in drawer 1, of 10 April (4) in drawer 3, of 20 May (6) in drawer 2: five portions are four and one (the design's own worked case)
  const lots = [
    { id: "may", madeOn: "2027-05-20", safeUntil: null, stands: [{ placeId: "drawer 2", amount: 6 }] },
    { id: "february", madeOn: "2027-02-01", safeUntil: null, stands: [{ placeId: "drawer 1", amount: 4 }] },
    { id: "april", madeOn: "2027-04-10", safeUntil: null, stands: [{ placeId: "drawer 3", amount: 4 }] },
  ];
  it("takes four of February, which uses it up, and one of April", () => {
    expect(oldestFirst(lots, 5, "2027-07-26")).toEqual({
      draws: [
        { lotId: "february", placeId: "drawer 1", amount: 4, usesUp: true },
        { lotId: "april", placeId: "drawer 3", amount: 1, usesUp: false },
      ],
      missing: 0,
    });
  });
  it("says what is missing, and leaves alone what is past its safe day", () => {
    expect(oldestFirst(lots, 20, "2027-07-26").missing).toBe(6);
    const past = lots.map((lot) => (lot.id === "february" ? { ...lot, safeUntil: "2027-07-25" } : lot));
    expect(oldestFirst(past, 5, "2027-07-26").draws.map((draw) => [draw.lotId, draw.amount])).toEqual([["april", 4], ["may", 1]]);
  });
});

describe("room", () => {
  it("a freezer of 200 l takes 6.4 to 9.6 kg in 24 hours (2 to 3 lb a cubic foot, MSU 01600508), so 14 kg take two days", () => {
    const load = freezingLoad(200, { low: 2, high: 3 });
    expect([Math.round(load.low / 100), Math.round(load.high / 100)]).toEqual([64, 96]);
    expect(overDays(14_000, load.high)).toEqual([7000, 7000]);
    expect(overDays(9_001, 3_000).reduce((sum, one) => sum + one, 0)).toBe(9_001);
    expect(Math.max(...overDays(9_001, 3_000))).toBeLessThanOrEqual(3_000);
  });
  it("is told by portions where they are measured, by weight else, and not at all without either", () => {
    expect(litresOf({ grams: 5000, portions: 6, portionMl: 500 })).toBe(3);
    expect(litresOf({ grams: 5000, portions: null, portionMl: 500 })).toBe(6);
    expect(litresOf({ grams: null, portions: 6, portionMl: null })).toBeNull();
    expect([40, 41, 45].map((used) => roomState(used, 45))).toEqual(["has room", "nearly full", "full"]);
  });
});

describe("two reckonings of one account", () => {
  it("are told apart by the line in which they differ", () => {
    const [row] = gramAccount([{ crop: "leek", on: "2027-07-20", grams: 5 }], [], false);
    if (!row) throw new Error("no row");
    expect(differencesOf([row], [{ ...row }])).toEqual([]);
    expect(differencesOf([row], [{ ...row, eaten: 1 }])).toEqual(["leek 2027 eaten 0", "leek 2027 eaten 1"]);
    expect(differencesOf([row], [])).toContain("leek 2027 picked 5");
  });
});

describe("a season", () => {
  it("is the year; south of the equator July to June, named by the year it ends in", () => {
    expect(seasonOfDay("2027-07-01", false)).toBe(2027);
    expect([seasonOfDay("2027-06-30", true), seasonOfDay("2027-07-01", true), seasonOfDay("2027-12-31", true)]).toEqual([2027, 2028, 2028]);
  });
});

describe("random histories", () => {
  const random = seededRandom(20270726);
  const whole = (until: number): number => Math.floor(random.next() * until);
  const pick = <T>(some: readonly T[]): T => some[whole(some.length)] as T;
  const KINDS = ["put", "put", "put", "take", "take", "take", "give", "compost", "move", "recount"] as const;
  const PLACES = ["home", "b", "c"] as const;
  const start = dayNumber("2026-05-01");

  function someEntry(): LotEntry {
    const kind = pick(KINDS);
    const placeId = random.next() < 0.4 ? pick(PLACES) : null;
    const amount = kind === "recount" ? whole(3000) : 1 + whole(kind === "put" ? 4000 : 1500);
    const to = kind === "move" ? pick(PLACES.filter((place) => place !== placeId)) : null;
    const elsewhere = kind === "recount" && placeId !== null ? whole(1000) : 0;
    return entry(kind, amount, { on: dateOf(start + whole(40)), writtenAt: whole(5), arrivedAt: whole(1_000_000), placeId, toPlaceId: to, whole: kind === "recount" ? amount + elsewhere : null, takenFor: kind === "take" ? pick(["eat", "trim", "batch"] as const) : null });
  }

  /** The book alone, without shelves: sums between one recount and the next. */
  function second(entries: readonly LotEntry[]): { left: number; owed: number; missing: number } {
    const key = (one: LotEntry): string => `${one.on} ${String(one.writtenAt).padStart(9, "0")} ${one.id}`;
    let [book, missing] = [0, 0];
    for (const one of [...entries].sort((a, b) => key(a).localeCompare(key(b), "en"))) {
      if (one.kind === "recount") {
        missing += book - (one.whole as number);
        book = one.whole as number;
      } else if (one.kind !== "move") book += one.kind === "put" ? one.amount : -one.amount;
    }
    return { left: Math.max(0, book), owed: Math.max(0, -book), missing };
  }

  it("give the same balance in every order, agree with a second reckoning, and close to the gram", () => {
    const counted = { movements: 0, recounts: 0, owed: 0, split: 0, orders: 0 };
    for (let round = 0; round < 500; round += 1) {
      const entries = Array.from({ length: 5 + whole(40) }, someEntry);
      const forward = balanceOf(history(...entries));
      for (const order of [[...entries].reverse(), [...entries].sort(() => random.next() - 0.5)]) {
        expect(balanceOf(history(...order))).toEqual(forward);
        counted.orders += 1;
      }
      const other = second(entries);
      expect({ left: forward.left, owed: forward.owed, missing: forward.missingAtRecounts }).toEqual(other);
      expect(forward.stands.reduce((sum, stand) => sum + stand.amount, 0)).toBe(forward.left);
      expect(forward.stands.every((stand) => stand.amount > 0)).toBe(true);
      const [row] = gramAccount([{ crop: "tomato", on: "2026-07-01", grams: whole(20_000) }], [{ crop: "tomato", madeOn: "2026-05-01", ...history(...entries) }], false);
      expect(row && closes(row)).toBe(true);
      counted.movements += entries.length;
      counted.recounts += entries.some(({ kind }) => kind === "recount") ? 1 : 0;
      counted.owed += forward.owed > 0 ? 1 : 0;
      counted.split += forward.stands.length > 1 ? 1 : 0;
    }
    expect(counted.movements).toBeGreaterThanOrEqual(10_000);
    expect(counted.orders).toBe(1000);
    expect([counted.recounts, counted.owed, counted.split].every((n) => n >= 50)).toBe(true);
  });

  it("never owe anything as long as no more is taken than is left for it, on whichever day it is dated", () => {
    const counted = { taken: 0, whole: 0 };
    for (let round = 0; round < 300; round += 1) {
      const kept: LotEntry[] = [entry("put", 5000, { on: dateOf(start) })];
      for (let n = 0; n < 12; n += 1) {
        const next = someEntry();
        if (next.kind === "recount") continue;
        const most = next.kind === "put" ? next.amount : leftFor(history(...kept), next);
        const amount = Math.min(next.amount, most);
        if (amount === 0) continue;
        kept.push({ ...next, amount });
        if (next.kind !== "put") counted.taken += 1;
        if (amount === most) counted.whole += 1;
        expect(mostOwed(history(...kept))).toBe(0);
      }
      expect(balanceOf(history(...kept))).toMatchObject({ owed: 0, missingAtRecounts: 0 });
    }
    expect(counted.taken).toBeGreaterThanOrEqual(1500);
    expect(counted.whole).toBeGreaterThanOrEqual(300);
  });
});
