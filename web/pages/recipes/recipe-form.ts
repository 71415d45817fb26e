/** A recipe as typed, and the body it makes. Steps are named by their number on the page; ids are kept for those already stored. */
import { NewRecipe, type Recipe, type Step } from "#shared/contracts/recipes.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";

export interface StepFields {
  readonly id: string;
  readonly text: string;
  readonly handsOn: string;
  /** Minutes by itself: "40", or "35–50" for a range. */
  readonly handsOff: string;
  readonly ovenC: string;
  readonly trays: string;
  readonly burners: string;
  readonly sinks: string;
  /** Numbers of the steps that must have ended: "1" or "1, 3". */
  readonly after: string;
  readonly within: string;
  readonly loads?: Step["loads"];
}

export interface IngredientFields {
  readonly text: string;
  readonly crop: string;
  readonly madeBy: string;
}

export interface RecipeFields {
  readonly title: string;
  readonly way: Recipe["way"];
  readonly makesAmount: string;
  readonly makesUnit: string;
  readonly ingredients: readonly IngredientFields[];
  readonly steps: readonly StepFields[];
  readonly fridgeDays: string;
  readonly freezerDays: string;
  readonly shelfDays: string;
  readonly cellarDays: string;
  readonly potFrom: string;
  readonly potTo: string;
  readonly allergens: string;
  readonly reheat: string;
  readonly note: string;
  readonly process: string;
}

export const emptyStep = (number: number): StepFields => ({ id: `step-${number}`, text: "", handsOn: "", handsOff: "", ovenC: "", trays: "1", burners: "", sinks: "", after: number > 1 ? String(number - 1) : "", within: "" });
export const emptyIngredient: IngredientFields = { text: "", crop: "", madeBy: "" };

export function recipeFields(recipe: Recipe | null): RecipeFields {
  const kept = (place: string): string => String(recipe?.keeps.find((k) => k.place === place)?.days ?? "");
  const numberOf = (id: string): string => String((recipe?.steps.findIndex((step) => step.id === id) ?? -1) + 1);
  const pot = recipe?.holds.find((hold) => hold.what === "pots");
  return {
    title: recipe?.title ?? "",
    way: recipe?.way ?? "cook",
    makesAmount: recipe ? String(recipe.makes.amount) : "",
    makesUnit: recipe?.makes.unit ?? "portions",
    ingredients: recipe?.ingredients.map(({ text, crop, madeBy }) => ({ text, crop: crop ?? "", madeBy: madeBy ?? "" })) ?? [emptyIngredient],
    steps: recipe?.steps.map((step) => stepFields(step, numberOf)) ?? [emptyStep(1)],
    fridgeDays: kept("fridge"),
    freezerDays: kept("freezer"),
    shelfDays: kept("shelf"),
    cellarDays: kept("cellar"),
    potFrom: pot ? numberOf(pot.from) : "",
    potTo: pot ? numberOf(pot.to) : "",
    allergens: recipe?.allergens.join(", ") ?? "",
    reheat: recipe?.reheat ?? "",
    note: recipe?.note ?? "",
    process: recipe?.process ?? "",
  };
}

function stepFields(step: Step, numberOf: (id: string) => string): StepFields {
  const off = step.handsOffMin;
  const wait = step.maxWaitMin;
  return {
    id: step.id,
    text: step.text,
    handsOn: String(step.handsOnMin),
    handsOff: typeof off === "number" ? String(off) : `${off.low}–${off.likely}–${off.high}`,
    ovenC: String(step.needs.oven?.c ?? ""),
    trays: String(step.needs.oven?.trays ?? 1),
    burners: String(step.needs.burners ?? ""),
    sinks: String(step.needs.sinks ?? ""),
    after: step.after.map(numberOf).join(", "),
    within: wait === undefined ? "" : typeof wait === "number" ? String(wait) : Object.entries(wait).map(([id, min]) => `${numberOf(id)}: ${min}`).join(", "),
    ...(step.loads ? { loads: step.loads } : {}),
  };
}

export type ReadRecipe = { readonly ok: true; readonly body: NewRecipe } | { readonly ok: false; readonly faults: readonly FieldProblem[] };

/** The body to send, or each field with what is wrong. `stored` keeps what the form does not show. */
export function readRecipe(fields: RecipeFields, stored: Recipe | null): ReadRecipe {
  const ids = fields.steps.map((step) => step.id);
  const faults: FieldProblem[] = [];
  const steps = fields.steps.map((step, i) => readStep(step, i, ids, faults));
  const keeps = (["fridge", "freezer", "shelf", "cellar"] as const).flatMap((place) => {
    const days = fields[`${place}Days`];
    return days.trim() === "" ? [] : [{ place, days: wholeIn(days) }];
  });
  const body = {
    title: fields.title,
    way: fields.way,
    makes: { amount: numberIn(fields.makesAmount), unit: fields.makesUnit },
    ingredients: fields.ingredients
      .filter(({ text }) => text.trim() !== "")
      .map(({ text, crop, madeBy }) => ({ text, ...(crop ? { crop } : {}), ...(madeBy ? { madeBy } : {}) })),
    steps,
    keeps,
    holds: [...(stored?.holds.filter((hold) => hold.what !== "pots" && ids.includes(hold.from) && ids.includes(hold.to)) ?? []), ...readPot(fields, ids, faults)],
    limits: stored?.limits.filter((limit) => ids.includes(limit.from) && ids.includes(limit.to)) ?? [],
    allergens: fields.allergens.split(",").map((word) => word.trim()).filter(Boolean),
    ...(fields.reheat.trim() ? { reheat: fields.reheat } : {}),
    ...(fields.note.trim() ? { note: fields.note } : {}),
    ...(fields.process.trim() ? { process: fields.process } : {}),
  };
  const parsed = NewRecipe.safeParse(body);
  for (const issue of parsed.error?.issues ?? []) faults.push(faultAt(issue.path.map(String), issue.message));
  const first = [...new Map(faults.reverse().map((fault) => [fault.field, fault])).values()].reverse();
  return parsed.success && first.length === 0 ? { ok: true, body: parsed.data } : { ok: false, faults: first };
}

function readStep(fields: StepFields, index: number, ids: readonly string[], faults: FieldProblem[]): Record<string, unknown> {
  const bad = (name: string, text: string): void => void faults.push({ field: `step-${index}-${name}`, text: `Step ${index + 1}: ${text}` });
  const after = numbersIn(fields.after);
  if (after === null || after.some((n) => n < 1 || n > ids.length || n === index + 1)) bad("after", "name the steps before it by their numbers, such as 1 or 1, 3");
  const off = minutesIn(fields.handsOff);
  if (off === null) bad("off", "minutes by itself, such as 40, or 35–50 for a range");
  const within = withinOf(fields.within, ids);
  if (within === null) bad("within", "minutes it may wait, such as 15");
  return {
    id: fields.id,
    text: fields.text,
    handsOnMin: fields.handsOn.trim() === "" ? 0 : wholeIn(fields.handsOn),
    handsOffMin: off ?? 0,
    needs: {
      ...(fields.ovenC.trim() ? { oven: { c: wholeIn(fields.ovenC), trays: wholeIn(fields.trays || "1") } } : {}),
      ...(fields.burners.trim() ? { burners: wholeIn(fields.burners) } : {}),
      ...(fields.sinks.trim() ? { sinks: wholeIn(fields.sinks) } : {}),
    },
    after: (after ?? []).flatMap((n) => ids[n - 1] ?? []),
    ...(within === null || within === undefined ? {} : { maxWaitMin: within }),
    ...(fields.loads ? { loads: fields.loads } : {}),
  };
}

function readPot(fields: RecipeFields, ids: readonly string[], faults: FieldProblem[]): { what: "pots"; from: string; to: string }[] {
  if (!fields.potFrom.trim() && !fields.potTo.trim()) return [];
  const from = ids[wholeIn(fields.potFrom) - 1];
  const to = ids[wholeIn(fields.potTo) - 1];
  if (from === undefined || to === undefined) {
    faults.push({ field: "potFrom", text: "Large pot: give the numbers of the first and the last step it is in" });
    return [];
  }
  return [{ what: "pots", from, to }];
}

/** Undefined for no limit, null for what cannot be read. */
function withinOf(text: string, ids: readonly string[]): number | Record<string, number> | null | undefined {
  if (text.trim() === "") return undefined;
  if (/^\s*\d+\s*$/.test(text)) return Number(text);
  const pairs = text.split(",").map((pair) => /^\s*(\d+)\s*:\s*(\d+)\s*$/.exec(pair));
  if (pairs.some((pair) => pair === null || ids[Number(pair[1]) - 1] === undefined)) return null;
  return Object.fromEntries(pairs.map((pair) => [ids[Number(pair?.[1]) - 1] as string, Number(pair?.[2])]));
}

/** "40" → 40; "35–50" → low, middle, high; "30–40–55" as it says; "" → 0; null for anything else. */
function minutesIn(text: string): number | { low: number; likely: number; high: number } | null {
  if (text.trim() === "") return 0;
  const parts = text.trim().split(/\s*(?:–|-|to)\s*/);
  if (parts.some((part) => !/^\d+$/.test(part)) || parts.length > 3) return null;
  const [a = 0, b, c] = parts.map(Number);
  if (b === undefined) return a;
  return c === undefined ? { low: a, likely: Math.round((a + b) / 2), high: b } : { low: a, likely: b, high: c };
}

function numbersIn(text: string): number[] | null {
  if (text.trim() === "") return [];
  const parts = text.split(/[\s,]+/).filter(Boolean);
  return parts.every((part) => /^\d+$/.test(part)) ? parts.map(Number) : null;
}

const wholeIn = (text: string): number => (/^\s*\d+\s*$/.test(text) ? Number(text) : NaN);
const numberIn = (text: string): number => (/^\s*\d+(?:[.,]\d+)?\s*$/.test(text) ? Number(text.replace(",", ".")) : NaN);

const STEP_FIELDS: Readonly<Record<string, string>> = { text: "text", handsOnMin: "on", handsOffMin: "off", needs: "oven", after: "after", maxWaitMin: "within", loads: "text", id: "text" };
const FIELDS: Readonly<Record<string, [string, string]>> = {
  title: ["title", "Name of the dish"],
  makes: ["makesAmount", "What it makes"],
  keeps: ["fridgeDays", "How long it keeps"],
  process: ["process", "Tested process"],
  allergens: ["allergens", "Contains"],
};

/** The control that a path of the body belongs to, with plain words; also for the paths of the service's answers. */
export function faultAt(path: readonly string[], message: string): FieldProblem {
  const plain = /NaN|expected number|invalid input/i.test(message) ? "a number is needed" : message;
  if (path[0] === "steps" && path[1] !== undefined) return { field: `step-${path[1]}-${STEP_FIELDS[path[2] ?? "text"] ?? "text"}`, text: `Step ${Number(path[1]) + 1}: ${plain}` };
  if (path[0] === "ingredients" && path[1] !== undefined) return { field: `ingredient-${path[1]}`, text: `Ingredient ${Number(path[1]) + 1}: ${plain}` };
  const [field, name] = FIELDS[path[0] ?? "title"] ?? ["title", "The recipe"];
  return { field, text: `${name}: ${plain}` };
}
