/**
 * The canning tables against a second copy typed out of the guide's tables (tests/cases/preservation), page beside each line:
 * USDA Complete Guide to Home Canning, Agriculture Information Bulletin 539, 2015. Every edge of every band and one foot above it.
 */
import { describe, expect, it } from "vitest";
import { blanching, boilBeforeTastingMin, coolingStages, keepsHow, preservationTables, testedProcess } from "#shared/engines/preservation/index.ts";
import type { Canner, Jar } from "#shared/engines/preservation/index.ts";
import { readCases, seedRows, seedSources } from "#tests/support/reference-rows.ts";

const tables = preservationTables(seedRows("preservation"), seedSources("preservation"));
/** 1 ft = 0.3048 m exactly (NIST Special Publication 811). */
const metres = (ft: number): number => ft * 0.3048;

interface GuideLine {
  readonly food: string;
  readonly boilingWater: string | null;
  readonly pressure: string | null;
  readonly headspaceIn: number | null;
  readonly guide: string;
  readonly page: string;
}

interface Expected {
  readonly pack: "hot" | "raw";
  readonly jar: Jar;
  readonly canner: Canner;
  readonly minutes: number | undefined;
  /** Upper edge in feet (null = no end), minutes, psi. */
  readonly bands: readonly (readonly [number | null, number, number | null])[];
}

const JARS: Record<string, Jar> = { pt: "pint", qt: "quart", "½pt": "half-pint", "½gal": "half-gallon", "12oz": "12oz" };
const BOILING_EDGES: Record<number, readonly (number | null)[]> = { 3: [1000, 6000, null], 4: [1000, 3000, 6000, null] };
const DIAL: Record<string, readonly number[]> = { "6": [6, 7, 8, 9], "11": [11, 12, 13, 14] };

/** "hot and raw pt+qt" → pack and jar, each with each. */
function jarsOf(words: string): { pack: "hot" | "raw"; jar: Jar }[] {
  const [, packs, jars] = /^((?:hot|raw)(?: and raw)?) (.+)$/.exec(words) ?? [];
  return (packs ?? "").split(" and ").flatMap((pack) => (jars ?? "").split("+").map((jar) => ({ pack: pack as "hot" | "raw", jar: JARS[jar] as Jar })));
}

function expectedOf(line: GuideLine): Expected[] {
  const boiling = (line.boilingWater ?? "").split("; ").filter(Boolean).flatMap((part) => {
    const [words = "", times = ""] = part.split(": ");
    const minutes = times.split("/").map(Number);
    return jarsOf(words).map((j) => ({ ...j, canner: "boiling-water" as const, minutes: undefined, bands: (BOILING_EDGES[minutes.length] ?? []).map((edge, i) => [edge, minutes[i] as number, null] as const) }));
  });
  const pressure = (line.pressure ?? "").split("; ").filter(Boolean).flatMap((part) => {
    const [, words = "", time, dial = "", low, high] = /^(.+): (\d+) min \(dial (\d+|none)(?: series)?, weighted (\d+)\/(\d+|no)\)$/.exec(part) ?? [];
    const minutes = Number(time);
    return jarsOf(words).flatMap((j) => [
      ...(dial === "none" ? [] : [{ ...j, canner: "pressure-dial" as const, minutes, bands: [2000, 4000, 6000, 8000].map((edge, i) => [edge, minutes, DIAL[dial]?.[i] as number] as const) }]),
      { ...j, canner: "pressure-weighted" as const, minutes, bands: [[1000, minutes, Number(low)] as const, ...(high === "no" ? [] : [[null, minutes, Number(high)] as const])] },
    ]);
  });
  return [...boiling, ...pressure];
}

describe("tested processes at the edges of their altitude bands", () => {
  const lines = readCases<GuideLine>("preservation/guide-tables.json");
  const foodOf = new Map(tables.canning.map((row) => [row.title, row.food]));
  let rows = 0;
  for (const line of lines) {
    it(`${line.food} (Guide ${line.guide}, ${line.page})`, () => {
      const food = foodOf.get(line.food) as string;
      expect(food).toBeDefined();
      for (const { pack, jar, canner, minutes, bands } of expectedOf(line)) {
        rows++;
        const at = (ft: number) => {
          const found = testedProcess({ food, pack, jar, canner, altitudeM: metres(ft), ...(minutes === undefined ? {} : { minutes }) }, tables);
          if (found.value) expect(found.value.row.headspaceIn).toBe(line.headspaceIn);
          else expect(found.notes.join()).toMatch(/no tested figure above/);
          return found.value && [found.value.band.minutes, found.value.band.psi];
        };
        let from = 0;
        for (const [edge, min, psi] of bands) {
          expect(at(from), `${pack} ${jar} ${canner} at ${from} ft`).toEqual([min, psi]);
          expect(at(edge ?? 15_000), `${pack} ${jar} ${canner} at ${edge} ft`).toEqual([min, psi]);
          if (edge !== null) from = edge + 1;
        }
        const last = bands[bands.length - 1]?.[0];
        if (last !== null && last !== undefined) expect(at(last + 1), `${pack} ${jar} ${canner} above ${last} ft`).toBeNull();
      }
    });
  }
  it("reads every row of the tables and no other", () => {
    expect(lines.length).toBe(88);
    expect(rows).toBe(tables.canning.length);
  });
});

interface Check {
  readonly id: string;
  readonly check: string;
  readonly expected: number | null;
  readonly unit: string;
  readonly source: string;
  readonly ask: {
    readonly process?: { food: string; pack: "hot" | "raw"; jar: Jar; canner: Canner; altitudeFt: number; minutes?: number };
    readonly acid?: { food: string; jar: Jar; holds: string };
    readonly quantity?: string;
    readonly rule?: string;
    readonly ruleText?: string;
    readonly jar?: Jar;
    readonly blanching?: { crop: string; cut: string };
    readonly keeps?: { crop?: string; place?: "fridge" | "counter"; key?: string };
    readonly cooling?: number;
    readonly dataset?: string;
    readonly tastingFt?: number;
    readonly edge?: "low" | "high";
    readonly holds?: string;
  };
}

/** What the tables answer to a check, in the check's unit. */
function answerOf({ ask, unit }: Check): number | string | null | undefined {
  if (ask.process) {
    const { altitudeFt, ...question } = ask.process;
    const found = testedProcess({ ...question, altitudeM: metres(altitudeFt) }, tables).value;
    return found && (unit === "psi" ? found.band.psi : found.band.minutes);
  }
  if (ask.quantity) return tables.quantities.find((row) => row.key === ask.quantity)?.lb[1];
  if (ask.rule ?? ask.ruleText) return tables.rules.find((row) => row.key === (ask.rule ?? ask.ruleText))?.value;
  if (ask.jar) return tables.jars.find((row) => row.jar === ask.jar)?.takesTimeOf;
  if (ask.blanching) return blanching(ask.blanching.crop, tables).value.find((row) => row.cut === ask.blanching?.cut)?.waterMin?.[0];
  if (ask.tastingFt !== undefined) return boilBeforeTastingMin(metres(ask.tastingFt), tables);
  if (ask.dataset) return Number(/(\d+) products/.exec(tables.publications.get(ask.dataset) ?? "")?.[1]);
  if (ask.cooling !== undefined) return (coolingStages(tables)[ask.cooling]?.withinMin ?? NaN) / 60;
  if (ask.keeps) {
    const { crop, place, key } = ask.keeps;
    const row = key === undefined ? keepsHow(crop as string, place as "fridge", tables).value : tables.keeping.find((k) => k.key === key);
    return row?.days?.[ask.edge === "low" ? 0 : 1];
  }
  const acid = tables.canning.find((row) => row.food === ask.acid?.food && row.jar === ask.acid?.jar)?.acid;
  return acid?.includes(ask.acid?.holds ?? "?") ? Number(({ "2": "2", "¼": "0.25" } as Record<string, string>)[ask.acid?.holds[0] ?? ""]) : acid;
}

const DAYS: Record<string, number> = { days: 1, weeks: 7, months: 30 };

describe("published check values", () => {
  const checks = readCases<Check>("preservation/check-values.json");
  it("are all seventy-eight, each once", () => expect(checks.map(({ id }) => id)).toEqual(Array.from({ length: 78 }, (_, i) => `CK${String(i + 1).padStart(2, "0")}`)));
  it("of tasting rises by a minute for every 1,000 ft begun, from 1,000 ft on", () =>
    expect([0, 999, 1000, 1001, 3999, 4000, 4001].map((ft) => boilBeforeTastingMin(metres(ft), tables))).toEqual([10, 10, 11, 12, 14, 14, 15]));
  it.each(checks.map((check) => [check.id, check.check, check] as const))("%s %s", (_, __, check) => {
    const expected = check.ask.jar ? String(check.expected).replace(/ jar$/, "") : check.ask.keeps ? (check.expected ?? NaN) * (DAYS[check.unit] ?? NaN) : check.expected;
    expect(answerOf(check), check.source).toEqual(expected);
    if (check.ask.ruleText) expect(tables.rules.find((row) => row.key === check.ask.ruleText)?.text).toContain(check.ask.holds);
  });
});
