/**
 * Why produce of a week is lost all the same: which limit stood in the way, found by loosening one limit at a time and planning anew.
 * A method that is refused is never let in. README, "Reasons".
 */
import { checkSeasonPlan } from "./check.ts";
import { refusalOf } from "./legal.ts";
import type { Solver } from "./programme.ts";
import { usedOf } from "./reasons.ts";
import { solveSeason } from "./solve.ts";
import type { Resource, Season, SeasonPlan } from "./types.ts";

export interface Help {
  readonly resource: string;
  readonly unit: string;
  /** So much more of it, in that week alone for what is weekly, else all season. */
  readonly more: number;
  /** Less lost in the whole season. */
  readonly savesGrams: number;
}

export interface WeekWithoutAnswer {
  readonly week: number;
  readonly lostGrams: number;
  /** Crops that are lost, most first. */
  readonly crops: readonly string[];
  /** Greatest first; none where no single limit would help. */
  readonly helps: readonly Help[];
}

/** Steps that a household thinks in: an hour, 5 litres, a kilogram, one jar or load; common practice, no source. */
const STEPS: Readonly<Record<string, number>> = { min: 60, l: 5, g: 1000, ml: 500 };

export function weeksWithoutAnswer(season: Season, plan: SeasonPlan, solver: Solver, options: { secondsPerLevel: number; mostWeeks: number }): WeekWithoutAnswer[] {
  const verdict = checkSeasonPlan(season, plan);
  const lostIn = (week: number, c: number): number => season.scenarios.reduce((sum, { chance }, s) => sum + chance * (verdict.courses[s]?.lostGrams[c]?.[week] ?? 0), 0);
  const weeks = Array.from({ length: season.weeks }, (_, week) => {
    const crops = season.crops.map(({ crop }, c) => ({ crop, grams: lostIn(week, c) })).filter(({ grams }) => grams >= 1);
    crops.sort((a, b) => b.grams - a.grams);
    return { week, lostGrams: crops.reduce((sum, { grams }) => sum + grams, 0), crops: crops.map(({ crop }) => crop) };
  });
  const worst = weeks.filter(({ lostGrams }) => lostGrams > 0).sort((a, b) => b.lostGrams - a.lostGrams);
  return worst.slice(0, options.mostWeeks).map((one) => {
    const helps = inTheWay(season, plan, one.week, one.crops).map((resource): Help => {
      const more = STEPS[resource.unit] ?? 1;
      const { best } = solveSeason(withMore(season, resource, one.week, more), solver, { allowance: 0, secondsPerLevel: options.secondsPerLevel, levels: 1 });
      return { resource: resource.id, unit: resource.unit, more, savesGrams: verdict.score.wasteGrams - best.verdict.score.wasteGrams };
    });
    return { ...one, helps: helps.filter(({ savesGrams }) => savesGrams >= 1).sort((a, b) => b.savesGrams - a.savesGrams) };
  });
}

/** The season with so much more of one limit: in one week for what is weekly, from the start for what is held or used up. */
export function withMore(season: Season, resource: Resource, week: number, more: number): Season {
  const amount = resource.amount.map((have, t) => (resource.kind !== "weekly" || t === week ? have + more : have));
  return { ...season, resources: season.resources.map((one) => (one.id === resource.id ? { ...one, amount } : one)) };
}

/** Limits that one more batch of an allowed method for these crops would break in that week. */
function inTheWay(season: Season, plan: SeasonPlan, week: number, crops: readonly string[]): Resource[] {
  const verdict = checkSeasonPlan(season, plan);
  const methods = season.methods.filter((method) => refusalOf(method, season.equipment) === null && method.uses.some(({ crop }) => crops.includes(crop)));
  return season.resources.filter(({ id, kind, amount }) => {
    const used = usedOf(season, verdict, plan, id, kind, kind === "consumed" ? season.weeks - 1 : week);
    const room = (kind === "consumed" ? (amount.at(-1) ?? 0) : (amount[week] ?? 0)) - used;
    return methods.some((method) => {
      const first = !plan.planned.some((line) => line.method === method.id && line.week === week);
      const need = (method.perBatch[id] ?? 0) + (first ? (method.perSession[id] ?? 0) : 0);
      return need > 0 && need > room + 1e-6;
    });
  });
}
