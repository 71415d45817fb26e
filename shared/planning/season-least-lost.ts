/**
 * The least of one crop that is lost when the batches are fixed and eating and giving are free, in one course of the season. Grams.
 * What goes off first is used first. In each week as much is eaten as leaves later batches what they need: a gram eaten now is one less to lose, and
 * the appetite of this week does not come back.
 */
import type { SeasonCrop } from "../engines/season-plan/index.ts";

interface Lot {
  readonly lastWeek: number;
  grams: number;
}

/** `takes`: grams that the batches take, by week; what is not there for them is bought. Answers what is lost at the end of each week. */
export function leastLost(crop: SeasonCrop, takes: readonly number[]): number[] {
  const picked = crop.harvestGrams[0] ?? [];
  // what keeps to the end is never lost, whatever is made of it
  if (crop.keepWeeks >= picked.length) return picked.map(() => 0);
  const lots: Lot[] = [];
  return picked.map((grams, t) => {
    if (grams > 0) lots.push({ lastWeek: t + crop.keepWeeks - 1, grams });
    take(lots, takes[t] ?? 0);
    take(lots, mayBeEaten(crop, takes, lots, t));
    const gone = lots.filter((lot) => lot.lastWeek <= t).reduce((sum, lot) => sum + lot.grams, 0);
    for (let i = lots.length - 1; i >= 0; i--) if ((lots[i] as Lot).lastWeek <= t || (lots[i] as Lot).grams <= 0) lots.splice(i, 1);
    return gone;
  });
}

/** The most that can be eaten and given this week so that later batches are no shorter than without it. */
function mayBeEaten(crop: SeasonCrop, takes: readonly number[], lots: readonly Lot[], t: number): number {
  let most = Math.min((crop.freshGrams[t] ?? 0) + (crop.giveGrams[t] ?? 0), lots.reduce((sum, lot) => sum + lot.grams, 0));
  const anyway = shortLater(crop, takes, lots, t, 0);
  // each gram that is short later needs at least one gram left now
  for (let short = shortLater(crop, takes, lots, t, most) - anyway; short > 0 && most > 0; short = shortLater(crop, takes, lots, t, most) - anyway) most = Math.max(0, most - short);
  return most;
}

function shortLater(crop: SeasonCrop, takes: readonly number[], lots: readonly Lot[], t: number, eaten: number): number {
  const later = lots.map((lot) => ({ ...lot }));
  take(later, eaten);
  let short = 0;
  for (let u = t + 1; u < takes.length; u++) {
    while (later[0] && later[0].lastWeek < u) later.shift();
    const grams = crop.harvestGrams[0]?.[u] ?? 0;
    if (grams > 0) later.push({ lastWeek: u + crop.keepWeeks - 1, grams });
    short += (takes[u] ?? 0) - take(later, takes[u] ?? 0);
  }
  return short;
}

/** From the lots in their order, which is that of their last weeks; answers what could be taken. */
function take(lots: readonly Lot[], grams: number): number {
  let taken = 0;
  for (const lot of lots) {
    const some = Math.min(lot.grams, grams - taken);
    lot.grams -= some;
    taken += some;
    if (taken >= grams) break;
  }
  return taken;
}
