/** Words and scale of the picks. Pure. */
import type { Today } from "#shared/contracts/today.ts";
import { G_PER_POUND, inPounds } from "../../units.ts";

type Pick = Today["pick"][number];

/** Days since the last pick, as a gardener says it; goes on after the bed's name. */
export function since(days: number | null): string {
  if (days === null) return ", not picked yet";
  if (days === 0) return ", picked today";
  return days === 1 ? ", picked yesterday" : `, ${days} days since`;
}

/** What a pick is called in a choice: its name; where two share it with the bed; where that is shared too with when it was picked last. */
export function choiceName(pick: Pick, picks: readonly Pick[]): string {
  const namesakes = picks.filter((other) => other.name === pick.name);
  if (namesakes.length === 1) return pick.name;
  const inBed = `${pick.name}, ${pick.bedName}`;
  return namesakes.filter((other) => other.bedName === pick.bedName).length === 1 ? inBed : `${inBed}${since(pick.daysSince)}`;
}

/** Ends of a scale whose quarters are round: 100, 150, 200 … times a power of ten. */
const ENDS = [4, 6, 8, 10, 12, 16, 20, 24, 32];

/** The round end of the scale, in grams, that lies next above so many grams: 400, 600, 800 … 3,200, 4,000 …; in pounds 1, 1½, 2, 2½, 3, 4 … */
export function niceMax(grams: number): number {
  for (let unit = inPounds() ? G_PER_POUND / 4 : 100; ; unit *= 10) for (const end of ENDS) if (grams <= unit * end) return unit * end;
}

/** So many times the high amount, or more, is asked about: a slip of a digit is ten times. */
const ODD = 3;
/** Below this the book's amounts say too little to call a weight odd. */
const LEAST_GRAMS = 100;

/** Whether a weight is far above what the plant should hold. */
export const isOdd = (grams: number, pick: Pick): boolean => grams > ODD * Math.max(pick.grams.high, LEAST_GRAMS);

/** A tenth of an odd weight where that would be usual: the slip of a digit; null where it would not. */
export function slipOfDigit(grams: number, pick: Pick): number | null {
  const tenth = Math.round(grams / 10);
  return tenth > 0 && !isOdd(tenth, pick) ? tenth : null;
}
