/** A place as it is typed, and the body it makes. Pure. */
import type { NewPlace, Place } from "#shared/contracts/places.ts";
import type { PlaceKind } from "#shared/kernel/way.ts";
import { plain } from "../../format.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { numberOf } from "../../parts/typed-amount.ts";

export interface PlaceFields {
  readonly name: string;
  readonly kind: PlaceKind;
  readonly litres: string;
}

export const NO_PLACE: PlaceFields = { name: "", kind: "freezer", litres: "" };

export const placeFieldsOf = ({ name, kind, litres }: Place): PlaceFields => ({ name, kind, litres: litres === undefined ? "" : plain(litres) });

export type ReadPlace = { readonly ok: true; readonly body: NewPlace } | { readonly ok: false; readonly faults: readonly FieldProblem[] };

/** `form` begins the ids of the fields. */
export function readPlace({ name, kind, litres }: PlaceFields, form: string): ReadPlace {
  const faults: FieldProblem[] = [];
  const holds = litres.trim() === "" ? undefined : numberOf(litres.trim().replace(/\s*(?:l|litres?|liters?)$/i, ""), false);
  if (name.trim() === "") faults.push({ field: `${form}-name`, text: "Name of the place: write one, such as Freezer, drawer 2" });
  if (holds === null || (holds !== undefined && holds <= 0)) faults.push({ field: `${form}-litres`, text: "Litres: a number above 0, such as 30, or nothing" });
  if (faults.length > 0 || holds === null) return { ok: false, faults };
  return { ok: true, body: { name: name.trim(), kind, ...(holds === undefined ? {} : { litres: Math.round(holds * 10) / 10 }) } };
}
