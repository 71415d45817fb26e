/**
 * Readers of two published project formats into the lag form: `.sm` (single-mode PSPLIB: Kolisch, Sprecher, EJOR 96 (1997)
 * 205–216) and `.sch` (ProGen/max: Schwindt). Units are those of the file.
 */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import type { Capacity, Lag, Project } from "#shared/engines/cook-day/project.ts";

/** A published instance with what is published of its end; bounds are null where there is no schedule. */
export interface Instance {
  readonly set: string;
  readonly file: string;
  readonly status: "optimal" | "infeasible" | "open";
  readonly lowerBound: number | null;
  readonly upperBound: number | null;
  readonly project: Project;
}

/** Where the published instances stand beside the project, when they do. */
export const INSTANCES = new URL("../../../shared/reference/psplib", import.meta.url).pathname;

/** The instances that `optima.csv` names and that are there; file endings may be in either case. */
export function readInstances(folder: string): Instance[] {
  const rows = parse<Record<string, string>>(readFileSync(join(folder, "optima.csv"), "utf8"), { columns: true, skip_empty_lines: true });
  return rows.flatMap((row): Instance[] => {
    const { set = "", file = "", status = "", lowerBound = "", upperBound = "" } = row;
    const stem = file.replace(/\.[^.]*$/, "");
    const path = [file, `${stem}.sm`, `${stem}.SM`, `${stem}.sch`, `${stem}.SCH`].map((name) => join(folder, set, name)).find((name) => existsSync(name));
    if (path === undefined) return [];
    const bound = (text: string): number | null => (text === "" ? null : Number(text));
    return [{ set, file, status: status as Instance["status"], lowerBound: bound(lowerBound), upperBound: bound(upperBound), project: readProject(readFileSync(path, "utf8")) }];
  });
}

/** Either format, told apart by its first line. */
export function readProject(text: string): Project {
  return text.trimStart().startsWith("*") ? readSm(text) : readSch(text);
}

function readSm(text: string): Project {
  const rows = text.split(/\r?\n/);
  const after = (title: string, skip: number): number[][] => {
    const from = rows.findIndex((row) => row.startsWith(title)) + skip;
    const to = rows.findIndex((row, i) => i >= from && row.startsWith("*"));
    return rows.slice(from, to).map(numbers);
  };
  const lengths = after("REQUESTS/DURATIONS", 3).map((row) => row[2] as number);
  const demands = after("REQUESTS/DURATIONS", 3).map((row) => row.slice(3));
  const lags = after("PRECEDENCE RELATIONS", 2).flatMap((row) =>
    row.slice(3).map((successor): Lag => ({ from: (row[0] as number) - 1, to: successor - 1, min: lengths[(row[0] as number) - 1] as number, why: "" })),
  );
  return project(lengths, demands, after("RESOURCEAVAILABILITIES", 2)[0] as number[], lags);
}

function readSch(text: string): Project {
  const rows = text.split(/\r?\n/).filter((row) => row.trim() !== "");
  const jobs = (numbers(rows[0] as string)[0] as number) + 2;
  const lags = rows.slice(1, jobs + 1).flatMap((row) => {
    const [job, , count, ...rest] = numbers(row.replaceAll(/[[\]]/g, " ")) as [number, number, number, ...number[]];
    return rest.slice(0, count).map((successor, k): Lag => ({ from: job, to: successor, min: rest[count + k] as number, why: "" }));
  });
  const table = rows.slice(jobs + 1, 2 * jobs + 1).map(numbers);
  return project(table.map((row) => row[2] as number), table.map((row) => row.slice(3)), numbers(rows[2 * jobs + 1] as string), lags);
}

/** Job 0 is the beginning and the last one the end, in both formats. */
function project(lengths: number[], demands: number[][], limits: number[], lags: Lag[]): Project {
  const end = lengths.length - 1;
  const all = lengths.map((length, i): Lag => ({ from: i, to: end, min: length, why: "" }));
  const begun = lengths.map((_, i): Lag => ({ from: 0, to: i, min: 0, why: "" }));
  const capacities = limits.map((limit, r): Capacity => ({
    name: `resource ${r + 1}`,
    limit,
    uses: lengths.flatMap((length, i) => ((demands[i]?.[r] ?? 0) > 0 && length > 0 ? [{ from: i, head: 0, to: i, tail: length, amount: demands[i]?.[r] as number, option: -1 }] : [])),
  }));
  return { starts: lengths.length, end, lengths, lags: [...lags, ...all, ...begun].filter((lag) => lag.from !== lag.to), capacities, pairs: [], choices: [] };
}

const numbers = (row: string): number[] => row.trim().split(/\s+/).map(Number);
