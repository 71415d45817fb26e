/** Reads the form of a recipe: the body to send, or each control with what is wrong. Pure. */
import { NewRecipe, type Step } from "#shared/contracts/recipes.ts";
import { PLACE_KINDS } from "#shared/kernel/way.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { faultAt } from "./recipe-faults.ts";
import { middleOf, type HoldFields, type IngredientFields, type LimitFields, type RecipeFields, type StepFields } from "./recipe-form.ts";

export type ReadRecipe = { readonly ok: true; readonly body: NewRecipe } | { readonly ok: false; readonly faults: readonly FieldProblem[] };

/** Notes a fault at a control. */
type Bad = (field: string, text: string) => void;

export function readRecipe(fields: RecipeFields): ReadRecipe {
  const faults: FieldProblem[] = [];
  const bad: Bad = (field, text) => {
    if (!faults.some((fault) => fault.field === field)) faults.push({ field, text });
  };
  const ids = fields.steps.map((step) => step.id);
  const body = {
    title: fields.title,
    way: fields.way,
    makes: { amount: numberIn(fields.makesAmount), unit: fields.makesUnit },
    ingredients: fields.ingredients.filter(isWritten).map(ingredientOf),
    steps: fields.steps.map((step, i) => readStep(step, i, ids, bad)),
    holds: fields.holds.flatMap((hold, i) => readHold(hold, i, ids, bad)),
    limits: fields.limits.flatMap((limit, i) => readLimit(limit, i, ids, bad)),
    keeps: PLACE_KINDS.flatMap((place) => (fields.keeps[place].trim() === "" ? [] : [{ place, days: wholeIn(fields.keeps[place]) }])),
    allergens: fields.allergens.split(",").map((word) => word.trim()).filter(Boolean),
    ...(fields.reheat.trim() ? { reheat: fields.reheat } : {}),
    ...(fields.note.trim() ? { note: fields.note } : {}),
    ...(fields.process.trim() ? { process: fields.process } : {}),
    ...(fields.measures ? { measures: fields.measures } : {}),
  };
  const parsed = NewRecipe.safeParse(body);
  for (const { path, message } of parsed.error?.issues ?? []) {
    const fault = faultAt(path.map(String), message, fields);
    bad(fault.field, fault.text);
  }
  return parsed.success && faults.length === 0 ? { ok: true, body: parsed.data } : { ok: false, faults };
}

export const isWritten = ({ text }: IngredientFields): boolean => text.trim() !== "";

const ingredientOf = ({ text, crop, madeBy, food }: IngredientFields): object => ({ text, ...(crop ? { crop } : {}), ...(madeBy ? { madeBy } : {}), ...(food ? { food } : {}) });

function readStep(fields: StepFields, index: number, ids: readonly string[], badAt: Bad): Record<string, unknown> {
  const bad = (name: string, text: string): void => badAt(`step-${index}-${name}`, `Step ${index + 1}: ${text}`);
  const after = numbersIn(fields.after);
  if (after === null || after.some((n) => n < 1 || n > ids.length)) bad("after", `name the steps before it by their numbers from 1 to ${ids.length}, such as 1 or 1, 3`);
  else if (after.includes(index + 1)) bad("after", "a step cannot come after itself");
  const off = minutesIn(fields.handsOff);
  if (off === null) bad("off", "minutes by itself: 40, or 35–50 for a range");
  const within = withinOf(fields.within, ids);
  if (within === null) bad("within", "minutes it may wait: 15, or 5 after 1, 15 after 3");
  else if (within !== undefined && after?.length === 0) bad("within", "say which step it comes after, or leave the wait empty");
  else if (typeof within === "object" && Object.keys(within).some((id) => !after?.includes(ids.indexOf(id) + 1))) bad("within", "it waits for a step that it does not come after");
  const loads = loadsOf(fields);
  if (loads === null) bad("of", "how many there are to do and how many go at a time, such as 24 and 8");
  return {
    id: fields.id,
    text: fields.text,
    handsOnMin: fields.handsOn.trim() === "" ? 0 : wholeIn(fields.handsOn),
    handsOffMin: off ?? 0,
    needs: needsOf(fields),
    after: (after ?? []).flatMap((n) => ids[n - 1] ?? []),
    ...(within === null || within === undefined ? {} : { maxWaitMin: within }),
    ...(loads ? { loads } : {}),
    ...fields.kept,
  };
}

function needsOf(fields: StepFields): object {
  const counted = (["burners", "pots", "sinks"] as const).filter((name) => fields[name].trim() !== "").map((name) => [name, wholeIn(fields[name])]);
  const oven = fields.ovenC.trim() === "" ? {} : { oven: { c: wholeIn(fields.ovenC), trays: fields.trays.trim() === "" ? 1 : wholeIn(fields.trays) } };
  return { ...oven, ...(Object.fromEntries(counted) as object) };
}

/** Undefined for no loads, null for what is not two whole numbers. */
function loadsOf({ of, holds }: StepFields): Step["loads"] | null {
  if (of.trim() === "" && holds.trim() === "") return undefined;
  const loads = { of: wholeIn(of), holds: wholeIn(holds) };
  return loads.of >= 1 && loads.holds >= 1 ? loads : null;
}

function readHold({ what, from, to }: HoldFields, i: number, ids: readonly string[], bad: Bad): object[] {
  const [first, last] = [ids[wholeIn(from) - 1], ids[wholeIn(to) - 1]];
  const words = `Kept through steps: a number of a step from 1 to ${ids.length}`;
  if (first === undefined) bad(`hold-${i}-from`, words);
  if (last === undefined) bad(`hold-${i}-to`, words);
  return first === undefined || last === undefined ? [] : [{ what, from: first, to: last }];
}

function readLimit({ maxMin, from, to, why }: LimitFields, i: number, ids: readonly string[], bad: Bad): object[] {
  const [first, last] = [ids[wholeIn(from) - 1], ids[wholeIn(to) - 1]];
  const words = `Time limit: a number of a step from 1 to ${ids.length}`;
  if (Number.isNaN(wholeIn(maxMin))) bad(`limit-${i}-maxMin`, "Time limit: whole minutes, such as 120");
  if (first === undefined) bad(`limit-${i}-from`, words);
  if (last === undefined) bad(`limit-${i}-to`, words);
  else if (first === last) bad(`limit-${i}-to`, "Time limit: two different steps are needed");
  return first === undefined || last === undefined ? [] : [{ from: first, to: last, maxMin: wholeIn(maxMin), ...(why.trim() ? { why } : {}) }];
}

/** Undefined for no limit, null for what cannot be read. */
function withinOf(text: string, ids: readonly string[]): number | Record<string, number> | null | undefined {
  if (text.trim() === "") return undefined;
  if (/^\s*\d+\s*(?:min)?\s*$/.test(text)) return parseInt(text, 10);
  const pairs = pairsIn(text);
  if (pairs === null || pairs.some(({ step }) => ids[step - 1] === undefined)) return null;
  return Object.fromEntries(pairs.map(({ step, min }) => [ids[step - 1] as string, min]));
}

/** "5 after 1, 15 after 3" as pairs; null for anything else. */
export function pairsIn(text: string): { readonly min: number; readonly step: number }[] | null {
  const pairs = text.split(",").map((pair) => /^\s*(\d+)\s*(?:min)?\s*after\s*(\d+)\s*$/i.exec(pair));
  return pairs.some((pair) => pair === null) ? null : pairs.map((pair) => ({ min: Number(pair?.[1]), step: Number(pair?.[2]) }));
}

/** "40" → 40; "35–50" → low, middle, high; "30–40–55" as it says; "" → 0; null for anything else. */
export function minutesIn(text: string): Step["handsOffMin"] | null {
  if (text.trim() === "") return 0;
  const parts = text.trim().replace(/\s*min$/, "").split(/\s*(?:–|-|to)\s*/);
  if (parts.some((part) => !/^\d+$/.test(part)) || parts.length > 3) return null;
  const [a = 0, b, c] = parts.map(Number);
  if (b === undefined) return a;
  const range = c === undefined ? { low: a, likely: middleOf(a, b), high: b } : { low: a, likely: b, high: c };
  return range.low <= range.likely && range.likely <= range.high ? range : null;
}

/** "1, 3" as numbers; null for anything else. */
export function numbersIn(text: string): number[] | null {
  const parts = text.split(/[\s,]+/).filter((part) => part !== "" && part !== "and");
  return parts.every((part) => /^\d+$/.test(part)) ? parts.map(Number) : null;
}

const wholeIn = (text: string): number => (/^\s*\d+\s*$/.test(text) ? Number(text) : NaN);
const numberIn = (text: string): number => (/^\s*\d+(?:[.,]\d+)?\s*$/.test(text) ? Number(text.replace(",", ".")) : NaN);
