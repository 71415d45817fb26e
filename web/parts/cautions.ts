/** Cautions by way, gathered so that each is read once. */
import type { Pairing } from "#shared/contracts/calendar.ts";
import { listed, lower } from "../format.ts";

export interface GatheredCaution {
  readonly text: string;
  /** “For freeze French beans and green bean curry.”; empty where it holds for all. */
  readonly ways: string;
  /** Holds for at least half of the ways: care that every cook takes. */
  readonly general: boolean;
}

const MOST_NAMED = 3;

/** The rarest first: what holds for one way only is the easiest to overlook. */
export function cautionsOf(pairings: readonly Pick<Pairing, "title" | "cautions">[]): GatheredCaution[] {
  const titles = new Map<string, string[]>();
  for (const { title, cautions } of pairings) for (const text of cautions) titles.set(text, [...(titles.get(text) ?? []), title]);
  return [...titles].sort(([, a], [, b]) => a.length - b.length).map(([text, of]) => ({ text, ways: of.length === pairings.length ? "" : `For ${named(of)}.`, general: of.length * 2 >= pairings.length }));
}

function named(titles: readonly string[]): string {
  const shown = titles.slice(0, MOST_NAMED).map(lower);
  return titles.length > MOST_NAMED ? `${shown.join(", ")} and others` : listed(shown);
}
