/** Writes a movement of a lot down once. More than there is is refused with what is left, unless it has happened already. */
import type { Tx } from "#db/client.ts";
import type { NewMovement } from "#shared/contracts/lots.ts";
import { balanceOf, leftFor, mostOwed, standsBefore, type CountedIn, type LotEntry, type LotHistory } from "#shared/engines/larder/index.ts";
import { ok, refuse, type FieldFault, type Problem, type Result } from "#shared/kernel/outcome.ts";
import { bothAmounts } from "#shared/planning/larder-facts.ts";
import { bothWords } from "#shared/planning/larder-words.ts";
import { countedIn, entryOf, type LotRow, type MovementRow } from "../facts/larder.ts";
import { badFields } from "../http/contract.ts";
import { putOnce, type Put } from "../http/put-once.ts";
import { findMovement, insertMovement, lockLot, movementsOf, placesThere, undoMovement } from "./store.ts";

export interface AskedMovement {
  readonly lotId: string;
  readonly id: string;
  readonly body: NewMovement;
  /** The closed dish of a cook day that it belongs to. */
  readonly batchId?: string;
}

/** Later than anything written down so far: what is written now comes last of its day. */
const NOW = Number.MAX_SAFE_INTEGER;
const MOST = 100_000_000;

export async function recordMovement(tx: Tx, householdId: string, { lotId, id, body, batchId }: AskedMovement, today: string): Promise<Result<Put<MovementRow>>> {
  const lot = await lockLot(tx, householdId, lotId);
  if (!lot) return refuse("not-found", "There is no such lot.");
  const rows = await movementsOf(tx, lot);
  const unit = unitOf(lot, rows, body);
  const history: LotHistory = { homePlaceId: lot.placeId, entries: rows.filter((row) => row.undoneAt === null).map(entryOf) };
  const amount = amountIn(unit, lot, body);
  const entry = newEntry(id, body, amount ?? 0, history);
  return putOnce<MovementRow, Said>({
    what: "movement",
    body: said(lotId, body),
    bodyOf: (row) => saidBy(row),
    find: () => findMovement(tx, householdId, id),
    check: async () => {
      const faults = [...dayFaults(body, lot, today), ...(await placeFaults(tx, householdId, body)), ...(amount === null ? [unitFault(unit, lot, body)] : [])];
      if (faults.length > 0) return badFields(faults, "The movement cannot be written down like this.").problem;
      return body.queued === true ? undefined : tooMuch(history, entry, lot, unit, body);
    },
    insert: () => {
      const { for: takenFor, ...rest } = body;
      return insertMovement(tx, lot, id, { ...rest, takenFor: body.kind === "take" ? (takenFor ?? "eat") : null, amount: entry.amount, countedIn: unit, wholeAmount: entry.whole, batchId: batchId ?? null });
    },
  });
}

/** Marks a movement as undone, unless more was taken since than there would be without it. */
export async function takeMovementBack(tx: Tx, householdId: string, lotId: string, id: string): Promise<Result<void>> {
  const lot = await lockLot(tx, householdId, lotId);
  const movement = lot && (await findMovement(tx, householdId, id));
  if (!lot || movement?.lotId !== lotId) return refuse("not-found", "There is no such movement of this lot.");
  if (movement.undoneAt !== null) return ok(undefined);
  const entries = (await movementsOf(tx, lot)).filter((row) => row.undoneAt === null).map(entryOf);
  const owed = (some: readonly LotEntry[]): number => mostOwed({ homePlaceId: lot.placeId, entries: some });
  if (owed(entries.filter((entry) => entry.id !== id)) > owed(entries)) return refuse("conflict", "More was taken of this lot since than there would be without it. Undo what was taken first, or count the lot again.");
  await undoMovement(tx, movement);
  return ok(undefined);
}

const unitOf = (lot: LotRow, rows: readonly MovementRow[], body: NewMovement): CountedIn => countedIn(lot, rows) ?? (body.grams === undefined ? "portions" : "grams");

/** In what the lot is counted in; null where that cannot be told. */
function amountIn(unit: CountedIn, { portionGrams }: LotRow, { grams, portions }: NewMovement): number | null {
  if (unit === "grams") return grams ?? (portionGrams === null ? null : within((portions as number) * portionGrams));
  return portions ?? (portionGrams === null || (grams as number) % portionGrams !== 0 ? null : (grams as number) / portionGrams);
}

const within = (grams: number): number | null => (grams <= MOST ? grams : null);

function unitFault(unit: CountedIn, { portionGrams }: LotRow, { grams }: NewMovement): FieldFault {
  const path = grams === undefined ? "portions" : "grams";
  if (portionGrams === null) return { path, message: `this lot is counted in ${unit}: say ${unit}, or write on the lot what a portion weighs` };
  return { path, message: unit === "portions" ? `this lot is counted in portions of ${portionGrams} g: say portions, or a multiple of that` : "is more than can be kept" };
}

function newEntry(id: string, body: NewMovement, amount: number, history: LotHistory): LotEntry {
  const { kind, on, placeId = null, toPlaceId = null } = body;
  const writtenAt = body.at === undefined ? NOW : Date.parse(body.at) * 1000;
  const entry = { id, kind, on, writtenAt, arrivedAt: NOW, amount, whole: null, takenFor: body.for ?? null, placeId, toPlaceId };
  if (kind !== "recount") return entry;
  const elsewhere = placeId === null ? [] : standsBefore(history, entry).filter((stand) => stand.placeId !== placeId);
  return { ...entry, whole: elsewhere.reduce((sum, stand) => sum + stand.amount, amount) };
}

function dayFaults({ on }: NewMovement, { madeOn }: LotRow, today: string): FieldFault[] {
  if (on > today) return [{ path: "on", message: `must not be after today, ${today}` }];
  return on < madeOn ? [{ path: "on", message: `must not be before ${madeOn}, when the lot was made` }] : [];
}

async function placeFaults(tx: Tx, householdId: string, body: NewMovement): Promise<FieldFault[]> {
  const there = await placesThere(tx, householdId, [body.placeId, body.toPlaceId].filter((id) => id !== undefined));
  return (["placeId", "toPlaceId"] as const).flatMap((path) => (body[path] === undefined || there.has(body[path]) ? [] : [{ path, message: "there is no such place" }]));
}

function tooMuch(history: LotHistory, entry: LotEntry, lot: LotRow, unit: CountedIn, body: NewMovement): Problem | undefined {
  if (entry.kind === "put") return undefined;
  const path = body.grams === undefined ? "portions" : "grams";
  if (entry.kind === "recount") {
    const owed = mostOwed({ ...history, entries: [...history.entries, entry] });
    if (owed <= mostOwed(history)) return undefined;
    return refuse("conflict", "More was taken after that day than this count leaves. Count the lot as it is today.", [{ path, message: "is less than was taken since" }]).problem;
  }
  const most = leftFor(history, entry);
  if (entry.amount <= most) return undefined;
  const left = bothAmounts({ countedIn: unit, portionGrams: lot.portionGrams }, most);
  const words = most === 0 ? "Nothing" : `Only ${bothWords(left, unit)}`;
  const where = entry.placeId === null ? "" : " in that place";
  const detail = `${words} of “${lot.title}” ${most === 1 || most === 0 || unit === "grams" ? "is" : "are"} left${where} to ${VERB[entry.kind]}. If there is more, count the lot again.`;
  return { ...refuse("conflict", detail, [{ path, message: most === 0 ? "nothing is left" : `only ${String(most)} ${unit === "grams" ? "g" : most === 1 ? "portion" : "portions"} left` }]).problem, left };
}

const VERB: Readonly<Record<string, string>> = { take: "take", give: "give", compost: "compost", move: "move" };

type Said = Omit<NewMovement, "queued"> & { readonly lotId: string; readonly queued: boolean };

const said = (lotId: string, body: NewMovement): Said => ({ ...body, lotId, queued: body.queued ?? false, for: body.kind === "take" ? (body.for ?? "eat") : undefined });

function saidBy(row: MovementRow): Said {
  return {
    lotId: row.lotId,
    kind: row.kind as NewMovement["kind"],
    on: row.on,
    grams: row.grams ?? undefined,
    portions: row.portions ?? undefined,
    for: (row.takenFor as NewMovement["for"]) ?? undefined,
    placeId: row.placeId ?? undefined,
    toPlaceId: row.toPlaceId ?? undefined,
    queued: row.queued,
    at: row.at ?? undefined,
    note: row.note ?? undefined,
  };
}

/** What is left of a lot after its movements. */
export function leftOf(lot: LotRow, rows: readonly MovementRow[]) {
  const unit = countedIn(lot, rows);
  const { left, short } = balanceOf({ homePlaceId: lot.placeId, entries: rows.filter((row) => row.undoneAt === null).map(entryOf) });
  const both = (amount: number) => bothAmounts({ countedIn: unit, portionGrams: lot.portionGrams }, amount);
  return { ...both(left), short: short > 0 ? both(short) : null };
}
