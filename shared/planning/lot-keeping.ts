/**
 * How long a lot keeps where it stands: what ends its quality and what ends the time in which it may be eaten are two days and never one.
 * Days come from its recipe or from the tables of keeping; a recipe never makes cooked food safe for longer than the tables do.
 */
import { keepsHow, type PreservationTables } from "../engines/preservation/index.ts";
import { addDays, daysBetween, type LocalDate } from "../kernel/local-date.ts";
import type { SourceRef } from "../kernel/outcome.ts";
import type { PlaceKind, Way } from "../kernel/way.ts";
import type { LotFacts, PlaceFacts } from "./larder-facts.ts";
import { leftoverDays, leftoverMonthsFrozen, type RuleSpan } from "./rule-figures.ts";

export interface LotKeeping {
  readonly bestUntil: LocalDate | null;
  readonly safeUntil: LocalDate | null;
  /** From this day on it is eaten before others. */
  readonly useFrom: LocalDate | null;
  readonly why: readonly string[];
  readonly basis: readonly SourceRef[];
}

/** Warning before the best is over, in days: what is in a fridge is eaten this week, what is frozen or in jars this month. Common practice, no source. */
const LEAD_DAYS: Readonly<Record<PlaceKind, number>> = { fridge: 2, freezer: 30, shelf: 30, cellar: 30, clamp: 30 };
const MONTH_DAYS = 30;
/** Cooked or cut food: in a fridge its days are about safety. What is in vinegar, brine, salt or sugar, and what is dry or whole, fades first. */
const PERISHABLE: ReadonlySet<Way> = new Set<Way>(["eat", "cook", "freeze", "give"]);

/** Of the places it stands in (its own where none), the one that ends first. */
export function keepingOf(lot: LotFacts, standsIn: readonly PlaceFacts[], kinds: ReadonlyMap<string, PlaceKind>, tables: PreservationTables): LotKeeping {
  const each = standsIn.map((place) => keepingIn(lot, place, kinds, tables));
  const first = (days: readonly (LocalDate | null)[]): LocalDate | null => days.filter((day) => day !== null).sort()[0] ?? null;
  const keeping = {
    bestUntil: first(each.map((one) => one.bestUntil)),
    safeUntil: first(each.map((one) => one.safeUntil)),
    useFrom: first(each.map((one) => one.useFrom)),
    why: [...new Set(each.flatMap((one) => one.why))],
    basis: each.flatMap((one) => one.basis).filter((source, i, all) => all.findIndex(({ id }) => id === source.id) === i),
  };
  return lot.bestUntil === null ? keeping : { ...keeping, bestUntil: lot.bestUntil, useFrom: first([addDays(lot.bestUntil, -LEAD_DAYS[standsIn[0]?.kind ?? "fridge"]), keeping.safeUntil]), why: ["The date is the household's own.", ...keeping.why] };
}

function keepingIn(lot: LotFacts, place: PlaceFacts, kinds: ReadonlyMap<string, PlaceKind>, tables: PreservationTables): LotKeeping {
  const from = countsFrom(lot, place, kinds);
  if (lot.crop !== null) return cropKeeping(lot.crop, place.kind, from, tables);
  if (lot.recipe !== null) return dishKeeping(lot.recipe, place.kind, from, tables);
  return { ...NOTHING, why: lot.bestUntil === null ? ["Nothing is known of how long it keeps."] : [] };
}

const NOTHING: LotKeeping = { bestUntil: null, safeUntil: null, useFrom: null, why: [], basis: [] };

function cropKeeping(crop: string, kind: PlaceKind, from: LocalDate, tables: PreservationTables): LotKeeping {
  const { value: row, basis, notes } = keepsHow(crop, kind, tables);
  if (!row?.days) return { ...NOTHING, why: notes, basis };
  const [low, high] = row.days;
  const lead = low < high ? low : Math.max(0, high - LEAD_DAYS[kind]);
  return { bestUntil: addDays(from, high), safeUntil: row.limit === "safety" ? addDays(from, high) : null, useFrom: addDays(from, lead), why: notes, basis };
}

function dishKeeping(recipe: NonNullable<LotFacts["recipe"]>, kind: PlaceKind, from: LocalDate, tables: PreservationTables): LotKeeping {
  const days = recipe.keeps.find((keep) => keep.place === kind)?.days;
  const perishes = PERISHABLE.has(recipe.way);
  const rule = kind === "freezer" ? inDays(leftoverMonthsFrozen(tables)) : leftoverDays(tables);
  if (kind === "fridge" && (days !== undefined || perishes)) {
    const safe = perishes ? Math.min(days ?? rule.high, rule.high) : (days as number);
    const best = perishes && days === undefined ? rule.low : safe;
    return { bestUntil: addDays(from, best), safeUntil: addDays(from, safe), useFrom: addDays(from, Math.max(0, best - LEAD_DAYS.fridge)), ...said(days, perishes, rule.source) };
  }
  const best = days ?? (kind === "freezer" && perishes ? rule.low : undefined);
  if (best === undefined) return { ...NOTHING, why: [`The recipe does not say how it keeps in the ${kind}.`] };
  return { bestUntil: addDays(from, best), safeUntil: null, useFrom: addDays(from, Math.max(0, best - LEAD_DAYS[kind])), ...said(days, days === undefined, rule.source) };
}

const inDays = ({ low, high, source }: RuleSpan): RuleSpan => ({ low: low * MONTH_DAYS, high: high * MONTH_DAYS, source });

function said(days: number | undefined, ruled: boolean, source: SourceRef): Pick<LotKeeping, "why" | "basis"> {
  return { why: [days === undefined ? "The general rule for cooked food; the recipe does not say." : "As its recipe says."], basis: ruled ? [source] : [] };
}

/** The day its days count from: when it was made, or, thawed in a fridge, when it came out of the freezer, less its days in a fridge before. */
function countsFrom(lot: LotFacts, place: PlaceFacts, kinds: ReadonlyMap<string, PlaceKind>): LocalDate {
  const moves = lot.entries.filter((entry) => entry.kind === "move").sort((a, b) => (a.on < b.on ? -1 : 1));
  const arrived = moves.filter((move) => move.toPlaceId === place.id).at(-1)?.on;
  const frozen = kinds.get(lot.homePlaceId) === "freezer" ? lot.madeOn : moves.find((move) => kinds.get(move.toPlaceId ?? "") === "freezer")?.on;
  if (arrived === undefined || frozen === undefined || frozen > arrived || place.kind === "freezer") return lot.madeOn;
  const before = kinds.get(lot.homePlaceId) === "fridge" ? daysBetween(lot.madeOn, frozen) : 0;
  return addDays(arrived, -before);
}
