/** The season's plan in planning's words. Grams as picked; weeks by their ISO names. */
import type { IsoWeek } from "../kernel/iso-week.ts";
import type { LocalDate } from "../kernel/local-date.ts";
import type { SourceRef } from "../kernel/outcome.ts";
import type { Way } from "../kernel/way.ts";
import type { CourseId } from "./season-courses.ts";

export interface PlannedLineWords {
  recipeId: string;
  title: string;
  way: Way;
  batches: number;
  uses: { crop: string; name: string; grams: number }[];
  makes: { amount: number; unit: string };
  handsOnMin: number;
  freezerLitres: number;
  jars: number;
  why: string;
  displaces?: string;
  agreedIds: string[];
}

export interface PlannedWeek {
  week: IsoWeek;
  starts: LocalDate;
  ends: LocalDate;
  away: boolean;
  pickedGrams: number;
  freshGrams: number;
  lostGrams: number;
  handsOnMin: number;
  handsOnMostMin: number;
  text: string;
  lines: PlannedLineWords[];
}

export interface CourseLine {
  id: CourseId;
  chance: number;
  pickedGrams: number;
  lostGrams: number;
  unmadeBatches: number;
  moreBatches: number;
  text: string;
}

export interface AskedLine {
  id: string;
  kind: "target" | "wish";
  recipeId: string;
  title: string;
  portions: number;
  by: LocalDate | null;
  inLarderPortions: number;
  reachedPortions: number;
  missingPortions: number;
  byWeek: { week: IsoWeek; portions: number }[];
  text: string;
}

export interface FreezerWeeks {
  litres: number | null;
  weeks: { week: IsoWeek; usedLitres: number; capacityLitres: number | null }[];
}

export interface HelpLine {
  limit: string;
  more: number;
  unit: string;
  savesGrams: number;
  text: string;
}

export interface WithoutAnswer {
  week: IsoWeek;
  lostGrams: number;
  crops: string[];
  helps: HelpLine[];
  text: string;
}

export interface RefusedLine {
  recipeId: string;
  title: string;
  why: string;
  instead: { recipeId: string; title: string }[];
}

export interface SeasonAnswerWords {
  from: IsoWeek;
  asOf: LocalDate;
  status: "optimal" | "feasible" | "infeasible" | "rule";
  plannedBy: "solver" | "rule";
  gapPct: number | null;
  allowance: number;
  headline: string;
  pickedGrams: number;
  lostGrams: number;
  byRule: { lostGrams: number; missingPct: number };
  missingPct: number;
  weeks: PlannedWeek[];
  courses: CourseLine[];
  asked: AskedLine[];
  freezer: FreezerWeeks;
  withoutAnswer: WithoutAnswer[];
  refused: RefusedLine[];
  clashes: string[];
  notes: string[];
  basis: SourceRef[];
}
