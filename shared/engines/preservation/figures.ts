/** Blanching, drying and salting of a crop as sentences, each with its source. */
import type { SourceRef } from "../../kernel/outcome.ts";
import type { Way } from "../../kernel/way.ts";
import { sourceOf } from "./citing.ts";
import { keepsHow } from "./keeping.ts";
import { packFigures } from "./packing.ts";
import type { BlanchingRow, DryingRow, FermentingRow, KeepingPlace, PreservationTables, RuleRow } from "./types.ts";

export interface Figure {
  readonly text: string;
  readonly source: SourceRef;
}

const STORED_IN: readonly KeepingPlace[] = ["cellar", "clamp", "shelf", "fridge"];

/** Empty where the tables have nothing for this crop and way. */
export function figuresFor(crop: string, way: Way, tables: PreservationTables): Figure[] {
  if (way === "freeze") {
    const rows = tables.blanching.filter((row) => row.crop === crop);
    return rows.length === 0 ? [] : [...rows.map((row) => figure(row, blanchingText(row), tables)), ...rulesOf(tables, ["blanching-altitude", "freezing-freezer-temperature"]), ...packFigures(tables)];
  }
  if (way === "dry") {
    const rows = tables.drying.filter((row) => row.crop === crop);
    const rules = tables.rules.filter((rule) => rule.topic === "drying").map((rule) => rule.key);
    return rows.length === 0 ? [] : [...rows.map((row) => figure(row, dryingText(row), tables)), ...rulesOf(tables, rules)];
  }
  if (way === "ferment") return tables.fermenting
      .filter((row) => row.crops.includes(crop) && row.salt !== null)
      // the share of salt with its weeks first, crock and top-up after it
      .sort((a, b) => Number(a.weeks === null) - Number(b.weeks === null))
      .map((row) => figure(row, saltText(row), tables));
  if (way === "store") return STORED_IN.flatMap((place) => storedFigure(crop, place, tables));
  return [];
}

function figure(row: { readonly source: string; readonly page: string; readonly fromMemory: boolean }, text: string, tables: PreservationTables): Figure {
  return { text: `${text}${row.fromMemory ? " From memory, no text read: check it with your extension service." : ""}`, source: sourceOf(row, tables) };
}

const spanText = ([low, high]: readonly [number, number], unit: string): string => (low === high ? `${low} ${unit}` : `${low} to ${high} ${unit}`);
const startingUpper = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

function blanchingText(row: BlanchingRow): string {
  const water = row.waterMin === null ? null : `${spanText(row.waterMin, "min")} in boiling water`;
  const steam = row.steamMin === null ? null : `${spanText(row.steamMin, "min")} in steam`;
  if (row.how === "none") return `${startingUpper(row.cut)}: freeze without blanching.`;
  const times = [water, steam].filter((one) => one !== null).join(" or ");
  return row.how === "cook" ? `${startingUpper(row.cut)}${times === "" ? "" : ` (${times})`}, cooked rather than blanched.` : `${startingUpper(row.cut)}: blanch ${times}.`;
}

function dryingText(row: DryingRow): string {
  const first = [row.steamMin === null ? null : `steam ${spanText(row.steamMin, "min")}`, row.waterMin === null ? null : `boil ${spanText(row.waterMin, "min")}`].filter((one) => one !== null).join(" or ");
  return `${startingUpper(row.cut)}: ${first === "" ? "" : `${first}, then `}${spanText(row.hours, "hours")} in steady low heat.`;
}

function saltText(row: FermentingRow): string {
  const celsius = (f: number): number => Math.round(((f - 32) * 5) / 9);
  const warmth = row.tempF === null ? "" : `, at ${row.tempF[0]} to ${row.tempF[1]} °F (${celsius(row.tempF[0])} to ${celsius(row.tempF[1])} °C)`;
  return `${startingUpper(row.food)}: ${row.salt}${warmth}${row.weeks === null ? "" : `, ${spanText(row.weeks, "weeks")}`}.`;
}

function rulesOf(tables: PreservationTables, keys: readonly string[]): Figure[] {
  return keys.flatMap((key) => tables.rules.filter((rule: RuleRow) => rule.key === key && rule.value !== null).map((rule) => figure(rule, `${startingUpper(rule.text)}: ${rule.value}${rule.unit === null ? "" : ` ${rule.unit}`}.`, tables)));
}

function storedFigure(crop: string, place: KeepingPlace, tables: PreservationTables): Figure[] {
  const { value, basis, notes } = keepsHow(crop, place, tables);
  if (!value?.days || !basis[0]) return [];
  return [{ text: `${startingUpper(place)}: ${spanText(value.days, "days")}${value.conditions === null ? "" : ` at ${value.conditions}`}.${notes.length === 0 ? "" : ` ${notes.join(" ")}`}`, source: basis[0] }];
}
