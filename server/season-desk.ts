/**
 * In the worker thread: plans one season at a time. The solver blocks this thread; better plans are told as they are found, and the solver
 * asks now and then whether the plan was cancelled.
 */
import { setFlagsFromString } from "node:v8";
import { parentPort } from "node:worker_threads";
import { planSeason, type Progress, type Season, type SeasonAnswer, type SeasonPlan } from "#shared/engines/season-plan/index.ts";
import { highsSolver } from "./season-desk-solver.ts";

export interface SeasonJob {
  readonly season: Season;
  readonly allowance: number;
  readonly secondsPerLevel: number;
  readonly stepsPerLevel?: number;
  readonly secondsInAll?: number;
  /** One shared number; anything but 0 means: end with the best so far. */
  readonly stop: SharedArrayBuffer;
}

export type SeasonDeskAnswer =
  | { readonly better: { readonly plan: SeasonPlan; readonly wasteGrams: number } }
  | { readonly progress: Progress }
  | { readonly answer: SeasonAnswer }
  | { readonly fault: string };

// compiling all of the solver for speed costs seconds at its start; only what runs hot for long earns them
setFlagsFromString("--wasm-tiering-budget=300000000");
const solver = highsSolver();

parentPort?.on("message", (job: SeasonJob) => void work(job));

async function work({ season, stop, ...effort }: SeasonJob): Promise<void> {
  const flag = new Int32Array(stop);
  try {
    const answer = planSeason(season, await solver, {
      ...effort,
      stop: () => Atomics.load(flag, 0) !== 0,
      onBetter: ({ plan, verdict }) => tell({ better: { plan, wasteGrams: verdict.score.wasteGrams } }),
      onProgress: (progress) => tell({ progress }),
    });
    tell({ answer });
  } catch (error) {
    tell({ fault: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
}

function tell(answer: SeasonDeskAnswer): void {
  parentPort?.postMessage(answer);
}
