/** The calendar's answer in planning's words: what ripens when, what is over, what to do with it. Grams as picked, days as dates. */
import type { Pairing } from "../engines/pairing/index.ts";
import type { Band } from "../kernel/band.ts";
import type { IsoWeek } from "../kernel/iso-week.ts";
import type { LocalDate } from "../kernel/local-date.ts";
import type { SourceRef } from "../kernel/outcome.ts";
import type { Way } from "../kernel/way.ts";

export interface DateBand {
  readonly low: LocalDate;
  readonly likely: LocalDate;
  readonly high: LocalDate;
}

export interface PlannedLine {
  readonly id: string;
  readonly week: IsoWeek;
  readonly recipeId: string;
  readonly title: string;
  readonly way: Way;
  readonly batches: number;
  /** For all batches together. */
  readonly uses: readonly { readonly crop: string; readonly grams: number }[];
}

export interface OutlookCrop {
  readonly crop: string;
  readonly name: string;
  /** Of a past week what was picked. */
  readonly grams: Band;
  readonly pickedGrams: number;
  readonly freshGrams: number;
  readonly surplusGrams: number;
  readonly chanceInHarvest: number;
  readonly waits: boolean;
}

export interface OutlookWeek {
  readonly week: IsoWeek;
  readonly starts: LocalDate;
  readonly ends: LocalDate;
  readonly headline: string;
  readonly crops: readonly OutlookCrop[];
  /** All crops that do not wait, together; the sum is taken in each scenario. */
  readonly grams: Band;
  readonly pickedGrams: number;
  /** Eaten fresh of them. */
  readonly eatsGrams: number;
  readonly surplusGrams: number;
  readonly glut: boolean;
  readonly planned: readonly PlannedLine[];
  readonly pairings: readonly Pairing[];
}

export interface OutlookRow {
  readonly crop: string;
  readonly name: string;
  readonly waits: boolean;
  readonly sowings: readonly {
    readonly id: string;
    readonly bedName: string;
    readonly variety?: string;
    readonly from: LocalDate | null;
    readonly until: LocalDate | null;
  }[];
  readonly lift: DateBand | null;
  /** What the best week brings, whichever it is: the middle of the scenarios. */
  readonly bestWeekGrams: number;
  readonly seasonGrams: Band;
}

export type Missing = "place" | "weather" | "beds" | "sowings";

export interface GardenOutlook {
  readonly today: LocalDate;
  readonly headline: string;
  readonly headlineOver: string;
  /** Newly over from the running week to `overUntil`, each gram once; the middle of the scenarios' sums. */
  readonly overGrams: number;
  readonly overUntil: LocalDate | null;
  /** Most that is eaten fresh in any week still to come. */
  readonly eatsGrams: number;
  readonly frost: { readonly lastSpring: DateBand | null; readonly firstAutumn: DateBand | null };
  /** In order of the first pick. */
  readonly rows: readonly OutlookRow[];
  readonly weeks: readonly OutlookWeek[];
  readonly missing: readonly Missing[];
  readonly basis: readonly SourceRef[];
  readonly notes: readonly string[];
  /** By recipe that may be offered: what must be said beside it. */
  readonly cautions: ReadonlyMap<string, readonly string[]>;
}
