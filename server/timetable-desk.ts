/** In the worker thread: works out one thing about a cook day after another. */
import { parentPort, workerData } from "node:worker_threads";
import { cookDayTasks, type CookDayTasks } from "#shared/planning/cook-day-tasks.ts";
import type { PreservationTables } from "#shared/engines/preservation/index.ts";

export interface DeskData {
  readonly entry: string;
  readonly tables: PreservationTables;
}

export interface DeskQuestion {
  readonly task: keyof CookDayTasks;
  readonly ask: unknown;
}

export type DeskAnswer = { readonly found: unknown } | { readonly fault: string };

const tasks = cookDayTasks((workerData as DeskData).tables);

parentPort?.on("message", ({ task, ask }: DeskQuestion) => {
  let answer: DeskAnswer;
  try {
    // whoever asks has said task and question in one type (timetables.ts)
    answer = { found: tasks[task](ask as never) };
  } catch (error) {
    answer = { fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
  parentPort?.postMessage(answer);
});
