/** The worked seasons of tests/cases/season: their values were proved by HiGHS 1.15.3 and, on a separately written lot-by-lot model, by CBC 2.10.8. */
import { readdirSync, readFileSync } from "node:fs";
import { basename } from "node:path";
import { readSeason, type Level, type Score, type Season, type SeasonPlan } from "#shared/engines/season-plan/index.ts";

export interface WorkedSeason {
  readonly name: string;
  readonly json: Readonly<Record<string, unknown>>;
  readonly season: Season;
  readonly known: {
    readonly levels?: readonly { readonly level: Level; readonly value: number; readonly proven: boolean }[];
    readonly rule: Score;
    readonly plan?: SeasonPlan;
    readonly reference?: { readonly score: Score; readonly plan: SeasonPlan };
  };
}

const CASES = new URL("../cases/season/", import.meta.url).pathname;

export function workedSeasons(): WorkedSeason[] {
  return readdirSync(CASES).sort().map((file) => {
    const json = JSON.parse(readFileSync(CASES + file, "utf8")) as Record<string, unknown>;
    return { name: basename(file, ".json"), json, season: read(json), known: json["known"] as WorkedSeason["known"] };
  });
}

export function workedSeason(name: string): WorkedSeason {
  return workedSeasons().find((one) => one.name === name) as WorkedSeason;
}

export function read(json: unknown): Season {
  const result = readSeason(json);
  if (!result.ok) throw new Error(JSON.stringify(result.problem.fields));
  return result.value;
}
