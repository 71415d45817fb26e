/** Agreeing lines for a week: under one lock what is left is looked at, the referee asked, and the lines stored, all or none. */
import type { Tx } from "#db/client.ts";
import type { AgreedWeek, NewAgreed } from "#shared/contracts/season-plan.ts";
import { ok, refuse, type Problem, type Result } from "#shared/kernel/outcome.ts";
import { weekOf, type IsoWeek } from "#shared/kernel/iso-week.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import type { SeasonRecipe } from "#shared/planning/season-facts.ts";
import { mainUses } from "#shared/planning/season-methods.ts";
import { CONTAINERS, leftOf, leftOfCrop, refereeOf, shortagesOf, thereToReserve, type ReservedLine, type Shortage, type ThereToReserve } from "#shared/planning/season-reserve.ts";
import { loadHouse, type House } from "../facts/house.ts";
import { keptUpTo } from "../facts/kept.ts";
import type { Reference } from "../facts/reference.ts";
import { loadSeason, seasonRecipe } from "../facts/season.ts";
import { recipeOf } from "../facts/stored-recipe.ts";
import { insertLines, linesFrom, linesUnder, lockAgreeing, recipesUnder, type AgreedRow } from "./store.ts";

/** What is there, kept while garden, weather and larder are what they were. */
const THERE_BYTES = 40_000;
const there = keptUpTo<ThereToReserve>(100 * THERE_BYTES);

/** What can be reserved on a day; read in the transaction that read the house's stamps. */
export async function whatIsThere(tx: Tx, house: House, book: Reference, day: LocalDate): Promise<ThereToReserve> {
  const { stamps, householdId } = house;
  const settings = JSON.stringify([house.zone, house.away, house.people]);
  const place = { name: `${householdId} ${day}`, stamp: stamps && `${stamps.garden} ${stamps.weather} ${stamps.larder} ${settings}` };
  let known = there.find(place);
  if (known === undefined) {
    known = thereToReserve(await loadSeason(tx, house, book, day));
    there.keep(place, known, THERE_BYTES);
  }
  return known;
}

export interface AskedAgreement {
  readonly week: IsoWeek;
  readonly body: NewAgreed;
  readonly day: LocalDate;
}

export async function agree(tx: Tx, householdId: string, book: Reference, { week, body, day }: AskedAgreement): Promise<Result<AgreedWeek>> {
  await lockAgreeing(tx, householdId);
  const house = await loadHouse(tx, householdId);
  const known = await whatIsThere(tx, house, book, day);
  const stored = await linesUnder(tx, householdId, body.lines.map(({ id }) => id));
  const other = body.lines.findIndex((line) => stored.some((row) => row.id === line.id && !isSame(row, line, week)));
  if (other >= 0) return refuse("conflict", "Another line is stored under this id. Take it back first, or agree under a new id.", [{ path: `lines.${other}.id`, message: "another line is stored under this id" }]);
  const asked = body.lines.filter(({ id }) => !stored.some((row) => row.id === id));
  const standing = await linesFrom(tx, householdId, weekOf(day));
  const recipes = await recipesOf(tx, house, book, [...standing, ...asked].map(({ recipeId }) => recipeId));
  const unknown = body.lines.flatMap(({ recipeId }, i) => (recipes.has(recipeId) ? [] : [{ path: `lines.${i}.recipeId`, message: "there is no such recipe" }]));
  if (unknown.length > 0) return refuse("bad-request", "A line names a recipe that is not there.", unknown);
  const refusal = asked.length === 0 ? null : fits(known, reservedLines(standing, recipes), body, asked, week, recipes, house, book);
  if (refusal) return refusal;
  const added = await insertLines(tx, householdId, week, asked);
  return ok(agreedWeek(known, week, [...standing, ...added], recipes));
}

export interface AskedLine {
  readonly id: string;
  readonly body: { readonly week: IsoWeek; readonly recipeId: string; readonly batches: number; readonly buyMissing?: boolean | undefined };
  readonly day: LocalDate;
}

/** Whether a single line fits beside all others; under the lock. A line of a week that is over takes nothing any more. */
export async function lineFits(tx: Tx, house: House, book: Reference, { id, body, day }: AskedLine): Promise<Problem | undefined> {
  const { week, recipeId, batches, buyMissing } = body;
  if (week < weekOf(day)) return undefined;
  const known = await whatIsThere(tx, house, book, day);
  const standing = (await linesFrom(tx, house.householdId, weekOf(day))).filter((row) => row.id !== id);
  const recipes = await recipesOf(tx, house, book, [...standing.map((row) => row.recipeId), recipeId]);
  const line = { id, recipeId, batches };
  const refusal = fits(known, reservedLines(standing, recipes), { lines: [line], ...(buyMissing === undefined ? {} : { buyMissing }) }, [line], week, recipes, house, book);
  if (refusal === null || refusal.ok) return undefined;
  const { problem } = refusal;
  return problem.fields ? { ...problem, fields: problem.fields.map(({ message }) => ({ path: "batches", message })) } : problem;
}

type NewLine = NewAgreed["lines"][number];

const isSame = (row: AgreedRow, line: NewLine, week: IsoWeek): boolean => row.week === week && row.recipeId === line.recipeId && row.batches === line.batches;

async function recipesOf(tx: Tx, house: House, book: Reference, ids: readonly string[]): Promise<Map<string, SeasonRecipe>> {
  const rows = await recipesUnder(tx, house.householdId, ids);
  return new Map(rows.map((row) => [row.id, seasonRecipe(row.id, recipeOf(row), book, house)]));
}

function reservedLines(rows: readonly AgreedRow[], recipes: ReadonlyMap<string, SeasonRecipe>): ReservedLine[] {
  return rows.flatMap(({ week, recipeId, batches }) => {
    const recipe = recipes.get(recipeId);
    return recipe ? [{ week, recipe, batches }] : [];
  });
}

/** Line by line, each beside those before it; then the referee over all. */
function fits(known: ThereToReserve, standing: readonly ReservedLine[], body: NewAgreed, asked: readonly NewLine[], week: IsoWeek, recipes: ReadonlyMap<string, SeasonRecipe>, house: House, book: Reference): Result<never> | null {
  const faults: { path: string; short: Shortage }[] = [];
  const all = [...standing];
  for (const line of asked) {
    const one: ReservedLine = { week, recipe: recipes.get(line.recipeId) as SeasonRecipe, batches: line.batches };
    // produce, jars, lids and bags can be bought; room cannot
    const short = shortagesOf(known, all, one).filter(({ kind }) => kind === "freezer" || body.buyMissing !== true);
    faults.push(...short.map((found) => ({ path: `lines.${body.lines.indexOf(line)}`, short: found })));
    all.push(one);
  }
  const [first] = faults;
  if (first) {
    const { problem } = refuse("conflict", first.short.text, faults.map(({ path, short }) => ({ path, message: short.text })));
    return { ok: false, problem: first.short.kind === "crop" ? { ...problem, left: { grams: first.short.left, portions: null } } : problem };
  }
  if (body.buyMissing === true) return null;
  const kitchen = { altitudeM: house.altitudeM, preservation: book.preservation } as Parameters<typeof refereeOf>[2]["kitchen"];
  const before = refereeOf(known, standing, { kitchen });
  const after = refereeOf(known, all, { kitchen });
  return before.length === 0 && after.length > 0 ? refuse("conflict", `This does not fit beside what is agreed: ${after[0] as string}`) : null;
}

/** What is agreed for a week, and what of produce and room is left for it. */
function agreedWeek(known: ThereToReserve, week: IsoWeek, rows: readonly AgreedRow[], recipes: ReadonlyMap<string, SeasonRecipe>): AgreedWeek {
  const lines = reservedLines(rows, recipes);
  const crops = known.crops.flatMap(({ crop }): AgreedWeek["limits"] => {
    const [all, left] = [leftOfCrop(known, [], crop, week), leftOfCrop(known, lines, crop, week)];
    return all === null || left === null || all < 1 ? [] : [{ kind: "crop", id: crop, name: known.names.get(crop) ?? crop, unit: "g", there: all, reserved: all - left, left }];
  });
  const containers = CONTAINERS.flatMap((kind): AgreedWeek["limits"] => {
    const { there: all, left } = leftOf(known, lines, kind);
    return all === null || left === null ? [] : [{ kind, id: kind, name: NAMES[kind], unit: kind === "freezer" ? "l" : "pieces", there: all, reserved: Math.round((all - left) * 10) / 10, left }];
  });
  return {
    week,
    lines: rows
      .filter((row) => row.week === week)
      .flatMap(({ id, recipeId, batches }) => {
        const recipe = recipes.get(recipeId);
        return recipe ? [{ id, recipeId, title: recipe.title, way: recipe.way, batches, uses: mainUses(recipe).map((use) => ({ crop: use.crop, grams: Math.round(use.grams * batches) })) }] : [];
      }),
    limits: [...crops, ...containers],
  };
}

export async function loadAgreedWeek(tx: Tx, house: House, book: Reference, week: IsoWeek, day: LocalDate): Promise<AgreedWeek> {
  const rows = await linesFrom(tx, house.householdId, week < weekOf(day) ? week : weekOf(day));
  return agreedWeek(await whatIsThere(tx, house, book, day), week, rows, await recipesOf(tx, house, book, rows.map(({ recipeId }) => recipeId)));
}

const NAMES = { freezer: "Freezer", jar: "Jars", lid: "Lids", bag: "Bags" } as const;
