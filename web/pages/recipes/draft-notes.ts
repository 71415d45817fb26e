/** What was read into a draft and how sure it is, at the control where it now stands. A doubt goes once its control has been changed. Pure. */
import type { RecipeDraft } from "#shared/contracts/recipe-reading.ts";
import { count } from "../../format.ts";
import { faultAt } from "./recipe-faults.ts";
import { recipeFields, type RecipeFields, type StepFields } from "./recipe-form.ts";

/** Over the form: how much of it wants a look. */
export const draftSentence = (doubts: number): string =>
  doubts === 0 ? "The recipe is read and nothing in it is doubtful. Look it over, then save it." : `The recipe is read; ${count(doubts, "part of it is", "parts of it are")} doubtful. Look at ${doubts === 1 ? "it" : "them"}, then save it.`;

export interface DraftNote {
  /** Id of the control. */
  readonly field: string;
  readonly text: string;
}

/** Doubts that still stand, in the order of the form's parts. */
export function doubtsOf(draft: RecipeDraft, now: RecipeFields): DraftNote[] {
  const read = recipeFields(draft.recipe);
  return draft.doubts.flatMap(({ path, text, why }) => {
    const parts = moved(path.split("."), draft, now);
    if (parts === null) return [];
    const said = text === "" ? why : `“${text}”: ${why}`;
    const { field, text: words } = faultAt(parts, said, now);
    const before = faultAt(path.split("."), "", read).field;
    if (valueAt(now, field) !== valueAt(read, before)) return [];
    return [{ field, text: parts.length === 1 && parts[0] !== undefined && parts[0] in WHOLE ? `${WHOLE[parts[0]]}: ${said}` : words }];
  });
}

/** What each control was read from: the weight of an ingredient, the phrases of a step. */
export function readingsOf(draft: RecipeDraft, now: RecipeFields): DraftNote[] {
  const lines = now.ingredients.flatMap(({ text }, i) => {
    const line = draft.ingredients.find((one) => one.text === text);
    const amounts = [line?.byWeight, line?.byMeasure].filter(Boolean).join(" · ");
    return line ? [{ field: `ingredient-${i}`, text: amounts === "" ? "No weight is known for this line; it stays as written." : `Read as ${amounts}.` }] : [];
  });
  const steps = now.steps.flatMap(({ id }, i) => {
    const found = draft.steps.find((step) => step.id === id)?.found ?? [];
    return found.length === 0 ? [] : [{ field: `step-${i}-text`, text: `Read: ${found.map(({ text, means }) => `“${text}” as ${means}`).join("; ")}.` }];
  });
  return [...lines, ...steps];
}

/** Parts that are doubtful as a whole. */
const WHOLE: Readonly<Record<string, string>> = { steps: "Steps", ingredients: "Ingredients", keeps: "Keeping" };

/** Where the thing a path names stands now; null when it is gone. */
function moved(path: readonly string[], draft: RecipeDraft, now: RecipeFields): string[] | null {
  const [head = "", at = "", ...rest] = path;
  if (path.length === 1) return [...path];
  if (head === "steps") {
    const index = now.steps.findIndex(({ id }) => id === draft.recipe.steps[Number(at)]?.id);
    return index < 0 ? null : [head, String(index), ...rest];
  }
  if (head === "ingredients") {
    const index = now.ingredients.filter(({ text }) => text.trim() !== "").findIndex(({ text }) => text === draft.recipe.ingredients[Number(at)]?.text);
    return index < 0 ? null : [head, String(index), ...rest];
  }
  return [...path];
}

const STEP_LINES: Readonly<Record<string, Exclude<keyof StepFields, "kept">>> = { text: "text", on: "handsOn", off: "handsOff", after: "after", within: "within", of: "of", oven: "ovenC", trays: "trays", burners: "burners", pots: "pots", sinks: "sinks" };

/** What stands in a control, to tell whether somebody has changed it. */
function valueAt(fields: RecipeFields, field: string): string {
  const [name = "", at = "", line = ""] = field.split("-");
  if (name === "step") return fields.steps[Number(at)]?.[STEP_LINES[line] ?? "text"] ?? "";
  if (name === "ingredient") return fields.ingredients[Number(at)]?.text ?? "";
  if (name === "comes") return `${fields.ingredients[Number(at)]?.crop ?? ""}${fields.ingredients[Number(at)]?.madeBy ?? ""}`;
  if (name === "makesAmount" || name === "makesUnit") return `${fields.makesAmount} ${fields.makesUnit}`;
  if (name === "keeps") return Object.values(fields.keeps).join(" ");
  const value = fields[name as keyof RecipeFields];
  return typeof value === "string" ? value : "";
}
