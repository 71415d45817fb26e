import { randomUUID } from "node:crypto";
import { and, eq, sql } from "drizzle-orm";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { emptyHousehold, provisionHousehold } from "#db/provision.ts";
import { households, recipeParts, recipes } from "#db/schema/index.ts";
import { seed } from "#db/seed.ts";
import { type BookFiles, removeBookFolders, smallBook, SOUP, STOCK, writeBookFolder } from "../support/database-book.ts";
import { freshDb, makeHousehold, type TestDb } from "../support/test-db.ts";

let scratch: TestDb;
beforeAll(async () => {
  scratch = await freshDb();
  await seed(scratch.url, writeBookFolder(smallBook()));
});
afterAll(() => scratch.drop());
afterEach(removeBookFolders);

const recipesOf = (household: string) => scratch.db.inHousehold(household, (tx) => tx.select().from(recipes).orderBy(recipes.id));
const partsOf = (household: string) => scratch.db.inHousehold(household, (tx) => tx.select({ recipe: recipeParts.recipeId, part: recipeParts.partId }).from(recipeParts));
const bookWith = (title: string, ingredients?: object[]): BookFiles => {
  const book = smallBook();
  const soup = book["recipes/soup.json"] as { recipe: object };
  book["recipes/soup.json"] = { ...soup, recipe: { ...soup.recipe, title, ...(ingredients ? { ingredients } : {}) } };
  return book;
};

describe("a new household", () => {
  it("starts with settings that presume nothing about place or people", async () => {
    const household = await makeHousehold(scratch.db);
    const [row] = await scratch.db.inHousehold(household, (tx) => tx.select().from(households));
    expect(row).toMatchObject({ name: "Our household", zone: "Etc/UTC", latitude: 0, longitude: 0, altitudeM: 0, people: 2, weekStart: "monday", units: "metric", placed: false, eats: null, normals: null, version: 1 });
  });

  it("has the book's recipes as its own copies, with the parts they use", async () => {
    const household = await makeHousehold(scratch.db);
    const [soup, stock] = await recipesOf(household);
    expect(soup).toMatchObject({ id: SOUP, title: "Tomato soup", way: "cook", makesAmount: 4, makesUnit: "portions", process: null, origin: "book", version: 1 });
    expect(Object.keys(soup?.body ?? {}).sort()).toEqual(["ingredients", "keeps", "steps"]);
    expect(stock?.id).toBe(STOCK);
    expect(await partsOf(household)).toEqual([{ recipe: SOUP, part: STOCK }]);
  });
});

describe("setting up a household again", () => {
  it("changes nothing where nothing changed, also ten times at once", async () => {
    const household = await makeHousehold(scratch.db);
    await scratch.db.inHousehold(household, (tx) => tx.update(households).set({ name: "The mill", people: 5 }));
    const before = await recipesOf(household);
    await Promise.all(Array.from({ length: 10 }, () => makeHousehold(scratch.db, household)));
    expect(await recipesOf(household)).toEqual(before);
    expect(await partsOf(household)).toEqual([{ recipe: SOUP, part: STOCK }]);
    expect(await scratch.db.inHousehold(household, (tx) => tx.select({ name: households.name, people: households.people }).from(households))).toEqual([{ name: "The mill", people: 5 }]);
  });

  it("brings a recipe up to the book, but not one that the household edited or wrote itself", async () => {
    const [untouched, edited] = [await makeHousehold(scratch.db), await makeHousehold(scratch.db)];
    await scratch.db.inHousehold(edited, (tx) => tx.update(recipes).set({ title: "Grandmother's soup", version: sql`${recipes.version} + 1` }).where(eq(recipes.id, SOUP)));
    const own = { householdId: untouched, id: randomUUID(), title: "Our own", way: "cook", makesAmount: 1, makesUnit: "l", body: {} };
    await scratch.db.inHousehold(untouched, (tx) => tx.insert(recipes).values(own));
    await seed(scratch.url, writeBookFolder(bookWith("Red soup", [{ text: "1 kg tomatoes", crop: "tomato" }])));
    for (const household of [untouched, edited]) await makeHousehold(scratch.db, household);
    const titles = async (household: string) => (await recipesOf(household)).map((recipe) => recipe.title).sort();
    expect(await titles(untouched)).toEqual(["Our own", "Red soup", "Stock"]);
    expect(await partsOf(untouched)).toEqual([]);
    expect(await titles(edited)).toEqual(["Grandmother's soup", "Stock"]);
    expect(await partsOf(edited)).toEqual([{ recipe: SOUP, part: STOCK }]);
    await seed(scratch.url, writeBookFolder(smallBook()));
  });
});

describe("emptying a household", () => {
  it("leaves it as if it had just been set up, and the next one untouched", async () => {
    const [emptied, next] = [await makeHousehold(scratch.db), await makeHousehold(scratch.db)];
    for (const household of [emptied, next]) await scratch.db.inHousehold(household, (tx) => tx.update(households).set({ name: "The mill", placed: true, version: 7 }));
    await scratch.db.inHousehold(emptied, (tx) => tx.update(recipes).set({ title: "Changed", version: 2 }).where(and(eq(recipes.id, SOUP), eq(recipes.householdId, emptied))));
    await scratch.db.inHousehold(emptied, (tx) => emptyHousehold(tx, emptied));
    const row = (household: string) => scratch.db.inHousehold(household, (tx) => tx.select({ name: households.name, placed: households.placed, version: households.version }).from(households));
    expect(await row(emptied)).toEqual([{ name: "Our household", placed: false, version: 1 }]);
    expect((await recipesOf(emptied)).map((recipe) => recipe.title)).toEqual(["Tomato soup", "Stock"]);
    expect(await row(next)).toEqual([{ name: "The mill", placed: true, version: 7 }]);
  });

  it("is undone with the rest when the transaction fails", async () => {
    const household = await makeHousehold(scratch.db);
    await scratch.db.inHousehold(household, (tx) => tx.update(households).set({ name: "The mill" }));
    const broken = scratch.db.inHousehold(household, async (tx) => {
      await emptyHousehold(tx, household);
      throw new Error("the cook came in");
    });
    await expect(broken).rejects.toThrow("the cook came in");
    expect(await scratch.db.inHousehold(household, (tx) => tx.select({ name: households.name }).from(households))).toEqual([{ name: "The mill" }]);
  });

  it("cannot be done to another household", async () => {
    const [own, other] = [await makeHousehold(scratch.db), await makeHousehold(scratch.db)];
    await scratch.db.inHousehold(other, (tx) => tx.update(households).set({ name: "The mill" }));
    await expect(scratch.db.inHousehold(own, (tx) => emptyHousehold(tx, other))).rejects.toThrow();
    await expect(scratch.db.inHousehold(own, (tx) => provisionHousehold(tx, other))).rejects.toThrow();
    expect(await scratch.db.inHousehold(other, (tx) => tx.select({ name: households.name }).from(households))).toEqual([{ name: "The mill" }]);
  });
});
