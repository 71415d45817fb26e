/** A recipe for another amount: what scaling decides, printed in both systems by the tables of measures. */
import { bothSystems, readIngredient, weighIngredient, type MeasureTables, type ReadLine } from "../engines/measures/index.ts";
import { doesNotScale, factorOf, fitsOf, heldMl, ruleFor, tinWords, type Asked, type Fit, type Kitchen, type LineRule, type LineToScale, type RecipeToScale, type Scales, type Unscaled } from "../engines/scaling/index.ts";
import { ok, type Result } from "../kernel/outcome.ts";
import { asNumber, rational, times, type Rational } from "../kernel/quantity.ts";
import type { Hold, RecipeStep, RecipeUse } from "../kernel/recipe.ts";
import type { MeasureSystem } from "../kernel/units.ts";

export interface WrittenLine {
  readonly text: string;
  readonly crop?: string | undefined;
  readonly food?: string | undefined;
  readonly madeBy?: string | undefined;
}

export interface RecipeAsked {
  /** As the pairing knows it: yield, process, grams as picked. */
  readonly use: RecipeUse;
  readonly lines: readonly WrittenLine[];
  readonly steps: readonly RecipeStep[];
  readonly holds: readonly Hold[];
  /** Whose cups and spoons the lines mean. */
  readonly system: MeasureSystem;
  /** Whose lie in the drawer; the lines' own where nothing is said. */
  readonly printIn?: MeasureSystem;
  readonly kitchen: Kitchen;
}

export interface ScaledLine extends WrittenLine {
  readonly line: string;
  readonly grams: number | null;
  readonly byWeight: string | null;
  readonly byMeasure: string | null;
  readonly weightErrorPercent: number | null;
  readonly measureErrorPercent: number | null;
  readonly scales: Scales;
  readonly note: string | null;
}

export interface ScaledRecipe {
  readonly batches: number;
  readonly apart: boolean;
  readonly makes: { readonly amount: number; readonly unit: string; readonly text: string };
  readonly ingredients: readonly ScaledLine[];
  readonly uses: RecipeUse["uses"];
  readonly leftGrams: number | null;
  readonly steps: readonly { readonly id: string; readonly text: string; readonly handsOnMin: number; readonly loads: number; readonly note: string | null }[];
  readonly doesNotScale: readonly { readonly what: Unscaled; readonly text: string }[];
  readonly fits: readonly Fit[];
  readonly cautions: readonly string[];
}

export function scaledRecipe(recipe: RecipeAsked, asked: Asked, tables: MeasureTables): Result<ScaledRecipe> {
  const read = recipe.lines.map((line) => readLine(line, recipe, tables));
  const scaling = toScale(recipe, read);
  const decided = factorOf(scaling, asked);
  if (!decided.ok) return decided;
  const { factor, apart, leftGrams } = decided.value;
  const batches = asNumber(factor);
  const lines = read.map((one) => scaledLine(one, factor, apart, recipe, tables));
  const kinds = new Set(lines.flatMap(({ rule }) => rule.of ?? []));
  return ok({
    batches: Math.round(batches * 1000) / 1000,
    apart,
    makes: makesOf(recipe.use.makes, batches),
    ingredients: lines.map(({ scaled }) => scaled),
    uses: recipe.use.uses.map(({ crop, grams }) => ({ crop, grams: Math.round(grams * batches) })),
    leftGrams,
    steps: recipe.steps.map((step) => stepOf(step, batches)),
    doesNotScale: apart ? [] : doesNotScale(scaling, batches, kinds, asked.dish !== undefined),
    fits: [...dishFit(asked, tables), ...fitsOf(scaling, apart ? 1 : batches, recipe.kitchen)],
    cautions: [...(apart && batches > 1 ? [`Make ${batches} batches one after the other, each by itself. A tested recipe is never made larger in one pot.`] : []), ...(apart ? ["The amounts of a tested recipe stay as they are: no less acid or salt, no more vegetable."] : [])],
  });
}

interface Read {
  readonly written: WrittenLine;
  readonly line: ReadLine;
  readonly exactGrams: number | null;
  readonly asPickedGrams: number | null;
}

type Systems = Pick<RecipeAsked, "system" | "printIn">;

const optionsOf = ({ crop, food }: WrittenLine, { system, printIn = system }: Systems) => ({ system, printIn, ...(crop === undefined ? {} : { crop }), ...(food === undefined ? {} : { food }) });

function readLine(written: WrittenLine, systems: Systems, tables: MeasureTables): Read {
  const line = readIngredient(written.text, tables);
  const weighed = weighIngredient(line, tables, optionsOf(written, systems)).value;
  return { written, line, exactGrams: weighed?.exactGrams ?? null, asPickedGrams: weighed?.asPickedGrams ?? null };
}

function toScale({ use, steps, holds }: RecipeAsked, read: readonly Read[]): RecipeToScale {
  const { title, way, makes, process, uses } = use;
  return { title, way, makes, process, steps, uses, lines: read.map(lineOf), holdsPot: holds.some(({ what }) => what === "pots") || steps.some(({ needs }) => (needs.pots ?? 0) > 0) };
}

function lineOf({ line, exactGrams }: Read): LineToScale {
  return { text: line.text, food: line.food, said: `${line.preparation} ${line.comment}`, amount: line.amount, pieces: line.unit === null, grams: exactGrams };
}

function scaledLine(read: Read, factor: Rational, apart: boolean, systems: Systems, tables: MeasureTables): { scaled: ScaledLine; rule: LineRule } {
  const { written, line } = read;
  const by = asNumber(factor);
  const rule: LineRule = apart ? { scales: line.amount === null ? "not" : "in-proportion", of: null, note: null, wholePieces: null } : ruleFor(lineOf(read), by);
  const still = rule.scales === "not" || rule.scales === "by-pan";
  const whole = rule.wholePieces === null || line.amount === null ? factor : times(rational(rule.wholePieces), { n: line.amount.d, d: line.amount.n });
  const grown = still ? line : multiplied(line, whole);
  const grams = read.exactGrams === null ? null : read.exactGrams * (still ? 1 : by);
  const printed = bothSystems(grown, grams, tables, optionsOf(written, systems));
  const eggError = rule.wholePieces === null || line.amount === null ? null : Math.round((rule.wholePieces / (asNumber(line.amount) * by) - 1) * 1000) / 10;
  const picked = read.asPickedGrams ?? read.exactGrams;
  return {
    rule,
    scaled: {
      ...written,
      line: apart ? (by === 1 ? written.text : `${by} × (${written.text})`) : still || by === 1 ? written.text : lineText(grown, printed, tables),
      grams: picked === null ? null : Math.round(picked * (still ? 1 : by)),
      byWeight: printed.byWeight,
      byMeasure: printed.byMeasure,
      weightErrorPercent: printed.weightErrorPercent,
      measureErrorPercent: eggError ?? printed.measureErrorPercent,
      scales: rule.scales,
      note: rule.note,
    },
  };
}

/** Each amount that says how much grows; the size of one tin or piece stays. */
function multiplied(line: ReadLine, factor: Rational): ReadLine {
  const grow = (amount: Rational | null): Rational | null => amount && times(amount, factor);
  return { ...line, amount: grow(line.amount), amountMax: grow(line.amountMax), amounts: line.amounts.map((one) => (one.role === "each" || one.role === "remark" ? one : { ...one, amount: grow(one.amount), max: grow(one.max) })) };
}

/** As the line itself measures: a weight as a weight, cups and pieces as such. */
function lineText(line: ReadLine, { byWeight, byMeasure }: { readonly byWeight: string | null; readonly byMeasure: string | null }, tables: MeasureTables): string {
  const kind = line.unit === null ? undefined : [...(tables.units.get(line.unit)?.values() ?? [])][0]?.kind;
  const spoons = line.unit === "cup" || line.unit === "tablespoon" || line.unit === "teaspoon";
  const amount = kind !== undefined && !spoons ? (byWeight ?? byMeasure) : (byMeasure ?? byWeight);
  const each = line.amounts.find(({ role }) => role === "each");
  const size = each && kind === undefined ? ` of ${each.text} ${each.unitWords.join(" ")}` : "";
  const rest = [line.preparation, line.comment].filter((words) => words !== "").join(", ");
  return `${amount ?? ""}${size} ${line.food}${rest === "" ? "" : `, ${rest}`}`.trim();
}

function makesOf({ amount, unit }: RecipeUse["makes"], batches: number): ScaledRecipe["makes"] {
  const made = Math.round(amount * batches * 100) / 100;
  return { amount: made, unit, text: `${made} ${unit}` };
}

function stepOf({ id, text, handsOnMin, loads }: RecipeStep, batches: number): ScaledRecipe["steps"][number] {
  const count = loads ? Math.ceil((loads.of * batches) / loads.holds - 1e-9) : 1;
  return { id, text, handsOnMin: handsOnMin * count, loads: count, note: count > 1 ? `In ${count} loads.` : null };
}

function dishFit({ dish }: Asked, tables: MeasureTables): Fit[] {
  if (!dish) return [];
  const deep = dish.to.deepCm === undefined || dish.from.deepCm === undefined ? "as deep as before" : `${dish.to.deepCm} cm deep instead of ${dish.from.deepCm}`;
  const held = heldMl(dish.to, tables.pans);
  const litres = (ml: number): number => Math.round(ml / 100) / 10;
  const holds = held ? ` The new one holds ${litres(held.low) === litres(held.high) ? "" : `${litres(held.low)} to `}${litres(held.high)} litres to the rim; fill a cake tin half to two thirds.` : "";
  return [{ what: "dish", fits: true, text: `From ${tinWords(dish.from)} to ${tinWords(dish.to)}, ${deep}.${holds}` }];
}
