/** What the bench of the interface reads: the demo household with four more years of the same behind it, alone or among many others. */
import { sql } from "drizzle-orm";
import pg from "pg";
import type { Db } from "#db/client.ts";
import { provisionHousehold } from "#db/provision.ts";
import { fillWithDemo } from "#server/demo-household.ts";
import { HOUSEHOLD_ID } from "#server/http/member.ts";

export const TODAY = "2027-07-26";

export async function fiveYears(db: Db): Promise<void> {
  await db.inHousehold(HOUSEHOLD_ID, (tx) => provisionHousehold(tx, HOUSEHOLD_ID));
  await fillWithDemo(db, TODAY, (line) => console.error(line));
  await db.inHousehold(HOUSEHOLD_ID, async (tx) => {
    for (let back = 1; back <= 4; back++) {
      const moved = (id: string) => sql`md5(${sql.raw(id)}::text || ${String(back)})::uuid`;
      const years = sql.raw(`interval '${back} years'`);
      await tx.execute(sql`insert into sowings (household_id, id, bed_id, crop, variety, method, sown_on, planted_out_on, row_m, plants, area_m2)
        select household_id, ${moved("id")}, bed_id, crop, variety, method, (sown_on - ${years})::date, (planted_out_on - ${years})::date, row_m, plants, area_m2
        from sowings where method <> 'established' and coalesce(sown_on, planted_out_on) >= '2026-08-01'`);
      await tx.execute(sql`insert into picks (household_id, id, sowing_id, picked_on, grams)
        select p.household_id, ${moved("p.id")}, ${moved("p.sowing_id")}, (p.picked_on - ${years})::date, p.grams
        from picks p join sowings s using (household_id) where s.id = p.sowing_id and s.method <> 'established' and p.picked_on >= '2027-01-01'`);
    }
  });
}

/** Households with this year's beds, sowings, picks and recipes of the first one under the same ids, and a month of its weather. */
export async function addNeighbours(url: string, count: number): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query("create temporary table others as select gen_random_uuid() as other from generate_series(1, $1::int)", [count]);
    for (const [table, where] of COPIED) await client.query(await copyOf(client, table, where), [HOUSEHOLD_ID]);
    await client.query("insert into household_stamps (household_id) select other from others");
    await client.query("analyze");
  } finally {
    await client.end();
  }
}

const THIS_YEAR = "(method = 'established' or coalesce(sown_on, planted_out_on) >= '2026-08-01')";
/** Table, and which rows of the first household. */
const COPIED: readonly (readonly [table: string, where: string])[] = [
  ["households", "true"],
  ["beds", "true"],
  ["sowings", THIS_YEAR],
  ["picks", `picked_on >= '2027-01-01' and sowing_id in (select id from sowings where household_id = $1 and ${THIS_YEAR})`],
  ["recipes", "true"],
  ["weather_days", "day >= '2027-06-26'"],
];

async function copyOf(client: pg.Client, table: string, where: string): Promise<string> {
  const { rows } = await client.query<{ name: string }>("select attname as name from pg_attribute where attrelid = $1::regclass and attnum > 0 and not attisdropped and attname <> 'household_id'", [table]);
  const columns = rows.map(({ name }) => `"${name}"`).join(", ");
  return `insert into ${table} (household_id, ${columns}) select other, ${columns} from ${table}, others where household_id = $1 and ${where}`;
}
