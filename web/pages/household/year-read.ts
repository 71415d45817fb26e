/** Hours in the kitchen, days away and what is never eaten, as typed, and what they make. Pure. */
import type { Household } from "#shared/contracts/household.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { FieldProblem } from "../../parts/field-problem.ts";
import { day, plain } from "../../format.ts";
import { readDay } from "../../parts/typed-day.ts";

export interface AwayFields {
  readonly firstDay: string;
  readonly lastDay: string;
}

export interface YearFields {
  readonly hours: string;
  readonly away: readonly AwayFields[];
  readonly crops: string;
  readonly allergens: string;
}

interface Book {
  readonly crop: string;
  readonly name: string;
}

export type YearPart = Pick<Household, "away" | "avoids"> & { readonly kitchenMinPerWeek?: number };
export type ReadYear = { readonly ok: true; readonly part: YearPart } | { readonly ok: false; readonly faults: readonly FieldProblem[] };

/** With its year: without one, a day far off would be read as the nearer one of another year. */
const fullDay = (date: LocalDate): string => `${day(date, date)} ${date.slice(0, 4)}`;

export function yearFieldsOf({ kitchenMinPerWeek, away, avoids }: Pick<Household, "away" | "avoids"> & { readonly kitchenMinPerWeek?: number | undefined }, book: readonly Book[]): YearFields {
  return {
    hours: kitchenMinPerWeek === undefined ? "" : plain(kitchenMinPerWeek / 60),
    away: away.map(({ firstDay, lastDay }) => ({ firstDay: fullDay(firstDay), lastDay: fullDay(lastDay) })),
    crops: avoids.crops.map((crop) => book.find((one) => one.crop === crop)?.name ?? crop).join("; "),
    allergens: avoids.allergens.join("; "),
  };
}

/** More than a week has not. */
const MOST_HOURS = 100;

/** “4”, “4.5”, “4 h 30”, “90 min”; null for what is none of these. */
export function minutesIn(text: string): number | null {
  const typed = text.trim().toLowerCase().replace(",", ".");
  const both = /^(\d+)\s*h(?:ours?)?\s*(\d{1,2})\s*(?:min(?:utes)?)?$/.exec(typed);
  if (both) return Number(both[1]) * 60 + Number(both[2]);
  const single = /^(\d+(?:\.\d+)?)\s*(h|hours?|min|minutes?)?$/.exec(typed);
  if (!single) return null;
  return Math.round(Number(single[1]) * (single[2]?.startsWith("m") ? 1 : 60));
}

/** Names stand apart by semicolons, because a crop's own name may hold a comma. */
const named = (text: string): string[] => text.split(/[;\n]/).map((one) => one.trim()).filter((one) => one !== "");

export function readYear(fields: YearFields, book: readonly Book[], today: LocalDate): ReadYear {
  const faults: FieldProblem[] = [];
  const bad = (field: string, text: string): void => void faults.push({ field, text });
  const minutes = fields.hours.trim() === "" ? undefined : minutesIn(fields.hours);
  if (minutes === null || (minutes !== undefined && minutes > MOST_HOURS * 60)) bad("year-hours", "Hours in the kitchen: such as 4, or 4 h 30");
  const away = fields.away.flatMap((row, i) => readAway(row, i, today, bad));
  const crops = named(fields.crops).flatMap((name) => {
    const found = book.find((one) => one.name.toLowerCase() === name.toLowerCase() || one.crop === name.toLowerCase());
    if (!found) bad("year-crops", `Never eaten: no crop is called “${name}”; part them with semicolons`);
    return found ? [found.crop] : [];
  });
  if (faults.length > 0 || minutes === null) return { ok: false, faults };
  return { ok: true, part: { ...(minutes === undefined ? {} : { kitchenMinPerWeek: minutes }), away, avoids: { crops: [...new Set(crops)], allergens: [...new Set(named(fields.allergens))] } } };
}

/** A row with nothing in it says nothing. */
function readAway({ firstDay, lastDay }: AwayFields, i: number, today: LocalDate, bad: (field: string, text: string) => void): Household["away"] {
  if (firstDay.trim() === "" && lastDay.trim() === "") return [];
  const [first, last] = [readDay(firstDay, today), readDay(lastDay.trim() === "" ? firstDay : lastDay, today)];
  if (!first.ok) bad(`year-first-${i}`, `Away from: ${first.wrong.toLowerCase()} ${first.works}`);
  if (!last.ok) bad(`year-last-${i}`, `Away until: ${last.wrong.toLowerCase()} ${last.works}`);
  if (!first.ok || !last.ok) return [];
  if (last.value.date < first.value.date) {
    bad(`year-last-${i}`, "Away until: before the first day. Write the year as well if it is the next one.");
    return [];
  }
  return [{ firstDay: first.value.date, lastDay: last.value.date }];
}
