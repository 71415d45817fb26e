/** In the worker thread: plans one season at a time. The solver blocks this thread; better plans are told as they are found, and a cancelled plan ends between two pieces of work. */
import { parentPort } from "node:worker_threads";
import { planSeason, type Season, type SeasonAnswer, type SeasonPlan } from "#shared/engines/season-plan/index.ts";
import { highsSolver } from "./season-desk-solver.ts";

export interface SeasonJob {
  readonly season: Season;
  readonly allowance: number;
  readonly secondsPerLevel: number;
  /** One shared number; anything but 0 means: end with the best so far. */
  readonly stop: SharedArrayBuffer;
}

export type SeasonDeskAnswer =
  | { readonly better: { readonly plan: SeasonPlan; readonly wasteGrams: number } }
  | { readonly answer: SeasonAnswer }
  | { readonly fault: string };

parentPort?.on("message", (job: SeasonJob) => void work(job));

async function work({ season, allowance, secondsPerLevel, stop }: SeasonJob): Promise<void> {
  const flag = new Int32Array(stop);
  try {
    const answer = planSeason(season, await highsSolver(), {
      allowance,
      secondsPerLevel,
      stop: () => Atomics.load(flag, 0) !== 0,
      onBetter: ({ plan, verdict }) => tell({ better: { plan, wasteGrams: verdict.score.wasteGrams } }),
    });
    tell({ answer });
  } catch (error) {
    tell({ fault: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
}

function tell(answer: SeasonDeskAnswer): void {
  parentPort?.postMessage(answer);
}
