/**
 * How often the scheduler finds and proves the least end. `--instances DIR` is a folder of published instances with its
 * `optima.csv`, or a folder of worked cook days; without it, the project's own days. One schedule or one conflict is one of
 * `--schedules`; `--seed` is that of the first plans. `--no-proofs` switches bounds and learned clauses off, on published instances: what was
 * proved should then be found but not proved, and nothing right become wrong. `--recipes N` plans N days for one cook out of the product's
 * recipes, of `--steps` (60) steps; what is known of these is only that hands cannot be done sooner than their minutes.
 */
import { existsSync } from "node:fs";
import { join } from "node:path";
import { criticalPath } from "#shared/engines/cook-day/bounds.ts";
import { copiesOf } from "#shared/engines/cook-day/copies.ts";
import { projectOf } from "#shared/engines/cook-day/day-to-lags.ts";
import { checkCookDay, scheduleCookDay, type Budget } from "#shared/engines/cook-day/index.ts";
import { solveProject } from "#shared/engines/cook-day/solve.ts";
import { windowsOf } from "#shared/engines/cook-day/windows.ts";
import { CASES, readCookDays, type WorkedDay } from "#tests/support/cook-days.ts";
import { scheduleFaults } from "#tests/support/project-referee.ts";
import { recipeDays } from "#tests/support/recipe-days.ts";
import { readInstances, type Instance } from "#tests/support/psplib.ts";
import { optionOf } from "./options.ts";

/** One instance solved, against what is known of it. */
interface Outcome {
  readonly set: string;
  readonly name: string;
  readonly status: "optimal" | "feasible" | "infeasible";
  readonly endMin: number | null;
  readonly longestStandMin: number | null;
  readonly known: { readonly infeasible: boolean; readonly lower: number | null; readonly upper: number | null };
  readonly criticalPath: number;
  /** Refused by the referee. */
  readonly refused: boolean;
  readonly ms: number;
}

export async function run(args: string[]): Promise<Record<string, unknown>> {
  const budget: Budget = { schedules: optionOf(args, "schedules", 20_000), seed: optionOf(args, "seed", 1) };
  const drawn = optionOf(args, "recipes", 0);
  const at = args.indexOf("--instances");
  const folder = at < 0 ? CASES : args[at + 1];
  if (folder === undefined || !existsSync(folder)) throw new RangeError("--instances takes a folder that is there");
  const published = drawn === 0 && existsSync(join(folder, "optima.csv"));
  const fullDays = (): WorkedDay[] => recipeDays(drawn, optionOf(args, "steps", 60), budget.seed).map((day, k) => ({ id: `recipes-${k + 1}`, day, known: { status: "optimal" } }));
  const days = (): WorkedDay[] => (drawn > 0 ? fullDays() : readCookDays(folder));
  const outcomes = published ? readInstances(folder).map((one) => solveInstance(one, budget, args.includes("--no-proofs"))) : days().map((one) => solveDay(one, budget));
  for (const one of outcomes) {
    const { lower, upper, infeasible } = one.known;
    console.error(`${one.set}/${one.name}: ${one.status} ${one.endMin ?? "–"} (known ${infeasible ? "infeasible" : lower === upper ? (upper ?? "nothing") : `${lower}–${upper}`}) ${one.ms.toFixed(0)} ms${isWrong(one) ? " WRONG" : ""}`);
  }
  const sets = [...new Set(outcomes.map((one) => one.set))];
  const byInstance = Object.fromEntries(outcomes.map(({ name, status, endMin, longestStandMin, ms }) => [name, { status, endMin, longestStandMin, ms: rounded(ms, 1) }]));
  return {
    ...totals(outcomes),
    bySet: Object.fromEntries(sets.map((set) => [set, totals(outcomes.filter((one) => one.set === set))])),
    ...(published ? {} : { byInstance }),
  };
}

function solveInstance({ set, file, status, lowerBound, upperBound, project }: Instance, budget: Budget, plain: boolean): Outcome {
  const begun = performance.now();
  const answer = solveProject(project, budget, plain);
  const ms = performance.now() - begun;
  return {
    set,
    name: file,
    status: answer.status === "open" ? "feasible" : answer.status,
    endMin: answer.end,
    longestStandMin: null,
    known: { infeasible: status === "infeasible", lower: lowerBound, upper: upperBound },
    criticalPath: answer.criticalPath,
    refused: answer.plan !== null && scheduleFaults(project, answer.plan.starts).length > 0,
    ms,
  };
}

function solveDay({ id, day, known }: WorkedDay, budget: Budget): Outcome {
  const begun = performance.now();
  const plan = scheduleCookDay(day, budget);
  const ms = performance.now() - begun;
  const project = projectOf(day, copiesOf(day));
  const end = known?.endMin ?? null;
  return {
    set: "cook-days",
    name: id,
    status: plan.status,
    endMin: plan.endMin,
    longestStandMin: plan.longestStandMin,
    known: { infeasible: known?.status === "infeasible", lower: end, upper: end },
    criticalPath: criticalPath(project, windowsOf(project)),
    refused: plan.endMin !== null && checkCookDay(day, plan.steps).faults.length > 0,
    ms,
  };
}

function isWrong({ status, endMin, known, refused }: Outcome): boolean {
  if (refused) return true;
  if (status === "infeasible") return known.upper !== null;
  if (endMin === null) return false;
  return known.infeasible || (known.lower !== null && endMin < known.lower) || (status === "optimal" && known.upper !== null && endMin > known.upper);
}

function isOptimal({ status, endMin, known }: Outcome): boolean {
  if (known.infeasible) return status === "infeasible";
  return endMin !== null && known.upper !== null && endMin <= known.upper;
}

function totals(outcomes: readonly Outcome[]): Record<string, number | null> {
  const above = (base: (one: Outcome) => number | null): number | null => {
    const parts = outcomes.flatMap((one) => {
      const from = base(one);
      return one.endMin === null || from === null || from === 0 ? [] : [(100 * (one.endMin - from)) / from];
    });
    return parts.length === 0 ? null : rounded(parts.reduce((sum, part) => sum + part, 0) / parts.length, 4);
  };
  const ms = outcomes.map((one) => one.ms).sort((a, b) => a - b);
  const quantile = (q: number): number => rounded(ms[Math.min(ms.length - 1, Math.floor(q * ms.length))] ?? 0, 1);
  return {
    instances: outcomes.length,
    optimal: outcomes.filter(isOptimal).length,
    proven: outcomes.filter((one) => one.status !== "feasible").length,
    meanDeviationPct: above((one) => one.known.upper),
    criticalPathDeviationPct: above((one) => one.criticalPath),
    infeasible: outcomes.filter((one) => one.status === "infeasible").length,
    wrong: outcomes.filter(isWrong).length,
    msMedian: quantile(0.5),
    msP95: quantile(0.95),
  };
}

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}
