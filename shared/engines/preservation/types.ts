/** The tested tables as the guard reads them: rows of seed-data/preservation/*, never computed, never interpolated. */
import type { PlaceKind, Way } from "../../kernel/way.ts";

export const JARS = ["half-pint", "12oz", "pint", "1.5-pint", "quart", "half-gallon"] as const;
export type Jar = (typeof JARS)[number];
export const CANNERS = ["boiling-water", "pressure-dial", "pressure-weighted"] as const;
export type Canner = (typeof CANNERS)[number];

/** A figure of the guide and the altitudes it was tested for, in feet, both ends included. */
export interface AltitudeBand {
  readonly fromFt: number;
  /** Null where the guide says "above" and names no end. */
  readonly toFt: number | null;
  readonly minutes: number;
  /** Gauge pressure; null in boiling water. */
  readonly psi: number | null;
}

/** One tested process: exactly this food, pack, jar and canner. Where the guide lists several pressures for one food, each is a row. */
export interface CanningRow {
  /** food/pack/jar/canner, and the minutes for a pressure canner. */
  readonly key: string;
  readonly food: string;
  readonly title: string;
  readonly kind: "acid" | "acidified" | "low-acid" | "pickled";
  readonly way: "bottle" | "pickle" | "ferment";
  readonly crops: readonly string[];
  readonly pack: "hot" | "raw";
  readonly jar: Jar;
  readonly canner: Canner;
  /** A process has no figure outside its bands. */
  readonly bands: readonly AltitudeBand[];
  readonly headspaceIn: number | null;
  /** Acid to add to each jar, in the source's words; null where none is asked for. */
  readonly acid: string | null;
  readonly note: string | null;
  readonly source: string;
  readonly page: string;
}

export interface BlanchingRow {
  readonly key: string;
  readonly crop: string;
  readonly cut: string;
  /** `cook`: cooked until tender instead; `none`: frozen as it is. */
  readonly how: "blanch" | "cook" | "none";
  readonly waterMin: readonly [number, number] | null;
  readonly steamMin: readonly [number, number] | null;
  readonly note: string | null;
  /** No text was read for this row. */
  readonly fromMemory: boolean;
  readonly source: string;
  readonly page: string;
}

export interface DryingRow {
  readonly key: string;
  readonly crop: string;
  readonly cut: string;
  readonly waterMin: readonly [number, number] | null;
  readonly steamMin: readonly [number, number] | null;
  readonly hours: readonly [number, number];
  readonly fromMemory: boolean;
  readonly source: string;
  readonly page: string;
}

export interface FermentingRow {
  readonly key: string;
  readonly food: string;
  readonly crops: readonly string[];
  readonly salt: string | null;
  readonly tempF: readonly [number, number] | null;
  readonly weeks: readonly [number, number] | null;
  readonly fridgeMonths: readonly [number, number] | null;
  readonly note: string | null;
  readonly fromMemory: boolean;
  readonly source: string;
  readonly page: string;
}

/** `cold-store`: a store held at the crop's best temperature and humidity, which few households have. */
export type KeepingPlace = PlaceKind | "counter" | "cold-store";

export interface KeepingRow {
  readonly key: string;
  /** Null for a cooked dish, `*` for any fruit or vegetable. */
  readonly crop: string | null;
  /** Name of the dish; null for a crop. */
  readonly food: string | null;
  readonly place: KeepingPlace;
  /** Null where the source advises against the place. */
  readonly days: readonly [number, number] | null;
  /** What ends with the days: the best quality, or the time in which it is safe to eat. */
  readonly limit: "quality" | "safety";
  readonly conditions: string | null;
  /** Bunched, mature green, early and the like. */
  readonly state: string | null;
  readonly note: string | null;
  readonly fromMemory: boolean;
  readonly source: string;
  readonly page: string;
}

export interface CautionRow {
  readonly key: string;
  readonly where: string;
  /** way:…, crop:…, food:…, process:… or topic:…; the caution is shown where one of them fits. */
  readonly on: readonly string[];
  readonly text: string;
  readonly source: string;
}

export interface RefusalRow {
  readonly key: string;
  readonly of: "rule" | "food" | "method";
  readonly mustNot: string;
  readonly why: string | null;
  readonly instead: string;
  readonly crops: readonly string[];
  readonly source: string;
  readonly page: string | null;
}

/** A jar that takes the time of another (Guide 1, p. 1-23). */
export interface JarRow {
  readonly jar: Jar;
  readonly takesTimeOf: Jar;
  readonly source: string;
  readonly page: string;
}

/** Pounds of produce for so many jars or freezer boxes. */
export interface QuantityRow {
  readonly key: string;
  readonly food: string;
  readonly crops: readonly string[];
  readonly way: Way;
  readonly per: string;
  readonly lb: readonly [number, number];
  readonly fromMemory: boolean;
  readonly source: string;
  readonly page: string;
}

/** A single published figure. */
export interface RuleRow {
  readonly key: string;
  readonly topic: string;
  readonly text: string;
  readonly value: number | null;
  readonly unit: string | null;
  readonly fromMemory: boolean;
  readonly source: string;
  readonly page: string;
}

/** Most days that a recipe may promise in a place. A way and place without a row do not go together. */
export interface PlaceLimitRow {
  readonly key: string;
  readonly way: Way;
  readonly place: PlaceKind;
  readonly days: number;
  readonly source: string;
  readonly page: string;
}

/** A food that the guide has as one plain food, or something that it puts beside any of them. */
export interface PlainRow {
  readonly key: string;
  readonly is: "food" | "beside";
  readonly name: string;
  readonly source: string;
  readonly page: string;
}

export interface PreservationTables {
  readonly placeLimits: readonly PlaceLimitRow[];
  readonly plainFoods: ReadonlySet<string>;
  /** Any of the words for what may stand beside a plain food. */
  readonly beside: RegExp;
  readonly canning: readonly CanningRow[];
  readonly jars: readonly JarRow[];
  readonly blanching: readonly BlanchingRow[];
  readonly drying: readonly DryingRow[];
  readonly fermenting: readonly FermentingRow[];
  readonly keeping: readonly KeepingRow[];
  readonly quantities: readonly QuantityRow[];
  readonly rules: readonly RuleRow[];
  readonly cautions: readonly CautionRow[];
  readonly refusals: readonly RefusalRow[];
  /** Text of each publication by its id; empty when none was handed in. */
  readonly publications: ReadonlyMap<string, string>;
}
