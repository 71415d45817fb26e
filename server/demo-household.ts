/**
 * `npm run demo`: an invented household in a database that is thrown away, on one day of its summer. It moves in by the same verbs
 * that a page's calls go through.
 */
import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { z } from "zod";
import type { Db, Tx } from "#db/client.ts";
import { NewBed } from "#shared/contracts/beds.ts";
import { Id } from "#shared/contracts/common.ts";
import { NewCookDay } from "#shared/contracts/cook-days.ts";
import { NewHousehold } from "#shared/contracts/household.ts";
import { NewLot, NewMovement } from "#shared/contracts/lots.ts";
import { NewPick } from "#shared/contracts/picks.ts";
import { NewPlace } from "#shared/contracts/places.ts";
import { NewPlanLine } from "#shared/contracts/plan-lines.ts";
import { NewRecipe } from "#shared/contracts/recipes.ts";
import { NewSighting } from "#shared/contracts/sightings.ts";
import { NewSowing } from "#shared/contracts/sowings.ts";
import { NewStockTarget } from "#shared/contracts/stock-targets.ts";
import { NewSupply } from "#shared/contracts/supplies.ts";
import { NewWish } from "#shared/contracts/wishes.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { Result } from "#shared/kernel/outcome.ts";
import { recordBed } from "./beds/record-bed.ts";
import { fixedClock } from "./clock.ts";
import { planCookDay } from "./cook-days/plan-cook-day.ts";
import { referenceBooks, type Reference } from "./facts/reference.ts";
import { changeHousehold } from "./household/change-household.ts";
import { HOUSEHOLD_ID } from "./http/member.ts";
import { recordLot } from "./lots/record-lot.ts";
import { recordMovement } from "./lots/record-movement.ts";
import { recordPick } from "./picks/record-pick.ts";
import { recordPlace } from "./places/record-place.ts";
import { chooseWay } from "./plan-lines/choose-way.ts";
import { granted } from "./problems.ts";
import { saveRecipe } from "./recipes/save-recipe.ts";
import { recordSighting } from "./sightings/record-sighting.ts";
import { recordSowing } from "./sowings/record-sowing.ts";
import { recordTarget } from "./stock-targets/record-target.ts";
import { recordSupply } from "./supplies/record-supply.ts";
import { readDays } from "./weather/read-days.ts";
import { attributeWeather, replaceDays } from "./weather/store.ts";
import { recordWish } from "./wishes/record-wish.ts";

export const DEMO_DAY = "2027-07-26";
const FOLDER = new URL("../seed-data/demo/", import.meta.url);

type Entry = Readonly<Record<string, unknown>>;

/** The file as it lies there; what its entries hold is read by the contracts of the interface. */
const DemoFile = z.object({
  household: NewHousehold,
  /** Whose weather it is, in the words they ask for. */
  attribution: z.string(),
  beds: z.array(z.looseObject({ id: Id })),
  sowings: z.array(z.looseObject({ id: Id })),
  sightings: z.array(z.looseObject({ id: Id, sowingId: Id })),
  picks: z.array(z.looseObject({ id: Id })),
  recipes: z.array(z.strictObject({ id: Id, recipe: NewRecipe })),
  planLines: z.array(z.looseObject({ id: Id })),
  cookDays: z.array(z.looseObject({ id: Id })),
});
type DemoFile = z.infer<typeof DemoFile>;

const LarderFile = z.object({
  places: z.array(z.looseObject({ id: Id })),
  lots: z.array(z.looseObject({ id: Id })),
  movements: z.array(z.looseObject({ id: Id, lotId: Id })),
  wishes: z.array(z.looseObject({ id: Id })),
  stockTargets: z.array(z.looseObject({ id: Id })),
  supplies: z.array(z.looseObject({ id: Id })),
});
type LarderFile = z.infer<typeof LarderFile>;

/** Puts the invented household into the one household of the database, as it was known on `today`. */
export async function fillWithDemo(db: Db, today: LocalDate, say: (line: string) => void): Promise<void> {
  if (!existsSync(new URL("household.json", FOLDER))) throw new Error(`The demo household is missing: ${fileURLToPath(FOLDER)}household.json`);
  say("Moving the invented household in …");
  const demo = DemoFile.parse(JSON.parse(await readFile(new URL("household.json", FOLDER), "utf8")));
  const larder = LarderFile.parse(JSON.parse(await readFile(new URL("larder.json", FOLDER), "utf8")));
  const weather = granted(readDays(await readFile(new URL("weather.csv", FOLDER), "utf8")));
  const book = await referenceBooks(db)();
  await db.inHousehold(HOUSEHOLD_ID, async (tx) => {
    granted(await changeHousehold(tx, HOUSEHOLD_ID, demo.household, "*", new Set(book.crops.keys())));
    await replaceDays(tx, HOUSEHOLD_ID, weather);
    await attributeWeather(tx, HOUSEHOLD_ID, demo.attribution);
    await moveIn(tx, demo, book, today);
    await fillLarder(tx, larder, new Set(book.crops.keys()), today);
  });
}

async function moveIn(tx: Tx, demo: DemoFile, book: Reference, today: LocalDate): Promise<void> {
  const clock = fixedClock(today);
  const crops = new Set(book.crops.keys());
  const ifMatch = undefined;
  for (const { id, body } of read("beds", demo.beds, NewBed)) must("beds", id, await recordBed(tx, HOUSEHOLD_ID, { id, body, ifMatch }));
  for (const { id, body } of read("sowings", demo.sowings, NewSowing)) must("sowings", id, await recordSowing(tx, HOUSEHOLD_ID, { id, body, ifMatch }, crops));
  // a demo of an earlier day has not seen what came later
  const seen = demo.sightings.filter((entry) => String(entry["seenOn"]) <= today);
  for (const { id, sowingId, ...entry } of seen) {
    for (const { body } of read("sightings", [{ id, ...entry }], NewSighting)) must("sightings", id, await recordSighting(tx, HOUSEHOLD_ID, { id, sowingId, body, ifMatch }, clock));
  }
  const picked = demo.picks.filter((entry) => String(entry["pickedOn"]) <= today);
  for (const { id, body } of read("picks", picked, NewPick)) must("picks", id, await recordPick(tx, HOUSEHOLD_ID, id, body, clock));
  for (const { id, recipe } of demo.recipes) must("recipes", id, await saveRecipe(tx, HOUSEHOLD_ID, { id, body: recipe, ifMatch }, book));
  for (const { id, body } of read("planLines", demo.planLines, NewPlanLine)) must("planLines", id, await chooseWay(tx, HOUSEHOLD_ID, { id, body, ifMatch }));
  for (const { id, body } of read("cookDays", demo.cookDays, NewCookDay)) must("cookDays", id, await planCookDay(tx, HOUSEHOLD_ID, { id, body, ifMatch }));
}

async function fillLarder(tx: Tx, larder: LarderFile, crops: ReadonlySet<string>, today: LocalDate): Promise<void> {
  const ifMatch = undefined;
  const done = <E extends Entry>(entries: readonly E[], day: string): E[] => entries.filter((entry) => String(entry[day]) <= today);
  const ahead = <E extends Entry>(entries: readonly E[]): E[] => entries.filter(({ by }) => typeof by !== "string" || !/^\d/.test(by) || by >= today);
  for (const { id, body } of read("places", larder.places, NewPlace)) must("places", id, await recordPlace(tx, HOUSEHOLD_ID, { id, body, ifMatch }));
  for (const { id, body } of read("lots", done(larder.lots, "madeOn"), NewLot)) must("lots", id, await recordLot(tx, HOUSEHOLD_ID, { id, body, ifMatch }, crops, today));
  for (const { id, lotId, ...entry } of done(larder.movements, "on")) {
    for (const { body } of read("movements", [{ id, ...entry }], NewMovement)) must("movements", id, await recordMovement(tx, HOUSEHOLD_ID, { lotId, id, body }, today));
  }
  for (const { id, body } of read("wishes", ahead(larder.wishes), NewWish)) must("wishes", id, await recordWish(tx, HOUSEHOLD_ID, { id, body, ifMatch }, today));
  for (const { id, body } of read("stockTargets", ahead(larder.stockTargets), NewStockTarget)) must("stockTargets", id, await recordTarget(tx, HOUSEHOLD_ID, { id, body, ifMatch }, today));
  for (const { id, body } of read("supplies", larder.supplies, NewSupply)) must("supplies", id, await recordSupply(tx, HOUSEHOLD_ID, { id, body, ifMatch }));
}

/** Entries of one list as bodies of the interface; a fault names list, entry and field. */
function read<Contract extends z.ZodType>(list: string, entries: readonly Entry[], contract: Contract): { id: string; body: z.output<Contract> }[] {
  return entries.map(({ id, ...rest }, i) => {
    const parsed = contract.safeParse(rest);
    if (!parsed.success) throw new Error(`The demo household's ${list}.${i}: ${parsed.error.issues.map((issue) => `${issue.path.join(".")} ${issue.message}`).join("; ")}`);
    return { id: String(id), body: parsed.data };
  });
}

function must(list: string, id: string, result: Result<unknown>): void {
  if (result.ok) return;
  const fields = (result.problem.fields ?? []).map(({ path, message }) => `${path} ${message}`).join("; ");
  throw new Error(`The demo household's ${list} ${id}: ${result.problem.detail} ${fields}`);
}
