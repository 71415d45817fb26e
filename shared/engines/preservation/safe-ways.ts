/** Question: which ways of keeping a crop do the tables cover, and why not the others? Excluded is excluded, never ranked low. */
import type { Way } from "../../kernel/way.ts";
import { keepsHow } from "./keeping.ts";
import type { KeepingPlace, PreservationTables } from "./types.ts";

export type KeepingWay = Extract<Way, "freeze" | "dry" | "pickle" | "bottle" | "ferment" | "store">;

export interface WayAnswer {
  readonly way: KeepingWay;
  readonly open: boolean;
  /** Why it is open or not, one plain sentence. */
  readonly why: string;
  /** Tested canning foods of this way. */
  readonly processes: readonly { readonly key: string; readonly title: string }[];
  /** What must not be done even where the way is open. */
  readonly never: readonly string[];
  readonly sources: readonly string[];
}

/** Shorter is waiting in the fridge, not storing. Common practice, no source. */
const STORED_DAYS = 30;

/** One answer for each way, in the order freeze, dry, pickle, bottle, ferment, store. */
export function safeWays(crop: string, tables: PreservationTables): readonly WayAnswer[] {
  return [freeze(crop, tables), dry(crop, tables), jars("pickle", crop, tables), jars("bottle", crop, tables), ferment(crop, tables), store(crop, tables)];
}

function freeze(crop: string, tables: PreservationTables): WayAnswer {
  const rows = tables.blanching.filter((row) => row.crop === crop);
  const kept = keepsHow(crop, "freezer", tables);
  if (rows.length > 0 || kept.value) {
    const how = rows.some((row) => row.how === "blanch") ? "blanch it first" : rows.some((row) => row.how === "cook") ? "cook it first" : "no blanching time is asked for";
    return answer("freeze", true, `The tables cover it: ${how}.`, { sources: [...rows.map((row) => row.source), ...kept.basis.map((s) => s.id)] });
  }
  return answer("freeze", false, kept.notes[0] ?? "", { sources: kept.basis.map((s) => s.id) });
}

function dry(crop: string, tables: PreservationTables): WayAnswer {
  const rows = tables.drying.filter((row) => row.crop === crop);
  if (rows.length === 0) return answer("dry", false, `No drying time for ${crop} in the tables.`);
  const hours = rows.flatMap((row) => row.hours);
  return answer("dry", true, `The tables give ${Math.min(...hours)} to ${Math.max(...hours)} hours in steady low heat.`, { sources: rows.map((row) => row.source) });
}

function jars(way: "pickle" | "bottle", crop: string, tables: PreservationTables): WayAnswer {
  const rows = tables.canning.filter((row) => row.way === way && row.crops.includes(crop));
  const refusals = tables.refusals.filter((row) => row.of === "food" && row.crops.includes(crop));
  const never = refusals.map((row) => `Never ${row.mustNot}: ${row.why ?? "no tested process"}. Instead: ${row.instead}.`);
  const sources = [...rows, ...refusals].map((row) => row.source);
  if (rows.length > 0) return answer(way, true, "There is a tested process.", { sources, never, processes: named(rows) });
  const first = refusals[0];
  return answer(way, false, way === "bottle" && first?.why ? `No tested process: ${first.why}. Instead: ${first.instead}.` : `No tested process for ${crop} in the tables.`, { sources, never });
}

function ferment(crop: string, tables: PreservationTables): WayAnswer {
  const rows = tables.fermenting.filter((row) => row.crops.includes(crop));
  const processes = tables.canning.filter((row) => row.way === "ferment" && row.crops.includes(crop));
  if (rows.length === 0) return answer("ferment", false, `No tested share of salt for ${crop} in the tables.`);
  return answer("ferment", true, `Tested with ${rows.find((row) => row.salt !== null)?.salt}.`, { sources: [...rows, ...processes].map((row) => row.source), processes: named(processes) });
}

function store(crop: string, tables: PreservationTables): WayAnswer {
  const places: readonly KeepingPlace[] = ["cellar", "counter", "cold-store"];
  const rows = tables.keeping.filter((row) => row.crop === crop && places.includes(row.place) && (row.days?.[1] ?? 0) >= STORED_DAYS);
  const longest = [...rows].sort((a, b) => (b.days?.[1] ?? 0) - (a.days?.[1] ?? 0))[0];
  if (!longest?.days) return answer("store", false, `No table keeps ${crop} a month or longer without freezing, drying or jars.`);
  const where = longest.conditions === null ? "at room temperature" : `at ${longest.conditions}`;
  return answer("store", true, `Keeps up to ${longest.days[1]} days ${where}.`, { sources: rows.map((row) => row.source) });
}

function named(rows: readonly { readonly food: string; readonly title: string }[]): { key: string; title: string }[] {
  return [...new Map(rows.map((row) => [row.food, row.title]))].map(([key, title]) => ({ key, title }));
}

function answer(way: KeepingWay, open: boolean, why: string, more: { sources?: readonly string[]; never?: readonly string[]; processes?: WayAnswer["processes"] } = {}): WayAnswer {
  return { way, open, why, processes: more.processes ?? [], never: more.never ?? [], sources: [...new Set(more.sources)] };
}
