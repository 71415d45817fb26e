/** Closes a dish of a cook day: what it took leaves the larder, what it became is put into it, and nothing hot goes into the cold. */
import type { Tx } from "#db/client.ts";
import type { NewBatch } from "#shared/contracts/batches.ts";
import type { NewMovement } from "#shared/contracts/lots.ts";
import type { DayDish } from "#shared/engines/cook-day/index.ts";
import type { PreservationTables } from "#shared/engines/preservation/index.ts";
import { ok, refuse, type FieldFault, type Problem, type Result } from "#shared/kernel/outcome.ts";
import type { Keeping } from "#shared/kernel/recipe.ts";
import { coolingOf } from "#shared/planning/cooling.ts";
import { findBatch, movementsOfBatches } from "../facts/batches.ts";
import { batchesOf, loadDayUnderWay, type BatchRow, type DayUnderWayRows } from "../facts/counter.ts";
import { heatOf } from "../facts/cooling.ts";
import { badFields } from "../http/contract.ts";
import { putOnce, type Put } from "../http/put-once.ts";
import { Refusal } from "../problems.ts";
import { recordMovement } from "./record-movement.ts";
import { insertBatch, insertLot, otherMovements, placesNamed, undoBatch, type PlaceOfKind } from "./store.ts";

export interface AskedBatch {
  readonly dayId: string;
  readonly id: string;
  readonly body: NewBatch;
  readonly zone: string;
  readonly nowMs: number;
  readonly today: string;
  /** Where the recipe says that it keeps. */
  readonly keeps: readonly Keeping[];
  readonly tables: PreservationTables;
}

const COLD = new Set(["fridge", "freezer"]);

export async function closeBatch(tx: Tx, householdId: string, asked: AskedBatch): Promise<Result<Put<BatchRow>>> {
  const { dayId, id, body, zone } = asked;
  const day = await loadDayUnderWay(tx, householdId, zone, dayId, true);
  if (!day) return refuse("not-found", "There is no such cook day.");
  const dish = day.facts.plans.at(-1)?.day.dishes.find((one) => one.id === body.recipeId);
  return putOnce<BatchRow, NewBatch & { readonly dayId: string }>({
    what: "closed dish",
    body: { ...body, dayId },
    bodyOf: ({ said, cookDayId }) => ({ ...(said as NewBatch), dayId: cookDayId }),
    find: () => findBatch(tx, householdId, id),
    check: async () => (await dayFault(tx, day, dish, body)) ?? (await placeFault(tx, day, dish as DayDish, asked)),
    insert: () => write(tx, householdId, asked, dish as DayDish),
  });
}

async function dayFault(tx: Tx, day: DayUnderWayRows, dish: DayDish | undefined, { recipeId, lots }: NewBatch): Promise<Problem | undefined> {
  const conflict = (detail: string): Problem => refuse("conflict", detail).problem;
  if (!day.marks.some(({ kind }) => kind === "begun")) return conflict("The day has not begun yet.");
  if (dish === undefined) return badFields([{ path: "recipeId", message: "is not in this day" }]).problem;
  if ((await batchesOf(tx, day.row.householdId, day.row.id)).some((row) => row.recipeId === recipeId)) return conflict(`${dish.title} is put away already. Undo that first.`);
  const thrown = day.marks.some((mark) => mark.kind === "discarded" && mark.dish === recipeId);
  return thrown && lots.length > 0 ? conflict(`${dish.title} was thrown away, so nothing of it is put away.`) : undefined;
}

async function placeFault(tx: Tx, day: DayUnderWayRows, dish: DayDish, { body, keeps, tables, nowMs, today }: AskedBatch): Promise<Problem | undefined> {
  const places = await placesNamed(tx, day.row.householdId, body.lots.map(({ placeId }) => placeId));
  const faults = body.lots.flatMap(({ placeId, bestUntil }, i): FieldFault[] => {
    const place = places.get(placeId);
    if (place === undefined) return [{ path: `lots.${i}.placeId`, message: "there is no such place" }];
    if (!mayStand(place, keeps)) return [{ path: `lots.${i}.placeId`, message: `the recipe does not say that it keeps on a ${place.kind}; put it into fridge or freezer` }];
    return bestUntil !== undefined && bestUntil < today ? [{ path: `lots.${i}.bestUntil`, message: "cannot be before the day it was made" }] : [];
  });
  if (faults.length > 0) return badFields(faults, "The dish cannot be put away like this.").problem;
  if (![...places.values()].some(({ kind }) => COLD.has(kind))) return undefined;
  const cooling = coolingOf(heatOf(day.facts, dish), tables, nowMs);
  return cooling.mayGoCold ? undefined : refuse("conflict", cooling.text).problem;
}

/** The cold keeps anything for a while; elsewhere only what its recipe says. */
const mayStand = ({ kind }: PlaceOfKind, keeps: readonly Keeping[]): boolean => COLD.has(kind) || keeps.some(({ place }) => !COLD.has(place));

async function write(tx: Tx, householdId: string, { dayId, id, body, nowMs, today }: AskedBatch, dish: DayDish): Promise<BatchRow | undefined> {
  const { recipeId, portions, portionGrams, weighedGrams, lossGrams = 0, eatenPortions = 0, givenPortions = 0 } = body;
  const amounts = { portions, portionGrams: portionGrams ?? null, weighedGrams: weighedGrams ?? null, lossGrams, eatenPortions, givenPortions };
  const row = await insertBatch(tx, { householdId, id, cookDayId: dayId, recipeId, on: today, at: new Date(nowMs).toISOString(), said: body, ...amounts });
  if (row === undefined) return undefined;
  const move = async (lotId: string, movement: NewMovement, path: string): Promise<void> => {
    const put = await recordMovement(tx, householdId, { lotId, id: crypto.randomUUID(), body: movement, batchId: id }, today);
    if (!put.ok) throw new Refusal(atPath(put.problem, path));
  };
  for (const [i, { lotId, grams, portions: taken }] of body.took.entries()) await move(lotId, { kind: "take", for: "batch", on: today, grams, portions: taken }, `took.${i}.`);
  for (const [i, lot] of body.lots.entries()) {
    const label = { title: lot.title ?? dish.title, recipeId, placeId: lot.placeId, madeOn: today, portionGrams, bestUntil: lot.bestUntil, note: lot.note };
    if ((await insertLot(tx, householdId, lot.id, label)) === undefined) throw badFields([{ path: `lots.${i}.id`, message: "there is another lot under this id" }]);
    await move(lot.id, { kind: "put", on: today, portions: lot.portions }, `lots.${i}.`);
  }
  return row;
}

/** The fields of one movement, as they stand in the body of the batch; a lot that is not there is a field too. */
function atPath(problem: Problem, path: string): Problem {
  if (problem.code === "not-found") return badFields([{ path: `${path}lotId`, message: "there is no such lot" }]).problem;
  return { ...problem, fields: (problem.fields ?? []).map((field) => ({ ...field, path: `${path}${field.path}` })) };
}

/** Undoes all of it, unless something of its lots was moved since. */
export async function takeBatchBack(tx: Tx, householdId: string, dayId: string, id: string): Promise<Result<void>> {
  const day = await loadDayUnderWay(tx, householdId, "utc", dayId, true);
  const row = day && (await findBatch(tx, householdId, id));
  if (!day || row?.cookDayId !== dayId) return refuse("not-found", "There is no such closed dish of this cook day.");
  if (row.undoneAt !== null) return ok(undefined);
  const made = (await movementsOfBatches(tx, householdId, [id])).filter(({ kind }) => kind === "put").map(({ lotId }) => lotId);
  const [moved] = await otherMovements(tx, row, made);
  if (moved !== undefined) return refuse("conflict", `Something of “${moved.title}” was moved since it was put away. Undo that first.`);
  await undoBatch(tx, row, made);
  return ok(undefined);
}
