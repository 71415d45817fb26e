/** What is put into the larder, as typed, and the lot and movement it makes. Pure. */
import type { NewLot, NewMovement } from "#shared/contracts/lots.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { readGrams } from "../../parts/typed-amount.ts";
import { readDay } from "../../parts/typed-day.ts";
import { readAmount, type LotAmount } from "./read-amount.ts";

export interface PutInFields {
  readonly what: string;
  readonly much: string;
  readonly each: string;
  readonly on: string;
  readonly placeId: string;
}

interface Known {
  readonly crops: readonly { readonly crop: string; readonly name: string }[];
  readonly recipes: readonly { readonly id: string; readonly title: string }[];
}

export type ReadPutIn = { readonly ok: true; readonly lot: NewLot; readonly movement: NewMovement } | { readonly ok: false; readonly faults: readonly FieldProblem[] };

/** What is typed is a recipe or a crop where it is named like one; anything else is bought or given. */
export function readPutIn(fields: PutInFields, known: Known, today: LocalDate): ReadPutIn {
  const faults: FieldProblem[] = [];
  const bad = (field: keyof PutInFields, text: string): void => void faults.push({ field: `in-${field}`, text });
  const plain = fields.what.trim().toLowerCase();
  const recipe = known.recipes.find(({ title }) => title.toLowerCase() === plain);
  const crop = recipe ? undefined : known.crops.find(({ name }) => name.toLowerCase() === plain);
  if (plain === "") bad("what", "What is it: a dish, a crop, or whatever it is called");
  const much = readAmount(fields.much, crop ? "grams" : "portions");
  if (!much.ok) bad("much", `How much: ${much.wrong.toLowerCase()} ${much.works}`);
  const each = fields.each.trim() === "" ? null : readGrams(fields.each);
  if (each && !each.ok) bad("each", `One portion weighs: ${each.wrong.toLowerCase()} ${each.works}`);
  const on = readDay(fields.on, today, "today");
  if (!on.ok) bad("on", `Made or picked on: ${on.wrong.toLowerCase()} ${on.works}`);
  if (fields.placeId === "") bad("placeId", "Choose where it goes.");
  if (faults.length > 0 || !on.ok || !much.ok) return { ok: false, faults };
  return {
    ok: true,
    lot: {
      title: fields.what.trim(),
      placeId: fields.placeId,
      madeOn: on.value.date,
      ...(recipe ? { recipeId: recipe.id } : {}),
      ...(crop ? { crop: crop.crop } : {}),
      ...(each?.ok ? { portionGrams: each.value } : {}),
    },
    movement: { kind: "put", on: today, ...amountFor(much.value) },
  };
}

const amountFor = (amount: LotAmount): LotAmount => amount;
