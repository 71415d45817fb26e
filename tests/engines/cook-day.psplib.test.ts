/**
 * The solver against published instances (tests/support/psplib.ts). Ends are published: Kolisch and Sprecher, EJOR 96 (1997)
 * 205–216, for the sets of 30 jobs; Schwindt's ProGen/max sets with maximum lags, most closed by Schutt, Feydy, Stuckey, Wallace,
 * Journal of Scheduling 16 (2013) 273–289. The files are large and stand beside the project, not in it.
 */
import { existsSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { solveProject } from "#shared/engines/cook-day/solve.ts";
import { scheduleFaults } from "#tests/support/project-referee.ts";
import { INSTANCES, readInstances, readProject } from "#tests/support/psplib.ts";

const there = existsSync(INSTANCES);
if (!there) console.log("psplib: the published instances are not beside this project (../shared/reference/psplib), so only the hand-made ones were solved.");
// All with maximum lags, and one of thirty jobs from every fifth group: enough to notice, little enough to wait for.
const instances = there ? readInstances(INSTANCES).filter(({ set, file }) => set.startsWith("ubo") || set.startsWith("max") || /^j30([1-8]?[05]|29|37|41)_1/.test(file)) : [];

describe("published instances", () => {
  const solved = instances.map((instance) => ({ instance, answer: solveProject(instance.project, { schedules: 5_000, seed: 1 }) }));

  test("are there in full, or not at all", () => {
    expect(instances.length === 0 || instances.length >= 60).toBe(true);
    expect(instances.length > 0).toBe(there);
  });

  test("none contradicts what is published, and every schedule is allowed", () => {
    for (const { instance, answer } of solved) {
      const name = `${instance.set}/${instance.file}`;
      if (instance.status === "infeasible") expect([name, answer.status]).toEqual([name, "infeasible"]);
      if (answer.plan === null) {
        expect([name, instance.status]).toEqual([name, "infeasible"]);
        continue;
      }
      expect([name, scheduleFaults(instance.project, answer.plan.starts)]).toEqual([name, []]);
      expect(answer.end).toBeGreaterThanOrEqual(instance.lowerBound ?? Infinity);
      expect(answer.bound).toBeLessThanOrEqual(instance.upperBound ?? -Infinity);
      if (answer.status === "optimal") expect(answer.end).toBeLessThanOrEqual(instance.upperBound ?? -Infinity);
    }
  });

  test("all with maximum lags are decided, and nearly all of 30 jobs", () => {
    const open = solved.filter(({ answer }) => answer.status === "open").map(({ instance }) => `${instance.set}/${instance.file}`);
    expect(open.filter((name) => !name.startsWith("j30"))).toEqual([]);
    expect(open.length).toBeLessThanOrEqual(1);
  });
});

describe("without a lower bound, without cutting by the best end, without learned clauses", () => {
  const thirty = instances.filter(({ set }) => set === "j30");
  const plain = thirty.map((instance) => ({ instance, answer: solveProject(instance.project, { schedules: 600, seed: 1 }, true) }));

  test("what was proved is found at best, and nothing becomes wrong", () => {
    for (const { instance, answer } of plain) {
      expect(answer.status).not.toBe("infeasible");
      expect(scheduleFaults(instance.project, answer.plan?.starts ?? [])).toEqual([]);
      expect(answer.end).toBeGreaterThanOrEqual(instance.lowerBound ?? Infinity);
      if (answer.status === "optimal") expect(answer.end).toBe(instance.upperBound);
    }
    expect(2 * plain.filter(({ answer }) => answer.status === "open").length).toBeGreaterThanOrEqual(thirty.length);
  });
});

describe("both formats, by hand", () => {
  // Jobs 1 and 2 of three and four time units both need the only unit: 7. Written as PSPLIB writes.
  const SM = [
    "*****", "projects : 1", "jobs (incl. supersource/sink ): 4", "*****",
    "PRECEDENCE RELATIONS:", "jobnr. #modes #successors successors", " 1 1 2 2 3", " 2 1 1 4", " 3 1 1 4", " 4 1 0", "*****",
    "REQUESTS/DURATIONS:", "jobnr. mode duration R 1", "-----", " 1 1 0 0", " 2 1 3 1", " 3 1 4 1", " 4 1 0 0", "*****",
    "RESOURCEAVAILABILITIES:", " R 1", " 1", "*****",
  ].join("\n");
  // The same two jobs; job 2 at least 2 after job 1 and at most `most` after it, so with 2 they overlap and with 3 they do not.
  const sch = (most: number): string => ["2\t1\t0\t0", "0\t1\t2\t1\t2\t[0]\t[0]", "1\t1\t2\t2\t3\t[2]\t[3]", `2\t1\t2\t1\t3\t[${-most}]\t[4]`, "3\t1\t0", "0\t1\t0\t0", "1\t1\t3\t1", "2\t1\t4\t1", "3\t1\t0\t0", "1"].join("\n");
  const budget = { schedules: 500, seed: 1 };

  test(".sm: one unit for two jobs", () => {
    expect(solveProject(readProject(SM), budget)).toMatchObject({ status: "optimal", end: 7, criticalPath: 4 });
    // Few enough placings to try them all, so it is proved without any of that too.
    expect(solveProject(readProject(SM), budget, true)).toMatchObject({ status: "optimal", end: 7, criticalPath: 4 });
  });

  test(".sch: a maximum lag that allows it, and one that does not", () => {
    expect(solveProject(readProject(sch(3)), budget)).toMatchObject({ status: "optimal", end: 7 });
    expect(solveProject(readProject(sch(2)), budget)).toMatchObject({ status: "infeasible", plan: null, end: null });
    expect(solveProject(readProject(sch(2)), budget, true)).toMatchObject({ status: "infeasible", plan: null, end: null });
  });

  test("the referee of schedules sees an overload and a broken lag", () => {
    const project = readProject(sch(3));
    expect(scheduleFaults(project, [0, 0, 3, 7])).toEqual([]);
    expect(scheduleFaults(project, [0, 0, 2, 7])).toHaveLength(1);
    expect(scheduleFaults(project, [0, 0, 4, 8])).toHaveLength(1);
  });
});
