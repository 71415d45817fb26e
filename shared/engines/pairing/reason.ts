/** Why a way is offered: what it takes of which crop, what comes of it and how long that keeps, the work, and what puts it before the next way. */
import { cropNoun, cropWord } from "../../kernel/crop-words.ts";
import { isMeasure, madeWords } from "../../kernel/made-words.ts";
import type { PlaceKind } from "../../kernel/way.ts";
import { amountWords, listWords, minutesWords, sentenceCase } from "../../kernel/words.ts";
import { handsOnMinFor, type Allowed } from "./batches.ts";
import { decidingLevel, longestKeeping, ripeUses, soonestToSpoil, takenGrams, type Kept, type LevelName, type Ranked } from "./rank.ts";

/** Rounds to nothing in a sentence. */
const LITTLE_GRAMS = 25;

export function reason(way: Ranked, next: Ranked | undefined): string {
  const level = next && decidingLevel(way, next);
  const first = level === "asked for" ? ["Somebody asked for it."] : level === "spoils" && way.allowed.madeOf === "over" ? [spoilsWords(way)] : [];
  return [...first, BODY[way.allowed.madeOf](way, level)].join(" ");
}

const BODY: Record<Allowed["madeOf"], (way: Ranked, level: LevelName | undefined) => string> = {
  over: (way, level) => {
    if (way.candidate.recipe.way === "give") return `For what is left when the rest has its place: ${amountWords(takenGrams(way))} of ${crops(way)} to give.`;
    const together = level === "together" ? `, and brings ${listWords([...new Set(ripeUses(way).map((use) => cropWord(use.ripe.name)))])} together` : "";
    return `Takes ${takesWords(way)} over this week and makes ${comesOfIt(way, level)}${together}.`;
  },
  meal: (way, level) => {
    const over = way.allowed.mains.reduce((sum, main) => sum + main.ripe.surplusGrams, 0);
    const some = over < LITTLE_GRAMS ? `Nothing of the ${crops(way)} is over` : `${sentenceCase(amountWords(over))} of ${crops(way)} over is less than a batch takes`;
    return `${some}; ${amountWords(batchGrams(way))} of what there is makes ${comesOfIt(way, level)}.`;
  },
  lift: (way) => `${sentenceCase(amountWords(batchGrams(way)))} of the ${crops(way)} lifted this week${keptWords(longestKeeping(way), isMany(way))}${workWords(way)}.`,
  waits: (way, level) => `${sentenceCase(crops(way))} ${isMany(way) ? "wait" : "waits"} for you: ${amountWords(batchGrams(way))} makes ${comesOfIt(way, level)}.`,
};

/** "3.6 kg of the 3.9 kg of courgettes", "all 3.0 kg of courgettes and tomatoes". */
function takesWords(way: Ranked): string {
  const taken = takenGrams(way);
  const over = ripeUses(way).reduce((sum, use) => sum + use.ripe.surplusGrams, 0);
  const [takes, there] = [amountWords(taken), amountWords(over)];
  return takes === there ? `all ${takes} of ${crops(way)}` : `${takes} of the ${there} of ${crops(way)}`;
}

/** "18 portions, which keep 9 months in the freezer, longer than the next way; 1 h 30 of work". */
function comesOfIt(way: Ranked, level: LevelName | undefined): string {
  const { makes } = way.candidate.recipe;
  const amount = Math.round(makes.amount * way.allowed.batches * 100) / 100;
  const longer = level === "keeps" ? ", longer than the next way" : "";
  const less = level === "work" ? ", less for each kilo than the next way" : "";
  return `${madeWords(amount, makes.unit)}${keptWords(longestKeeping(way), amount !== 1 && !isMeasure(makes.unit))}${longer}${workWords(way)}${less}`;
}

const PLACE_WORDS: Record<PlaceKind, string> = { fridge: "in the fridge", freezer: "in the freezer", shelf: "on the shelf", cellar: "in the cellar", clamp: "in the clamp" };
const DAYS_A_MONTH = 30.4;

/** ", which keep 9 months in the freezer"; nothing of what is eaten at once. */
function keptWords({ place, days }: Kept, many: boolean): string {
  if (days <= 0) return "";
  const [n, word] = days < 14 ? [days, "day"] : days < 56 ? [Math.floor(days / 7), "week"] : [Math.floor(days / DAYS_A_MONTH), "month"];
  return `, which ${many ? "keep" : "keeps"} ${n}\u00a0${word}${n === 1 ? "" : "s"}${place === null ? "" : ` ${PLACE_WORDS[place]}`}`;
}

function workWords(way: Ranked): string {
  const minutes = handsOnMinFor(way.candidate.recipe, way.allowed.batches);
  return minutes === 0 ? "" : `; ${minutesWords(minutes)} of work`;
}

function spoilsWords(way: Ranked): string {
  const crop = soonestToSpoil(way);
  const { word, many } = cropNoun(crop.name);
  return `${sentenceCase(word)} ${many ? "keep" : "keeps"} ${crop.keepWeeks === 1 ? "a week" : `${crop.keepWeeks} weeks`} at most.`;
}

const batchGrams = (way: Ranked): number => way.allowed.mains.reduce((sum, main) => sum + main.grams * way.allowed.batches, 0);
const crops = (way: Ranked): string => listWords([...new Set(way.allowed.mains.map((main) => cropWord(main.ripe.name)))]);
const isMany = (way: Ranked): boolean => way.allowed.mains.length > 1 || cropNoun((way.allowed.mains[0] as Allowed["mains"][number]).ripe.name).many;
