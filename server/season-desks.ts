/**
 * Seasons are planned beside the service. Each household has a queue of its own: its second request waits for its first, those of others
 * do not, as long as a desk is free. At most two desks work at once, so that the pages keep a core.
 */
import { Worker } from "node:worker_threads";
import { answerSoFar, planByRule, type Progress, type Season, type SeasonAnswer, type SeasonPlan } from "#shared/engines/season-plan/index.ts";
import { Refusal } from "./problems.ts";
import type { SeasonDeskAnswer, SeasonJob } from "./season-desk.ts";

const BOOT = new URL("./boot.mjs", import.meta.url);
const DESK = new URL("./season-desk.ts", import.meta.url).href;
const MOST_DESKS = 2;
const MOST_WAITING = 3;
/** A cancelled run ends itself at the solver's next step; one that does not by then is ended with its thread. */
const GRACE_MS = 5000;

export interface SeasonRequest {
  readonly allowance: number;
  readonly secondsPerLevel: number;
  /** As in `SolveOptions`. */
  readonly stepsPerLevel?: number;
  readonly secondsInAll?: number;
  /** Told whenever a better plan is there. */
  readonly onBetter?: (plan: SeasonPlan, wasteGrams: number) => void;
  readonly onProgress?: (progress: Progress) => void;
}

export interface SeasonWork {
  /** The rule's plan, there at once. */
  readonly first: SeasonPlan;
  readonly answer: Promise<SeasonAnswer>;
  /** Ends at once with the best so far, also within a run of the solver; what still waits is not begun. */
  cancel(): void;
}

export interface SeasonDesks {
  plan(household: string, season: Season, request: SeasonRequest): SeasonWork;
  /** Being planned or waiting, of one household. */
  waiting(household: string): number;
  close(): Promise<void>;
}

/** `graceMs`: how long a cancelled run may take to end by itself. */
export function seasonDesks({ graceMs = GRACE_MS }: { readonly graceMs?: number } = {}): SeasonDesks {
  const queues = new Map<string, { last: Promise<unknown>; waiting: number }>();
  const workers = new Set<Worker>();
  /** Their solver is loaded and warm. */
  const idle: Worker[] = [];
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
  const opened = (): Worker => {
    const worker = new Worker(BOOT, { workerData: { entry: DESK } });
    workers.add(worker);
    worker.once("exit", () => {
      workers.delete(worker);
      // one that ended while it had nothing to do is not asked again
      const at = idle.indexOf(worker);
      if (at >= 0) idle.splice(at, 1);
    });
    worker.on("error", () => undefined);
    return worker;
  };
  const work = async (job: SeasonJob, request: SeasonRequest, onCancel: (cancelled: () => void) => void): Promise<SeasonAnswer> => {
    await desk();
    try {
      if (new Int32Array(job.stop)[0] !== 0) throw CANCELLED;
      const worker = idle.pop() ?? opened();
      worker.ref();
      try {
        const answer = await asked(worker, job, request, (cancelled) => onCancel(() => void setTimeout(cancelled, graceMs).unref()));
        worker.unref();
        idle.push(worker);
        return answer;
      } catch (fault) {
        await worker.terminate();
        if (fault instanceof EndedByForce) return fault.answer;
        throw fault;
      }
    } finally {
      leave();
    }
  };

  return {
    plan(household, season, request) {
      const queue = queues.get(household) ?? { last: Promise.resolve(), waiting: 0 };
      if (queue.waiting >= MOST_WAITING) throw new Refusal({ code: "unavailable", detail: "Several plans of this season are being worked out already. Wait for one of them." });
      queue.waiting += 1;
      queues.set(household, queue);
      const stop = new SharedArrayBuffer(4);
      const { allowance, secondsPerLevel, stepsPerLevel, secondsInAll } = request;
      const job: SeasonJob = { season, allowance, secondsPerLevel, stop, ...(stepsPerLevel === undefined ? {} : { stepsPerLevel }), ...(secondsInAll === undefined ? {} : { secondsInAll }) };
      let cancelled = (): void => undefined;
      const answer = queue.last
        .then(() => work(job, request, (tell) => (cancelled = tell)))
        .finally(() => {
          queue.waiting -= 1;
          if (queue.waiting === 0) queues.delete(household);
        });
      // the next of this household comes after this one, whatever became of it
      queue.last = answer.catch(() => undefined);
      const cancel = (): void => {
        Atomics.store(new Int32Array(stop), 0, 1);
        cancelled();
      };
      return { first: planByRule(season), answer, cancel };
    },
    waiting: (household) => queues.get(household)?.waiting ?? 0,
    close: async () => void (await Promise.all([...workers].map((worker) => worker.terminate()))),
  };
}

function asked(worker: Worker, job: SeasonJob, request: SeasonRequest, onCancel: (cancelled: () => void) => void): Promise<SeasonAnswer> {
  return new Promise<SeasonAnswer>((resolve, reject) => {
    let soFar = planByRule(job.season);
    const told = (message: SeasonDeskAnswer): void => {
      if ("better" in message) {
        soFar = message.better.plan;
        request.onBetter?.(soFar, message.better.wasteGrams);
      } else if ("progress" in message) request.onProgress?.(message.progress);
      else if ("answer" in message) done(() => resolve(message.answer));
      else done(() => reject(new Error(message.fault)));
    };
    const failed = (fault: Error): void => done(() => reject(fault));
    const gone = (): void => done(() => reject(STOPPING));
    const done = (end: () => void): void => {
      worker.off("message", told).off("error", failed).off("exit", gone);
      end();
    };
    worker.on("message", told).on("error", failed).on("exit", gone);
    onCancel(() => done(() => reject(new EndedByForce(answerSoFar(job.season, soFar)))));
    worker.postMessage(job);
  });
}

/** Carries what there was when a thread had to be ended. */
class EndedByForce extends Error {
  readonly answer: SeasonAnswer;
  constructor(answer: SeasonAnswer) {
    super("ended with its thread");
    this.answer = answer;
  }
}

const CANCELLED = new Refusal({ code: "conflict", detail: "This plan was cancelled before it was begun." });
const STOPPING = new Refusal({ code: "unavailable", detail: "The service is stopping." });
