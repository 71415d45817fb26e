import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { seed, SEED_FOLDER } from "#db/seed.ts";
import { type BookFiles, removeBookFolders, smallBook, SOUP, STOCK, writeBookFolder } from "../support/database-book.ts";
import { fillHousehold } from "../support/database-rows.ts";
import { asSuperuser, freshDb, makeHousehold, type TestDb } from "../support/test-db.ts";

let scratch: TestDb;
beforeAll(async () => {
  scratch = await freshDb();
});
afterAll(() => scratch.drop());
afterEach(removeBookFolders);

const TABLES = ["sources", "crops", "reference_rows", "book_recipes"];

/** Every row with the transaction that wrote it: an equal answer means that nothing was written in between. */
const written = (url: string) =>
  asSuperuser(url, async (client) => {
    const all: unknown[] = [];
    for (const table of TABLES) all.push((await client.query(`select xmin::text as writer, t.* from ${table} t order by ${table === "crops" ? "slug" : table === "reference_rows" ? "kind, key" : "id"}`)).rows);
    return all;
  });
const load = (files: BookFiles) => seed(scratch.url, writeBookFolder(files));

describe("the book in seed-data", () => {
  it("loads, and every source that a row names is in the register", async () => {
    const dangling = await asSuperuser(scratch.url, (client) =>
      client.query(`select kind, key, id from reference_rows cross join lateral regexp_split_to_table(source, ' ') as id where not exists (select from sources where sources.id = id)
        union all select 'crops', slug, id from crops cross join lateral jsonb_array_elements_text(facts->'sources') as id where not exists (select from sources where sources.id = id)`),
    );
    expect(dangling.rows).toEqual([]);
  });

  it("is equal after a second loading, and nothing is written by it", async () => {
    const before = await written(scratch.url);
    const [first, second] = [await seed(scratch.url), await seed(scratch.url)];
    expect(second).toEqual(first);
    expect(first.crops).toBeGreaterThanOrEqual(70);
    expect(first.rows).toBeGreaterThanOrEqual(1_000);
    expect(first.recipes).toBeGreaterThanOrEqual(24);
    expect(await written(scratch.url)).toEqual(before);
  });
});

describe("seed-data/README.md", () => {
  const readme = readFileSync(path.join(SEED_FOLDER, "README.md"), "utf8");

  it("names every table, and no table that is not there", () => {
    const tables = ["preservation", "measures"].flatMap((folder) => readdirSync(path.join(SEED_FOLDER, folder)).map((file) => `${folder}/${file}`));
    const named = [...readme.matchAll(/^\| `((?:preservation|measures)\/[a-z-]+\.json)`/gm)].map(([, file]) => file as string);
    expect(named.sort()).toEqual(tables.sort());
  });

  it("describes every column of the tables", () => {
    const columns = ["crops.csv", "crop-sources.csv", "eats.csv"].flatMap((file) => (readFileSync(path.join(SEED_FOLDER, file), "utf8").split("\n")[0] as string).trim().split(","));
    const described = (column: string) => readme.includes(`\`${column}\``) || readme.includes(`\`${column.replace(/(low|likely|high)$/, "…")}\``);
    expect(columns.length).toBeGreaterThanOrEqual(45);
    expect(columns.filter((column) => !described(column))).toEqual([]);
    const fields = new Set(
      ["preservation", "measures"].flatMap((folder) =>
        readdirSync(path.join(SEED_FOLDER, folder)).flatMap((file) => {
          const { rows } = JSON.parse(readFileSync(path.join(SEED_FOLDER, folder, file), "utf8")) as { rows: object[] };
          return rows.flatMap(Object.keys);
        }),
      ),
    );
    expect([...fields].filter((field) => !readme.includes(`\`${field}\``))).toEqual([]);
  });
});

describe("loading", () => {
  it("makes the tables what the files say: rows as they stand, sources with their licence, recipes as the contract reads them", async () => {
    expect(await load(smallBook())).toEqual({ sources: expect.any(Number) as number, crops: 2, rows: 4, recipes: 2, keptCrops: [] });
    const { rows: reference } = await asSuperuser(scratch.url, (client) => client.query("select * from reference_rows order by kind, key"));
    expect(reference).toEqual([
      { kind: "eats", key: "carrot", facts: { crop: "carrot", gramsPerPersonWeek: 300, source: "CP MEM", note: "half of it grated" }, source: "CP MEM" },
      { kind: "eats", key: "tomato", facts: { crop: "tomato", gramsPerPersonWeek: 700, source: "CP" }, source: "CP" },
      { kind: "measures/spoons", key: "heaped", facts: { key: "heaped", ml: 20, source: "TEST-1" }, source: "TEST-1" },
      { kind: "measures/spoons", key: "level", facts: { key: "level", ml: 15, source: "TEST-1" }, source: "TEST-1" },
    ]);
    const { rows: source } = await asSuperuser(scratch.url, (client) => client.query("select * from sources where id = 'TEST-1'"));
    expect(source).toEqual([{ id: "TEST-1", text: "An invented table", licence: "Invented" }]);
    const { rows: recipes } = await asSuperuser(scratch.url, (client) => client.query<{ id: string; sources: unknown }>("select id, sources from book_recipes order by id"));
    expect(recipes[0]).toEqual({ id: SOUP, sources: [{ id: "TEST-1", text: "An invented table; row 1" }] });
    expect(recipes[1]).toEqual({ id: STOCK, sources: [{ id: "CP", text: "Common practice, no source" }] });
  });

  it("changes what was changed, takes away what was taken away, and brings it back", async () => {
    const changed = smallBook();
    changed["eats.csv"] = "crop,grams_per_person_week,source,note\ntomato,800,CP,\n";
    delete changed["recipes/soup.json"];
    await load(changed);
    const { rows } = await asSuperuser(scratch.url, (client) => client.query("select key, facts->'gramsPerPersonWeek' as grams from reference_rows where kind = 'eats'"));
    expect(rows).toEqual([{ key: "tomato", grams: 800 }]);
    expect((await asSuperuser(scratch.url, (client) => client.query("select id from book_recipes"))).rows).toEqual([{ id: STOCK }]);
    expect((await load(smallBook())).recipes).toBe(2);
  });

  it("keeps a crop that stands in somebody's bed, and says so", async () => {
    await load(smallBook());
    const household = await makeHousehold(scratch.db);
    await scratch.db.inHousehold(household, (tx) => fillHousehold(tx, household));
    const without = smallBook();
    without["crops.csv"] = (without["crops.csv"] as string).replace(/^tomato,.*\n/m, "");
    without["eats.csv"] = "crop,grams_per_person_week,source,note\n";
    delete without["recipes/soup.json"];
    expect((await load(without)).keptCrops).toEqual(["tomato"]);
  });

  it("may be done by several processes at once", async () => {
    const folder = writeBookFolder(smallBook());
    await Promise.all(Array.from({ length: 8 }, () => seed(scratch.url, folder)));
    const { rows } = await asSuperuser(scratch.url, (client) => client.query("select count(*)::int as n from reference_rows"));
    expect(rows).toEqual([{ n: 4 }]);
  });

  it("takes an empty folder for an empty book", async () => {
    expect(await seed(scratch.url, writeBookFolder({}))).toMatchObject({ sources: 0, rows: 0, recipes: 0 });
  });
});

/** What is changed in the small book, and the complaint with file and line that must come of it. */
const FAULTS: [what: string, change: (book: BookFiles) => void, complaint: string][] = [
  ["a crop without a source", (book) => edit(book, "crops.csv", /^(carrot,.*,carrot,)[^,]*(,.*)$/m, "$1$2"), "crops.csv:3: a row needs a source"],
  ["a crop with a source nobody knows", (book) => edit(book, "crops.csv", /^(carrot,.*,carrot,)[^,]*(,.*)$/m, "$1HEARSAY$2"), "crops.csv:3: the source HEARSAY is not in the register"],
  ["a crop without a base temperature", (book) => edit(book, "crops.csv", /^(carrot,.*,direct,)[^,]*,/m, "$1,"), "crops.csv:3: carrot: base_c is empty"],
  ["a crop that stands there twice", (book) => edit(book, "crops.csv", /^(carrot,.*)$/m, "$1\n$1"), "crops.csv:4: carrot stands here a second time"],
  ["an amount eaten without a source", (book) => edit(book, "eats.csv", "700,CP", "700,"), "eats.csv:2: a row needs a source"],
  ["an amount eaten of no crop", (book) => edit(book, "eats.csv", "carrot,300", "moon-carrot,300"), "eats.csv:3: there is no crop moon-carrot"],
  ["an amount eaten that is no number", (book) => edit(book, "eats.csv", "700", "some"), "eats.csv:2: grams_per_person_week must be a number, 0 or more"],
  ["an amount eaten left empty", (book) => edit(book, "eats.csv", "tomato,700", "tomato,"), "eats.csv:2: grams_per_person_week must be a number, 0 or more"],
  ["a line with a cell too many", (book) => edit(book, "eats.csv", "700,CP,", "700,CP,,,"), "eats.csv:2: Invalid Record Length"],
  ["a publication with two texts", (book) => edit(book, "crop-sources.csv", /$/, "TEST-1,Something else\n"), "measures/spoons.json:6: the source TEST-1 has another text in crop-sources.csv:"],
  ["a publication without a text", (book) => edit(book, "measures/spoons.json", "An invented table", ""), "measures/spoons.json:6: a source needs an id and a text"],
  ["a row without a source", (book) => edit(book, "measures/spoons.json", /("ml": 15),\s*"source": "TEST-1"/, "$1"), "measures/spoons.json:17: a row needs a source"],
  ["a row with a source nobody knows", (book) => edit(book, "measures/spoons.json", /("ml": 15,\s*"source": )"TEST-1"/, '$1"HEARSAY"'), "measures/spoons.json:17: the source HEARSAY is not in the register"],
  ["a row without a key", (book) => edit(book, "measures/spoons.json", '"key": "level"', '"name": "level"'), "measures/spoons.json:1: rows.1 needs a key"],
  ["a key that stands there twice", (book) => edit(book, "measures/spoons.json", '"key": "level"', '"key": "heaped"'), "heaped stands here a second time"],
  ["a table without a licence", (book) => edit(book, "measures/spoons.json", /"licence": "Invented",/, ""), "measures/spoons.json:1: needs a title and a licence"],
  ["a file that is no JSON", (book) => void (book["measures/spoons.json"] = "{ rows: "), "measures/spoons.json:1: "],
  ["a recipe without a source", (book) => recipe(book, "recipes/stock.json", { sources: [] }), "recipes/stock.json:1: a recipe needs a source"],
  ["a recipe with a source nobody knows", (book) => recipe(book, "recipes/stock.json", { sources: ["HEARSAY"] }), "recipes/stock.json:4: the source HEARSAY is not in the register"],
  ["a recipe that the contract refuses", (book) => recipe(book, "recipes/stock.json", { recipe: { title: "Stock" } }), "recipes/stock.json:1: recipe.way "],
  ["a recipe with an id that is no UUID", (book) => recipe(book, "recipes/stock.json", { id: "stock" }), "recipes/stock.json:1: needs an id that is a UUID in lower case"],
  ["a recipe of no crop", (book) => edit(book, "recipes/soup.json", '"tomato"', '"moon-carrot"'), "there is no crop moon-carrot"],
  ["a recipe with a part that nothing makes", (book) => void delete book["recipes/stock.json"], `recipes/soup.json:1: uses ${STOCK}, which no recipe of the book makes`],
];

function edit(book: BookFiles, file: string, from: string | RegExp, to: string): void {
  const content = book[file];
  const text = typeof content === "string" ? content : JSON.stringify(content, null, 1);
  const edited = text.replace(from, to);
  if (edited === text) throw new Error(`nothing to change in ${file}`);
  book[file] = edited;
}

function recipe(book: BookFiles, file: string, change: object): void {
  book[file] = { ...(book[file] as object), ...change };
}

describe("a book with a fault", () => {
  it.each(FAULTS)("is refused whole for %s, by file and line", async (_what, change, complaint) => {
    await load(smallBook());
    const before = await written(scratch.url);
    const book = smallBook();
    change(book);
    await expect(load(book)).rejects.toThrow(complaint);
    expect(await written(scratch.url)).toEqual(before);
  });

  it("has all its faults named at once", async () => {
    const book = smallBook();
    edit(book, "eats.csv", "700,CP", "700,");
    edit(book, "measures/spoons.json", '"key": "level"', '"name": "level"');
    await expect(load(book)).rejects.toThrow(/eats\.csv:2: .*\n.*spoons\.json:1: /);
  });
});
