/** Question: which cautions belong beside this recipe, crop or jar? Short plain words; allergens are the recipe's own and not here. */
import type { Way } from "../../kernel/way.ts";
import { rowsOf } from "./canning.ts";
import type { PreservationTables } from "./types.ts";

export interface CautionQuestion {
  readonly way?: Way;
  readonly crops?: readonly string[];
  /** Food or row key of the tested tables. */
  readonly process?: string | null;
  /** Other foods that have a caution: oil, kidney-bean. */
  readonly foods?: readonly string[];
  readonly topics?: readonly CautionTopic[];
}

export type CautionTopic = "jar" | "cooling" | "holding" | "fridge" | "reheating" | "at-risk" | "authority";

/** A process shorter than this needs sterilised jars (USDA Complete Guide 2015, Guide 1, p. 1-14). */
const STERILE_JARS_BELOW_MIN = 10;

/** Texts in the order of the table, the deference to local authority last. */
export function cautionsFor(question: CautionQuestion, tables: PreservationTables): readonly string[] {
  const tokens = new Set<string>([
    ...(question.way ? [`way:${question.way}`] : []),
    ...(question.crops ?? []).map((crop) => `crop:${crop}`),
    ...(question.foods ?? []).map((food) => `food:${food}`),
    ...(question.topics ?? []).map((topic) => `topic:${topic}`),
    ...processTokens(question.process ?? null, tables),
  ]);
  return tables.cautions.filter((row) => row.on.some((token) => tokens.has(token))).map((row) => row.text);
}

function processTokens(process: string | null, tables: PreservationTables): string[] {
  const rows = process === null ? [] : rowsOf(process, tables);
  return rows.flatMap((row) => [
    "process:any",
    `process:${row.kind}`,
    `process:${row.food}`,
    ...(row.canner === "boiling-water" ? [] : ["process:pressure"]),
    ...(row.canner === "boiling-water" && row.bands.some((band) => band.minutes < STERILE_JARS_BELOW_MIN) ? ["process:short"] : []),
  ]);
}
