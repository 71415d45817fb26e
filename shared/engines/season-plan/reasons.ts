/**
 * Why a line is there, as the difference of two plans: without one batch of it and the rest kept (what is it for?), and without it and
 * planned anew (what takes its place?). Nothing here guesses at what the solver thought. README, "Reasons".
 */
import { checkSeasonPlan, type SeasonVerdict } from "./check.ts";
import { buildModel, costsOf, planOf, wholesOf } from "./model.ts";
import type { Solver } from "./programme.ts";
import { SeasonSearch } from "./search.ts";
import { solveSeason } from "./solve.ts";
import type { Batches, Season, SeasonPlan } from "./types.ts";

export interface LostInWeek {
  readonly crop: string;
  readonly week: number;
  readonly grams: number;
}

/** With one batch less and all other batches kept; eating, giving and drawing are free. Expected over the scenarios. */
export interface LineReason {
  readonly line: Batches;
  /** Grams that would be lost more, greatest first. */
  readonly lost: readonly LostInWeek[];
  readonly lostGrams: number;
  /** Targets and wishes that would miss more, in percent points as level 2 counts them. */
  readonly missing: readonly { readonly asked: string; readonly percent: number }[];
  readonly freshLessGrams: number;
}

/** With one batch less and everything else planned anew, levels 1–3 within the allowance and then as few changes as may be. */
export interface LineReplaced {
  readonly line: Batches;
  readonly lostGrams: number;
  readonly missingPercent: number;
  /** Lines that grow, with the batches they gain. */
  readonly instead: readonly Batches[];
  /** Limits of that week that are full with the line in, and that a growing line uses too. */
  readonly fullLimits: readonly string[];
}

const EXACT = [1, 1, 0.1, 0, 0, 0, 0];

export function lineReasons(season: Season, plan: SeasonPlan, solver: Solver): LineReason[] {
  const model = buildModel(season);
  const search = new SeasonSearch(model, solver, { seconds: 1e6, stop: () => false });
  const costs = costsOf(model, EXACT);
  const settled = (planned: SeasonPlan): SeasonVerdict | null => {
    const wholes = wholesOf(model, planned);
    const values = wholes && search.settle(costs, wholes);
    return values && checkSeasonPlan(season, planOf(model, values));
  };
  try {
    const whole = settled(plan);
    if (!whole) return [];
    return plan.planned.flatMap((line) => {
      const less = settled(withLess(season, plan, line));
      return less ? [differenceOf(season, line, whole, less)] : [];
    });
  } finally {
    search.close();
  }
}

/** One batch less, or none where a session's least would not be reached; in every course as well. */
export function withLess(season: Season, plan: SeasonPlan, line: Batches): SeasonPlan {
  const least = season.methods.find(({ id }) => id === line.method)?.sessionBatches.min ?? 1;
  const left = line.batches - 1 < least ? 0 : line.batches - 1;
  const cut = (list: readonly Batches[]): Batches[] =>
    list.flatMap((one) => (one.method !== line.method || one.week !== line.week ? [one] : Math.min(one.batches, left) > 0 ? [{ ...one, batches: Math.min(one.batches, left) }] : []));
  return { planned: cut(plan.planned), outcomes: Object.fromEntries(Object.entries(plan.outcomes).map(([id, course]) => [id, { ...course, made: cut(course.made) }])) };
}

function differenceOf(season: Season, line: Batches, whole: SeasonVerdict, less: SeasonVerdict): LineReason {
  const expected = (of: (verdict: SeasonVerdict, s: number) => number): number => season.scenarios.reduce((sum, { chance }, s) => sum + chance * (of(less, s) - of(whole, s)), 0);
  const lost = season.crops.flatMap(({ crop }, c) =>
    Array.from({ length: season.weeks }, (_, week) => ({ crop, week, grams: Math.round(expected((verdict, s) => verdict.courses[s]?.lostGrams[c]?.[week] ?? 0)) })).filter(({ grams }) => grams > 0),
  );
  const asked = [...season.targets, ...season.wishes];
  const missing = asked.map(({ id }, i) => ({ asked: id, percent: expected((verdict, s) => verdict.courses[s]?.missing[i] ?? 0) })).filter(({ percent }) => percent > 0.01);
  return {
    line,
    lost: lost.sort((a, b) => b.grams - a.grams),
    lostGrams: less.score.wasteGrams - whole.score.wasteGrams,
    missing,
    freshLessGrams: less.score.freshShortGrams - whole.score.freshShortGrams,
  };
}

/** `allowance`: as in planning; null when it could not be planned without the line (it is frozen). */
export function replaceLine(season: Season, plan: SeasonPlan, line: Batches, solver: Solver, options: { allowance: number; secondsPerLevel: number }): LineReplaced | null {
  if (line.week < season.frozenWeeks) return null;
  const before = checkSeasonPlan(season, plan);
  const least = season.methods.find(({ id }) => id === line.method)?.sessionBatches.min ?? 1;
  const left = line.batches - 1 < least ? 0 : line.batches - 1;
  const asked: Season = { ...season, atMost: [{ ...line, batches: left }], agreed: plan.planned, agreedUntil: season.weeks };
  const { status, best } = solveSeason(asked, solver, { ...options, levels: 4 });
  if (status === "infeasible") return null;
  const had = (one: Batches): number => plan.planned.find(({ method, week }) => method === one.method && week === one.week)?.batches ?? 0;
  const instead = best.plan.planned.flatMap((one) => (one.batches > had(one) ? [{ ...one, batches: one.batches - had(one) }] : []));
  return {
    line,
    lostGrams: best.verdict.score.wasteGrams - before.score.wasteGrams,
    missingPercent: best.verdict.score.targetShort - before.score.targetShort,
    instead,
    fullLimits: fullLimits(season, before, plan, line, instead),
  };
}

/** Full: the line's own method would not fit once more. */
function fullLimits(season: Season, verdict: SeasonVerdict, plan: SeasonPlan, line: Batches, instead: readonly Batches[]): string[] {
  const method = season.methods.find(({ id }) => id === line.method);
  const uses = (id: string, resource: string): number => season.methods.find((one) => one.id === id)?.perBatch[resource] ?? 0;
  return season.resources.flatMap(({ id, kind, amount }) => {
    const each = method?.perBatch[id] ?? 0;
    if (each === 0 || !instead.some((one) => uses(one.method, id) > 0)) return [];
    return usedOf(season, verdict, plan, id, kind, line.week) + each > (amount[line.week] ?? 0) + 1e-6 ? [id] : [];
  });
}

/** What a plan uses of a limit in a week, in its first course for what is held. */
export function usedOf(season: Season, verdict: SeasonVerdict, plan: SeasonPlan, resource: string, kind: string, week: number): number {
  return season.methods.reduce((sum, method, m) => {
    const each = method.perBatch[resource] ?? 0;
    const lines = plan.planned.filter((line) => line.method === method.id && (kind === "consumed" ? line.week <= week : line.week === week));
    const made = lines.reduce((all, { batches }) => all + (method.perSession[resource] ?? 0) + batches * each, 0);
    if (kind !== "held" || method.portions <= 0 || method.keptIn === "none") return sum + made;
    const before = week === 0 ? method.opening : (verdict.courses[0]?.storePortions[m]?.[week - 1] ?? 0);
    return sum + made + (before / method.portions) * each;
  }, 0);
}
