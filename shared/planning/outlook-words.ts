/** Sentences of the calendar: the page's answer and one for each week. Amounts and dates as the look writes them. */
import type { Band } from "../kernel/band.ts";
import { cropWord } from "../kernel/crop-words.ts";
import { yearOf, type LocalDate } from "../kernel/local-date.ts";
import { amountSpanWords, amountWords, dayWords, listWords, sentenceCase, weighedWords } from "../kernel/words.ts";
import type { Missing } from "./outlook-types.ts";

/** Below this an amount rounds to nothing in a sentence. */
export const WORTH_SAYING_GRAMS = 25;

export interface CropAmount {
  readonly name: string;
  readonly grams: number;
}

export interface AnswerFacts {
  readonly today: LocalDate;
  readonly missing: readonly Missing[];
  /** First day the sentence is about: null = now. */
  readonly from: LocalDate | null;
  /** Last day of the last week that has a glut; null in a calm time. */
  readonly overUntil: LocalDate | null;
  readonly overGrams: number;
  readonly overBy: readonly CropAmount[];
  /** Last day of the last week in which something ripens; null where nothing does. */
  readonly ripensUntil: LocalDate | null;
  /** Weeks all gone by: what was picked in them. */
  readonly pickedGrams: number | null;
}

/** The page's sentence, and the part of it that says how much is over. */
export function answerWords(facts: AnswerFacts): { headline: string; headlineOver: string } {
  const calm = (headline: string) => ({ headline, headlineOver: "" });
  const setUp = SET_UP.find(([missing]) => facts.missing.includes(missing));
  if (setUp) return calm(setUp[1]);
  const year = yearOf(facts.today);
  if (facts.pickedGrams !== null) return calm(facts.pickedGrams > 0 ? `${sentenceCase(weighedWords(facts.pickedGrams))} came out of the garden in these weeks.` : "Nothing was picked in these weeks.");
  const from = facts.from === null ? "now" : dayWords(facts.from, year);
  if (facts.overUntil !== null) {
    const headlineOver = `${amountWords(facts.overGrams)} more than we eat`;
    return { headline: `From ${from} to ${dayWords(facts.overUntil, year)} the garden gives about ${headlineOver}${mostOfIt(facts)}.`, headlineOver };
  }
  if (facts.ripensUntil === null) return calm("Nothing that must be picked ripens in these weeks.");
  return calm(`The garden gives about what we eat from ${from} to ${dayWords(facts.ripensUntil, year)}.`);
}

/** First what the forecast cannot do without. A garden without a place still has its weather, so the place alone does not stop the answer. */
const SET_UP: readonly (readonly [Missing, string])[] = [
  ["weather", "Say where the garden lies and how warm its months are, and the year of weeks is drawn here."],
  ["beds", "Make a bed and write down what you sowed in it, and the year of weeks is drawn here."],
  ["sowings", "Write down what you sowed, and the year of weeks is drawn here."],
];

const MOST = 0.5;
const CROPS_NAMED = 3;

/** Crops until they make up more than half of what is over, three at most. */
function mostOfIt({ overBy }: AnswerFacts): string {
  const byWord = new Map<string, number>();
  for (const { name, grams } of overBy) byWord.set(cropWord(name), (byWord.get(cropWord(name)) ?? 0) + grams);
  const ranked = [...byWord].filter(([, grams]) => grams > 0).sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1));
  const whole = ranked.reduce((sum, [, grams]) => sum + grams, 0);
  const named: string[] = [];
  let sum = 0;
  for (const [word, grams] of ranked.slice(0, CROPS_NAMED)) {
    if (sum > MOST * whole) break;
    named.push(word);
    sum += grams;
  }
  if (named.length === 0) return "";
  if (named.length === ranked.length) return `, all of it ${listWords(named)}`;
  return sum > MOST * whole ? `, most of it ${listWords(named)}` : `, above all ${listWords(named)}`;
}

export interface WeekFacts {
  readonly when: "past" | "running" | "coming";
  readonly grams: Band;
  readonly eatsGrams: number;
  readonly plannedGrams: number;
  readonly surplusGrams: number;
  /** Weighed in this week, by crop. */
  readonly picked: readonly CropAmount[];
  /** Names of crops that stand ready and wait. */
  readonly waiting: readonly string[];
}

/** "8.1 to 13.2 kg, most likely 10.4 kg. We eat about 6.5 kg fresh; 3.9 kg is over." */
export function weekHeadline(week: WeekFacts): string {
  if (week.when === "past") return pastWords(week.picked);
  const pickedGrams = week.picked.reduce((sum, crop) => sum + crop.grams, 0);
  const soFar = week.when === "running" && pickedGrams > 0 ? ` ${sentenceCase(weighedWords(pickedGrams))} of it is picked.` : "";
  if (week.grams.likely >= WORTH_SAYING_GRAMS) return `${sentenceCase(amountSpanWords(week.grams))}.${soFar} ${useWords(week)}`;
  const over = week.surplusGrams >= WORTH_SAYING_GRAMS ? ` ${amountWords(week.surplusGrams)} from earlier weeks is over.` : "";
  if (week.grams.high >= WORTH_SAYING_GRAMS) return `Up to ${amountWords(week.grams.high)}, most likely nothing.${over}`;
  if (over !== "") return `Nothing more ripens this week.${over}`;
  const ready = [...new Set(week.waiting.map(cropWord))];
  return ready.length === 0 ? "Nothing ripens this week." : `Nothing has to be picked this week. Ready when wanted: ${listWords(ready)}.`;
}

function useWords({ eatsGrams, plannedGrams, surplusGrams }: WeekFacts): string {
  const eats = eatsGrams >= WORTH_SAYING_GRAMS ? `We eat about ${amountWords(eatsGrams)} fresh` : "";
  const planned = plannedGrams >= WORTH_SAYING_GRAMS ? `${amountWords(plannedGrams)} is planned for` : "";
  const placed = [eats, planned].filter((words) => words !== "").join(", ");
  if (surplusGrams >= WORTH_SAYING_GRAMS) return placed === "" ? "All of it is over." : `${placed}; ${amountWords(surplusGrams)} is over.`;
  return planned === "" ? "All of it is eaten fresh." : `${placed}; nothing is over.`;
}

function pastWords(picked: readonly CropAmount[]): string {
  const byWord = new Map<string, number>();
  for (const { name, grams } of picked) if (grams > 0) byWord.set(cropWord(name), (byWord.get(cropWord(name)) ?? 0) + grams);
  const most = [...byWord].sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1));
  return most.length === 0 ? "Nothing was picked." : `Picked: ${most.map(([word, grams]) => `${word} ${weighedWords(grams)}`).join(", ")}.`;
}
