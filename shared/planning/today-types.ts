/** The day's list in planning's words. Grams as picked. */
import type { Band } from "../kernel/band.ts";
import type { LocalDate } from "../kernel/local-date.ts";

export interface TodayList {
  readonly today: LocalDate;
  readonly headline: string;
  readonly urgent: readonly { readonly kind: "frost" | "glut" | "setup"; readonly text: string; readonly href: string }[];
  readonly pick: readonly PickRow[];
  readonly sow: readonly { readonly sowingId: string; readonly crop: string; readonly name: string; readonly bedName: string; readonly on: LocalDate; readonly text: string }[];
  readonly jobs: readonly { readonly sowingId: string | null; readonly on: LocalDate; readonly text: string }[];
  /** Lots to throw away, to eat first and to count again, in this order. */
  readonly useFirst: readonly { readonly lotId: string; readonly title: string; readonly text: string }[];
  readonly cook: readonly { readonly cookDayId: string | null; readonly on: LocalDate; readonly text: string; readonly href: string }[];
}

export interface PickRow {
  readonly sowingId: string;
  readonly crop: string;
  readonly name: string;
  readonly bedName: string;
  readonly grams: Band;
  readonly daysSince: number | null;
  readonly gramsPerPiece: number | null;
}
