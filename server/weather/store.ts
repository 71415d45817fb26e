import { and, eq, gte, lt, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { households, weatherDays } from "#db/schema/index.ts";
import type { Normals } from "#shared/contracts/weather.ts";
import type { WeatherRow } from "./read-days.ts";

/** Stores days by date, whatever was there before; one statement however many. */
export async function replaceDays(tx: Tx, householdId: string, rows: readonly WeatherRow[]): Promise<void> {
  await tx.execute(sql`
    insert into ${weatherDays} (household_id, day, tmax_tenths, tmin_tenths)
    select ${householdId}::uuid, * from unnest(
      ${sql.param(rows.map((row) => row.day))}::date[], ${sql.param(rows.map((row) => row.tmaxTenths))}::int[], ${sql.param(rows.map((row) => row.tminTenths))}::int[])
    on conflict (household_id, day) do update set tmax_tenths = excluded.tmax_tenths, tmin_tenths = excluded.tmin_tenths`);
}

/** How many days there were from `from` up to `until`, which is not in it. */
export async function deleteDays(tx: Tx, householdId: string, { from, until }: { readonly from: string; readonly until: string }): Promise<number> {
  const { rowCount } = await tx.delete(weatherDays).where(and(eq(weatherDays.householdId, householdId), gte(weatherDays.day, from), lt(weatherDays.day, until)));
  return rowCount ?? 0;
}

export interface Held {
  readonly days: number;
  readonly from: string | null;
  readonly until: string | null;
  readonly wholeYears: number;
  readonly normals: Normals["months"] | null;
  readonly attribution: string | null;
}

export async function weatherHeld(tx: Tx, householdId: string): Promise<Held> {
  const years = sql`(select count(*)::int as n, min(day) as first, max(day) as last from weather_days where household_id = ${householdId}::uuid group by extract(year from day))`;
  const { rows } = await tx.execute<{ days: number; from: string | null; until: string | null; whole_years: number; normals: Normals["months"] | null; attribution: string | null }>(sql`
    select coalesce(sum(y.n), 0)::int as days, min(y.first)::text as from, max(y.last)::text as until,
           count(*) filter (where y.n >= 365)::int as whole_years, h.normals, h.weather_attribution as attribution
    from ${households} h left join ${years} y on true
    where h.household_id = ${householdId}::uuid group by h.household_id, h.normals, h.weather_attribution`);
  const [row] = rows;
  if (!row) throw new Error("the household is not set up");
  return { days: row.days, from: row.from, until: row.until, wholeYears: row.whole_years, normals: row.normals, attribution: row.attribution };
}

export async function replaceNormals(tx: Tx, householdId: string, normals: Normals): Promise<void> {
  await tx.update(households).set({ normals: normals.months }).where(eq(households.householdId, householdId));
}

/** Whose figures these are, to be shown wherever they are used. */
export async function attributeWeather(tx: Tx, householdId: string, attribution: string): Promise<void> {
  await tx.update(households).set({ weatherAttribution: attribution }).where(eq(households.householdId, householdId));
}
