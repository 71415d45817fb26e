/** The household's daily weather as two rows of figures without gaps between them, read as one row of three arrays: 30 years are 11,000 days. */
import { sql } from "drizzle-orm";
import { weatherDays } from "#db/schema/index.ts";
import type { Tx } from "#db/client.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { DailyRecord } from "#shared/engines/harvest-forecast/types.ts";

/** Days up to and including `asOf`; null when there are none. A day that was not measured is NaN. */
export async function loadRecord(tx: Tx, asOf: LocalDate): Promise<DailyRecord | null> {
  // as text, because splitting three strings is many times cheaper than reading a row for each day
  const { rows } = await tx.execute<{ days: string | null; tmax: string | null; tmin: string | null }>(sql`
    select string_agg((day - date '1970-01-01')::text, ',' order by day) as days,
           string_agg(tmax_tenths::text, ',' order by day) as tmax,
           string_agg(tmin_tenths::text, ',' order by day) as tmin
    from ${weatherDays} where day <= ${asOf}::date`);
  const [row] = rows;
  if (!row?.days || !row.tmax || !row.tmin) return null;
  const days = row.days.split(",");
  const tmax = row.tmax.split(",");
  const tmin = row.tmin.split(",");
  const firstDay = Number(days[0]);
  const length = Number(days[days.length - 1]) - firstDay + 1;
  const record = { firstDay, tmaxC: new Float64Array(length).fill(NaN), tminC: new Float64Array(length).fill(NaN) };
  days.forEach((day, i) => {
    const at = Number(day) - firstDay;
    record.tmaxC[at] = Number(tmax[i]) / 10;
    record.tminC[at] = Number(tmin[i]) / 10;
  });
  return record;
}
