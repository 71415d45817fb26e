/** The only door: an ingredient line read, weighed and printed in both systems, by the tables that are handed in. */
export { lineDoubt } from "./line-doubt.ts";
export { measureTables } from "./tables.ts";
export { readIngredient } from "./read-line.ts";
export { weighIngredient } from "./weigh.ts";
export type { Weighed, WeighOptions } from "./weigh.ts";
export { bothSystems } from "./both-systems.ts";
export type { BothSystems } from "./both-systems.ts";
export { asPicked, asUsed } from "./as-picked.ts";
export { cropOf } from "./crop-of.ts";
export { nameKey, singular } from "./names.ts";
export type { MeasureTables, ReadAmount, ReadLine } from "./types.ts";
