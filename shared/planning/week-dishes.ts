/** What is to be cooked in a week, by recipe: ways chosen for it and dishes of its cook days. A chosen way that is in a cook day is cooked once. */
import { weekEnd, weekOf, weekStart, type IsoWeek } from "../kernel/iso-week.ts";
import { dayNumber, type LocalDate } from "../kernel/local-date.ts";
import type { KitchenFacts } from "./facts.ts";

export function batchesOfWeek({ planLines, cookDays }: Pick<KitchenFacts, "planLines" | "cookDays">, week: IsoWeek): Map<string, number> {
  const chosen = sums(planLines.filter((line) => line.week === week));
  const inDays = sums(cookDays.filter((day) => weekOf(day.on) === week).flatMap((day) => day.dishes));
  return new Map([...new Set([...chosen.keys(), ...inDays.keys()])].map((id) => [id, Math.max(chosen.get(id) ?? 0, inDays.get(id) ?? 0)]));
}

/** By crop: grams that lines of the running week and of those before `week` are agreed to take. */
export function reservedBefore({ planLines, recipes }: Pick<KitchenFacts, "planLines" | "recipes">, week: IsoWeek, today: LocalDate): Map<string, number> {
  const byId = new Map(recipes.map((recipe) => [recipe.id, recipe]));
  const grams = new Map<string, number>();
  for (const line of planLines) {
    if (line.week < weekOf(today) || line.week >= week) continue;
    for (const use of byId.get(line.recipeId)?.uses ?? []) grams.set(use.crop, (grams.get(use.crop) ?? 0) + use.grams * line.batches);
  }
  return grams;
}

/** Share of what a week still gives that is there by a day of it, the day included; what ripens is taken to come evenly. */
export function shareUntil(by: LocalDate, week: IsoWeek, today: LocalDate): number {
  const first = Math.max(dayNumber(weekStart(week)), dayNumber(today));
  const left = dayNumber(weekEnd(week)) - first + 1;
  return left <= 0 ? 1 : Math.min(1, Math.max(0, (dayNumber(by) - first + 1) / left));
}

/** Lines that no larder, garden or other recipe answers for. */
export function furtherLines(ingredients: readonly { readonly text: string; readonly crop?: string | undefined; readonly madeBy?: string | undefined; readonly grams: number | null }[]): string[] {
  return ingredients.filter(({ crop, madeBy, grams }) => madeBy === undefined && (crop === undefined || grams === null)).map(({ text }) => text);
}

function sums(lines: readonly { readonly recipeId: string; readonly batches: number }[]): Map<string, number> {
  const batches = new Map<string, number>();
  for (const line of lines) batches.set(line.recipeId, (batches.get(line.recipeId) ?? 0) + line.batches);
  return batches;
}
