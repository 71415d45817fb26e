/** What is read from a recipe that somebody pasted. Minutes whole, temperatures in °C as a still oven is set. */
import type { RecipeStep } from "../../kernel/recipe.ts";
import type { MeasureSystem } from "../../kernel/units.ts";
import type { Way } from "../../kernel/way.ts";

/** How many characters and words were looked at: the reader's own count, from which its growth with the text can be told without a clock. */
export interface Work {
  looks: number;
}

/** The recipe cut into its parts, none of them read yet. */
export interface RecipeParts {
  readonly title: string | null;
  readonly yieldText: string | null;
  readonly ingredients: readonly string[];
  /** One step or several in each. */
  readonly method: readonly string[];
  readonly notes: readonly string[];
  /** Work before the cooking, as the recipe states it for the whole. */
  readonly prepMin: number | null;
  readonly notUnderstood: readonly NotUnderstood[];
}

export interface NotUnderstood {
  readonly text: string;
  readonly why: string;
}

/** `path` is dotted into the recipe: makes, steps.2.handsOffMin. */
export interface Doubt {
  readonly path: string;
  readonly text: string;
  readonly why: string;
}

/** A phrase of a step, and what was made of it. */
export interface Found {
  readonly text: string;
  readonly means: string;
}

export interface ReadStep {
  readonly step: RecipeStep;
  readonly found: readonly Found[];
}

export interface KeepSaid {
  readonly place: "fridge" | "freezer" | "shelf";
  readonly days: number;
  readonly text: string;
  /** The words name no place, and the fridge is taken. */
  readonly placeUnsaid: boolean;
}

export interface ReadRecipe {
  readonly title: string;
  readonly way: Way;
  readonly makes: { readonly amount: number; readonly unit: string };
  readonly ingredients: readonly string[];
  readonly steps: readonly ReadStep[];
  readonly note: string | null;
  /** Whose cups and spoons; null where nothing says. */
  readonly measures: MeasureSystem | null;
  /** How long the recipe itself says that it keeps; whether that may be is not the reader's to say. */
  readonly keeps: readonly KeepSaid[];
  readonly doubts: readonly Doubt[];
  readonly notUnderstood: readonly NotUnderstood[];
  readonly looks: number;
}

/** The longest that a draft can hold, as the book of recipes has it. */
export const LONGEST = { title: 120, ingredient: 400, ingredients: 80, step: 1_000, steps: 80, note: 2_000, minutes: 10_080 } as const;
