/** Question: how long does the recipe say that it keeps, and where? Days; of a range the lower end, so that nothing is promised that is not said. */
import { durationsIn } from "./durations.ts";
import { sentencesOf } from "./sentences.ts";
import { wordsOf, type Word } from "./scan.ts";
import type { KeepSaid, Work } from "./types.ts";

const KEEPING: ReadonlySet<string> = new Set(["keep", "keeps", "store", "stores", "stored", "kept", "lasts", "freeze", "freezes", "frozen"]);
const PLACES: Readonly<Record<string, KeepSaid["place"]>> = { fridge: "fridge", refrigerator: "fridge", refrigerated: "fridge", refrigerate: "fridge", chilled: "fridge", freezer: "freezer", freeze: "freezer", freezes: "freezer", frozen: "freezer", airtight: "shelf", tin: "shelf", cupboard: "shelf", pantry: "shelf" };
const DAY_MIN = 1_440;
const LONG: Readonly<Record<string, number>> = { day: 1, days: 1, week: 7, weeks: 7, month: 30, months: 30 };
/** A sentence longer than this is no note on keeping. */
const LONGEST = 400;

/** The first that is said of each place. */
export function keepsSaid(paragraphs: readonly string[], work: Work): KeepSaid[] {
  const found = new Map<KeepSaid["place"], KeepSaid>();
  for (const paragraph of paragraphs) {
    if (paragraph.length > LONGEST * 10) continue;
    for (const sentence of sentencesOf(paragraph, work)) {
      if (sentence.length > LONGEST) continue;
      for (const said of inSentence(sentence, work)) if (!found.has(said.place)) found.set(said.place, said);
    }
  }
  return [...found.values()];
}

function inSentence(text: string, work: Work): KeepSaid[] {
  const words = wordsOf(text, work);
  const verb = words.findIndex(({ low }) => KEEPING.has(low));
  if (verb < 0) return [];
  return durationsIn(words, work).flatMap((duration): KeepSaid[] => {
    const unit = LONG[words[duration.to - 1]?.low ?? ""];
    if (unit === undefined) return [];
    // a span longer than the reader's week is capped there, so it is counted from its own words
    const number = words.slice(duration.from, duration.to).find(({ kind }) => kind === "number")?.value;
    const days = Math.round(number === undefined ? duration.lowMin / DAY_MIN : number * unit);
    const place = placeNear(words, duration.from, duration.to);
    return days < 1 ? [] : [{ place: place ?? "fridge", days, text, placeUnsaid: place === null }];
  });
}

/** The place named in the same breath as the time, behind it first. */
function placeNear(words: readonly Word[], from: number, to: number): KeepSaid["place"] | null {
  const clause = (some: readonly Word[]): KeepSaid["place"] | undefined => some.map(({ low }) => PLACES[low]).find((place) => place !== undefined);
  const stop = (at: Word): boolean => at.low === "or" || at.low === "and" || at.low === ";" || at.low === ",";
  const behind = words.slice(to);
  const cut = behind.findIndex(stop);
  return clause(cut < 0 ? behind : behind.slice(0, cut)) ?? clause(words.slice(0, from).reverse()) ?? null;
}
