/** Twelve months of typed temperatures, and the body they make. Pure. */
import { Normals } from "#shared/contracts/weather.ts";
import { MONTHS } from "../../format.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { numberIn } from "./household-form.ts";

export interface MonthFields {
  readonly tmaxC: string;
  readonly tminC: string;
}

export function monthFields(normals: Normals | null): MonthFields[] {
  return MONTHS.map((_, i) => {
    const held = normals?.months.find((m) => m.month === i + 1);
    return { tmaxC: held ? String(held.tmaxC) : "", tminC: held ? String(held.tminC) : "" };
  });
}

export function readNormals(fields: readonly MonthFields[]): { readonly ok: true; readonly body: Normals } | { readonly ok: false; readonly faults: readonly FieldProblem[] } {
  const parsed = Normals.safeParse({ months: fields.map((f, i) => ({ month: i + 1, tmaxC: numberIn(f.tmaxC), tminC: numberIn(f.tminC) })) });
  if (parsed.success) return { ok: true, body: parsed.data };
  const faults = new Map<string, FieldProblem>();
  for (const issue of parsed.error.issues) {
    const month = typeof issue.path[1] === "number" ? issue.path[1] : 0;
    const which = issue.path[2] === "tminC" ? "tminC" : "tmaxC";
    const field = `${which}-${month}`;
    if (faults.has(field)) continue;
    const words = /NaN|expected number|invalid input/i.test(issue.message) ? "a temperature in °C is needed, such as 5.6" : issue.message;
    faults.set(field, { field, text: `${MONTHS[month]}, mean ${which === "tmaxC" ? "maximum" : "minimum"}: ${words}` });
  }
  return { ok: false, faults: [...faults.values()] };
}
