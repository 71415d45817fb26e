/** What one lot has in each place while its entries are gone through. Nothing stands below zero: what is taken beyond it is owed. */
import type { LotEntry, Stand } from "./types.ts";

export class Shelves {
  readonly #home: string;
  readonly #at = new Map<string, number>();
  owed = 0;
  /** The most that was owed since the last recount. */
  short = 0;

  constructor(homePlaceId: string) {
    this.#home = homePlaceId;
  }

  get left(): number {
    return sum(this.#at.values());
  }

  /** What the book says: left less what is owed. */
  get book(): number {
    return this.left - this.owed;
  }

  at(placeId: string): number {
    return this.#at.get(placeId) ?? 0;
  }

  /** The lot's own place first, then by id. */
  stands(): Stand[] {
    return this.#places().flatMap((placeId) => (this.at(placeId) > 0 ? [{ placeId, amount: this.at(placeId) }] : []));
  }

  put(amount: number, placeId: string | null): void {
    const repaid = Math.min(this.owed, amount);
    this.owed -= repaid;
    this.#add(placeId ?? this.#home, amount - repaid);
  }

  take(amount: number, placeId: string | null): void {
    this.owed += amount - this.#draw(amount, placeId, null);
    this.short = Math.max(this.short, this.owed);
  }

  /** Moves what there is; a move of more than that leaves something to be counted. */
  move(amount: number, placeId: string | null, toPlaceId: string): void {
    const moved = this.#draw(amount, placeId, toPlaceId);
    this.#add(toPlaceId, moved);
    this.short = Math.max(this.short, this.owed + amount - moved);
  }

  /** Sets what there is, in one place or in all; answers book less count. */
  recount({ amount, whole, placeId }: Pick<LotEntry, "amount" | "whole" | "placeId">): number {
    const counted = whole ?? amount;
    const missing = this.book - counted;
    this.owed = 0;
    this.short = 0;
    if (placeId === null) this.#settle(counted, null);
    else {
      this.#at.delete(placeId);
      this.#settle(counted - amount, placeId);
      this.#add(placeId, amount);
    }
    return missing;
  }

  /** Brings what stands (outside `except`) to an amount: draws what is too much, adds what is too little where most stands. */
  #settle(amount: number, except: string | null): void {
    const stands = sum([...this.#at].flatMap(([placeId, here]) => (placeId === except ? [] : [here])));
    if (stands >= amount) this.#draw(stands - amount, null, except);
    else this.#add(this.#fullest(except), amount - stands);
  }

  /** Takes at most so much, the named place first; answers how much there was. */
  #draw(amount: number, first: string | null, except: string | null): number {
    let open = amount;
    for (const placeId of first === null ? this.#places() : [first, ...this.#places()]) {
      if (placeId === except) continue;
      const drawn = Math.min(open, this.at(placeId));
      this.#at.set(placeId, this.at(placeId) - drawn);
      open -= drawn;
    }
    return amount - open;
  }

  #add(placeId: string, amount: number): void {
    this.#at.set(placeId, this.at(placeId) + amount);
  }

  #fullest(except: string | null): string {
    const [most] = this.stands()
      .filter((stand) => stand.placeId !== except)
      .sort((a, b) => b.amount - a.amount);
    return most?.placeId ?? this.#home;
  }

  #places(): string[] {
    return [this.#home, ...[...this.#at.keys()].filter((placeId) => placeId !== this.#home).sort()];
  }
}

const sum = (amounts: Iterable<number>): number => [...amounts].reduce((all, one) => all + one, 0);
