/**
 * The written order of ways, one named level after the other; the first level on which two differ decides, and its sentence is the reason.
 * The rule in words: README.md.
 */
import { cropNoun, cropWord } from "../../kernel/crop-words.ts";
import type { PlaceKind } from "../../kernel/way.ts";
import { amountWords, listWords, minutesWords, sentenceCase } from "../../kernel/words.ts";
import type { Allowed } from "./batches.ts";
import type { Candidate, RipeCrop } from "./types.ts";

export interface Ranked {
  readonly candidate: Candidate;
  readonly allowed: Allowed;
  readonly ripe: ReadonlyMap<string, RipeCrop>;
  /** Of what is over this week, all crops together. */
  readonly weekSurplusGrams: number;
}

interface Level {
  /** Lower comes first. */
  readonly of: (way: Ranked) => number;
  readonly why: (way: Ranked) => string;
}

const THIRDS = 3;
/** Rounds to nothing in a sentence. */
const LITTLE_GRAMS = 25;
const MINUTES_STEP = 5;
/** Days from which a product keeps "through the winter", "some weeks", "some days". */
const KEEPING_CLASSES = [180, 28, 3] as const;

const ASKED_FOR: Level = { of: (way) => (way.candidate.askedFor ? 0 : 1), why: () => "Somebody asked for it." };

const LEVELS: readonly Level[] = [
  ASKED_FOR,
  { of: (way) => (way.allowed.madeOf === "over" ? 0 : 1), why: takesWords },
  { of: (way) => (way.candidate.recipe.way === "give" ? 1 : 0), why: takesWords },
  { of: (way) => -Math.min(THIRDS - 1, Math.floor((takenGrams(way) / Math.max(1, way.weekSurplusGrams)) * THIRDS)), why: takesWords },
  { of: (way) => soonestToSpoil(way).keepWeeks, why: spoilsWords },
  { of: (way) => KEEPING_CLASSES.filter((days) => longestKeeping(way).days < days).length, why: keepsWords },
  { of: (way) => Math.round(minutesPerKg(way) / MINUTES_STEP), why: workWords },
  { of: (way) => -ripeUses(way).length, why: togetherWords },
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

/** Why a way stands before the next one; the last says what speaks for it by itself. */
export function reason(way: Ranked, next: Ranked | undefined): string {
  const level = next && decidingLevel(way, next);
  if (level && level === ASKED_FOR) return level.why(way);
  if (way.candidate.recipe.way === "give") return "For what is left when the rest has its place.";
  if (way.allowed.madeOf !== "over") return ALONE[way.allowed.madeOf](way);
  return level ? level.why(way) : takesWords(way);
}

const ALONE: Record<Exclude<Allowed["madeOf"], "over">, (way: Ranked) => string> = {
  meal: (way) => {
    const over = way.allowed.mains.reduce((sum, main) => sum + main.ripe.surplusGrams, 0);
    if (over < LITTLE_GRAMS) return "Nothing of it is over; a meal of what there is anyway.";
    return `${sentenceCase(amountWords(over))} of it is over, less than a batch takes; the rest is there anyway.`;
  },
  lift: (way) => {
    const kept = longestKeeping(way);
    return kept.days > 0 ? `Lifted this week; ${keepsFor(kept)}.` : "Lifted this week.";
  },
  waits: (way) => {
    const { word, many } = cropNoun(soonestToSpoil(way).name);
    return `${sentenceCase(word)} ${many ? "wait" : "waits"} for you; one batch when there is time.`;
  },
};

function decidingLevel(a: Ranked, b: Ranked): Level | undefined {
  return LEVELS.find((level) => level.of(a) !== level.of(b));
}

/** Grams of what is over that all batches take. */
function takenGrams(way: Ranked): number {
  if (way.allowed.madeOf !== "over") return 0;
  return ripeUses(way).reduce((sum, use) => sum + Math.min(use.ripe.surplusGrams, use.grams * way.allowed.batches), 0);
}

function ripeUses(way: Ranked): { ripe: RipeCrop; grams: number }[] {
  return way.candidate.recipe.uses.flatMap((use) => {
    const ripe = way.ripe.get(use.crop);
    return ripe && use.grams > 0 ? [{ ripe, grams: use.grams }] : [];
  });
}

function soonestToSpoil(way: Ranked): RipeCrop {
  return way.allowed.mains.map((main) => main.ripe).reduce((a, b) => (b.keepWeeks < a.keepWeeks ? b : a));
}

function longestKeeping(way: Ranked): { place: PlaceKind | null; days: number } {
  return way.candidate.recipe.keeps.reduce<{ place: PlaceKind | null; days: number }>((a, b) => (b.days > a.days ? b : a), { place: null, days: 0 });
}

function minutesPerKg(way: Ranked): number {
  const grams = way.candidate.recipe.uses.reduce((sum, use) => sum + use.grams, 0);
  return way.candidate.recipe.handsOnMin / Math.max(0.001, grams / 1000);
}

function takesWords(way: Ranked): string {
  const taken = takenGrams(way);
  if (taken >= way.weekSurplusGrams - 1) return "Takes all that is over this week.";
  return `Takes ${amountWords(taken)} of the ${amountWords(way.weekSurplusGrams)} that is over this week.`;
}

function spoilsWords(way: Ranked): string {
  const crop = soonestToSpoil(way);
  const { word, many } = cropNoun(crop.name);
  return `${sentenceCase(word)} ${many ? "keep" : "keeps"} ${crop.keepWeeks === 1 ? "a week" : `${crop.keepWeeks} weeks`} at most.`;
}

function keepsWords(way: Ranked): string {
  return `${sentenceCase(keepsFor(longestKeeping(way)))}.`;
}

const PLACE_WORDS: Record<PlaceKind, string> = { fridge: "in the fridge", freezer: "in the freezer", shelf: "on the shelf", cellar: "in the cellar", clamp: "in the clamp" };
const DAYS_A_MONTH = 30.4;

function keepsFor(kept: { place: PlaceKind | null; days: number }): string {
  const place = kept.place === null ? "" : ` ${PLACE_WORDS[kept.place]}`;
  if (kept.days < 14) return `keeps ${kept.days} day${kept.days === 1 ? "" : "s"}${place}`;
  if (kept.days < 56) return `keeps ${Math.floor(kept.days / 7)} weeks${place}`;
  return `keeps ${Math.floor(kept.days / DAYS_A_MONTH)} months${place}`;
}

function workWords(way: Ranked): string {
  return `${sentenceCase(minutesWords(Math.round(minutesPerKg(way))))} of work for each kilo.`;
}

function togetherWords(way: Ranked): string {
  return `Brings ${listWords([...new Set(ripeUses(way).map((use) => cropWord(use.ripe.name)))])} together.`;
}
