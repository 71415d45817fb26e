/**
 * Seasons are planned beside the service. Each household has a queue of its own: its second request waits for its first, those of others
 * do not, as long as a desk is free. At most two desks work at once, so that the pages keep a core.
 */
import { Worker } from "node:worker_threads";
import { planByRule, type Season, type SeasonAnswer, type SeasonPlan } from "#shared/engines/season-plan/index.ts";
import { Refusal } from "./problems.ts";
import type { SeasonDeskAnswer, SeasonJob } from "./season-desk.ts";

const BOOT = new URL("./boot.mjs", import.meta.url);
const DESK = new URL("./season-desk.ts", import.meta.url).href;
const MOST_DESKS = 2;
const MOST_WAITING = 3;

export interface SeasonRequest {
  readonly allowance: number;
  readonly secondsPerLevel: number;
  /** Told whenever a better plan is there. */
  readonly onBetter?: (plan: SeasonPlan, wasteGrams: number) => void;
}

export interface SeasonWork {
  /** The rule's plan, there at once. */
  readonly first: SeasonPlan;
  readonly answer: Promise<SeasonAnswer>;
  /** Ends with the best so far; what still waits is not begun. */
  cancel(): void;
}

export interface SeasonDesks {
  plan(household: string, season: Season, request: SeasonRequest): SeasonWork;
  /** Being planned or waiting, of one household. */
  waiting(household: string): number;
  close(): Promise<void>;
}

export function seasonDesks(): SeasonDesks {
  const queues = new Map<string, { last: Promise<unknown>; waiting: number }>();
  const workers = new Set<Worker>();
  const free: (() => void)[] = [];
  let busy = 0;

  const desk = async (): Promise<void> => {
    if (busy >= MOST_DESKS) await new Promise<void>((resolve) => free.push(resolve));
    else busy += 1;
  };
  const leave = (): void => {
    const next = free.shift();
    if (next) next();
    else busy -= 1;
  };
  const work = async (job: SeasonJob, onBetter: SeasonRequest["onBetter"]): Promise<SeasonAnswer> => {
    await desk();
    if (new Int32Array(job.stop)[0] !== 0) {
      leave();
      throw CANCELLED;
    }
    const worker = new Worker(BOOT, { workerData: { entry: DESK } });
    workers.add(worker);
    try {
      return await asked(worker, job, onBetter);
    } finally {
      workers.delete(worker);
      await worker.terminate();
      leave();
    }
  };

  return {
    plan(household, season, { allowance, secondsPerLevel, onBetter }) {
      const queue = queues.get(household) ?? { last: Promise.resolve(), waiting: 0 };
      if (queue.waiting >= MOST_WAITING) throw new Refusal({ code: "unavailable", detail: "Several plans of this season are being worked out already. Wait for one of them." });
      queue.waiting += 1;
      queues.set(household, queue);
      const stop = new SharedArrayBuffer(4);
      const answer = queue.last
        .then(() => work({ season, allowance, secondsPerLevel, stop }, onBetter))
        .finally(() => {
          queue.waiting -= 1;
          if (queue.waiting === 0) queues.delete(household);
        });
      // the next of this household comes after this one, whatever became of it
      queue.last = answer.catch(() => undefined);
      return { first: planByRule(season), answer, cancel: () => void Atomics.store(new Int32Array(stop), 0, 1) };
    },
    waiting: (household) => queues.get(household)?.waiting ?? 0,
    close: async () => void (await Promise.all([...workers].map((worker) => worker.terminate()))),
  };
}

function asked(worker: Worker, job: SeasonJob, onBetter: SeasonRequest["onBetter"]): Promise<SeasonAnswer> {
  return new Promise((resolve, reject) => {
    worker.on("message", (told: SeasonDeskAnswer) => {
      if ("better" in told) onBetter?.(told.better.plan, told.better.wasteGrams);
      else if ("answer" in told) resolve(told.answer);
      else reject(new Error(told.fault));
    });
    worker.on("error", reject);
    worker.on("exit", () => reject(STOPPING));
    worker.postMessage(job);
  });
}

const CANCELLED = new Refusal({ code: "conflict", detail: "This plan was cancelled before it was begun." });
const STOPPING = new Refusal({ code: "unavailable", detail: "The service is stopping." });
