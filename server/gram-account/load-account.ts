/** Loads what the account rests on, and has it reckoned twice: by the core and by the database. A difference is a fault of the program and is not shown as an answer. */
import type { Tx } from "#db/client.ts";
import { closes, differencesOf } from "#shared/engines/larder/index.ts";
import { accountRows, type AccountFacts } from "#shared/planning/season-account.ts";
import type { House } from "../facts/house.ts";
import { loadLarder } from "../facts/larder.ts";
import type { Reference } from "../facts/reference.ts";
import { accountBySql, pickedUntil } from "./store.ts";

export async function loadAccount(tx: Tx, house: House, book: Reference, today: string): Promise<AccountFacts> {
  const southern = house.latitude < 0;
  const facts: AccountFacts = {
    larder: await loadLarder(tx, book, today),
    picks: await pickedUntil(tx, house.householdId, today),
    southern,
    names: new Map([...book.crops].map(([slug, crop]) => [slug, crop.name])),
  };
  const rows = accountRows(facts);
  const differences = differencesOf(rows, await accountBySql(tx, house.householdId, southern, today));
  if (differences.length > 0) throw new Error(`the two reckonings of the gram account differ: ${differences.join(", ")}`);
  if (!rows.every(closes)) throw new Error("the gram account does not close");
  return facts;
}
