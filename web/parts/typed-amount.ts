/**
 * Reads amounts as people type them, with decimal comma or point: “3 m”, “10 ft”, “12 plants”, “2 m²” for a sowing, “450”, “1.2 kg”,
 * “2 lb 3 oz” for a weight. Every unit is understood in every household; a bare number is meant in the household's own.
 */
import { G_PER_OUNCE, G_PER_POUND, inPounds, M_PER_FOOT } from "../units.ts";
import { got, wrong, type Typed } from "./typed.ts";

export type SowingAmount = { readonly rowM: number } | { readonly plants: number } | { readonly areaM2: number };
export type AmountKind = "rowM" | "plants" | "areaM2";

const NUMBER = String.raw`([−-]?\d+(?:[.,\u00a0 ']\d+)*)`;

/** How much was sown. A bare number counts in `usual`, the first amount the crop's book has a yield for. */
export function readSowingAmount(text: string, usual: AmountKind): Typed<SowingAmount> {
  const found = new RegExp(`^${NUMBER}\\s*(.*)$`).exec(text.trim().toLowerCase());
  const works = inPounds() ? "Write feet of row, plants or square feet: 10 ft, 12 plants or 20 sq ft." : "Write metres of row, plants or m²: 3 m, 12 plants or 2 m².";
  const above = inPounds() ? "Write feet, plants or square feet above 0." : "Write metres, plants or m² above 0.";
  if (text.trim() === "") return wrong("How much is not written yet.", works);
  if (!found) return wrong("That is not an amount we can read.", works);
  const unit = sowingUnit((found[2] ?? "").trim(), usual);
  if (unit === null) return wrong(`“${found[2]}” is not a unit for a sowing.`, works);
  const n = numberOf(found[1] ?? "", unit.kind === "plants");
  if (n === null) return wrong("That is not a number we can read.", works);
  if (n < 0) return wrong("Below nothing.", above);
  if (n === 0) return wrong("That is nothing.", above);
  if (unit.kind === "plants") return Number.isInteger(n) ? got({ plants: n }) : wrong("Part of a plant cannot stand in a bed.", "Write whole plants: 12 plants.");
  const size = Math.round(n * unit.metric * 100) / 100;
  if (size < 0.01) return wrong("That is less than a centimetre.", works);
  return got(unit.kind === "rowM" ? { rowM: size } : { areaM2: size });
}

function sowingUnit(unit: string, usual: AmountKind): { readonly kind: AmountKind; readonly metric: number } | null {
  if (unit === "") return { kind: usual, metric: usual === "plants" || !inPounds() ? 1 : usual === "rowM" ? M_PER_FOOT : M_PER_FOOT * M_PER_FOOT };
  if (/^(?:m|metres?|meters?|m of row|metres? of row|row)$/.test(unit)) return { kind: "rowM", metric: 1 };
  if (/^cm$/.test(unit)) return { kind: "rowM", metric: 0.01 };
  if (/^(?:ft|feet|foot)(?: of row)?$/.test(unit)) return { kind: "rowM", metric: M_PER_FOOT };
  if (/^(?:m²|m2|m\^2|sq\.? ?m|sqm|square metres?|square meters?)$/.test(unit)) return { kind: "areaM2", metric: 1 };
  if (/^(?:ft²|ft2|sq\.? ?ft|square f(?:ee|oo)t)$/.test(unit)) return { kind: "areaM2", metric: M_PER_FOOT * M_PER_FOOT };
  if (/^(?:plants?|pl|pcs?|pieces?|cloves?|sets?|tubers?|bushes|bush|trees?)$/.test(unit)) return { kind: "plants", metric: 1 };
  return null;
}

/** A weight in whole grams. A bare number is grams, or ounces in a household that weighs in pounds. */
export function readGrams(text: string): Typed<number> {
  const works = inPounds() ? "Write ounces or pounds: 12 oz or 2 lb 3 oz." : "Write grams or kilograms: 450 g or 1.2 kg.";
  const typed = text.trim().toLowerCase();
  if (typed === "") return wrong("No weight is written yet.", works);
  const pounds = new RegExp(`^${NUMBER}\\s*(?:lb|lbs|pounds?)\\s*(?:${NUMBER}\\s*(?:oz|ounces?))?$`).exec(typed);
  const single = new RegExp(`^${NUMBER}\\s*(g|gr|grams?|kg|kilos?|kilograms?|oz|ounces?)?$`).exec(typed);
  const grams = pounds ? poundsAndOunces(pounds[1], pounds[2]) : single ? inGrams(single[1], single[2]) : null;
  if (grams === null) return wrong("That is not a weight we can read.", works);
  if (grams < 0) return wrong("Below nothing.", works);
  if (Math.round(grams) === 0) return wrong("That weighs nothing.", works);
  return got(Math.round(grams));
}

function inGrams(figure: string | undefined, unit = inPounds() ? "oz" : "g"): number | null {
  const each = unit.startsWith("k") ? 1000 : unit.startsWith("o") ? G_PER_OUNCE : 1;
  const n = numberOf(figure ?? "", each === 1);
  return n === null ? null : n * each;
}

function poundsAndOunces(lb: string | undefined, oz: string | undefined): number | null {
  const [pounds, ounces] = [numberOf(lb ?? "", false), oz === undefined ? 0 : numberOf(oz, false)];
  return pounds === null || ounces === null ? null : pounds * G_PER_POUND + ounces * G_PER_OUNCE;
}

/**
 * A number with decimal comma or point. Where only whole numbers make sense (grams, plants), a mark before exactly three digits
 * parts thousands: 1,200 g is 1200. A blank or an apostrophe always does.
 */
export function numberOf(text: string, wholeOnly: boolean): number | null {
  const plain = text.replace("−", "-").replace(/[\u00a0 '](?=\d{3}(?!\d))/g, "");
  const thousands = /^-?\d{1,3}(?:[.,]\d{3})+$/.test(plain) && (wholeOnly || (plain.match(/[.,]/g)?.length ?? 0) > 1);
  if (thousands) return Number(plain.replace(/[.,]/g, ""));
  const bothMarks = /^-?\d{1,3}(?:,\d{3})+\.\d+$/.test(plain) ? plain.replace(/,/g, "") : /^-?\d{1,3}(?:\.\d{3})+,\d+$/.test(plain) ? plain.replace(/\./g, "") : plain;
  const decimal = bothMarks.replace(",", ".");
  return /^-?\d+(?:\.\d+)?$/.test(decimal) ? Number(decimal) : null;
}

/** A length in metres with two decimals; a bare number is metres, or feet in a household that measures in feet. */
export function readLength(text: string): Typed<number> {
  const works = inPounds() ? "Write feet and inches: 20 ft or 3 ft 11 in." : "Write metres: 7 m or 1.2 m.";
  const typed = text.trim().toLowerCase();
  if (typed === "") return wrong("It is not written yet.", works);
  const metres = feetAndInches(typed) ?? inMetres(typed);
  if (metres === null) return wrong("That is not a length we can read.", works);
  if (metres <= 0) return wrong("Below nothing.", works);
  const m = Math.round(metres * 100) / 100;
  return m < 0.01 ? wrong("That is less than a centimetre.", works) : got(m);
}

function inMetres(typed: string): number | null {
  const found = new RegExp(`^${NUMBER}\\s*(m|metres?|meters?|cm|ft|feet|foot|')?$`).exec(typed);
  const n = found ? numberOf(found[1] ?? "", false) : null;
  const unit = found?.[2] ?? (inPounds() ? "ft" : "m");
  return n === null ? null : n * (unit === "cm" ? 0.01 : unit.startsWith("m") ? 1 : M_PER_FOOT);
}

/** 3 ft 11 in, 3' 11", 11 in; null where no inches are written. */
function feetAndInches(typed: string): number | null {
  const found = /^(?:(\d+)\s*(?:ft|feet|foot|'))?\s*(\d+(?:[.,]\d+)?)\s*(?:in|inch|inches|"|″)$/.exec(typed);
  const inches = found ? numberOf(found[2] ?? "", false) : null;
  return inches === null ? null : (Number(found?.[1] ?? 0) + inches / 12) * M_PER_FOOT;
}
