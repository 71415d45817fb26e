/** The tables name what does not fit instead of passing it on to a kitchen. */
import { describe, expect, it } from "vitest";
import { preservationTables, safeWays } from "#shared/engines/preservation/index.ts";
import type { ReferenceRow } from "#shared/kernel/reference-row.ts";
import { seedRows, seedSources } from "#tests/support/reference-rows.ts";

const rows = seedRows("preservation");
const changed = (key: string, facts: Record<string, unknown>): ReferenceRow[] => rows.map((row) => (row.key === key ? { ...row, facts: { ...row.facts, ...facts } } : row));

describe("reading the preservation tables", () => {
  it("takes every row of seed-data, each with a publication that the files list", () => {
    const known = new Set(seedSources("preservation").map((source) => source.id));
    expect(rows.length).toBeGreaterThan(1000);
    for (const row of rows) expect(known, row.key).toContain(row.source);
    const tables = preservationTables(rows);
    expect([tables.canning.length, tables.refusals.length, tables.cautions.length]).toEqual([423, 39, 26]);
  });
  it("turns names of the sources into the crops of this book", () => {
    const tables = preservationTables(rows);
    const crops = new Set([...tables.canning.flatMap((row) => row.crops), ...tables.blanching.map((row) => row.crop)]);
    for (const slug of ["french-bean", "climbing-bean", "runner-bean", "beetroot", "sweetcorn", "courgette", "aubergine", "swede"]) expect(crops).toContain(slug);
    for (const name of ["green-bean", "beet", "sweet-corn", "zucchini", "eggplant", "rutabaga"]) expect(crops).not.toContain(name);
    // bell and hot peppers have pickles of their own (Guide 6, p. 6-21 and 6-22)
    expect(safeWays("chilli", tables).find((way) => way.way === "pickle")?.processes.map((p) => p.key)).not.toContain("pickled-bell-peppers");
  });
  it.each([
    ["a gap between bands", { bands: [{ fromFt: 0, toFt: 1000, minutes: 45, psi: null }, { fromFt: 1501, toFt: null, minutes: 50, psi: null }] }, /bands\.1 must follow/],
    ["a band after the open one", { bands: [{ fromFt: 0, toFt: null, minutes: 45, psi: null }, { fromFt: 1001, toFt: null, minutes: 50, psi: null }] }, /bands\.1 must follow/],
    ["no band", { bands: [] }, /must not be empty/],
    ["minutes in words", { bands: [{ fromFt: 0, toFt: null, minutes: "45", psi: null }] }, /bands\.0\.minutes must be a number/],
    ["an unknown jar", { jar: "litre" }, /jar must be one of/],
    ["a crop nobody mapped", { crops: ["marrow"] }, /no row for marrow/],
  ])("refuses %s and names it", (_, facts, fault) => {
    expect(() => preservationTables(changed("tomato-crushed/hot/quart/boiling-water", facts))).toThrow(fault);
  });
});
