/**
 * The written order of ways, one named level after the other; the first level on which two differ decides. The rule in words: README.md.
 */
import type { PlaceKind } from "../../kernel/way.ts";
import type { Allowed } from "./batches.ts";
import type { Candidate, RipeCrop } from "./types.ts";

export interface Ranked {
  readonly candidate: Candidate;
  readonly allowed: Allowed;
  readonly ripe: ReadonlyMap<string, RipeCrop>;
  /** Of what is over this week, all crops together. */
  readonly weekSurplusGrams: number;
}

export type LevelName = "asked for" | "over" | "ours" | "how much" | "spoils" | "keeps" | "work" | "together";

interface Level {
  readonly name: LevelName;
  /** Lower comes first. */
  readonly of: (way: Ranked) => number;
}

const THIRDS = 3;
const MINUTES_STEP = 5;
/** Days from which a product keeps "through the winter", "some weeks", "some days". */
const KEEPING_CLASSES = [180, 28, 3] as const;

const LEVELS: readonly Level[] = [
  { name: "asked for", of: (way) => (way.candidate.askedFor ? 0 : 1) },
  { name: "over", of: (way) => (way.allowed.madeOf === "over" ? 0 : 1) },
  { name: "ours", of: (way) => (way.candidate.recipe.way === "give" ? 1 : 0) },
  { name: "how much", of: (way) => -Math.min(THIRDS - 1, Math.floor((takenGrams(way) / Math.max(1, way.weekSurplusGrams)) * THIRDS)) },
  { name: "spoils", of: (way) => soonestToSpoil(way).keepWeeks },
  { name: "keeps", of: (way) => KEEPING_CLASSES.filter((days) => longestKeeping(way).days < days).length },
  { name: "work", of: (way) => Math.round(minutesPerKg(way) / MINUTES_STEP) },
  { name: "together", of: (way) => -ripeUses(way).length },
];

/** Best first; what no level parts stands by title, then by id. */
export function ranked(ways: readonly Ranked[]): Ranked[] {
  const placed = ways.map((way) => ({ way, places: LEVELS.map((level) => level.of(way)) }));
  placed.sort((a, b) => {
    for (let i = 0; i < LEVELS.length; i++) if (a.places[i] !== b.places[i]) return (a.places[i] as number) - (b.places[i] as number);
    const [left, right] = [a.way.candidate.recipe, b.way.candidate.recipe];
    if (left.title !== right.title) return left.title < right.title ? -1 : 1;
    return left.id < right.id ? -1 : 1;
  });
  return placed.map(({ way }) => way);
}

/** The level that puts one way before another; undefined where only title or id does. */
export function decidingLevel(a: Ranked, b: Ranked): LevelName | undefined {
  return LEVELS.find((level) => level.of(a) !== level.of(b))?.name;
}

/** Grams of what is over that all batches take. */
export function takenGrams(way: Ranked): number {
  if (way.allowed.madeOf !== "over") return 0;
  return ripeUses(way).reduce((sum, use) => sum + Math.min(use.ripe.surplusGrams, use.grams * way.allowed.batches), 0);
}

/** What a batch takes of the week's crops. */
export function ripeUses(way: Ranked): { ripe: RipeCrop; grams: number }[] {
  return way.candidate.recipe.uses.flatMap((use) => {
    const ripe = way.ripe.get(use.crop);
    return ripe && use.grams > 0 ? [{ ripe, grams: use.grams }] : [];
  });
}

export function soonestToSpoil(way: Ranked): RipeCrop {
  return way.allowed.mains.map((main) => main.ripe).reduce((a, b) => (b.keepWeeks < a.keepWeeks ? b : a));
}

export interface Kept {
  readonly place: PlaceKind | null;
  readonly days: number;
}

export function longestKeeping(way: Ranked): Kept {
  return way.candidate.recipe.keeps.reduce<Kept>((a, b) => (b.days > a.days ? b : a), { place: null, days: 0 });
}

function minutesPerKg(way: Ranked): number {
  const grams = way.candidate.recipe.uses.reduce((sum, use) => sum + use.grams, 0);
  return way.candidate.recipe.handsOnMin / Math.max(0.001, grams / 1000);
}
