/** Another program (HiGHS 1.15.3, npm `highs`) on a programme built from the same days by other code: is there a plan by then, and five minutes earlier? */
import highs from "highs";
import { expect, test } from "vitest";
import { scheduleCookDay } from "#shared/engines/cook-day/index.ts";
import { cookDayProgramme } from "#tests/support/cook-day-programme.ts";
import { CASES, readCookDay } from "#tests/support/cook-days.ts";

/** A fresh instance for each question: the module keeps its memory. */
async function canEndBy(name: string, endMin: number): Promise<boolean> {
  const solver = await highs();
  const { day } = readCookDay(`${CASES}/${name}.json`);
  const status: string = solver.solve(cookDayProgramme(day, endMin, 5)).Status;
  expect(["Optimal", "Infeasible"]).toContain(status);
  return status === "Optimal";
}

test.each(["supper-at-seven", "k1-one-cook"])("%s: the end is reached, and none five minutes earlier", async (name) => {
  const { endMin } = scheduleCookDay(readCookDay(`${CASES}/${name}.json`).day, { schedules: 5_000, seed: 1 });
  expect([await canEndBy(name, endMin as number), await canEndBy(name, (endMin as number) - 5)]).toEqual([true, false]);
});

test("the impossible supper is impossible by its deadline for the other program too", async () => {
  expect(await canEndBy("supper-at-seven-impossible", 240)).toBe(false);
});
