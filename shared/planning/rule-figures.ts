/** Single published figures by their key in the tables of keeping. A key that is not there is a mistake in seed-data. */
import type { PreservationTables } from "../engines/preservation/index.ts";
import type { SourceRef } from "../kernel/outcome.ts";

export interface RuleSpan {
  readonly low: number;
  readonly high: number;
  readonly source: SourceRef;
}

export function ruleSpan(lowKey: string, highKey: string, tables: PreservationTables): RuleSpan {
  const [low, high] = [lowKey, highKey].map((key) => tables.rules.find((row) => row.key === key));
  if (typeof low?.value !== "number" || typeof high?.value !== "number") throw new RangeError(`preservation/rules: no rows ${lowKey} and ${highKey}`);
  return { low: low.value, high: high.value, source: { id: low.source, text: `${tables.publications.get(low.source) ?? low.source}: ${low.page}` } };
}

/** Days that cooked food keeps in a fridge, months that it keeps its quality frozen. */
export const leftoverDays = (tables: PreservationTables): RuleSpan => ruleSpan("leftover-days-low", "leftover-days-high", tables);
export const leftoverMonthsFrozen = (tables: PreservationTables): RuleSpan => ruleSpan("leftover-frozen-low", "leftover-frozen-high", tables);
/** Pounds of food that is not frozen yet, for each cubic foot of a freezer in 24 hours. */
export const freezingPounds = (tables: PreservationTables): RuleSpan => ruleSpan("freezing-new-food-per-cubic-foot-per-24-h-lower", "freezing-new-food-per-cubic-foot-per-24-h-upper", tables);

/** A single figure in the unit of its row. */
export function ruleFigure(key: string, tables: PreservationTables): number {
  const value = tables.rules.find((row) => row.key === key)?.value;
  if (typeof value !== "number") throw new RangeError(`preservation/rules: no row ${key}`);
  return value;
}
