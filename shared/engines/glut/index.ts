/**
 * Question: in which weeks does more ripen than the household eats fresh and has planned to use, and how much is over?
 * Grams by ISO week, scenario by scenario; a percentile is taken last. Model, limits and proof: README.md beside this file.
 */
import type { CropFacts } from "../../kernel/crop-facts.ts";
import type { Outcome, SourceRef } from "../../kernel/outcome.ts";
import { keepLedger } from "./cohorts.ts";
import { middleOf, middles } from "./middle.ts";
import type { CropBalance, GlutAnswer, GlutCrop, GlutQuestion, Ledger, WeekBalance } from "./types.ts";

export type { CropBalance, GlutAnswer, GlutCrop, GlutQuestion, Ledger, WeekBalance } from "./types.ts";

/** A kitchen fridge at 4 °C keeps produce about half as long as the best conditions of the storage tables; common practice, no source. */
const FRIDGE_SHARE = 0.5;
const DAYS_A_WEEK = 7;

const KEEPING: SourceRef = {
  id: "CP",
  text: "A kitchen fridge keeps produce about half as long as the best conditions of the storage tables; common practice, no source",
};

/**
 * Whole weeks a pick can be used, the week of picking included: max(1, ⌊days ÷ 7⌋). Days are half of the table's for what goes into the
 * kitchen fridge, all of them for what waits for the grower and goes to its own store.
 */
export function keepWeeksOf(crop: Pick<CropFacts, "keepDays">, waits: boolean): number {
  const days = waits ? crop.keepDays : crop.keepDays * FRIDGE_SHARE;
  return Math.max(1, Math.floor(days / DAYS_A_WEEK));
}

/** Balances of each crop and of all together. Throws RangeError when supplies differ in shape: a programmer's mistake. */
export function findGluts(question: GlutQuestion): Outcome<GlutAnswer> {
  question.crops.forEach((crop) => checkShape(crop, question));
  const crops = question.crops.map(balanceOf);
  return { value: { crops, weeks: weekBalances(question, crops.map((crop) => crop.ledger)) }, basis: [KEEPING], notes: [] };
}

/**
 * Newly over in weeks `from` … `until` − 1 of all these crops together, each gram counted once, in the week it was picked:
 * the middle of the scenarios' sums, grams.
 */
export function overBetween(ledgers: readonly Ledger[], from: number, until: number): number {
  const sums = new Float64Array(ledgers[0]?.scenarios ?? 0);
  for (const ledger of ledgers) {
    // a crop that waits has no column of what is over
    if (ledger.over.length === 0) continue;
    const first = Math.max(0, from - ledger.from);
    const end = Math.min(ledger.weeks, until - ledger.from);
    for (let s = 0; s < sums.length; s++) for (let w = first; w < end; w++) sums[s] = (sums[s] as number) + (ledger.over[s * ledger.weeks + w] as number);
  }
  return middleOf(sums);
}

function balanceOf(crop: GlutCrop): CropBalance {
  const ledger = keepLedger(crop);
  const all = crop.supply.weeks.length;
  return {
    crop: crop.supply.crop,
    waits: crop.waits,
    availableGrams: middles(ledger.available, ledger.scenarios, ledger, all),
    freshGrams: middles(ledger.eaten, ledger.scenarios, ledger, all),
    surplusGrams: crop.waits ? new Float64Array(all) : middles(ledger.surplus, ledger.scenarios, ledger, all),
    ledger,
  };
}

function weekBalances(question: GlutQuestion, ledgers: readonly Ledger[]): WeekBalance[] {
  const kept = ledgers.filter((_, c) => !(question.crops[c] as GlutCrop).waits);
  const eaten = middlesTogether(kept, "eaten", question.weeks.length);
  const used = middlesTogether(kept, "used", question.weeks.length);
  const surplus = middlesTogether(kept, "surplus", question.weeks.length);
  return question.weeks.map((week, w) => {
    const surplusGrams = surplus[w] as number;
    return {
      week,
      freshGrams: eaten[w] as number,
      usedGrams: used[w] as number,
      surplusGrams,
      glut: surplusGrams > 0 && surplusGrams >= question.glutGrams,
    };
  });
}

/** Added up in each scenario, then the middle of each week. */
function middlesTogether(ledgers: readonly Ledger[], part: "eaten" | "used" | "surplus", weeks: number): Float64Array {
  const scenarios = ledgers[0]?.scenarios ?? 0;
  const sum = new Float64Array(scenarios * weeks);
  for (const ledger of ledgers) {
    const grams = ledger[part];
    for (let s = 0; s < scenarios; s++) {
      const to = s * weeks + ledger.from;
      const of = s * ledger.weeks;
      for (let w = 0; w < ledger.weeks; w++) sum[to + w] = (sum[to + w] as number) + (grams[of + w] as number);
    }
  }
  return middles(sum, scenarios, { from: 0, weeks }, weeks);
}

function checkShape(crop: GlutCrop, question: GlutQuestion): void {
  const { supply } = crop;
  const scenarios = (question.crops[0] as GlutCrop).supply.scenarios.length;
  const fits =
    supply.weeks.length === question.weeks.length &&
    supply.scenarios.length === scenarios &&
    supply.inHarvest.length === scenarios &&
    crop.plannedGrams.length === question.weeks.length &&
    Number.isInteger(crop.keepWeeks) &&
    crop.keepWeeks >= 1;
  if (!fits) throw new RangeError(`the supply of ${supply.crop} does not fit the weeks asked for`);
}
