/** Where a household's data stand, in one short text, and what has changed between two of them. */
import { PARTS, type ChangedPart } from "#shared/contracts/events.ts";
import type { Stamps } from "../facts/house.ts";

/** Of a random stamp so much is enough to tell it from the one before. */
const LETTERS = 8;

/** Parts in a fixed order; empty where nothing is known. */
export const standOf = (stamps: Stamps): string => (stamps === null ? "" : PARTS.map((part) => stamps[part].slice(0, LETTERS)).join("."));

/** A stand that cannot be read says nothing, so everything may have changed. */
export function changedSince(since: string, stand: string): ChangedPart[] {
  const [before, now] = [since.split("."), stand.split(".")];
  return PARTS.filter((_, i) => before.length !== PARTS.length || before[i] !== now[i]);
}
