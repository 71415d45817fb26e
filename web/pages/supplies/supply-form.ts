/** One supply as it is typed, and the body it makes. Pure: words in, body or faults out. */
import type { NewSupply, Supply } from "#shared/contracts/supplies.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { numberOf, readGrams } from "../../parts/typed-amount.ts";
import { readDay } from "../../parts/typed-day.ts";
import { got, wrong, type Typed } from "../../parts/typed.ts";
import { isCounted, type SupplyKind } from "./supply-words.ts";

export interface SupplyFields {
  readonly kind: SupplyKind;
  readonly name: string;
  readonly amount: string;
  readonly holds: string;
  readonly bestUntil: string;
}

export const NO_SUPPLY: SupplyFields = { kind: "jar", name: "", amount: "", holds: "", bestUntil: "" };

export function fieldsOf({ kind, name, amount, unit, holdsMl, bestUntil }: Supply): SupplyFields {
  return { kind, name, amount: unit === "pieces" ? String(amount) : `${amount} ${unit}`, holds: holdsMl === undefined ? "" : `${holdsMl} ml`, bestUntil: bestUntil ?? "" };
}

type Amount = { readonly amount: number; readonly unit: NewSupply["unit"] };

/** “9”, “1.2 kg”, “1.5 l”. A bare number counts pieces, or what the kind is weighed in. */
export function readSupplyAmount(text: string, kind: SupplyKind): Typed<Amount> {
  const typed = text.trim().toLowerCase();
  const works = isCounted(kind) ? "Write how many there are: 12." : kind === "vinegar" ? "Write litres or millilitres: 1.5 l, 500 ml." : "Write a weight or a volume: 1.2 kg, 500 g, 1 l.";
  if (typed === "") return wrong("How much there is, is not written yet.", works);
  const found = /^(\d+(?:[.,  ']\d+)*)\s*(ml|l|litres?|liters?|pieces?|pcs?)?$/.exec(typed);
  const unit = found?.[2] ?? (isCounted(kind) || kind === "other" ? "pieces" : kind === "vinegar" ? "ml" : null);
  if (!found || unit === null) return weight(typed, kind, works);
  const n = numberOf(found[1] ?? "", !/^l/.test(unit));
  if (n === null) return wrong("That is not an amount we can read.", works);
  if (/^p/.test(unit)) return Number.isInteger(n) ? got({ amount: n, unit: "pieces" }) : wrong("Part of a piece cannot be counted.", works);
  return got({ amount: Math.round(unit === "ml" ? n : n * 1000), unit: "ml" });
}

function weight(typed: string, kind: SupplyKind, works: string): Typed<Amount> {
  if (isCounted(kind)) return wrong("That is not a number of pieces.", works);
  if (/^0\s*(?:g|kg)?$/.test(typed)) return got({ amount: 0, unit: "g" });
  const grams = readGrams(typed);
  return grams.ok ? got({ amount: grams.value, unit: "g" }) : wrong(grams.wrong, works);
}

/** What one jar, bag or box holds: “500 ml”, “0.5 l”; a bare number is millilitres. */
function readHolds(text: string): Typed<number> {
  const works = "Write what one holds: 500 ml, 0.75 l.";
  const found = /^(\d+(?:[.,]\d+)?)\s*(ml|l|litres?|liters?)?$/.exec(text.trim().toLowerCase());
  const n = found ? numberOf(found[1] ?? "", false) : null;
  if (n === null) return wrong("That is not a size we can read.", works);
  const ml = Math.round(found?.[2]?.startsWith("l") ? n * 1000 : n);
  return ml >= 1 ? got(ml) : wrong("That holds nothing.", works);
}

export type ReadSupply = { readonly ok: true; readonly body: NewSupply } | { readonly ok: false; readonly faults: readonly FieldProblem[] };

/** `form` begins the ids of the fields; `kept` is what the form does not show and must not lose. */
export function readSupply(fields: SupplyFields, today: LocalDate, form: string, kept: Pick<NewSupply, "note"> = {}): ReadSupply {
  const faults: FieldProblem[] = [];
  const bad = (field: keyof SupplyFields, text: string): void => void faults.push({ field: `${form}-${field}`, text });
  const amount = readSupplyAmount(fields.amount, fields.kind);
  const holds = !isCounted(fields.kind) || fields.kind === "lid" || fields.holds.trim() === "" ? null : readHolds(fields.holds);
  const until = fields.bestUntil.trim() === "" ? null : readDay(fields.bestUntil, today);
  if (fields.name.trim() === "") bad("name", "What it is called: write a name, such as Jars of half a litre");
  if (!amount.ok) bad("amount", `How much there is: ${sentence(amount)}`);
  if (holds && !holds.ok) bad("holds", `One holds: ${sentence(holds)}`);
  if (until && !until.ok) bad("bestUntil", `Best until: ${sentence(until)}`);
  if (faults.length > 0 || !amount.ok) return { ok: false, faults };
  return {
    ok: true,
    body: { kind: fields.kind, name: fields.name.trim(), ...amount.value, ...(holds?.ok ? { holdsMl: holds.value } : {}), ...(until?.ok ? { bestUntil: until.value.date } : {}), ...kept },
  };
}

const sentence = ({ wrong: what, works }: { readonly wrong: string; readonly works: string }): string => `${what.charAt(0).toLowerCase()}${what.slice(1)} ${works}`;

/** The rows of a comparison with what somebody else saved. */
export function supplyDifferences(mine: SupplyFields, theirs: SupplyFields): { name: string; mine: string; theirs: string }[] {
  const names: Readonly<Record<keyof SupplyFields, string>> = { kind: "Kind", name: "Name", amount: "There is", holds: "One holds", bestUntil: "Best until" };
  return (Object.keys(names) as (keyof SupplyFields)[]).map((key) => ({ name: names[key], mine: mine[key], theirs: theirs[key] }));
}
