/**
 * One crop through all scenarios, week by week, each week's pick kept apart. Question: what is eaten, used, left? Grams and whole weeks.
 * Eating takes the oldest first, then the chosen ways do; what is left when its weeks are up was over. Source of the bookkeeping:
 * first to expire, first out, with whole keeping weeks K: a pick of week t can be used in t … t + K − 1.
 */
import type { GlutCrop, Ledger } from "./types.ts";

export function keepLedger(crop: GlutCrop): Ledger {
  const weeks = crop.supply.weeks.length;
  const scenarios = crop.supply.scenarios.length;
  const grid = () => new Float64Array(scenarios * weeks);
  const ledger: Ledger = {
    crop: crop.supply.crop, scenarios, weeks,
    available: grid(), eaten: grid(), used: grid(), surplus: grid(), over: grid(),
    onHand: new Float64Array(scenarios), leftStanding: new Float64Array(scenarios),
  };
  const run = crop.waits ? waitingScenario : keepingScenario;
  for (let s = 0; s < scenarios; s++) run(crop, s, ledger);
  return ledger;
}

function keepingScenario(crop: GlutCrop, s: number, ledger: Ledger): void {
  const left = Float64Array.from(crop.supply.scenarios[s] as Float64Array);
  const wanted = crop.eatsGrams;
  const at = s * ledger.weeks;
  for (let w = 0; w < ledger.weeks; w++) {
    const oldest = Math.max(0, w - crop.keepWeeks + 1);
    const there = sum(left, oldest, w);
    if (there === 0) continue;
    ledger.available[at + w] = there;
    ledger.eaten[at + w] = take(left, oldest, w, wanted);
    ledger.used[at + w] = take(left, oldest, w, crop.plannedGrams[w] as number);
    ledger.surplus[at + w] = sum(left, oldest, w);
    const expires = w - crop.keepWeeks + 1;
    if (expires >= 0) ledger.over[at + expires] = left[expires] as number;
  }
  ledger.onHand[s] = sum(left, Math.max(0, ledger.weeks - crop.keepWeeks + 1), ledger.weeks - 1);
}

/** What waits on the stem or in the store is one heap; it is gone when `keepWeeks` have passed without harvest. */
function waitingScenario(crop: GlutCrop, s: number, ledger: Ledger): void {
  const grams = crop.supply.scenarios[s] as Float64Array;
  const inHarvest = crop.supply.inHarvest[s] as Uint8Array;
  const wanted = crop.eatsGrams;
  const at = s * ledger.weeks;
  let heap = 0;
  let since = 0;
  for (let w = 0; w < ledger.weeks; w++) {
    since = inHarvest[w] === 1 ? 0 : since + 1;
    if (since >= crop.keepWeeks) {
      ledger.leftStanding[s] = (ledger.leftStanding[s] as number) + heap;
      heap = 0;
    }
    heap += grams[w] as number;
    ledger.available[at + w] = heap;
    const eaten = Math.min(heap, wanted);
    const used = Math.min(heap - eaten, crop.plannedGrams[w] as number);
    heap -= eaten + used;
    ledger.eaten[at + w] = eaten;
    ledger.used[at + w] = used;
  }
  ledger.onHand[s] = heap;
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
