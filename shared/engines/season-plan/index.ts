/**
 * How many batches of which method in which week, so that little is lost and what was asked for is there? Levels in order; README.md.
 * The solver is handed in; without one the simple rule answers.
 * Same season, solver and effort in steps: same plan, unless the clock or a cancel ended it (`stoppedEarly`).
 */
import { checkSeasonPlan, type SeasonVerdict } from "./check.ts";
import { refusedMethods, type RefusedMethod } from "./legal.ts";
import type { Solver } from "./programme.ts";
import { planByRule } from "./rule.ts";
import type { SolveOptions } from "./effort.ts";
import { solveSeason, type LevelResult } from "./solve.ts";
import type { Season, SeasonPlan } from "./types.ts";

export { checkSeasonPlan, type SeasonVerdict } from "./check.ts";
export { refusedMethods, type RefusedMethod } from "./legal.ts";
export type { OpenProgramme, Programme, Solver } from "./programme.ts";
export { FORMAT, readSeason } from "./read.ts";
export { planByRule } from "./rule.ts";
export type { Progress, SolveOptions } from "./effort.ts";
export { isWorse, type Found, type LevelResult } from "./solve.ts";
export * from "./types.ts";

export interface SeasonAnswer {
  /** `rule`: no solver was at hand. `infeasible`: frozen weeks that cannot be; the plan is then the rule's and `verdict.faults` says what clashes. */
  readonly status: "optimal" | "feasible" | "infeasible" | "rule";
  readonly plan: SeasonPlan;
  readonly verdict: SeasonVerdict;
  readonly byRule: SeasonVerdict;
  readonly levels: readonly LevelResult[];
  /** How far the loss may still lie above the least possible, in percent of what is lost; null: not known. */
  readonly gapPct: number | null;
  readonly refused: readonly RefusedMethod[];
  /** The clock or a cancel ended it before its steps were spent: more time may find a better plan. */
  readonly stoppedEarly: boolean;
  /** Steps of the solver that it took. */
  readonly steps: number;
  readonly seconds: number;
}

export function planSeason(season: Season, solver: Solver | null, options: SolveOptions): SeasonAnswer {
  const refused = refusedMethods(season);
  if (!solver) {
    const plan = planByRule(season);
    const verdict = checkSeasonPlan(season, plan);
    return { status: verdict.faults.length > 0 ? "infeasible" : "rule", plan, verdict, byRule: verdict, levels: [], gapPct: null, refused, stoppedEarly: false, steps: 0, seconds: 0 };
  }
  const { status, best, rule, levels, stoppedEarly, steps, seconds } = solveSeason(season, solver, options);
  return { status, plan: best.plan, verdict: best.verdict, byRule: rule.verdict, levels, gapPct: gapOf(levels[0]), refused, stoppedEarly, steps, seconds };
}

/** A plan that is at hand, as an answer that promises nothing beyond what the referee measures. */
export function answerSoFar(season: Season, plan: SeasonPlan): SeasonAnswer {
  const verdict = checkSeasonPlan(season, plan);
  const byRule = checkSeasonPlan(season, planByRule(season));
  return { status: verdict.faults.length > 0 ? "infeasible" : "feasible", plan, verdict, byRule, levels: [], gapPct: null, refused: refusedMethods(season), stoppedEarly: true, steps: 0, seconds: 0 };
}

function gapOf(loss: LevelResult | undefined): number | null {
  if (!loss || loss.bound === null) return null;
  if (loss.value < 0.5) return 0;
  return Math.max(0, (100 * (loss.value - loss.bound)) / loss.value);
}
export { lineReasons, replaceLine, withLess, type LineReason, type LineReplaced } from "./reasons.ts";
export { weeksWithoutAnswer, withMore, type Help, type WeekWithoutAnswer } from "./what-helps.ts";
export { courseInYear, fareOf, seasonInYear, type PlanFare, type YearFare, type YearOfHarvest } from "./fare.ts";
