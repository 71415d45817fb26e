/** The only door: a recipe as somebody pasted it, or as a page publishes it, read into parts with every doubt named. */
export { readJsonLd, readRecipeText } from "./read-recipe.ts";
export { isoMinutes } from "./iso-minutes.ts";
export type { Doubt, Found, KeepSaid, NotUnderstood, ReadRecipe, ReadStep } from "./types.ts";
