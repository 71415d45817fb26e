/**
 * Question: how long does what was kept this way last? `best` ends the quality, `safe` the time in which it may be eaten: two fields that never stand
 * in for each other. Source: the keeping table; a jar is used within a year (USDA Complete Guide 2015, Guide 1, p. 1-12), which is about quality.
 */
import type { SourceRef } from "../../kernel/outcome.ts";
import type { PlaceKind, Way } from "../../kernel/way.ts";
import { sourceOf } from "./citing.ts";
import { keepsHow } from "./keeping.ts";
import type { PreservationTables } from "./types.ts";

export interface DaySpan {
  readonly low: number;
  readonly high: number;
}

export interface Kept {
  readonly place: PlaceKind;
  readonly best: DaySpan | null;
  readonly safe: DaySpan | null;
  readonly text: string;
  readonly source: SourceRef;
}

const PLACES: Readonly<Partial<Record<Way, readonly PlaceKind[]>>> = { freeze: ["freezer"], store: ["cellar", "clamp", "shelf", "fridge"] };
const MONTH_DAYS = 30;

export function keepsIn({ crop, way }: { readonly crop: string | null; readonly way: Way }, tested: boolean, tables: PreservationTables): Kept[] {
  if (crop !== null && PLACES[way]) return PLACES[way].flatMap((place) => lookedUp(crop, place, tables));
  if (way === "ferment") {
    return tables.fermenting.filter((row) => row.fridgeMonths !== null && crop !== null && row.crops.includes(crop)).map((row) => {
      const [low, high] = row.fridgeMonths as readonly [number, number];
      return kept("fridge", { low: low * MONTH_DAYS, high: high * MONTH_DAYS }, null, `In the fridge ${low} to ${high} months.`, sourceOf(row, tables));
    });
  }
  const year = tables.rules.find((rule) => rule.key === "use-within");
  if ((way !== "bottle" && way !== "pickle") || !tested || !year || year.value === null) return [];
  const days = Math.round((year.value * 365) / 12);
  return [kept("shelf", { low: days, high: days }, null, `Best within ${year.value} months. A date is about quality; it does not make a badly processed jar safe.`, sourceOf(year, tables))];
}

function lookedUp(crop: string, place: PlaceKind, tables: PreservationTables): Kept[] {
  const { value, basis } = keepsHow(crop, place, tables);
  const source = basis[0];
  if (!value?.days || !source) return [];
  const span = { low: value.days[0], high: value.days[1] };
  const words = span.low === span.high ? `${span.low} days` : `${span.low} to ${span.high} days`;
  const quality = value.limit === "quality";
  return [kept(place, quality ? span : null, quality ? null : span, quality ? `Best for ${words}${place === "freezer" ? "; kept frozen throughout it stays safe but fades" : ""}.` : `Safe for ${words}, then throw it away.`, source)];
}

const kept = (place: PlaceKind, best: DaySpan | null, safe: DaySpan | null, text: string, source: SourceRef): Kept => ({ place, best, safe, text, source });
