/** Rows of seed-data/measures to the maps that the reader and the scales look things up in. */
import { rationalOf } from "../../kernel/quantity.ts";
import { amount, listOf, oneOf, orNull, readRows, span, text, yesOrNo } from "../../kernel/reference-row.ts";
import type { ReferenceRow, Shape } from "../../kernel/reference-row.ts";
import { MEASURE_SYSTEMS, type MeasureSystem, type UnitDefinition } from "../../kernel/units.ts";
import { nameKey } from "./names.ts";
import type { CookedRow, FoodRow, MeasureTables, PanRow, ProduceRow, WeightRow, WordEntry, WordRole } from "./types.ts";

const ROLES = ["unit", "unit-size", "size", "number", "about", "adverb", "preparation", "ground", "comment-start", "tail-preparation", "adjective", "leading-adjective", "set-phrase", "form", "liquid", "ready", "unready"] as const;

interface WordRow {
  readonly key: string;
  readonly role: WordRole;
  readonly kind: WordEntry["unitKind"];
  readonly words: readonly string[];
  readonly value: number | null;
  readonly form: string | null;
}

/** Throws RangeError naming each row and field that does not fit. */
export function measureTables(rows: readonly ReferenceRow[], publications: readonly { readonly id: string; readonly text: string }[] = []): MeasureTables {
  const wordRows = readRows(rows, "measures/words", WORD);
  const foods = readRows(rows, "measures/foods", FOOD);
  const weights = readRows(rows, "measures/weights", WEIGHT);
  const units = new Map<string, Map<MeasureSystem | "any", UnitDefinition>>();
  for (const unit of readRows(rows, "measures/units", UNIT)) {
    const systems = units.get(unit.unit) ?? new Map<MeasureSystem | "any", UnitDefinition>();
    units.set(unit.unit, systems.set(unit.system, unit));
  }
  const foodByKey = new Map(foods.map((food) => [food.key, food]));
  for (const weight of weights) if (!foodByKey.has(weight.food)) throw new RangeError(`measures/weights: ${weight.key} names a food without a row in measures/foods`);
  return {
    words: entriesOf(wordRows),
    remarks: phrasesOf(wordRows, "comment-start"),
    setPhrases: phrasesOf(wordRows, "set-phrase"),
    units,
    foods: foodByKey,
    foodByName: new Map(foods.flatMap((food) => food.names.map((name) => [nameKey(name), food] as const))),
    weights: grouped(weights, (weight) => weight.food),
    produce: new Map(readRows(rows, "measures/produce", PRODUCE).map((row) => [row.food, row])),
    pans: readRows(rows, "measures/pans", PAN),
    cooked: new Map(readRows(rows, "measures/cooked", COOKED).map((row) => [nameKey(row.food), row])),
    publications: new Map(publications.map((publication) => [publication.id, publication.text])),
  };
}

function entriesOf(rows: readonly WordRow[]): Map<string, WordEntry> {
  const entries = new Map<string, { unit: string | null; unitKind: WordEntry["unitKind"]; number: WordEntry["number"]; form: string | null; roles: Set<WordRole> }>();
  for (const row of rows) {
    for (const word of row.words) {
      if (row.role === "comment-start" || row.role === "set-phrase") continue;
      const entry = entries.get(word) ?? { unit: null, unitKind: null, number: null, form: null, roles: new Set<WordRole>() };
      entry.roles.add(row.role);
      if (row.role === "unit") Object.assign(entry, { unit: row.key, unitKind: row.kind });
      if (row.role === "number" && row.value !== null) entry.number = rationalOf(String(row.value));
      if (row.role === "form") entry.form = row.form;
      entries.set(word, entry);
    }
  }
  return entries;
}

function phrasesOf(rows: readonly WordRow[], role: WordRole): Map<string, (readonly string[])[]> {
  const phrases = rows.filter((row) => row.role === role).flatMap((row) => row.words.map((phrase) => phrase.split(" ")));
  const sorted = phrases.sort((a, b) => b.length - a.length);
  return grouped(sorted, (phrase) => phrase[0] as string);
}

function grouped<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return groups;
}

const WORD: Shape<WordRow> = { key: text, role: oneOf(ROLES), kind: orNull(oneOf(["volume", "mass", "length", "count", "vague"])), words: listOf(text), value: orNull(amount), form: orNull(text) };
const UNIT: Shape<UnitDefinition> = { unit: text, system: oneOf([...MEASURE_SYSTEMS, "any"]), kind: oneOf(["volume", "mass", "length"]), factor: text };
const FOOD: Shape<FoodRow> = { key: text, names: listOf(text), crops: listOf(text), liquid: yesOrNo };
const WEIGHT: Shape<WeightRow> = {
  key: text,
  food: text,
  unit: orNull(text),
  size: orNull(text),
  form: orNull(text),
  forms: listOf(text),
  grams: amount,
  usual: yesOrNo,
  note: orNull(text),
  source: text,
  page: text,
};
const PAN: Shape<PanRow> = { key: text, shape: oneOf(["round", "pie", "square", "rectangle", "loaf"]), longIn: amount, wideIn: amount, deepIn: amount, cups: span, source: text, page: text };
const COOKED: Shape<CookedRow> = { key: text, food: text, of: text, gives: amount, unit: text, source: text, page: text };
const PRODUCE: Shape<ProduceRow> = { food: text, refusePercent: amount, what: text, weighed: oneOf(["picked", "used"]), source: text, page: text };
