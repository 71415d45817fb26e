/** Rows of seed-data/measures/* and what is read from an ingredient line. */
import type { Rational } from "../../kernel/quantity.ts";
import type { MeasureSystem, UnitDefinition } from "../../kernel/units.ts";

export type CountKind = "count" | "vague";
export type WordRole =
  | "unit"
  | "unit-size"
  | "size"
  | "number"
  | "about"
  | "adverb"
  | "preparation"
  | "ground"
  | "comment-start"
  | "tail-preparation"
  | "adjective"
  | "leading-adjective"
  | "set-phrase"
  | "form"
  | "liquid"
  | "ready"
  | "unready";

/** What a word can be in an ingredient line. */
export interface WordEntry {
  readonly unit: string | null;
  readonly unitKind: UnitDefinition["kind"] | CountKind | null;
  readonly number: Rational | null;
  /** The form of a weight row that the word asks for: diced asks for chopped. */
  readonly form: string | null;
  readonly roles: ReadonlySet<WordRole>;
}

export interface WeightRow {
  readonly key: string;
  readonly food: string;
  /** Null where one piece of the food is meant. */
  readonly unit: string | null;
  readonly size: string | null;
  /** Chopped, packed, whole; null where the table names none. */
  readonly form: string | null;
  /** The same in the words of the word list; any of them will do. */
  readonly forms: readonly string[];
  readonly grams: number;
  /** Taken when the line names neither size nor form. */
  readonly usual: boolean;
  readonly note: string | null;
  readonly source: string;
  readonly page: string;
}

export interface FoodRow {
  readonly key: string;
  readonly names: readonly string[];
  readonly crops: readonly string[];
  /** Printed in millilitres. */
  readonly liquid: boolean;
}

export interface ProduceRow {
  readonly food: string;
  readonly refusePercent: number;
  readonly what: string;
  /** What a bare weight in a recipe means. */
  readonly weighed: "picked" | "used";
  readonly source: string;
  readonly page: string;
}

/** A tin as charts name it, inside inches, and what it holds to the rim. */
export interface PanRow {
  readonly key: string;
  readonly shape: "round" | "pie" | "square" | "rectangle" | "loaf";
  /** Across, for a round one. */
  readonly longIn: number;
  readonly wideIn: number;
  readonly deepIn: number;
  /** US cups, least and most where charts differ. */
  readonly cups: readonly [number, number];
  readonly source: string;
  readonly page: string;
}

/** What one pound of a food gives when it is cooked. */
export interface CookedRow {
  readonly key: string;
  readonly food: string;
  /** Dry, or whole as bought. */
  readonly of: string;
  readonly gives: number;
  readonly unit: string;
  readonly source: string;
  readonly page: string;
}

/** By first word, longest first. */
export type Phrases = ReadonlyMap<string, readonly (readonly string[])[]>;

export interface MeasureTables {
  readonly words: ReadonlyMap<string, WordEntry>;
  /** First word of a remark → the whole openings, longest first. */
  readonly remarks: Phrases;
  /** First word of a name that holds a preparation or a size: toasted sesame oil. */
  readonly setPhrases: Phrases;
  /** Unit → system → definition. */
  readonly units: ReadonlyMap<string, ReadonlyMap<MeasureSystem | "any", UnitDefinition>>;
  /** Normal name → food. */
  readonly foodByName: ReadonlyMap<string, FoodRow>;
  readonly foods: ReadonlyMap<string, FoodRow>;
  readonly weights: ReadonlyMap<string, readonly WeightRow[]>;
  readonly produce: ReadonlyMap<string, ProduceRow>;
  readonly pans: readonly PanRow[];
  /** By the normal name of the food. */
  readonly cooked: ReadonlyMap<string, CookedRow>;
  readonly publications: ReadonlyMap<string, string>;
}

/** One amount of a line. */
export interface ReadAmount {
  readonly amount: Rational | null;
  readonly max: Rational | null;
  /** As printed, fractions as 1 1/2 and ranges as 2-3; empty where the line gives no number. */
  readonly text: string;
  readonly unit: string | null;
  /** Words of the unit as printed, with what qualifies it: large bunch. */
  readonly unitWords: readonly string[];
  /** `times`: so many of the next amount; `same`: another way to say the first; `each`: of one piece; `plus`, `minus`: to be added or taken off. */
  readonly role: "first" | "times" | "same" | "each" | "plus" | "minus" | "remark";
}

export interface ReadLine {
  readonly text: string;
  /** Sum of what the line says first; null where it gives no number. */
  readonly amount: Rational | null;
  readonly amountMax: Rational | null;
  /** Name of the unit in the tables: cup, gram, clove; null for pieces. */
  readonly unit: string | null;
  readonly food: string;
  readonly size: string;
  readonly preparation: string;
  readonly comment: string;
  readonly amounts: readonly ReadAmount[];
}
