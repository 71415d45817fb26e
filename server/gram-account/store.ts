import { and, eq, isNull, lte, sql } from "drizzle-orm";
import type { Tx } from "#db/client.ts";
import { picks, sowings } from "#db/schema/index.ts";
import type { CropSeason, PickedGrams } from "#shared/engines/larder/index.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";

export const pickedUntil = (tx: Tx, householdId: string, today: LocalDate): Promise<PickedGrams[]> =>
  tx
    .select({ crop: sowings.crop, on: picks.pickedOn, grams: picks.grams })
    .from(picks)
    .innerJoin(sowings, and(eq(sowings.householdId, picks.householdId), eq(sowings.id, picks.sowingId)))
    .where(and(eq(picks.householdId, householdId), isNull(picks.undoneAt), lte(picks.pickedOn, today)));

/**
 * The same account reckoned by the database alone: each lot's entries in the order of their days, cut into stretches by its recounts; a stretch begins
 * with what was counted, and what it ends with less the next count is what was missing there.
 */
export async function accountBySql(tx: Tx, householdId: string, southern: boolean, today: LocalDate): Promise<CropSeason[]> {
  const season = (day: ReturnType<typeof sql>) => sql`extract(year from ${day} + ${southern ? sql`interval '6 months'` : sql`interval '0'`})::int`;
  const { rows } = await tx.execute<Record<string, string | number>>(sql`
    with entries as (
      select l.id as lot, l.crop, ${season(sql`l.made_on`)} as season, m.kind, m.taken_for, m.amount::bigint as amount, m.whole_amount::bigint as whole,
             count(*) filter (where m.kind = 'recount') over (partition by l.id order by m.on_day, coalesce(m.at::timestamptz, m.recorded_at), m.id rows unbounded preceding) as stretch
      from lots l join movements m on m.household_id = l.household_id and m.lot_id = l.id and m.undone_at is null and m.on_day <= ${today}
      where l.household_id = ${householdId}::uuid and l.crop is not null and l.made_on <= ${today}
    ),
    stretches as (
      select lot, crop, season, stretch, coalesce(max(whole), 0) as opens,
             coalesce(max(whole), 0) + sum(case kind when 'put' then amount when 'move' then 0 when 'recount' then 0 else -amount end) as ends
      from entries group by lot, crop, season, stretch
    ),
    counted as (
      select *, row_number() over (partition by lot order by stretch desc) = 1 as last, coalesce(lag(ends) over (partition by lot order by stretch), 0) - opens as missing from stretches
    ),
    sums as (
      select crop, season, 0 as picked, sum(amount) filter (where kind = 'put') as put, sum(amount) filter (where taken_for = 'trim') as trimmed, sum(amount) filter (where taken_for = 'eat') as eaten,
             sum(amount) filter (where taken_for = 'batch') as batches, sum(amount) filter (where kind = 'give') as given, sum(amount) filter (where kind = 'compost') as composted,
             0 as on_hand, 0 as missing, 0 as owed
      from entries group by crop, season
      union all
      select crop, season, 0, 0, 0, 0, 0, 0, 0, sum(greatest(ends, 0)) filter (where last), sum(missing) filter (where stretch > 0), sum(greatest(-ends, 0)) filter (where last)
      from counted group by crop, season
      union all
      select s.crop, ${season(sql`p.picked_on`)}, sum(p.grams), 0, 0, 0, 0, 0, 0, 0, 0, 0
      from picks p join sowings s on s.household_id = p.household_id and s.id = p.sowing_id
      where p.household_id = ${householdId}::uuid and p.undone_at is null and p.picked_on <= ${today}
      group by 1, 2
      union all
      select crop, ${season(sql`made_on`)}, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0 from lots where household_id = ${householdId}::uuid and crop is not null and made_on <= ${today}
    )
    select crop, season, ${sql.join(["picked", "put", "trimmed", "eaten", "batches", "given", "composted", "on_hand", "missing", "owed"].map((name) => sql`coalesce(sum(${sql.identifier(name)}), 0)::text as ${sql.identifier(name)}`), sql`, `)}
    from sums group by crop, season order by season, crop collate "C"`);
  return rows.map(toSeason);
}

function toSeason(row: Record<string, string | number>): CropSeason {
  const of = (name: string): number => Number(row[name]);
  const [picked, missingAtRecounts, owed] = [of("picked"), of("missing"), of("owed")];
  const notPutAway = picked - of("put");
  return {
    crop: String(row["crop"]),
    season: of("season"),
    picked,
    trimmed: of("trimmed"),
    eaten: of("eaten"),
    batches: of("batches"),
    given: of("given"),
    composted: of("composted"),
    onHand: of("on_hand"),
    unaccounted: notPutAway + missingAtRecounts - owed,
    notPutAway,
    missingAtRecounts,
    owed,
  };
}
