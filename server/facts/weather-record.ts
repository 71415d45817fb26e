/** The household's daily weather as two rows of figures without gaps between them, read as one row of three arrays: 30 years are 11,000 days. */
import { sql } from "drizzle-orm";
import { weatherDays } from "#db/schema/index.ts";
import type { Tx } from "#db/client.ts";
import { dayNumber, type DayNumber, type LocalDate } from "#shared/kernel/local-date.ts";
import type { DailyRecord } from "#shared/engines/harvest-forecast/types.ts";
import type { House } from "./house.ts";
import { keptUpTo } from "./kept.ts";

/** Some sixty records of thirty years. Stamps are unique everywhere, so one shelf serves every database of this process. */
const MOST_BYTES = 12 * 1024 * 1024;
const records = keptUpTo<DailyRecord | null>(MOST_BYTES);

/** Days up to and including `asOf`; null when there are none. A day that was not measured is NaN. */
export async function loadRecord(tx: Tx, { householdId, stamps }: House, asOf: LocalDate): Promise<DailyRecord | null> {
  const place = { name: householdId, stamp: stamps?.weather ?? null };
  let record = records.find(place);
  if (record === undefined) {
    record = await readRecord(tx);
    records.keep(place, record, 16 * (record?.tmaxC.length ?? 0));
  }
  return record && until(record, dayNumber(asOf));
}

/** The record as it was on a day: it ends with the last reading up to then. The figures are shared, not copied. */
function until(record: DailyRecord, day: DayNumber): DailyRecord | null {
  let length = Math.min(record.tmaxC.length, day - record.firstDay + 1);
  while (length > 0 && Number.isNaN(record.tmaxC[length - 1])) length--;
  if (length <= 0) return null;
  if (length === record.tmaxC.length) return record;
  return { firstDay: record.firstDay, tmaxC: record.tmaxC.subarray(0, length), tminC: record.tminC.subarray(0, length) };
}

async function readRecord(tx: Tx): Promise<DailyRecord | null> {
  // as text, because splitting three strings is many times cheaper than reading a row for each day
  const { rows } = await tx.execute<{ days: string | null; tmax: string | null; tmin: string | null }>(sql`
    select string_agg((day - date '1970-01-01')::text, ',' order by day) as days,
           string_agg(tmax_tenths::text, ',' order by day) as tmax,
           string_agg(tmin_tenths::text, ',' order by day) as tmin
    from ${weatherDays}`);
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
