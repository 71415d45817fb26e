/**
 * The least of one crop that is lost when the batches are fixed and eating and giving are free, in one course of the season. Grams.
 * What goes off first is used first, by the batches and then by who eats: each use takes any age that still keeps, so no other order uses more in all.
 * Who eats today what a later batch wants only moves the hunger, not the loss; so nothing has to be looked ahead for.
 */
import type { SeasonCrop } from "../engines/season-plan/index.ts";

interface Lot {
  readonly lastWeek: number;
  grams: number;
}

/** `takes`: grams that the batches take, by week, all of which must be there. Answers what is lost at the end of each week. */
export function leastLost(crop: SeasonCrop, takes: readonly number[]): number[] {
  const picked = crop.harvestGrams[0] ?? [];
  // what keeps to the end is never lost, whatever is made of it
  if (crop.keepWeeks >= picked.length) return picked.map(() => 0);
  const lots: Lot[] = [];
  return picked.map((grams, t) => {
    if (grams > 0) lots.push({ lastWeek: t + crop.keepWeeks - 1, grams });
    use(lots, (takes[t] ?? 0) + (crop.freshGrams[t] ?? 0) + (crop.giveGrams[t] ?? 0));
    let lost = 0;
    while (lots[0] && lots[0].lastWeek <= t) lost += lots.shift()?.grams ?? 0;
    return lost;
  });
}

/** From the lots in their order, which is that of their last weeks. */
function use(lots: readonly Lot[], grams: number): void {
  let open = grams;
  for (const lot of lots) {
    const some = Math.min(lot.grams, open);
    lot.grams -= some;
    open -= some;
    if (open <= 0) break;
  }
}
