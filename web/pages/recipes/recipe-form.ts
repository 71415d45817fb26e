/** A recipe as it stands in the form. Steps are named by their number on the page; ids are kept for those already stored. Pure. */
import type { NewRecipe, Recipe, Step } from "#shared/contracts/recipes.ts";
import { PLACE_KINDS, type PlaceKind } from "#shared/kernel/way.ts";

type Hold = NonNullable<NewRecipe["holds"]>[number];

export interface StepFields {
  readonly id: string;
  readonly text: string;
  readonly handsOn: string;
  /** Minutes by itself: "40", "35–50", "35–40–50". */
  readonly handsOff: string;
  readonly ovenC: string;
  readonly trays: string;
  readonly burners: string;
  readonly pots: string;
  readonly sinks: string;
  /** Numbers of the steps that must have ended: "1" or "1, 3". */
  readonly after: string;
  /** Minutes it may wait after them: "15", or "5 after 1, 15 after 3". */
  readonly within: string;
  /** So many to do, and so many at a time: loads. */
  readonly of: string;
  readonly holds: string;
  /** What the form has no field for. */
  readonly kept: Pick<Step, "startAtMin" | "notBeforeMin" | "endByMin">;
}

export interface IngredientFields {
  readonly text: string;
  readonly crop: string;
  readonly madeBy: string;
  /** The food it is read as, where somebody has said so; no field, but not lost. */
  readonly food: string;
}

/** A pot, burner or sink that stays taken from the start of one step to the end of another. */
export interface HoldFields {
  readonly what: Hold["what"];
  readonly from: string;
  readonly to: string;
}

/** The longest time from the end of one step to the start of another. */
export interface LimitFields {
  readonly maxMin: string;
  readonly from: string;
  readonly to: string;
  readonly why: string;
}

export interface RecipeFields {
  readonly title: string;
  readonly way: Recipe["way"];
  readonly makesAmount: string;
  readonly makesUnit: string;
  readonly ingredients: readonly IngredientFields[];
  readonly steps: readonly StepFields[];
  readonly holds: readonly HoldFields[];
  readonly limits: readonly LimitFields[];
  /** Days by place. */
  readonly keeps: Readonly<Record<PlaceKind, string>>;
  readonly allergens: string;
  readonly reheat: string;
  readonly note: string;
  readonly process: string;
  /** Whose cups and spoons; empty for the household's own. */
  readonly measures: NewRecipe["measures"] | "";
}

/** Whose cups a recipe may mean, in the words of the form. */
export const MEASURE_WORDS: Readonly<Record<NonNullable<NewRecipe["measures"]>, string>> = {
  metric: "Metric: cup 250 ml, tablespoon 15 ml",
  us: "American: cup 237 ml, tablespoon 15 ml",
  imperial: "British: pint 568 ml, tablespoon 15 ml",
  australian: "Australian: cup 250 ml, tablespoon 20 ml",
  label: "American labels: cup 240 ml",
};

export const emptyIngredient: IngredientFields = { text: "", crop: "", madeBy: "", food: "" };
export const emptyHold: HoldFields = { what: "pots", from: "", to: "" };
export const emptyLimit: LimitFields = { maxMin: "", from: "", to: "", why: "" };
export const emptyStep = (id: string, after: string): StepFields => ({ id, text: "", handsOn: "", handsOff: "", ovenC: "", trays: "", burners: "", pots: "", sinks: "", after, within: "", of: "", holds: "", kept: {} });

export function recipeFields(recipe: Recipe | NewRecipe | null): RecipeFields {
  const numberOf = (id: string): string => String((recipe?.steps.findIndex((step) => step.id === id) ?? -1) + 1);
  return {
    title: recipe?.title ?? "",
    way: recipe?.way ?? "cook",
    makesAmount: said(recipe?.makes.amount),
    makesUnit: recipe?.makes.unit ?? "portions",
    ingredients: recipe?.ingredients.map(({ text, crop = "", madeBy = "", food = "" }) => ({ text, crop, madeBy, food })) ?? [emptyIngredient],
    steps: recipe?.steps.map((step) => stepFields(step, numberOf)) ?? [emptyStep("step-1", "")],
    holds: recipe?.holds?.map(({ what, from, to }) => ({ what, from: numberOf(from), to: numberOf(to) })) ?? [],
    limits: recipe?.limits?.map(({ maxMin, from, to, why = "" }) => ({ maxMin: String(maxMin), from: numberOf(from), to: numberOf(to), why })) ?? [],
    keeps: Object.fromEntries(PLACE_KINDS.map((place) => [place, said(recipe?.keeps.find((kept) => kept.place === place)?.days)])) as Record<PlaceKind, string>,
    allergens: recipe?.allergens?.join(", ") ?? "",
    reheat: recipe?.reheat ?? "",
    note: recipe?.note ?? "",
    process: recipe?.process ?? "",
    measures: recipe?.measures ?? "",
  };
}

function stepFields(step: Step, numberOf: (id: string) => string): StepFields {
  const { id, text, handsOnMin, handsOffMin, needs, after, maxWaitMin, loads, startAtMin, notBeforeMin, endByMin } = step;
  return {
    id,
    text,
    handsOn: String(handsOnMin),
    handsOff: rangeText(handsOffMin),
    ovenC: said(needs.oven?.c),
    trays: said(needs.oven?.trays),
    burners: said(needs.burners),
    pots: said(needs.pots),
    sinks: said(needs.sinks),
    after: after.map(numberOf).join(", "),
    within: typeof maxWaitMin === "object" ? Object.entries(maxWaitMin).map(([before, min]) => `${min} after ${numberOf(before)}`).join(", ") : said(maxWaitMin),
    of: said(loads?.of),
    holds: said(loads?.holds),
    kept: { ...(startAtMin === undefined ? {} : { startAtMin }), ...(notBeforeMin === undefined ? {} : { notBeforeMin }), ...(endByMin === undefined ? {} : { endByMin }) },
  };
}

/** "35–50" where the likely time lies in the middle, else all three. */
function rangeText(off: Step["handsOffMin"]): string {
  if (typeof off === "number") return off === 0 ? "" : String(off);
  return off.likely === middleOf(off.low, off.high) ? `${off.low}–${off.high}` : `${off.low}–${off.likely}–${off.high}`;
}

export const middleOf = (low: number, high: number): number => Math.round((low + high) / 2);

const said = (value: number | undefined): string => (value === undefined ? "" : String(value));
