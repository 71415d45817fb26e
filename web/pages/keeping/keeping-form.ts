/** What is asked about keeping, as the address has it, and the question it makes. Pure. */
import { CANNER_NAMES, JAR_NAMES, KEEPING_WAYS, KeepingQuery, type KeepingAnswer, type KeepingFoods } from "#shared/contracts/keeping.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { numberOf } from "../../parts/typed-amount.ts";

export type JarName = (typeof JAR_NAMES)[number];
export type CannerName = (typeof CANNER_NAMES)[number];

export const KEEPING_NAMES = ["food", "way", "jar", "canner", "altitude"] as const;
export type KeepingFields = Readonly<Record<(typeof KEEPING_NAMES)[number], string>>;

export const keepingFields = (query: URLSearchParams): KeepingFields => Object.fromEntries(KEEPING_NAMES.map((name) => [name, query.get(name) ?? ""])) as KeepingFields;
export const inAddress = (fields: KeepingFields): Record<string, string | null> => Object.fromEntries(KEEPING_NAMES.map((name) => [name, fields[name].trim() || null]));

export type AskedKeeping = { readonly kind: "nothing" } | { readonly kind: "ask"; readonly query: KeepingQuery } | { readonly kind: "wrong"; readonly faults: readonly FieldProblem[] };

const M_PER_FOOT = 0.3048;

/** A food by its name in the list, else as it was typed; the service answers either. */
export function askedOf(fields: KeepingFields, foods: KeepingFoods): AskedKeeping {
  if (fields.food.trim() === "") return { kind: "nothing" };
  const way = KEEPING_WAYS.find((one) => one === fields.way);
  if (way === undefined) return { kind: "wrong", faults: [{ field: "way", text: "Choose how you mean to keep it." }] };
  const altitude = fields.altitude.trim() === "" ? undefined : metresIn(fields.altitude);
  if (altitude === null) return { kind: "wrong", faults: [{ field: "altitude", text: "Height above the sea: metres or feet, such as 450 or 1500 ft" }] };
  const jarred = way === "bottle" || way === "pickle";
  const parsed = KeepingQuery.safeParse({
    food: foodKey(fields.food, foods),
    way,
    ...(jarred && fields.jar ? { jar: fields.jar } : {}),
    ...(jarred && fields.canner ? { canner: fields.canner } : {}),
    ...(altitude === undefined ? {} : { altitudeM: altitude }),
  });
  if (parsed.success) return { kind: "ask", query: parsed.data };
  return { kind: "wrong", faults: parsed.error.issues.map(({ path, message }) => ({ field: path[0] === "altitudeM" ? "altitude" : String(path[0]), text: message })) };
}

function foodKey(typed: string, foods: KeepingFoods): string {
  const plain = typed.trim().toLowerCase();
  return foods.find(({ name, food }) => name.toLowerCase() === plain || food === plain)?.food ?? typed.trim();
}

/** “450”, “450 m”, “1500 ft” in metres. */
export function metresIn(text: string): number | null {
  const found = /^(.*?)\s*(m|metres?|ft|feet)?$/.exec(text.trim().toLowerCase());
  const n = numberOf((found?.[1] ?? "").trim(), false);
  if (n === null) return null;
  return found?.[2]?.startsWith("f") ? Math.round(n * M_PER_FOOT) : n;
}

/** A yes that has its never beside it sends the reader there first. */
export const sentenceOf = ({ answer, may, never }: Pick<KeepingAnswer, "answer" | "may" | "never">): string => (may && never.length > 0 ? `${answer} First read what must never be done.` : answer);

/** As jars and canners are sold; a US pint is 473 ml (NIST Handbook 44, appendix C). */
export const JAR_WORDS: Readonly<Record<JarName, string>> = {
  "half-pint": "half-pint, 237\u00a0ml",
  "12oz": "12\u00a0oz, 355\u00a0ml",
  pint: "pint, 473\u00a0ml",
  "1.5-pint": "1½ pints, 710\u00a0ml",
  quart: "quart, 946\u00a0ml",
  "half-gallon": "half-gallon, 1.9\u00a0l",
};
export const CANNER_WORDS: Readonly<Record<CannerName, string>> = { "boiling-water": "boiling-water canner", "pressure-dial": "pressure canner with a dial", "pressure-weighted": "pressure canner with a weight" };
