/** Weeks in which something is lost all the same, and the limits that one more batch for it would break in that week. */
import type { Batches, Season, SeasonVerdict } from "../engines/season-plan/index.ts";

export interface LossyWeek {
  readonly week: number;
  readonly lostGrams: number;
  /** Most first. */
  readonly crops: readonly string[];
  readonly limits: readonly string[];
  /** No allowed recipe takes any of these crops. */
  readonly noRecipe: boolean;
}

/** Less than a handful is no week to speak of. Common practice, no source. */
const WORTH_SAYING_GRAMS = 100;

/** Most lost first. */
export function lossyWeeks(season: Season, planned: readonly Batches[], verdict: SeasonVerdict, first: number): LossyWeek[] {
  const course = verdict.courses[0];
  return Array.from({ length: season.weeks - first }, (_, i) => i + first)
    .map((week) => {
      const crops = season.crops.map(({ crop }, c) => ({ crop, grams: course?.lostGrams[c]?.[week] ?? 0 })).filter(({ grams }) => grams >= 1).sort((a, b) => b.grams - a.grams);
      const slugs = crops.map(({ crop }) => crop);
      const methods = season.methods.filter((method) => method.sessionBatches.max > 0 && method.uses.some(({ crop }) => slugs.includes(crop)));
      return { week, lostGrams: Math.round(crops.reduce((sum, { grams }) => sum + grams, 0)), crops: slugs, limits: limitsInTheWay(season, planned, verdict, week, methods), noRecipe: methods.length === 0 };
    })
    .filter(({ lostGrams }) => lostGrams >= WORTH_SAYING_GRAMS)
    .sort((a, b) => b.lostGrams - a.lostGrams || a.week - b.week);
}

function limitsInTheWay(season: Season, planned: readonly Batches[], verdict: SeasonVerdict, week: number, methods: Season["methods"]): string[] {
  return season.resources.flatMap(({ id, kind, amount }) => {
    const room = (kind === "consumed" ? Math.min(...amount.slice(week)) : (amount[week] ?? 0)) - usedOf(season, planned, verdict, id, kind, kind === "consumed" ? season.weeks - 1 : week);
    const breaks = methods.some(({ id: method, perBatch, perSession }) => {
      const open = planned.some((line) => line.method === method && line.week === week && line.batches > 0);
      const need = (perBatch[id] ?? 0) + (open ? 0 : (perSession[id] ?? 0));
      return need > 0 && need > room + 1e-6;
    });
    return breaks ? [id] : [];
  });
}

/** What a plan uses of a limit: in the week, until then, or tied up at its fullest moment. */
export function usedOf({ methods }: Season, planned: readonly Batches[], verdict: SeasonVerdict, resource: string, kind: string, week: number): number {
  return methods.reduce((sum, { id, perBatch, perSession, keptIn, portions, opening }, m) => {
    const each = perBatch[resource] ?? 0;
    const made = planned.filter((line) => line.method === id && (kind === "consumed" ? line.week <= week : line.week === week)).reduce((all, { batches }) => all + (perSession[resource] ?? 0) + batches * each, 0);
    if (kind !== "held" || keptIn === "none" || each === 0) return sum + made;
    const before = week === 0 ? opening : (verdict.courses[0]?.storePortions[m]?.[week - 1] ?? 0);
    return sum + made + (before / portions) * each;
  }, 0);
}
