/** The tested tables as the guard reads them: rows of seed-data/preservation/*, never computed, never interpolated. */
import type { PlaceKind } from "../../kernel/way.ts";

export type Jar = "half-pint" | "pint" | "quart" | "half-gallon" | "12oz";
export type Canner = "boiling-water" | "pressure-dial" | "pressure-weighted";

/** One tested process: exactly this food, pack, jar and canner, with the bands of altitude it was tested for. */
export interface CanningRow {
  readonly food: string;
  readonly title: string;
  readonly crops: readonly string[];
  readonly pack: "hot" | "raw";
  readonly jar: Jar;
  readonly canner: Canner;
  /** Altitudes in feet, both ends included; a process has no figure outside its bands. */
  readonly bands: readonly { readonly fromFt: number; readonly toFt: number; readonly minutes: number; readonly psi: number | null }[];
  readonly headspaceIn: number | null;
  /** Acid to add to each jar, in the source's words; null where none is asked for. */
  readonly acid: string | null;
  readonly note: string | null;
  readonly source: string;
  readonly page: string;
}

export interface BlanchingRow {
  readonly crop: string;
  readonly cut: string;
  readonly waterMin: readonly [number, number] | null;
  readonly steamMin: readonly [number, number] | null;
  readonly source: string;
}

export interface KeepingRow {
  readonly crop: string;
  readonly place: PlaceKind | "counter";
  readonly days: readonly [number, number];
  readonly source: string;
}

export interface CautionRow {
  readonly where: string;
  readonly text: string;
  readonly source: string;
}

export interface RefusalRow {
  readonly mustNot: string;
  readonly instead: string;
  readonly source: string;
}

export interface PreservationTables {
  readonly canning: readonly CanningRow[];
  readonly blanching: readonly BlanchingRow[];
  readonly keeping: readonly KeepingRow[];
  readonly cautions: readonly CautionRow[];
  readonly refusals: readonly RefusalRow[];
}
