/**
 * That a clash is smallest, by every placing (tests/support/every-placing.ts): with only its limits a small random day cannot be, and
 * with any one of them less it can.
 */
import { expect, test } from "vitest";
import { clashOf, withoutAllBut } from "#shared/engines/cook-day/clash.ts";
import { bestPlacing } from "#tests/support/every-placing.ts";
import { tinyDay } from "#tests/support/tiny-days.ts";

const MOST_TRIES = 100_000;

test("no limit of a clash could be spared, and none is lacking", { timeout: 120_000 }, () => {
  let clashes = 0;
  let limits = 0;
  for (let seed = 50_000; clashes < 60; seed++) {
    const day = tinyDay(seed);
    if (day === null || bestPlacing(day, MOST_TRIES) !== null) continue;
    const set = clashOf(day, 20_000);
    const only = bestPlacing(withoutAllBut(day, set), MOST_TRIES);
    if (only === undefined) continue;
    expect([seed, only]).toEqual([seed, null]);
    clashes++;
    for (const limit of set) {
      const less = bestPlacing(withoutAllBut(day, set.filter((other) => other !== limit)), MOST_TRIES);
      if (less === undefined) continue;
      expect([seed, limit.words, less !== null]).toEqual([seed, limit.words, true]);
      limits++;
    }
  }
  expect(limits).toBeGreaterThan(120);
});
