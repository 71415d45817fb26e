/** For how much a recipe is shown: as typed, as it stands in the address, and the question it makes. Pure. */
import type { Recipe } from "#shared/contracts/recipes.ts";
import { ScaleAsked } from "#shared/contracts/scaling.ts";
import { made } from "../../format.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { numberOf, readGrams } from "../../parts/typed-amount.ts";
import { readDish } from "../../parts/typed-dish.ts";

/** Names in the address, and ids of their controls. */
export const SCALE_NAMES = ["batches", "yield", "crop", "hand", "from", "to", "pot"] as const;
export type ScaleName = (typeof SCALE_NAMES)[number];
export type ScaleFields = Readonly<Record<ScaleName, string>>;

export const scaleFields = (query: URLSearchParams): ScaleFields => Object.fromEntries(SCALE_NAMES.map((name) => [name, query.get(name) ?? ""])) as ScaleFields;
export const NOT_SCALED = Object.fromEntries(SCALE_NAMES.map((name) => [name, ""])) as ScaleFields;

/** As the address wants it: an empty field is left out. */
export const inAddress = (fields: ScaleFields): Record<string, string | null> => Object.fromEntries(SCALE_NAMES.map((name) => [name, fields[name].trim() || null]));

export type Asked = { readonly kind: "as written" } | { readonly kind: "ask"; readonly body: ScaleAsked } | { readonly kind: "wrong"; readonly faults: readonly FieldProblem[] };

/** One question only: the dish before the produce at hand, that before the yield, that before batches. */
export function askedOf(fields: ScaleFields): Asked {
  const faults: FieldProblem[] = [];
  const bad = (field: ScaleName, text: string): undefined => void faults.push({ field, text });
  const pot = fields.pot.trim() === "" ? undefined : positive(fields.pot, () => bad("pot", "Largest pot: litres above 0, such as 5"));
  const question = questionOf(fields, bad);
  if (faults.length > 0) return { kind: "wrong", faults };
  if (question === null && pot === undefined) return { kind: "as written" };
  const parsed = ScaleAsked.safeParse({ ...(question ?? { batches: 1 }), ...(pot === undefined ? {} : { potLitres: pot }) });
  return parsed.success ? { kind: "ask", body: parsed.data } : { kind: "wrong", faults: parsed.error.issues.map(({ path, message }) => scaleFault(path.map(String), message)) };
}

function questionOf(fields: ScaleFields, bad: (field: ScaleName, text: string) => undefined): Partial<ScaleAsked> | null {
  if (fields.from.trim() !== "" || fields.to.trim() !== "") {
    const [from, to] = [readDish(fields.from), readDish(fields.to)];
    if (!from.ok) bad("from", `The dish it is written for: ${lowered(from.wrong)} ${from.works}`);
    if (!to.ok) bad("to", `Our dish: ${lowered(to.wrong)} ${to.works}`);
    return from.ok && to.ok ? { dish: { from: from.value, to: to.value } } : null;
  }
  if (fields.hand.trim() !== "") {
    const grams = readGrams(fields.hand);
    if (!grams.ok) return bad("hand", `At hand: ${lowered(grams.wrong)} ${grams.works}`) ?? null;
    return fields.crop === "" ? (bad("crop", "Choose what it is that is at hand.") ?? null) : { atHand: { crop: fields.crop, grams: grams.value } };
  }
  if (fields.yield.trim() !== "") return { yield: positive(fields.yield, () => bad("yield", "To make: a number above 0, such as 12")) ?? 1 };
  if (fields.batches.trim() === "" || fields.batches === "1") return null;
  return { batches: positive(fields.batches, () => bad("batches", "Batches: a number above 0, such as 2 or 1.5")) ?? 1 };
}

const lowered = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

function positive(text: string, fail: () => undefined): number | undefined {
  const n = numberOf(text.trim(), false);
  return n === null || n <= 0 ? fail() : n;
}

const CONTROLS: Readonly<Record<string, ScaleName>> = { batches: "batches", yield: "yield", crop: "crop", grams: "hand", from: "from", to: "to", dish: "to", atHand: "hand", potLitres: "pot" };

/** Where a refusal of the service belongs. */
export function scaleFault(path: readonly string[], message: string): FieldProblem {
  const name = [...path].reverse().find((part) => part in CONTROLS) ?? "batches";
  return { field: CONTROLS[name] ?? "batches", text: message };
}

/** “2”, “1½”: a number as a kitchen says it. */
export function kitchenNumber(n: number): string {
  const whole = Math.floor(n);
  const part = FRACTIONS.find(([value]) => Math.abs(n - whole - value) < 0.005);
  if (part) return `${whole === 0 ? "" : whole}${part[1]}`;
  return String(Math.round(n * 100) / 100);
}

const FRACTIONS = [[0.25, "¼"], [1 / 3, "⅓"], [0.5, "½"], [2 / 3, "⅔"], [0.75, "¾"]] as const;

/** The amounts that stand ready to press; a tested preserving recipe goes in whole batches only. */
export function readyAmounts(recipe: Pick<Recipe, "makes" | "process">): { readonly value: string; readonly words: string }[] {
  const batches = recipe.process === undefined ? [0.5, 1, 1.5, 2, 3] : [1, 2, 3];
  return batches.map((n) => ({ value: String(n), words: `${kitchenNumber(n)}: ${made({ amount: Math.round(recipe.makes.amount * n * 100) / 100, unit: recipe.makes.unit })}` }));
}
