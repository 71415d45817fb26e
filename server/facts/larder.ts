/** Loads what stands in a larder, in three questions whatever its size. Nothing is computed here. */
import { and, asc, eq, isNull, sql } from "drizzle-orm";
import { lots, movements, places, recipes } from "#db/schema/index.ts";
import type { Tx } from "#db/client.ts";
import type { CountedIn, LotEntry } from "#shared/engines/larder/index.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { PlaceKind } from "#shared/kernel/way.ts";
import type { LarderFacts, LotFacts, PlaceFacts } from "#shared/planning/larder-facts.ts";
import type { Reference } from "./reference.ts";
import { recipeOf, type RecipeRow } from "./stored-recipe.ts";

export type LotRow = typeof lots.$inferSelect;
export type MovementRow = typeof movements.$inferSelect & { readonly writtenAt: number; readonly arrivedAt: number };

/** With a lot named, that one only; all places either way. */
export async function loadLarder(tx: Tx, book: Reference, today: LocalDate, lotId?: string): Promise<LarderFacts> {
  const placeRows = await tx.select().from(places).orderBy(asc(places.name), asc(places.id));
  const lotRows = await tx
    .select({ lot: lots, recipe: recipes })
    .from(lots)
    .leftJoin(recipes, and(eq(recipes.householdId, lots.householdId), eq(recipes.id, lots.recipeId)))
    .where(lotId === undefined ? undefined : eq(lots.id, lotId));
  const moved = await selectMovements(tx).where(and(isNull(movements.undoneAt), lotId === undefined ? undefined : eq(movements.lotId, lotId)));
  const byLot = new Map<string, MovementRow[]>();
  for (const row of moved) {
    const rows = byLot.get(row.lotId);
    if (rows) rows.push(row);
    else byLot.set(row.lotId, [row]);
  }
  return { today, places: placeRows.map(placeFacts), lots: lotRows.map(({ lot, recipe }) => lotFacts(lot, recipe, byLot.get(lot.id) ?? [])), preservation: book.preservation };
}

/** Movements with the two moments that tell entries of one day apart, in microseconds since 1970. */
export const selectMovements = (tx: Tx) =>
  tx
    .select({
      householdId: movements.householdId,
      id: movements.id,
      lotId: movements.lotId,
      kind: movements.kind,
      on: movements.on,
      grams: movements.grams,
      portions: movements.portions,
      amount: movements.amount,
      countedIn: movements.countedIn,
      wholeAmount: movements.wholeAmount,
      takenFor: movements.takenFor,
      placeId: movements.placeId,
      toPlaceId: movements.toPlaceId,
      queued: movements.queued,
      at: movements.at,
      note: movements.note,
      batchId: movements.batchId,
      recordedAt: movements.recordedAt,
      undoneAt: movements.undoneAt,
      writtenAt: sql<number>`(extract(epoch from coalesce(${movements.at}::timestamptz, ${movements.recordedAt})) * 1000000)::double precision`,
      arrivedAt: sql<number>`(extract(epoch from ${movements.recordedAt}) * 1000000)::double precision`,
    })
    .from(movements)
    .$dynamic();

export function lotFacts(lot: LotRow, recipe: RecipeRow | null, rows: readonly MovementRow[]): LotFacts {
  const made = recipe === null ? null : recipeOf(recipe);
  return {
    id: lot.id,
    title: lot.title,
    crop: lot.crop,
    recipe: recipe === null || made === null ? null : { id: recipe.id, way: made.way, keeps: made.keeps, reheat: made.reheat ?? null },
    homePlaceId: lot.placeId,
    madeOn: lot.madeOn,
    portionGrams: lot.portionGrams,
    portionMl: lot.portionMl,
    bestUntil: lot.bestUntil,
    countedIn: countedIn(lot, rows),
    entries: rows.map(entryOf),
  };
}

/** Produce as picked is weighed; anything else is counted in what its first movement said. */
export function countedIn(lot: Pick<LotRow, "crop">, rows: readonly Pick<MovementRow, "countedIn">[]): CountedIn | null {
  return lot.crop === null ? ((rows[0]?.countedIn as CountedIn | undefined) ?? null) : "grams";
}

export function entryOf(row: MovementRow): LotEntry {
  const { id, on, writtenAt, arrivedAt, amount, placeId, toPlaceId } = row;
  return { id, kind: row.kind as LotEntry["kind"], on, writtenAt, arrivedAt, amount, whole: row.wholeAmount, takenFor: row.takenFor as LotEntry["takenFor"], placeId, toPlaceId };
}

const placeFacts = ({ id, name, kind, litres }: typeof places.$inferSelect): PlaceFacts => ({ id, name, kind: kind as PlaceKind, litres });
