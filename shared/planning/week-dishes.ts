/** What is to be cooked in a week, by recipe: ways chosen for it and dishes of its cook days. A chosen way that is in a cook day is cooked once. */
import { weekOf, type IsoWeek } from "../kernel/iso-week.ts";
import type { KitchenFacts } from "./facts.ts";

export function batchesOfWeek({ planLines, cookDays }: Pick<KitchenFacts, "planLines" | "cookDays">, week: IsoWeek): Map<string, number> {
  const chosen = sums(planLines.filter((line) => line.week === week));
  const inDays = sums(cookDays.filter((day) => weekOf(day.on) === week).flatMap((day) => day.dishes));
  return new Map([...new Set([...chosen.keys(), ...inDays.keys()])].map((id) => [id, Math.max(chosen.get(id) ?? 0, inDays.get(id) ?? 0)]));
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
