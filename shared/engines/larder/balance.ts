/**
 * Question: what is left of a lot, where does it stand, and how much more may be taken? Whole grams or portions.
 * A balance is the sum of its entries in the order of their days; a recount sets it at its own time. Model and proof: README.md.
 */
import { byTime, inOrder, lateEntries } from "./in-order.ts";
import { Shelves } from "./shelves.ts";
import type { LotBalance, LotEntry, LotHistory, Stand } from "./types.ts";

export function balanceOf(history: LotHistory): LotBalance {
  const ordered = inOrder(history.entries);
  const shelves = new Shelves(history.homePlaceId);
  let missingAtRecounts = 0;
  for (const entry of ordered) missingAtRecounts += apply(shelves, entry);
  return { left: shelves.left, stands: shelves.stands(), owed: shelves.owed, short: shelves.short, missingAtRecounts, late: lateEntries(ordered) };
}

/**
 * How much an entry may take, give, compost or move at most without anything ever being taken that was not there: on its own day and
 * on every later one until the next recount, which holds what was taken before it.
 */
export function leftFor(history: LotHistory, entry: Pick<LotEntry, "id" | "on" | "writtenAt" | "kind" | "placeId" | "toPlaceId">): number {
  const ordered = inOrder(history.entries.filter(({ id }) => id !== entry.id));
  const shelves = new Shelves(history.homePlaceId);
  const here = (): number => {
    if (entry.placeId !== null) return Math.min(shelves.at(entry.placeId), entry.kind === "move" ? Infinity : shelves.book);
    return entry.toPlaceId === null ? shelves.book : shelves.left - shelves.at(entry.toPlaceId);
  };
  let least: number | null = null;
  for (const other of ordered) {
    if (byTime(other, entry) > 0) {
      least = Math.min(least ?? here(), here());
      if (other.kind === "recount") return Math.max(0, least);
    }
    apply(shelves, other);
  }
  return Math.max(0, Math.min(least ?? here(), here()));
}

/** What stands, place by place, at the moment of an entry: all that comes before it. */
export function standsBefore(history: LotHistory, entry: Pick<LotEntry, "id" | "on" | "writtenAt">): readonly Stand[] {
  const before = history.entries.filter((other) => other.id !== entry.id && byTime(other, entry) < 0);
  return balanceOf({ ...history, entries: before }).stands;
}

/** The most that was ever owed: what a change of the history must not make worse unseen. */
export function mostOwed(history: LotHistory): number {
  const shelves = new Shelves(history.homePlaceId);
  let most = 0;
  for (const entry of inOrder(history.entries)) {
    apply(shelves, entry);
    most = Math.max(most, shelves.owed);
  }
  return most;
}

/** Answers what a recount found missing, nothing for other entries. */
function apply(shelves: Shelves, entry: LotEntry): number {
  switch (entry.kind) {
    case "put":
      shelves.put(entry.amount, entry.placeId);
      return 0;
    case "move":
      shelves.move(entry.amount, entry.placeId, entry.toPlaceId as string);
      return 0;
    case "recount":
      return shelves.recount(entry);
    default:
      shelves.take(entry.amount, entry.placeId);
      return 0;
  }
}
