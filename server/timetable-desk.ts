/** In the worker thread: works out one timetable after another. */
import { parentPort, workerData } from "node:worker_threads";
import { proposeCookDay, type CookDayProposal } from "#shared/planning/cook-day-proposal.ts";
import type { CookDayFacts } from "#shared/planning/facts.ts";
import type { PreservationTables } from "#shared/engines/preservation/index.ts";

export interface DeskData {
  readonly entry: string;
  readonly tables: PreservationTables;
}

export type DeskAnswer = { readonly plan: CookDayProposal } | { readonly fault: string };

const { tables } = workerData as DeskData;

parentPort?.on("message", (day: CookDayFacts) => {
  let answer: DeskAnswer;
  try {
    answer = { plan: proposeCookDay(day, tables) };
  } catch (error) {
    answer = { fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
  parentPort?.postMessage(answer);
});
