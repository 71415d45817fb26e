/**
 * The household's own units. Inside and on the wire everything is metric; here it becomes pounds, feet and degrees Fahrenheit for a
 * household that reads those, also inside the sentences that come from the service.
 *
 * Foot, pound and ounce are exact by the international agreement of 1959; °F = °C × 9/5 + 32 (NIST Handbook 44, appendix C).
 */
import { signal } from "@preact/signals";
import { amountSpanWords, amountWords, lowToHighWords, measuredWords } from "#shared/kernel/words.ts";

export type UnitSystem = "metric" | "us" | "imperial";

export const G_PER_POUND = 453.59237;
export const G_PER_OUNCE = G_PER_POUND / 16;
export const M_PER_FOOT = 0.3048;

const NB = "\u00a0";
const MINUS = "\u2212";

/** Set from the household's answer; see kept-units.ts. */
export const units = signal<UnitSystem>("metric");

/** United States and imperial households weigh and measure alike; they part only at cups and pints. */
export const inPounds = (): boolean => units.value !== "metric";

/** A likely weight: 400 g, 3.1 kg; 14 oz, 6.8 lb. */
export function amount(grams: number): string {
  if (!inPounds()) return amountWords(grams);
  return isOunces(grams) ? `${ounces(grams)}${NB}oz` : `${pounds(grams)}${NB}lb`;
}

/** 250 to 600 g, 1.7 to 4.8 kg; 9 to 14 oz, 0.6 to 1.3 lb; “up to” from nothing. */
export function amountSpan(low: number, high: number): string {
  if (!inPounds()) return lowToHighWords(low, high);
  if (amount(low) === amount(high)) return amount(high);
  if (ounces(low) === 0) return `up to ${amount(high)}`;
  return isOunces(high) ? `${ounces(low)} to ${ounces(high)}${NB}oz` : `${pounds(low)} to ${pounds(high)}${NB}lb`;
}

interface Band {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** 1.7 to 4.8 kg, most likely 3.1 kg. */
export function expectedAmount(band: Band): string {
  if (!inPounds()) return amountSpanWords(band);
  const most = amount(band.likely);
  return amount(band.low) === most && amount(band.high) === most ? most : `${amountSpan(band.low, band.high)}, most likely ${most}`;
}

/** A weight as it was put on the scale: 1,200 g; 2 lb 10 oz. */
export function measured(grams: number): string {
  if (!inPounds()) return measuredWords(grams);
  if (grams < G_PER_POUND - G_PER_OUNCE / 20) return `${Math.round((grams / G_PER_OUNCE) * 10) / 10}${NB}oz`;
  const all = ounces(grams);
  const [lb, oz] = [Math.floor(all / 16), all % 16];
  return oz === 0 ? `${lb}${NB}lb` : `${lb}${NB}lb${NB}${oz}${NB}oz`;
}

/** The weight unit of tables and pictures: its word, and the grams in one. */
export const tableUnit = (): { readonly word: string; readonly long: string; readonly grams: number } =>
  inPounds() ? { word: "lb", long: "pounds", grams: G_PER_POUND } : { word: "kg", long: "kilograms", grams: 1000 };

/** 3 m; 9 ft 10 in. */
export function metres(m: number): string {
  if (!inPounds()) return `${plain(m)}${NB}m`;
  const inches = Math.round((m / M_PER_FOOT) * 12);
  const [ft, rest] = [Math.floor(inches / 12), inches % 12];
  if (ft === 0) return `${rest}${NB}in`;
  return rest === 0 ? `${ft}${NB}ft` : `${ft}${NB}ft${NB}${rest}${NB}in`;
}

/** 2.5 m²; 27 sq ft. */
export function area(m2: number): string {
  if (!inPounds()) return `${plain(m2)}${NB}m²`;
  const sqFt = m2 / (M_PER_FOOT * M_PER_FOOT);
  return `${sqFt < 10 ? plain(Math.round(sqFt * 10) / 10) : Math.round(sqFt)}${NB}sq${NB}ft`;
}

/** 4.35 of 12 m². */
export const areaOf = (partM2: number, wholeM2: number): string => `${area(partM2).split(NB)[0] ?? ""}${NB}of ${area(wholeM2)}`;

/** As a field begins with it: exact enough that an untouched field gives back what was stored. */
export const typedMetres = (m: number): string => (inPounds() ? `${plain(m / M_PER_FOOT)} ft` : `${plain(m)} m`);
export const typedArea = (m2: number): string => (inPounds() ? `${plain(m2 / (M_PER_FOOT * M_PER_FOOT))} sq ft` : `${plain(m2)} m²`);

/** 190 °C; −1 °C; 375 °F, an oven's heat to the 5 degrees that its dial shows. */
export function degrees(celsius: number): string {
  if (!inPounds()) return `${signed(celsius)}${NB}°C`;
  const f = celsius * 1.8 + 32;
  return `${signed(f >= 200 ? Math.round(f / 5) * 5 : Math.round(f))}${NB}°F`;
}

const TO = "(?: to |–)";
const FIGURE = String.raw`[−-]?\d+(?:,\d{3})*(?:\.\d+)?`;
const UNIT = String.raw`[ \u00a0](kg|g|m²|m|cm|°C)(?![\p{L}\d²-])(?![ \u00a0](?:\(|d\b|days\b))`;
const MEASURES = new RegExp(String.raw`(${FIGURE})(?:(${TO})(${FIGURE}))?${UNIT}`, "gu");
/** Where a sentence speaks of degrees more or fewer, 32 has no place. */
const DIFFERENCE = /\b(?:adds?|added|more|less|warmer|colder|cooler)\b/;

/** A sentence of the service in the household's units. What already gives both, as “−18 °C (0 °F)”, stays as it is. */
export function inOurUnits(sentence: string): string {
  if (!inPounds()) return sentence;
  const shift = DIFFERENCE.test(sentence) ? 0 : 32;
  return sentence.replace(MEASURES, (_, first: string, to: string | undefined, second: string | undefined, unit: string) => {
    const [a, b] = [valueOf(first), second === undefined ? null : valueOf(second)];
    if (unit === "kg" || unit === "g") {
      const grams = unit === "kg" ? 1000 : 1;
      return b === null ? amount(a * grams) : amountSpan(a * grams, b * grams);
    }
    const one = (value: number): string => (unit === "°C" ? fahrenheit(value, shift) : unit === "m²" ? area(value) : metres(unit === "cm" ? value / 100 : value));
    return b === null ? one(a) : `${one(a)}${to ?? ""}${one(b)}`;
  });
}

const fahrenheit = (celsius: number, shift: number): string => `${signed(Math.round(celsius * 1.8 + shift))}${NB}°F`;
const valueOf = (figure: string): number => Number(figure.replace(MINUS, "-").replaceAll(",", ""));
const signed = (value: number): string => `${value < 0 ? MINUS : ""}${plain(Math.abs(value))}`;
const plain = (value: number): string => String(Math.round(value * 100) / 100);
const isOunces = (grams: number): boolean => ounces(grams) < 16;
const ounces = (grams: number): number => Math.round(grams / G_PER_OUNCE);
const pounds = (grams: number): string => (grams >= 19.95 * G_PER_POUND ? String(Math.round(grams / G_PER_POUND)) : (grams / G_PER_POUND).toFixed(1));
