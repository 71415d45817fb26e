/** What was seen and picked by the day asked about; for what stands for years, in the season asked about. */
import type { DayNumber } from "../../kernel/local-date.ts";
import type { Stage } from "../../kernel/way.ts";
import { monthStart, seasonOf } from "./calendar-days.ts";
import type { ForecastQuestion } from "./types.ts";

export interface KnownFacts {
  /** First and one past the last day of the season of an established planting; null for what is sown. */
  readonly season: { readonly name: number; readonly from: DayNumber; readonly until: DayNumber } | null;
  readonly seen: ReadonlyMap<Stage, DayNumber>;
  readonly picks: readonly { readonly day: DayNumber; readonly grams: number }[];
  readonly pickedGrams: number;
  /** Sighting or first logged pick, whichever is earlier. */
  readonly firstPick: DayNumber | null;
  readonly lastPick: DayNumber | null;
  readonly finishedOn: DayNumber | null;
  /** Last day on which it was seen alive. */
  readonly aliveOn: DayNumber | null;
}

export function knownFacts({ planting, asOf, southern }: ForecastQuestion): KnownFacts {
  const season = standsForYears(planting) ? seasonSpan(planting.season ?? seasonOf(asOf, southern), southern) : null;
  const counts = (day: DayNumber): boolean => day <= asOf && (season === null || (day >= season.from && day < season.until));
  const seen = new Map<Stage, DayNumber>();
  for (const { stage, day } of planting.sightings) if (counts(day) && day < (seen.get(stage) ?? Infinity)) seen.set(stage, day);
  const picks = planting.picks.filter((pick) => counts(pick.day)).sort((p, q) => p.day - q.day);
  const pickDays = picks.map((pick) => pick.day);
  const firsts = [...pickDays.slice(0, 1), ...(seen.has("first-pick") ? [seen.get("first-pick") as DayNumber] : [])];
  const alive = [...pickDays, ...[...seen].filter(([stage]) => stage !== "finished").map(([, day]) => day)];
  return {
    season,
    seen,
    picks,
    pickedGrams: picks.reduce((sum, pick) => sum + pick.grams, 0),
    firstPick: firsts.length > 0 ? Math.min(...firsts) : null,
    lastPick: pickDays[pickDays.length - 1] ?? null,
    finishedOn: seen.get("finished") ?? null,
    aliveOn: alive.length > 0 ? Math.max(...alive) : null,
  };
}

/** A perennial counts as established however it came into the ground. */
export function standsForYears(planting: ForecastQuestion["planting"]): boolean {
  return planting.crop.perennial || planting.method === "established";
}

function seasonSpan(name: number, southern: boolean): { name: number; from: DayNumber; until: DayNumber } {
  return { name, from: monthStart(name, 1, southern), until: monthStart(name + 1, 1, southern) };
}
