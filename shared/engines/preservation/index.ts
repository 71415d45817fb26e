/** The only door: tested processes, safe ways, keeping and cautions, all looked up in the tables that are handed in. */
export { preservationTables } from "./tables.ts";
export { boilBeforeTastingMin, isTestedProcess, processesFor, testedProcess } from "./canning.ts";
export type { ProcessLine, ProcessQuestion, ProcessSheet, TestedFigure, TestedProcess } from "./canning.ts";
export { mayKeep } from "./may-keep.ts";
export type { RecipeToKeep } from "./may-keep.ts";
export type { IngredientLine } from "./tested-lines.ts";
export { safeWays } from "./safe-ways.ts";
export type { KeepingWay, WayAnswer } from "./safe-ways.ts";
export { blanching } from "./freezing.ts";
export { coolingStages, dishKeeps, keepsHow } from "./keeping.ts";
export type { CoolingStage } from "./keeping.ts";
export { cautionsFor } from "./cautions.ts";
export type { CautionQuestion, CautionTopic } from "./cautions.ts";
export type { BlanchingRow, Canner, CanningRow, Jar, KeepingPlace, KeepingRow, PreservationTables } from "./types.ts";
export { keepAnswer } from "./answer.ts";
export type { KeepAnswer, KeepQuestion } from "./answer.ts";
