/** Where a fault of a recipe belongs on the page, in plain words; for the form's own reading and for the service's answers. Pure. */
import { PLACE_KINDS } from "#shared/kernel/way.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import type { RecipeFields } from "./recipe-form.ts";

const STEP_CONTROLS: Readonly<Record<string, string>> = { text: "text", handsOnMin: "on", handsOffMin: "off", after: "after", maxWaitMin: "within", loads: "of", oven: "oven", trays: "trays", burners: "burners", pots: "pots", sinks: "sinks" };
const CONTROLS: Readonly<Record<string, readonly [field: string, name: string]>> = {
  title: ["title", "Name of the dish"],
  way: ["way", "What it does with the produce"],
  process: ["process", "Tested process"],
  allergens: ["allergens", "Contains"],
  reheat: ["reheat", "To reheat"],
  note: ["note", "Note"],
};

/** `fields` tell which rows were sent: empty ingredients and places without days are left out. */
export function faultAt(path: readonly string[], message: string, fields: Pick<RecipeFields, "ingredients" | "keeps">): FieldProblem {
  const [head = "", at = "", part = ""] = path;
  const words = plainly(message);
  const index = Number(at);
  switch (head) {
    case "steps":
      return { field: `step-${index || 0}-${stepControl(path.slice(2))}`, text: `Step ${(index || 0) + 1}: ${words}` };
    case "ingredients": {
      const row = fields.ingredients.map((one, i) => ({ one, i })).filter(({ one }) => one.text.trim() !== "")[index]?.i ?? 0;
      return { field: part === "crop" || part === "madeBy" ? `comes-${row}` : `ingredient-${row}`, text: `Ingredient ${row + 1}: ${words}` };
    }
    case "holds":
      return { field: `hold-${index}-${part || "from"}`, text: `Kept through steps: ${words}` };
    case "limits":
      return { field: `limit-${index}-${part || "maxMin"}`, text: `Time limit: ${words}` };
    case "keeps": {
      const place = PLACE_KINDS.filter((kind) => fields.keeps[kind].trim() !== "")[index || 0] ?? "fridge";
      return { field: `keeps-${place}`, text: `How long it keeps, ${place}: ${words}` };
    }
    case "makes":
      return at === "unit" ? { field: "makesUnit", text: `Of what: ${words}` } : { field: "makesAmount", text: `One batch makes: ${words}` };
    default: {
      const [field, name] = CONTROLS[head] ?? ["title", "The recipe"];
      return { field, text: `${name}: ${words}` };
    }
  }
}

const stepControl = (path: readonly string[]): string => STEP_CONTROLS[path.findLast((part) => part in STEP_CONTROLS) ?? "text"] ?? "text";

/** The parser's own words for a missing number say nothing to a cook. */
const plainly = (message: string): string => (/NaN|expected number|invalid input/i.test(message) ? "a number is needed" : message);
