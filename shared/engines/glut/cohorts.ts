/**
 * One crop through all scenarios, week by week, each week's pick kept apart. Question: what is eaten, used, left? Grams and whole weeks.
 * The chosen ways take the oldest first, then the table does; what is left when its weeks are up was over. Source of the bookkeeping:
 * first to expire, first out, with whole keeping weeks K: a pick of week t can be used in t … t + K − 1.
 */
import type { GlutCrop, Ledger } from "./types.ts";

export function keepLedger(crop: GlutCrop): Ledger {
  const scenarios = crop.supply.scenarios.length;
  const { from, weeks } = weeksWithAny(crop);
  const size = scenarios * weeks;
  const overSize = crop.waits ? 0 : size;
  const ledger: Ledger = {
    crop: crop.supply.crop, scenarios, from, weeks,
    available: new Float64Array(size), eaten: new Float64Array(size), used: new Float64Array(size), surplus: new Float64Array(overSize), over: new Float64Array(overSize),
    onHand: new Float64Array(scenarios), leftStanding: new Float64Array(scenarios),
  };
  const run = crop.waits ? waitingScenario : keepingScenario;
  for (let s = 0; s < scenarios; s++) run(crop, s, ledger);
  return ledger;
}

/** From the first week with a pick in any scenario to the last in which one of the last can be used. */
function weeksWithAny({ supply, keepWeeks, waits, openingGrams }: GlutCrop): { from: number; weeks: number } {
  let first = supply.weeks.length;
  let last = -1;
  // what is there before the first week has lost its day of harvest: it is taken as of the first week
  if (waits && openingGrams && Array.from(openingGrams).some((grams) => grams > 0)) [first, last] = [0, 0];
  for (let s = 0; s < supply.scenarios.length; s++) {
    const grams = supply.scenarios[s] as Float64Array;
    const flags = supply.inHarvest[s] as Uint8Array;
    for (let w = 0; w < grams.length; w++)
      if (grams[w] !== 0 || (waits && flags[w] === 1)) {
        if (w < first) first = w;
        if (w > last) last = w;
      }
  }
  return last < 0 ? { from: 0, weeks: 0 } : { from: first, weeks: Math.min(supply.weeks.length, last + keepWeeks) - first };
}

function keepingScenario(crop: GlutCrop, s: number, ledger: Ledger): void {
  const { from, weeks } = ledger;
  const left = new Float64Array((crop.supply.scenarios[s] as Float64Array).subarray(from, from + weeks));
  const at = s * weeks;
  for (let w = 0; w < weeks; w++) {
    const oldest = Math.max(0, w - crop.keepWeeks + 1);
    const there = sum(left, oldest, w);
    if (there === 0) continue;
    ledger.available[at + w] = there;
    ledger.used[at + w] = take(left, oldest, w, crop.plannedGrams[from + w] as number);
    ledger.eaten[at + w] = take(left, oldest, w, crop.eatsGrams);
    ledger.surplus[at + w] = sum(left, oldest, w);
    const expires = w - crop.keepWeeks + 1;
    if (expires >= 0) ledger.over[at + expires] = left[expires] as number;
  }
  // picks of the last K − 1 weeks are still within their time; where the ledger ends before the question, there are none in them
  ledger.onHand[s] = sum(left, Math.max(0, weeks - crop.keepWeeks + 1), weeks - 1);
}

/** What waits on the stem or in the store is one heap; it is gone when `keepWeeks` have passed without harvest. */
function waitingScenario(crop: GlutCrop, s: number, ledger: Ledger): void {
  const { from, weeks } = ledger;
  const grams = crop.supply.scenarios[s] as Float64Array;
  const inHarvest = crop.supply.inHarvest[s] as Uint8Array;
  const at = s * weeks;
  let heap = crop.openingGrams?.[s] ?? 0;
  let since = 0;
  for (let w = 0; w < weeks; w++) {
    since = w === 0 || inHarvest[from + w] === 1 || grams[from + w] !== 0 ? 0 : since + 1;
    if (since >= crop.keepWeeks) {
      ledger.leftStanding[s] = (ledger.leftStanding[s] as number) + heap;
      heap = 0;
    }
    heap += grams[from + w] as number;
    ledger.available[at + w] = heap;
    const used = Math.min(heap, crop.plannedGrams[from + w] as number);
    const eaten = Math.min(heap - used, crop.eatsGrams);
    heap -= eaten + used;
    ledger.eaten[at + w] = eaten;
    ledger.used[at + w] = used;
  }
  // the weeks kept end where the last of it would be gone, unless the question ends before
  if (from + weeks < crop.supply.weeks.length) ledger.leftStanding[s] = (ledger.leftStanding[s] as number) + heap;
  else ledger.onHand[s] = heap;
}

/** Takes up to `wanted` from the oldest on, leaves the rest in place; answers what was taken. */
function take(left: Float64Array, oldest: number, newest: number, wanted: number): number {
  let still = wanted;
  for (let w = oldest; w <= newest && still > 0; w++) {
    const taken = Math.min(still, left[w] as number);
    left[w] = (left[w] as number) - taken;
    still -= taken;
  }
  return wanted - still;
}

function sum(left: Float64Array, from: number, to: number): number {
  let total = 0;
  for (let w = from; w <= to; w++) total += left[w] as number;
  return total;
}
