/** Question: how much does a line ask for in all? What is added or taken off depends on whose spoons: an Australian cup holds 12½ tablespoons, a US cup 16. */
import { minus, plus, rational, times } from "../../kernel/quantity.ts";
import { converted, type MeasureSystem } from "../../kernel/units.ts";
import type { MeasureTables, ReadAmount, ReadLine } from "./types.ts";
import { unitOf } from "./unit-of.ts";

export type Total = Pick<ReadLine, "amount" | "amountMax" | "unit">;

/** The first amount with what is to be added or taken off, in the first one's unit. */
export function totalOf(amounts: readonly ReadAmount[], tables: MeasureTables, system: MeasureSystem = "us"): Total {
  const first = amounts[0];
  if (!first) return { amount: null, amountMax: null, unit: null };
  const piecesOf = amounts[1];
  // a 1-inch piece of ginger: one of it, and the inch is its size
  if (first.text === "" && first.unit === "piece" && piecesOf?.role === "each") return { amount: first.amount, amountMax: null, unit: null };
  // 2 x 400 g without a container: the weight is what counts
  if (first.role === "times" && first.unit === null && piecesOf?.role === "each" && piecesOf.unit !== null && piecesOf.amount && first.amount) {
    const kind = unitOf(piecesOf.unit, system, tables)?.kind;
    if (kind === "mass" || kind === "volume") return { amount: times(first.amount, piecesOf.amount), amountMax: piecesOf.max && times(first.amount, piecesOf.max), unit: piecesOf.unit };
  }
  let amount = first.amount;
  for (const more of amounts.slice(1)) {
    if ((more.role !== "plus" && more.role !== "minus") || !amount || !more.amount || first.unit === null || more.unit === null) continue;
    const unit = unitOf(first.unit, system, tables);
    const other = unitOf(more.unit, system, tables);
    if (!unit || !other || unit.kind !== other.kind) continue;
    const part = converted(more.amount, other, unit);
    amount = more.role === "plus" ? plus(amount, part) : minus(amount, part);
  }
  return { amount: amount && rational(amount.n, amount.d), amountMax: first.max, unit: first.unit };
}

/** The line's total by another kitchen's spoons; the same line where nothing is added or taken off. */
export function totalIn(line: ReadLine, system: MeasureSystem, tables: MeasureTables): Total {
  return line.amounts.some(({ role }) => role === "plus" || role === "minus") ? totalOf(line.amounts, tables, system) : line;
}
