/** The referee's store rooms: lots that are used first to expire and go at the end of their last week. Part of check.ts; nothing of the planner is in here. */

/** Grams and portions that a solver may be off by in one week; 0.5 g of dust is in the published plans. */
export const DUST = 0.6;

interface Lot {
  readonly lastWeek: number;
  amount: number;
}

export class Stock {
  private readonly lots: Lot[] = [];

  put(amount: number, lastWeek: number): void {
    if (amount > 0) this.lots.push({ lastWeek, amount });
  }

  get onHand(): number {
    return this.lots.reduce((sum, { amount }) => sum + amount, 0);
  }

  /** Takes the first to expire; what could not be taken comes back. */
  take(amount: number): number {
    let left = amount;
    for (const lot of this.lots.sort((a, b) => a.lastWeek - b.lastWeek)) {
      const taken = Math.min(left, lot.amount);
      lot.amount -= taken;
      left -= taken;
    }
    return Math.max(0, left);
  }

  /** What goes at the end of a week. */
  expire(week: number): number {
    let gone = 0;
    for (const lot of this.lots) {
      if (lot.lastWeek > week) continue;
      gone += lot.amount;
      lot.amount = 0;
    }
    return gone;
  }
}
