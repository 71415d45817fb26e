/** The only door: how many batches, what each line does, what does not scale, whether it fits. */
export { factorOf } from "./factor.ts";
export { ruleFor } from "./lines.ts";
export type { LineRule } from "./lines.ts";
export { doesNotScale } from "./unscaled.ts";
export { fitsOf } from "./fits.ts";
export type { Fit, Kitchen } from "./fits.ts";
export { boilMin } from "./boil.ts";
export { dishesToCool } from "./cooling.ts";
export { areaCm2, heldMl, tinFactor, tinWords, volumeMl } from "./tins.ts";
export type { PublishedTin } from "./tins.ts";
export type { Asked, Factor, LineToScale, RecipeToScale, Scales, Tin, Unscaled } from "./types.ts";
