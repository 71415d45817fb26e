import type { Lot, Movement } from "#shared/contracts/lots.ts";
import type { CountedIn } from "#shared/engines/larder/index.ts";
import { bothAmounts, type LotToday } from "#shared/planning/larder-facts.ts";
import type { LotRow, MovementRow } from "../facts/larder.ts";
import { lotWords } from "../facts/larder-words.ts";

export function toContract(row: LotRow, one: LotToday, rows: readonly MovementRow[], cautions: readonly string[]): Lot {
  return {
    ...lotWords(one),
    homePlaceId: row.placeId,
    ...(row.portionGrams === null ? {} : { portionGrams: row.portionGrams }),
    ...(row.portionMl === null ? {} : { portionMl: row.portionMl }),
    ...(row.bestUntil === null ? {} : { ownBestUntil: row.bestUntil }),
    ...(row.note === null ? {} : { note: row.note }),
    cautions: [...cautions],
    movements: rows.map((movement) => toMovement(movement, row)),
    late: [...one.balance.late],
  };
}

export function toMovement(row: MovementRow, lot: Pick<LotRow, "portionGrams">): Movement {
  const { id, lotId, kind, on, queued, at, note, placeId, toPlaceId } = row;
  return {
    id,
    lotId,
    kind: kind as Movement["kind"],
    on,
    ...bothAmounts({ countedIn: row.countedIn as CountedIn, portionGrams: lot.portionGrams }, row.amount),
    ...(row.takenFor === null ? {} : { for: row.takenFor as NonNullable<Movement["for"]> }),
    ...(placeId === null ? {} : { placeId }),
    ...(toPlaceId === null ? {} : { toPlaceId }),
    queued,
    ...(at === null ? {} : { at }),
    ...(note === null ? {} : { note }),
    undone: row.undoneAt !== null,
  };
}
