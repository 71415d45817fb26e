/** Reads worked cook days (tests/cases/cook-day, or another folder in the same form) as the scheduler's input. */
import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import type { CookDayInput, DayDish, Oven } from "#shared/engines/cook-day/index.ts";

export interface KnownDay {
  readonly status: "optimal" | "infeasible";
  readonly endMin?: number;
  readonly longestStandMinAtThatEnd?: number;
  readonly heatUpsAtThat?: number;
  readonly handsOnMin?: number;
  readonly oneAfterAnotherMin?: number;
  readonly steps?: number;
  readonly onePlan?: Readonly<Record<string, number>>;
}

export interface WorkedDay {
  readonly id: string;
  readonly day: CookDayInput;
  readonly known: KnownDay;
}

interface File {
  readonly id: string;
  readonly kitchen: { cooks: number; oven?: Oven; ovens?: Oven[]; burners: number; pots: number; sinks: number };
  readonly dishes: readonly (Omit<DayDish, "batches" | "holds" | "limits"> & Partial<DayDish>)[];
  readonly endByMin: number | null;
  readonly unavailable: CookDayInput["unavailable"];
  readonly known: KnownDay;
}

export const CASES = new URL("../cases/cook-day", import.meta.url).pathname;

export function readCookDay(file: string): WorkedDay {
  const { id, kitchen, dishes, endByMin, unavailable, known } = JSON.parse(readFileSync(file, "utf8")) as File;
  const { oven, ovens, ...rest } = kitchen;
  const day: CookDayInput = {
    kitchen: { ...rest, ovens: ovens ?? (oven ? [oven] : []) },
    dishes: dishes.map((dish) => ({ ...dish, batches: dish.batches ?? 1, holds: dish.holds ?? [], limits: dish.limits ?? [] })),
    endByMin: endByMin ?? null,
    unavailable: unavailable ?? [],
  };
  return { id: id ?? basename(file, ".json"), day, known };
}

export function readCookDays(folder: string = CASES): WorkedDay[] {
  const files = readdirSync(folder).filter((name) => name.endsWith(".json"));
  return files.sort().map((name) => readCookDay(join(folder, name)));
}
