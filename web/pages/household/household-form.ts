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

type Eats = readonly { readonly crop: string; readonly gramsPerWeek: number }[];
export type ReadHousehold = { readonly ok: true; readonly body: NewHousehold } | { readonly ok: false; readonly faults: readonly FieldProblem[] };

/** The whole household as it is sent; `eats` null leaves the appetite to the book. */
export function readHousehold(fields: HouseholdFields, eats: Eats | null): ReadHousehold {
  const oven = { trays: numberIn(fields.trays), preheatMin: numberIn(fields.preheatMin), changeMin: numberIn(fields.changeMin) };
  const ovens = numberIn(fields.ovens);
  const countedOvens = Number.isInteger(ovens) && ovens >= 0 && ovens <= 4;
  const parsed = NewHousehold.safeParse({
    name: fields.name,
    zone: fields.zone,
    latitude: numberIn(fields.latitude),
    longitude: numberIn(fields.longitude),
    altitudeM: numberIn(fields.altitudeM),
    people: numberIn(fields.people),
    weekStart: fields.weekStart,
    units: fields.units,
    glutGrams: numberIn(fields.glutGrams),
    cooks: numberIn(fields.cooks),
    kitchen: { ovens: countedOvens ? Array.from({ length: ovens }, () => oven) : [], burners: numberIn(fields.burners), pots: numberIn(fields.pots), sinks: numberIn(fields.sinks) },
    ...(eats === null ? {} : { eats: [...eats] }),
  });
  const faults = new Map<string, FieldProblem>();
  if (!countedOvens) faults.set("ovens", { field: "ovens", text: `${LABELS["ovens"]}: none to four` });
  for (const issue of parsed.error?.issues ?? []) {
    const field = fieldOf(issue.path.map(String));
    if (!faults.has(field)) faults.set(field, { field, text: `${LABELS[field] ?? field}: ${plain(issue.message)}` });
  }
  if (parsed.success && faults.size === 0) return { ok: true, body: parsed.data };
  return { ok: false, faults: [...faults.values()] };
}

/** A number with a point or a comma, a minus or a true minus sign; NaN where there is none. */
export function numberIn(text: string): number {
  const plainText = text.trim().replace("−", "-").replace(",", ".");
  return /^-?\d+(?:\.\d+)?$/.test(plainText) ? Number(plainText) : NaN;
}

export const LABELS: Readonly<Record<string, string>> = {
  name: "Name",
  zone: "Time zone",
  latitude: "Latitude",
  longitude: "Longitude",
  altitudeM: "Metres above the sea",
  people: "People at the table",
  glutGrams: "Grams over",
  cooks: "Cooks",
  ovens: "Ovens",
  trays: "Trays in an oven",
  preheatMin: "Minutes to heat up",
  changeMin: "Minutes to change heat",
  burners: "Burners",
  pots: "Large pots",
  sinks: "Sinks",
};

/** The control that a path of the body belongs to. */
function fieldOf(path: readonly string[]): string {
  const last = path.at(-1) ?? "name";
  return last in LABELS ? last : (path[0] ?? "name");
}

/** The parser's own words for a missing number say nothing to a gardener. */
function plain(message: string): string {
  return /NaN|expected number|invalid input/i.test(message) ? "a number is needed here" : message;
}
