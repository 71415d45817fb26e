/** Reads the crop table and daily weather files for the tests and benches of the forecast. */
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parse } from "csv-parse/sync";
import type { DailyRecord, MonthlyNormal } from "#shared/engines/harvest-forecast/index.ts";
import { cropFactsOf } from "#shared/kernel/crop-facts.ts";
import type { CropFacts } from "#shared/kernel/crop-facts.ts";
import { dayNumber } from "#shared/kernel/local-date.ts";

export type Row = Record<string, string>;

/** Path in the project, or beside it, as a file name. */
export const projectFile = (path: string): string => fileURLToPath(new URL(`../../../${path}`, import.meta.url));

export function rowsOf(file: string): Row[] {
  return parse<Row>(readFileSync(file), { columns: true, skip_empty_lines: true, comment: "#", comment_no_infix: true });
}

const CROPS = new Map(rowsOf(projectFile("seed-data/crops.csv")).map((row) => [row["slug"] as string, cropFactsOf(row)]));
export const allCrops = (): CropFacts[] => [...CROPS.values()];

export function cropOf(slug: string): CropFacts {
  const crop = CROPS.get(slug);
  if (!crop) throw new RangeError(`no crop ${slug}`);
  return crop;
}

/** Daily record of a CSV with columns date, tmax_c, tmin_c, in any order and with others beside them; missing days become gaps. */
export function dailyRecordOf(file: string): DailyRecord {
  const known = RECORDS.get(file);
  if (known) return known;
  const rows = rowsOf(file).map((row) => ({ day: dayNumber(row["date"] as string), max: Number(row["tmax_c"]), min: Number(row["tmin_c"]) }));
  const firstDay = Math.min(...rows.map((row) => row.day));
  const days = Math.max(...rows.map((row) => row.day)) - firstDay + 1;
  const record = { firstDay, tmaxC: new Float64Array(days).fill(NaN), tminC: new Float64Array(days).fill(NaN) };
  for (const { day, max, min } of rows) {
    record.tmaxC[day - firstDay] = max;
    record.tminC[day - firstDay] = min;
  }
  RECORDS.set(file, record);
  return record;
}

const RECORDS = new Map<string, DailyRecord>();

/** Long public records kept beside the project where there is room for them: KNMI 260 De Bilt 1980–2019, NOAA GHCN-Daily USW00014839 Milwaukee 1991–2025. */
export const DE_BILT = projectFile("../shared/reference/weather/knmi_260_debilt_1980-2019.csv");
export const MILWAUKEE = projectFile("../shared/reference/weather/ghcnd_USW00014839_milwaukee_1991-2025.csv");
export const longRecordsAtHand = existsSync(DE_BILT) && existsSync(MILWAUKEE);
/** Said in the name of every check that is left out without them. */
export const NEEDS_RECORDS = "needs the daily records of De Bilt and Milwaukee beside the project; left out without them";
export const DEMO_WEATHER = projectFile("seed-data/demo/weather.csv");

/** Monthly means printed in tests/cases/weather, each file with its attribution. */
export function normalsAt(place: "de_bilt_1981-2010" | "milwaukee_1991-2020"): MonthlyNormal[] {
  const rows = rowsOf(projectFile(`tests/cases/weather/normals_${place}.csv`));
  return rows.map((row) => ({ month: Number(row["month"]), tmaxC: Number(row["tmax_c"]), tminC: Number(row["tmin_c"]) }));
}
