/** Two versions of a recipe as lines to compare: what is typed here, what somebody else has saved. Pure. */
import { MEASURE_WORDS, type RecipeFields } from "./recipe-form.ts";

export interface Difference {
  readonly name: string;
  readonly mine: string;
  readonly theirs: string;
}

export function differences(mine: RecipeFields, theirs: RecipeFields): Difference[] {
  const lines = (of: (fields: RecipeFields) => string, name: string): Difference => ({ name, mine: of(mine), theirs: of(theirs) });
  const steps = Array.from({ length: Math.max(mine.steps.length, theirs.steps.length) }, (_, i) => lines((fields) => stepLine(fields, i), `Step ${i + 1}`));
  return [
    lines(({ title }) => title, "Name"),
    lines(({ way }) => way, "Way"),
    lines(({ makesAmount, makesUnit }) => `${makesAmount} ${makesUnit}`, "Makes"),
    lines(({ ingredients }) => ingredients.map(({ text, crop, madeBy }) => [text, crop, madeBy && "made by another recipe"].filter(Boolean).join(", ")).filter(Boolean).join("; "), "Ingredients"),
    ...steps,
    lines(({ holds }) => holds.map(({ what, from, to }) => `${what} from step ${from} to ${to}`).join("; "), "Stays taken"),
    lines(({ limits }) => limits.map(({ maxMin, from, to, why }) => `${maxMin} min from step ${from} to ${to} ${why}`.trim()).join("; "), "Time limits"),
    lines(({ keeps }) => Object.entries(keeps).filter(([, days]) => days.trim() !== "").map(([place, days]) => `${place} ${days}`).join(", "), "Keeps, days"),
    lines(({ allergens }) => allergens, "Contains"),
    lines(({ reheat }) => reheat, "To reheat"),
    lines(({ process }) => process, "Tested process"),
    lines(({ measures }) => (measures ? MEASURE_WORDS[measures] : ""), "Cups and spoons"),
    lines(({ note }) => note, "Note"),
  ].filter((one) => one.mine !== one.theirs);
}

function stepLine({ steps }: RecipeFields, i: number): string {
  const step = steps[i];
  if (!step) return "";
  const said: [string, string][] = [
    ["hands", step.handsOn],
    ["by itself", step.handsOff],
    ["after", step.after],
    ["within", step.within],
    ["oven", step.ovenC],
    ["trays", step.trays],
    ["burners", step.burners],
    ["pots", step.pots],
    ["sinks", step.sinks],
    ["pieces", step.of],
    ["at a time", step.holds],
  ];
  return [step.text, ...said.filter(([, value]) => value.trim() !== "" && value !== "0").map(([name, value]) => `${name} ${value}`)].join(", ");
}
