/** Entries in the order of the days on which they happened. The order in which they arrived says nothing, so it changes nothing. */
import type { LotEntry } from "./types.ts";

type Moment = Pick<LotEntry, "id" | "on" | "writtenAt">;

export function inOrder(entries: readonly LotEntry[]): LotEntry[] {
  return [...entries].sort(byTime);
}

/** By day, then by when it was written down, then by id, so that no two entries are equal. */
export function byTime(a: Moment, b: Moment): number {
  if (a.on !== b.on) return a.on < b.on ? -1 : 1;
  if (a.writtenAt !== b.writtenAt) return a.writtenAt - b.writtenAt;
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}

/** Ids of entries that come before a recount and arrived after it. */
export function lateEntries(ordered: readonly LotEntry[]): string[] {
  const late: string[] = [];
  let countArrived = Infinity;
  for (const entry of [...ordered].reverse()) {
    if (entry.kind === "recount") countArrived = Math.min(countArrived, entry.arrivedAt);
    else if (entry.arrivedAt > countArrived) late.push(entry.id);
  }
  return late.reverse();
}
