/** What is typed about the household, and the body it makes. Pure: words in, body or faults out. */
import { NewHousehold, type Household } from "#shared/contracts/household.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";

export interface HouseholdFields {
  readonly name: string;
  readonly zone: string;
  readonly latitude: string;
  readonly longitude: string;
  readonly altitudeM: string;
  readonly people: string;
  readonly weekStart: Household["weekStart"];
  readonly units: Household["units"];
  readonly glutGrams: string;
  readonly cooks: string;
  readonly ovens: string;
  readonly trays: string;
  readonly preheatMin: string;
  readonly changeMin: string;
  readonly burners: string;
  readonly pots: string;
  readonly sinks: string;
}

/** Reads what is stored into fields; `zone` is the browser's own guess for a household that has not said yet. */
export function fieldsOf(household: Household, zone: string): HouseholdFields {
  const oven = household.kitchen.ovens[0];
  const place = (value: number) => (household.placed ? String(value) : "");
  return {
    name: household.name,
    zone: household.placed ? household.zone : zone,
    latitude: place(household.latitude),
    longitude: place(household.longitude),
    altitudeM: place(household.altitudeM),
    people: String(household.people),
    weekStart: household.weekStart,
    units: household.units,
    glutGrams: String(household.glutGrams),
    cooks: String(household.cooks),
    ovens: String(household.kitchen.ovens.length),
    trays: String(oven?.trays ?? 2),
    preheatMin: String(oven?.preheatMin ?? 15),
    changeMin: String(oven?.changeMin ?? 10),
    burners: String(household.kitchen.burners),
    pots: String(household.kitchen.pots ?? 1),
    sinks: String(household.kitchen.sinks ?? 1),
  };
}

type Kitchen = Household["kitchen"];
/** What other forms of the page say; this one hands it back as it is stored. */
export type Kept = Pick<Household, "kitchen" | "away" | "avoids"> & { readonly kitchenMinPerWeek?: number | undefined };
type Eats = readonly { readonly crop: string; readonly gramsPerWeek: number }[];
export type ReadHousehold = { readonly ok: true; readonly body: NewHousehold } | { readonly ok: false; readonly faults: readonly FieldProblem[] };

/** The whole household as it is sent; `eats` null leaves the appetite to the book, `kept` hands back what is not in these fields, and ovens that differ from one another. */
export function readHousehold(fields: HouseholdFields, eats: Eats | null, kept?: Kept): ReadHousehold {
  const ovens = numberIn(fields.ovens);
  const countedOvens = Number.isInteger(ovens) && ovens >= 0 && ovens <= 4;
  const parsed = NewHousehold.safeParse({
    name: fields.name,
    zone: fields.zone.trim(),
    latitude: numberIn(fields.latitude),
    longitude: numberIn(fields.longitude),
    altitudeM: numberIn(fields.altitudeM),
    people: numberIn(fields.people),
    weekStart: fields.weekStart,
    units: fields.units,
    glutGrams: numberIn(fields.glutGrams),
    cooks: numberIn(fields.cooks),
    kitchen: { ovens: countedOvens ? ovensOf(fields, ovens, kept?.kitchen) : [], burners: numberIn(fields.burners), pots: numberIn(fields.pots), sinks: numberIn(fields.sinks) },
    ...(eats === null ? {} : { eats: [...eats] }),
    ...(kept === undefined ? {} : { away: kept.away, avoids: kept.avoids }),
    ...(kept?.kitchenMinPerWeek === undefined ? {} : { kitchenMinPerWeek: kept.kitchenMinPerWeek }),
  });
  const faults = new Map<string, FieldProblem>();
  if (!countedOvens) faults.set("ovens", { field: "ovens", text: `${LABELS["ovens"]}: none to four` });
  for (const issue of parsed.error?.issues ?? []) {
    const field = fieldAt(issue.path.map(String));
    if (!faults.has(field)) faults.set(field, { field, text: `${LABELS[field] ?? field}: ${plainly(field, issue.message)}` });
  }
  if (parsed.success && faults.size === 0) return { ok: true, body: parsed.data };
  return { ok: false, faults: [...faults.values()] };
}

/** Ovens that differ stay as they are stored while the form says what it said of the first. */
function ovensOf(fields: HouseholdFields, count: number, kept: Kitchen | undefined): Kitchen["ovens"] {
  const oven = { trays: numberIn(fields.trays), preheatMin: numberIn(fields.preheatMin), changeMin: numberIn(fields.changeMin) };
  const first = kept?.ovens[0];
  const asKept = first && first.trays === oven.trays && first.preheatMin === oven.preheatMin && first.changeMin === oven.changeMin;
  return Array.from({ length: count }, (_, i) => (asKept ? (kept?.ovens[i] ?? oven) : oven));
}

/** A number with a point or a comma, a minus or a true minus sign; NaN where there is none. */
export function numberIn(text: string): number {
  const plainText = text.trim().replace(/[−–]/, "-").replace(",", ".");
  return /^-?\d+(?:\.\d+)?$/.test(plainText) ? Number(plainText) : NaN;
}

export const LABELS: Readonly<Record<string, string>> = {
  name: "Name",
  zone: "Time zone",
  latitude: "Latitude",
  longitude: "Longitude",
  altitudeM: "Metres above the sea",
  people: "People at the table",
  weekStart: "The week begins on",
  units: "We cook in",
  glutGrams: "A glut begins at, grams over a week",
  cooks: "Cooks",
  ovens: "Ovens",
  trays: "Trays in an oven",
  preheatMin: "Minutes to heat up",
  changeMin: "Minutes to change heat",
  burners: "Burners",
  pots: "Large pots",
  sinks: "Sinks",
};

/** What each number may be, as the contract has it, in words. */
const WORKS: Readonly<Record<string, string>> = {
  name: "a name is needed, of 120 letters at most",
  latitude: "degrees from −90 to 90, such as 52.1",
  longitude: "degrees from −180 to 180, such as 5.2",
  altitudeM: "metres from −430 to 5500, such as 4",
  people: "a whole number from 1 to 60",
  glutGrams: "whole grams, such as 1000",
  cooks: "a whole number from 1 to 6",
  trays: "a whole number from 1 to 12",
  preheatMin: "whole minutes, such as 15",
  changeMin: "whole minutes, such as 10",
  burners: "a whole number from 0 to 12",
  pots: "a whole number from 0 to 20",
  sinks: "a whole number from 0 to 6",
};

/** The control that a path of the body belongs to; also for the paths of the service's answers. */
export function fieldAt(path: readonly string[]): string {
  return path.findLast((part) => part in LABELS) ?? "name";
}

/** The parser's own words say nothing to a gardener; the contract's own do. */
const plainly = (field: string, message: string): string => WORKS[field] ?? message;
