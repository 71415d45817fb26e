/**
 * Question: does it fit? The pot by its litres, filled to three quarters at most; the oven by its trays. Common practice, no source.
 * A kilogram is taken as a litre, which is near enough for what simmers; only what has a weight is counted, and that is said.
 */
import type { RecipeToScale } from "./types.ts";

export interface Fit {
  readonly what: "pot" | "oven" | "dish";
  readonly fits: boolean | null;
  readonly text: string;
}

const FULL_SHARE = 0.75;

export interface Kitchen {
  readonly potLitres: number | null;
  /** Of the largest oven; null where it is not known. */
  readonly trays: number | null;
}

/** `inOnePot` is the factor of what cooks together: 1 where batches are made apart. */
export function fitsOf(recipe: RecipeToScale, inOnePot: number, kitchen: Kitchen): Fit[] {
  return [...potFit(recipe, inOnePot, kitchen.potLitres), ...ovenFit(recipe, inOnePot, kitchen.trays)];
}

function potFit(recipe: RecipeToScale, factor: number, potLitres: number | null): Fit[] {
  if (!recipe.holdsPot) return [];
  const grams = recipe.lines.reduce((sum, line) => sum + (line.grams ?? 0), 0) * factor;
  if (grams === 0) return [];
  const unknown = recipe.lines.some((line) => line.grams === null && line.amount !== null) ? " without what has no known weight" : "";
  const needed = tenth(grams / 1000 / FULL_SHARE);
  const about = `About ${tenth(grams / 1000)} litres${unknown}: a pot of ${needed} litres or more, three quarters full at most.`;
  if (potLitres === null) return [{ what: "pot", fits: null, text: about }];
  const fits = potLitres >= needed;
  return [{ what: "pot", fits, text: fits ? `${about} Yours of ${tenth(potLitres)} litres holds it.` : `${about} Yours of ${tenth(potLitres)} litres does not: cook it in ${Math.ceil(needed / potLitres)} pots.` }];
}

function ovenFit(recipe: RecipeToScale, factor: number, trays: number | null): Fit[] {
  const needed = Math.max(0, ...recipe.steps.map(({ needs, loads }) => (needs.oven && !loads ? Math.ceil(needs.oven.trays * factor - 1e-9) : 0)));
  if (needed === 0) return [];
  const wants = `${needed} ${needed === 1 ? "tray" : "trays"} in the oven at once`;
  if (trays === null) return [{ what: "oven", fits: null, text: `Takes ${wants}.` }];
  if (needed <= trays) return [{ what: "oven", fits: true, text: `Takes ${wants}, and yours holds ${trays}.` }];
  return [{ what: "oven", fits: false, text: trays === 0 ? "Takes an oven, and there is none." : `Takes ${wants}, and yours holds ${trays}: bake in ${Math.ceil(needed / trays)} loads.` }];
}

const tenth = (value: number): number => Math.ceil(value * 10 - 1e-9) / 10;
