/** The columns of a season's programme and where they stand. Kilograms inside, so that rows of grams do not stand beside rows of 0 and 1. */
import { refusalOf } from "./legal.ts";
import { countsSessions, mostBatches, onHandAtMost } from "./most-batches.ts";
import { ProgrammeWriter } from "./programme.ts";
import type { Season } from "./types.ts";

export const KG = 1000;

/** Batches of a method in a week, and the flag of its session where that counts (−1: none). */
export interface BatchColumns {
  readonly n: number;
  readonly y: number;
  readonly most: number;
}

export interface ProduceColumns {
  readonly eaten: number;
  readonly given: number;
  readonly lost: number;
  readonly onHand: number;
}

export interface StoreColumns {
  readonly drawn: number;
  readonly inStore: number;
}

export interface CourseColumns {
  /** By method, then week; in a season of one course the booked ones themselves. */
  readonly made: readonly (readonly (BatchColumns | null)[])[];
  /** By crop, then week; null where nothing can be on hand. */
  readonly produce: readonly (readonly (ProduceColumns | null)[])[];
  /** By method, then week; null for a method whose store neither limits nor counts. */
  readonly store: readonly (readonly StoreColumns[] | null)[];
}

export interface SeasonColumns {
  readonly booked: readonly (readonly (BatchColumns | null)[])[];
  readonly courses: readonly CourseColumns[];
}

export function writeColumns(season: Season, writer: ProgrammeWriter): SeasonColumns {
  const several = season.scenarios.length > 1;
  const legal = season.methods.map((method) => refusalOf(method, season.equipment) === null);
  const weeks = Array.from({ length: season.weeks }, (_, t) => t);
  const most = season.methods.map((method, m) => weeks.map((t) => season.scenarios.map((_, s) => (legal[m] ? mostBatches(season, method, s, t) : 0))));
  const agreed = (m: number, t: number): number => season.agreed.find(({ method, week }) => method === season.methods[m]?.id && week === t)?.batches ?? 0;
  const batches = (m: number, t: number, top: number, fixed: boolean): BatchColumns | null => {
    const method = season.methods[m];
    // a frozen week keeps its column even where nothing can fill it, so that a week that cannot be shows
    const exact = fixed ? agreed(m, t) : 0;
    if (!method || (top <= 0 && exact === 0)) return null;
    const upper = fixed ? exact : top;
    const n = writer.column(exact, upper, true);
    return { n, y: countsSessions(method, season) ? writer.column(fixed ? Math.min(1, exact) : 0, Math.min(1, upper), true) : -1, most: upper };
  };
  const booked = season.methods.map((method, m) => weeks.map((t) => (several && method.recourse ? null : batches(m, t, Math.max(...(most[m]?.[t] ?? [0])), t < season.frozenWeeks))));
  const courses = season.scenarios.map((_, s): CourseColumns => ({
    made: several ? season.methods.map((_, m) => weeks.map((t) => batches(m, t, most[m]?.[t]?.[s] ?? 0, false))) : booked,
    produce: season.crops.map((crop) =>
      weeks.map((t) => {
        const top = onHandAtMost(crop, s, t) / KG;
        if (top <= 0) return null;
        const stays = (onHandAtMost(crop, s, t) - (t - crop.keepWeeks + 1 >= 0 ? (crop.harvestGrams[s]?.[t - crop.keepWeeks + 1] ?? 0) : 0)) / KG;
        return {
          eaten: writer.column(0, Math.min(top, (crop.freshGrams[t] ?? 0) / KG)),
          given: writer.column(0, Math.min(top, (crop.giveGrams[t] ?? 0) / KG)),
          lost: writer.column(0, top),
          onHand: writer.column(0, Math.max(0, stays)),
        };
      }),
    ),
    store: season.methods.map((method, m) => {
      const madeAtAll = (most[m] ?? []).some((byScenario) => (byScenario[s] ?? 0) > 0);
      if (!storeCounts(season, m) || (!madeAtAll && method.opening === 0)) return null;
      return weeks.map((t) => ({ drawn: writer.column(0, method.eatPortions[t] ?? 0), inStore: writer.column(0, Infinity) }));
    }),
  }));
  return { booked, courses };
}

/** What lies in store matters where it ties something up, spoils within the season, or is asked for. */
function storeCounts(season: Season, m: number): boolean {
  const method = season.methods[m];
  if (!method || (method.keptIn === "none" && method.opening === 0)) return false;
  const held = season.resources.some(({ id, kind }) => kind === "held" && (method.perBatch[id] ?? 0) > 0);
  const spoils = method.keepWeeks !== null && method.keepWeeks < season.weeks;
  return held || spoils || season.targets.some(({ methods }) => methods.includes(method.id));
}
