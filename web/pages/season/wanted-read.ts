/** What is wanted, as typed, and the target or wish it makes. Pure: words in, body or faults out. */
import type { NewStockTarget } from "#shared/contracts/stock-targets.ts";
import type { NewWish } from "#shared/contracts/wishes.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { readDay } from "../../parts/typed-day.ts";

export interface WantedFields {
  readonly kind: "target" | "wish";
  readonly dish: string;
  readonly portions: string;
  readonly by: string;
  readonly who: string;
}

export const NOTHING_WANTED: WantedFields = { kind: "target", dish: "", portions: "", by: "", who: "" };

export type ReadWanted =
  | { readonly ok: true; readonly kind: "target"; readonly title: string; readonly body: NewStockTarget }
  | { readonly ok: true; readonly kind: "wish"; readonly title: string; readonly body: NewWish }
  | { readonly ok: false; readonly faults: readonly FieldProblem[] };

/** A target needs a day still to come; a wish may have one. */
export function readWanted(fields: WantedFields, recipes: readonly { readonly id: string; readonly title: string }[], today: LocalDate): ReadWanted {
  const faults: FieldProblem[] = [];
  const bad = (field: keyof WantedFields, text: string): void => void faults.push({ field: `wanted-${field}`, text });
  const named = fields.dish.trim().toLowerCase();
  const recipe = recipes.find(({ title }) => title.toLowerCase() === named);
  if (!recipe) bad("dish", named === "" ? "Which dish: choose one of your recipes" : `Which dish: no recipe is called “${fields.dish.trim()}”; choose one of your recipes`);
  const portions = /^\d+$/.test(fields.portions.trim()) ? Number(fields.portions.trim()) : 0;
  if (portions < 1) bad("portions", "How many portions: a whole number above 0, such as 12");
  const by = fields.by.trim() === "" && fields.kind === "wish" ? null : readDay(fields.by, today);
  if (by && !by.ok) bad("by", `By when: ${by.wrong.charAt(0).toLowerCase()}${by.wrong.slice(1)} ${by.works}`);
  if (by?.ok && by.value.date < today) bad("by", "By when: that day is past. Write a day still to come, such as 1 November.");
  if (faults.length > 0 || !recipe) return { ok: false, faults };
  const asked = { recipeId: recipe.id, portions };
  if (fields.kind === "target" && by?.ok) return { ok: true, kind: "target", title: recipe.title, body: { ...asked, by: by.value.date } };
  const who = fields.who.trim();
  return { ok: true, kind: "wish", title: recipe.title, body: { ...asked, ...(by?.ok ? { by: by.value.date } : {}), ...(who === "" ? {} : { from: who }) } };
}
