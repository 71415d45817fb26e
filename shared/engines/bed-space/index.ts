/**
 * Question: does this sowing fit in this bed over these days, and what stands free on a day? Square metres, day numbers, half-open spans.
 * A note, never a refusal. Model, limits and proof: README.md beside this file.
 */
import { dateOf, type DayNumber } from "../../kernel/local-date.ts";
import { weekOf, type IsoWeek } from "../../kernel/iso-week.ts";
import { weekSpanWords } from "../../kernel/words.ts";

/** What was sown: exactly one of the three is not null. */
export interface SownAmount {
  readonly rowM: number | null;
  readonly plants: number | null;
  readonly areaM2: number | null;
}

/** Something that stands in a bed from one day until another. */
export interface Occupant {
  readonly m2: number;
  readonly fromDay: DayNumber;
  /** First day it is gone; null where it stands on. */
  readonly untilDay: DayNumber | null;
}

export interface SpaceQuestion {
  readonly bedM2: number;
  readonly sowing: Occupant;
  /** Everything else in the bed. */
  readonly others: readonly Occupant[];
}

export interface Shortage {
  readonly firstWeek: IsoWeek;
  readonly lastWeek: IsoWeek;
  /** The most that is missing on any day of these weeks. */
  readonly m2: number;
}

/** Beds are measured with a tape and rows by eye: less than this is no shortage. */
const TOLERANCE_M2 = 0.05;
/** What stands for good is looked at for a year. */
const DAYS_LOOKED_AT = 364;

/**
 * Square metres a sowing takes: rows × distance of rows, plants × the room of one, or the area itself. Spacing in cm.
 * Null where the crop table has no spacing and the area was not given.
 */
export function squareMetresOf(amount: SownAmount, spacingCm: { readonly plant: number; readonly row: number } | null): number | null {
  if (amount.areaM2 !== null) return amount.areaM2;
  if (spacingCm === null) return null;
  if (amount.rowM !== null) return (amount.rowM * spacingCm.row) / 100;
  if (amount.plants !== null) return (amount.plants * spacingCm.row * spacingCm.plant) / 10_000;
  return null;
}

/** Weeks in which the bed is too small for the sowing and all that stands beside it, with the square metres missing. */
export function shortagesOf(question: SpaceQuestion): Shortage[] {
  const { sowing } = question;
  const until = Math.min(sowing.untilDay ?? Infinity, sowing.fromDay + DAYS_LOOKED_AT);
  const runs: { firstDay: DayNumber; lastDay: DayNumber; m2: number }[] = [];
  for (let day = sowing.fromDay; day < until; day++) {
    const missing = sowing.m2 + standingM2(question.others, day) - question.bedM2;
    if (missing <= TOLERANCE_M2) continue;
    const run = runs[runs.length - 1];
    // a gap of less than a week cannot be told from none when the answer is in weeks
    if (run && day - run.lastDay <= 7) {
      run.lastDay = day;
      run.m2 = Math.max(run.m2, missing);
    } else runs.push({ firstDay: day, lastDay: day, m2: missing });
  }
  return runs.map(({ firstDay, lastDay, m2 }) => ({ firstWeek: weekOf(dateOf(firstDay)), lastWeek: weekOf(dateOf(lastDay)), m2 }));
}

/** The shortage as the household reads it: "Needs 1.2 m² more than the bed has in weeks 24–31." */
export function shortageWords(shortage: Shortage): string {
  return `Needs ${Math.max(0.1, shortage.m2).toFixed(1)}\u00a0m² more than the bed has ${whenWords(shortage)}.`;
}

/** Numbers of weeks begin again each year, so across New Year the years are named. */
function whenWords({ firstWeek, lastWeek }: Shortage): string {
  const [firstYear, lastYear] = [firstWeek.slice(0, 4), lastWeek.slice(0, 4)];
  if (firstYear === lastYear) return `in ${weekSpanWords(firstWeek, lastWeek)}`;
  return `from ${weekSpanWords(firstWeek, firstWeek)} of ${firstYear} to ${weekSpanWords(lastWeek, lastWeek)} of ${lastYear}`;
}

/** What stands free on a day; never below nothing. */
export function freeM2(bedM2: number, occupants: readonly Occupant[], day: DayNumber): number {
  return Math.max(0, bedM2 - standingM2(occupants, day));
}

function standingM2(occupants: readonly Occupant[], day: DayNumber): number {
  return occupants.reduce((sum, one) => (one.fromDay <= day && (one.untilDay === null || day < one.untilDay) ? sum + one.m2 : sum), 0);
}
