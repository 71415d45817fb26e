/** What is typed of jars, lids and dry goods. Allowed values are those of the contract (shared/contracts/supplies.ts). */
import { describe, expect, it } from "vitest";
import { NewSupply, SUPPLY_KINDS } from "#shared/contracts/supplies.ts";
import { fieldsOf, readSupply, readSupplyAmount, type SupplyFields } from "#web/pages/supplies/supply-form.ts";
import { dateWords, isCounted, pastWords, shortWords, supplyAmount } from "#web/pages/supplies/supply-words.ts";

const plain = (text: string): string => text.replaceAll("\u00a0", " ");
const TODAY = "2027-07-26";
const typed = (change: Partial<SupplyFields>): SupplyFields => ({ kind: "jar", name: "Jars", amount: "9", holds: "", bestUntil: "", ...change });

describe("an amount", () => {
  it.each([
    ["9", "jar", { amount: 9, unit: "pieces" }],
    ["1,200", "bag", { amount: 1200, unit: "pieces" }],
    ["1.5 l", "vinegar", { amount: 1500, unit: "ml" }],
    ["0,75 litres", "vinegar", { amount: 750, unit: "ml" }],
    ["500", "vinegar", { amount: 500, unit: "ml" }],
    ["1.2 kg", "sugar", { amount: 1200, unit: "g" }],
    ["35", "yeast", { amount: 35, unit: "g" }],
    ["0", "salt", { amount: 0, unit: "g" }],
    ["3", "other", { amount: 3, unit: "pieces" }],
    ["2 kg", "other", { amount: 2000, unit: "g" }],
  ] as const)("%s of %s", (text, kind, read) => {
    expect(readSupplyAmount(text, kind)).toEqual({ ok: true, value: read });
  });

  it.each([["", "jar"], ["some", "sugar"], ["2.5", "jar"], ["500 g", "lid"], ["-3", "bag"], ["a litre", "vinegar"]] as const)("refuses %j of %s with what would work", (text, kind) => {
    const read = readSupplyAmount(text, kind);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.works).toMatch(/^Write /);
  });
});

describe("a supply", () => {
  it("reads back as it was stored, and fits the contract", () => {
    for (const kind of SUPPLY_KINDS) {
      const body = NewSupply.parse({ kind, name: "It", amount: 12, unit: isCounted(kind) ? "pieces" : kind === "vinegar" ? "ml" : "g", ...(kind === "jar" ? { holdsMl: 500 } : {}), ...(isCounted(kind) ? {} : { bestUntil: "2028-03-01" }), note: "kept" });
      const read = readSupply(fieldsOf({ ...body, id: "x", past: false }), TODAY, "f", { note: "kept" });
      expect(read).toEqual({ ok: true, body });
    }
  });

  it("names each bad field and keeps the rest", () => {
    const read = readSupply(typed({ kind: "yeast", name: " ", amount: "lots", bestUntil: "31 April" }), TODAY, "f");
    expect(read.ok ? [] : read.faults.map(({ field }) => field)).toEqual(["f-name", "f-amount", "f-bestUntil"]);
    expect(readSupply(typed({ holds: "0" }), TODAY, "f")).toMatchObject({ ok: false, faults: [{ field: "f-holds" }] });
  });

  it("is said with its amount and its date", () => {
    expect(plain(supplyAmount({ amount: 1500, unit: "ml" }))).toBe("1.5 l");
    expect(plain(supplyAmount({ amount: 40, unit: "pieces" }))).toBe("40");
    expect(plain(dateWords({ bestUntil: "2027-06-30", past: true }, TODAY))).toBe("past its date since 30 June");
    expect(plain(dateWords({ bestUntil: "2027-08-05", past: false }, TODAY))).toBe("best within 10 days");
    const one = (name: string, past: boolean) => ({ id: name, kind: "yeast" as const, name, amount: 1, unit: "g" as const, past });
    expect(pastWords([one("Dried yeast", true), one("Sugar", false)])).toBe("Dried yeast is past its date.");
    expect(pastWords([one("Dried yeast", true), one("Dill seed", true)])).toBe("Dried yeast and dill seed are past their date.");
    expect(pastWords([])).toBe("");
    expect(plain(shortWords({ kind: "lid", need: 14, have: 9, short: 5, text: "" }))).toBe("14 lids needed, 9 there: 5 short");
  });
});
