/** Untyped rows to the tested tables. Names of foods in the sources become the slugs of the crops of this book on the way. */
import { amount, listOf, oneOf, orNull, readRows, record, span, text, yesOrNo } from "../../kernel/reference-row.ts";
import type { ReferenceRow, Shape } from "../../kernel/reference-row.ts";
import { PLACE_KINDS, WAYS } from "../../kernel/way.ts";
import { CANNERS, JARS } from "./types.ts";
import type { AltitudeBand, BlanchingRow, CanningRow, CautionRow, DryingRow, FermentingRow, JarRow, KeepingRow, PlaceLimitRow, PlainRow, PreservationTables, QuantityRow, RefusalRow, RuleRow } from "./types.ts";

/** Throws RangeError naming each row and field that does not fit. `publications` gives the answers' sources their full text. */
export function preservationTables(rows: readonly ReferenceRow[], publications: readonly { readonly id: string; readonly text: string }[] = []): PreservationTables {
  const slugs = new Map(readRows(rows, "preservation/crop-names", { name: text, crops: listOf(text) }).map((row) => [row.name, row.crops]));
  const crops = (names: readonly string[]): string[] => names.flatMap((name) => slugsOf(name, slugs));
  const oneForEachCrop = <T extends { readonly crop: string }>(row: T): T[] => slugsOf(row.crop, slugs).map((crop) => ({ ...row, crop }));
  const withCrops = <T extends { readonly crops: readonly string[] }>(row: T): T => ({ ...row, crops: crops(row.crops) });
  const canning = readRows(rows, "preservation/canning", CANNING).map(withCrops);
  canning.forEach(mustRise);
  const plain = readRows(rows, "preservation/plain-foods", PLAIN);
  return {
    canning,
    jars: readRows(rows, "preservation/jars", JAR),
    blanching: readRows(rows, "preservation/blanching", BLANCHING).flatMap(oneForEachCrop),
    drying: readRows(rows, "preservation/drying", DRYING).flatMap(oneForEachCrop),
    fermenting: readRows(rows, "preservation/fermenting", FERMENTING).map(withCrops),
    keeping: readRows(rows, "preservation/keeping", KEEPING).flatMap((row) =>
      row.crop === null || row.crop === "*" ? [row] : slugsOf(row.crop, slugs).map((crop) => ({ ...row, crop })),
    ),
    quantities: readRows(rows, "preservation/quantities", QUANTITY).map(withCrops),
    rules: readRows(rows, "preservation/rules", RULE),
    cautions: readRows(rows, "preservation/cautions", CAUTION).map((row) => ({
      ...row,
      on: row.on.flatMap((token) => (token.startsWith("crop:") ? slugsOf(token.slice(5), slugs).map((crop) => `crop:${crop}`) : [token])),
    })),
    refusals: readRows(rows, "preservation/refusals", REFUSAL).map(withCrops),
    placeLimits: readRows(rows, "preservation/place-limits", PLACE_LIMIT),
    plainFoods: new Set(plain.flatMap((row) => (row.is === "food" ? [row.name] : []))),
    beside: new RegExp(`\\b(?:${plain.flatMap((row) => (row.is === "beside" ? [row.name] : [])).join("|")})\\b`, "g"),
    publications: new Map(publications.map((publication) => [publication.id, publication.text])),
  };
}

function slugsOf(name: string, slugs: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const crops = slugs.get(name);
  if (!crops) throw new RangeError(`preservation/crop-names: no row for ${name}`);
  return crops;
}

/** Bands that overlap or leave a gap would let an altitude fall between two figures. */
function mustRise(row: CanningRow): void {
  row.bands.forEach((band, i) => {
    const before = row.bands[i - 1];
    const starts = before === undefined ? 0 : before.toFt === null ? NaN : before.toFt + 1;
    if (band.fromFt !== starts || (band.toFt !== null && band.toFt <= band.fromFt)) throw new RangeError(`preservation/canning: ${row.key}.bands.${i} must follow the band before`);
  });
  if (row.bands.length === 0) throw new RangeError(`preservation/canning: ${row.key}.bands must not be empty`);
}

const origin = { source: text, page: text };
const band: Shape<AltitudeBand> = { fromFt: amount, toFt: orNull(amount), minutes: amount, psi: orNull(amount) };
const CANNING: Shape<CanningRow> = {
  key: text,
  food: text,
  title: text,
  kind: oneOf(["acid", "acidified", "low-acid", "pickled"]),
  way: oneOf(["bottle", "pickle", "ferment"]),
  crops: listOf(text),
  pack: oneOf(["hot", "raw"]),
  jar: oneOf(JARS),
  canner: oneOf(CANNERS),
  bands: listOf(record(band)),
  headspaceIn: orNull(amount),
  acid: orNull(text),
  note: orNull(text),
  ...origin,
};
const JAR: Shape<JarRow> = { jar: oneOf(JARS), takesTimeOf: oneOf(JARS), ...origin };
const heated = { key: text, crop: text, cut: text, waterMin: orNull(span), steamMin: orNull(span), fromMemory: yesOrNo, ...origin };
const BLANCHING: Shape<BlanchingRow> = { ...heated, how: oneOf(["blanch", "cook", "none"]), note: orNull(text) };
const DRYING: Shape<DryingRow> = { ...heated, hours: span };
const FERMENTING: Shape<FermentingRow> = {
  key: text,
  food: text,
  crops: listOf(text),
  salt: orNull(text),
  tempF: orNull(span),
  weeks: orNull(span),
  fridgeMonths: orNull(span),
  note: orNull(text),
  fromMemory: yesOrNo,
  ...origin,
};
const KEEPING: Shape<KeepingRow> = {
  key: text,
  crop: orNull(text),
  food: orNull(text),
  place: oneOf([...PLACE_KINDS, "counter", "cold-store"]),
  days: orNull(span),
  limit: oneOf(["quality", "safety"]),
  conditions: orNull(text),
  state: orNull(text),
  note: orNull(text),
  fromMemory: yesOrNo,
  ...origin,
};
const QUANTITY: Shape<QuantityRow> = { key: text, food: text, crops: listOf(text), way: oneOf(WAYS), per: text, lb: span, fromMemory: yesOrNo, ...origin };
const RULE: Shape<RuleRow> = { key: text, topic: text, text, value: orNull(amount), unit: orNull(text), fromMemory: yesOrNo, ...origin };
const CAUTION: Shape<CautionRow> = { key: text, where: text, on: listOf(text), text, source: text };
const PLACE_LIMIT: Shape<PlaceLimitRow> = { key: text, way: oneOf(WAYS), place: oneOf(PLACE_KINDS), days: amount, ...origin };
const PLAIN: Shape<PlainRow> = { key: text, is: oneOf(["food", "beside"]), name: text, ...origin };
const REFUSAL: Shape<RefusalRow> = { key: text, of: oneOf(["rule", "food", "method"]), mustNot: text, why: orNull(text), instead: text, crops: listOf(text), source: text, page: orNull(text) };
