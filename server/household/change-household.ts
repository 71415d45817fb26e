/** The household is always there: a PUT changes it, and says which version it changes. */
import type { Tx } from "#db/client.ts";
import type { NewHousehold } from "#shared/contracts/household.ts";
import { ok, refuse, type Result } from "#shared/kernel/outcome.ts";
import { tagOfContent } from "../http/etag.ts";
import { refuseStale, sameBody } from "../http/put-once.ts";
import { lockHousehold, updateHousehold, type HouseholdRow } from "./store.ts";
import { PLAIN_KITCHEN, toBody } from "./to-contract.ts";

/** Columns' defaults, for comparing a body that leaves them out. */
const LEFT_OUT = { glutGrams: 1_000, cooks: 1, away: [], avoids: { crops: [], allergens: [] } };

export async function changeHousehold(tx: Tx, householdId: string, asked: NewHousehold, ifMatch: string | undefined, crops: ReadonlySet<string>): Promise<Result<HouseholdRow>> {
  const stored = await lockHousehold(tx, householdId);
  const { body, placed } = asStored(asked, stored);
  if (placed === stored.placed && sameBody({ ...LEFT_OUT, ...body }, toBody(stored))) return ok(stored);
  const stale = refuseStale(ifMatch, tagOfHousehold(stored));
  if (stale) return { ok: false, problem: stale };
  const unknown = (body.eats ?? []).flatMap(({ crop }, i) => (crops.has(crop) ? [] : [{ path: `eats.${i}.crop`, message: `there is no crop "${crop}"` }]));
  const twice = (body.eats ?? []).flatMap(({ crop }, i, all) => (all.findIndex((one) => one.crop === crop) < i ? [{ path: `eats.${i}.crop`, message: `"${crop}" is there twice` }] : []));
  const shunned = (body.avoids?.crops ?? []).flatMap((crop, i) => (crops.has(crop) ? [] : [{ path: `avoids.crops.${i}`, message: `there is no crop "${crop}"` }]));
  if (shunned.length > 0) return refuse("bad-request", "What the household never eats names crops that do not fit.", shunned);
  if (unknown.length + twice.length > 0) return refuse("bad-request", "What the household eats names crops that do not fit.", [...unknown, ...twice]);
  return ok(await updateHousehold(tx, householdId, body, placed));
}

/** An answer that is sent back is a body too: what stands in it for something that was never written down is not taken for the household's own. */
function asStored({ eatsFrom, placed, eats, kitchen, ...body }: NewHousehold, stored: HouseholdRow): { body: NewHousehold; placed: boolean } {
  const own = {
    ...(eats === undefined || eatsFrom === "book" ? {} : { eats }),
    ...(kitchen === undefined || (stored.kitchen === null && sameBody(kitchen, PLAIN_KITCHEN)) ? {} : { kitchen }),
  };
  const moved = body.latitude !== stored.latitude || body.longitude !== stored.longitude;
  return { body: { ...body, ...own }, placed: placed !== false || stored.placed || moved };
}

export const tagOfHousehold = (row: HouseholdRow): string => tagOfContent(row.version, row);
