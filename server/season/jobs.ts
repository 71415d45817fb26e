/** Plans under way: each begins with the simple rule's plan, is bettered at a desk beside the service, and can be asked for, waited for and ended at any time. */
import { checkSeasonPlan, type Season, type SeasonAnswer, type SeasonPlan } from "#shared/engines/season-plan/index.ts";
import type { Stamps } from "../facts/house.ts";
import type { StandingSeasons } from "../facts/standing-season.ts";
import type { SeasonFacts } from "#shared/planning/season-facts.ts";
import type { SeasonInstance } from "#shared/planning/season-instance.ts";
import { seasonAnswer, type WorkedOut } from "#shared/planning/season-answer.ts";
import type { SeasonAnswerWords } from "#shared/planning/season-answer-types.ts";
import { notFound } from "../problems.ts";
import { furtherLooks } from "./further-looks.ts";

/** Where seasons are planned; handed in, because it is no part of this slice. */
export interface SeasonDesk {
  plan(household: string, season: Season, request: { allowance: number; secondsPerLevel: number; secondsInAll?: number; onBetter?: (plan: SeasonPlan) => void }): { readonly first: SeasonPlan; readonly answer: Promise<SeasonAnswer>; cancel(): void };
}

export type JobState = "waiting" | "working" | "done" | "cancelled" | "failed";

export interface SeasonJobNow {
  readonly id: string;
  readonly state: JobState;
  readonly progress: number;
  readonly plan: SeasonAnswerWords;
}

export interface SeasonJobs {
  begin(asked: AskedSeason): Promise<string>;
  /** Refuses with not-found when the household has no such job. */
  now(householdId: string, id: string): SeasonJobNow;
  /** Answers when the job has ended, or after so many milliseconds. */
  wait(householdId: string, id: string, ms: number): Promise<void>;
  cancel(householdId: string, id: string): void;
  /** Ends it with the best so far, which stands from now. */
  settle(householdId: string, id: string): SeasonAnswerWords;
  /** The newest that has not ended. */
  running(householdId: string): string | null;
}

export interface Pace {
  readonly secondsPerLevel: number;
  /** Of the solver's clock, where somebody waits for the answer. */
  readonly secondsInAll?: number;
  /** About how long it takes. */
  readonly usualMs: number;
  /** Ask also what would help in the worst weeks and what would take the place of the lines that come first. */
  readonly lookFurther: boolean;
}

export interface AskedSeason extends Pace {
  readonly householdId: string;
  readonly facts: SeasonFacts;
  readonly instance: SeasonInstance;
  /** Null: what is found is answered and not kept. */
  readonly keepUnder: Stamps;
}

interface Job {
  readonly id: string;
  readonly asked: AskedSeason;
  readonly begunMs: number;
  readonly cancel: () => void;
  readonly ended: Promise<void>;
  state: JobState;
  best: WorkedOut;
  /** In words, for `best`. */
  words: { readonly of: WorkedOut; readonly plan: SeasonAnswerWords } | null;
}

/** Ended jobs of a household that can still be asked for. */
const MOST_JOBS = 6;

export function seasonJobs(desk: SeasonDesk, standing: StandingSeasons): SeasonJobs {
  const jobs = new Map<string, Job[]>();
  const find = (householdId: string, id: string): Job => {
    const job = jobs.get(householdId)?.find((one) => one.id === id);
    if (!job) throw notFound("plan under way");
    return job;
  };
  const keep = (job: Job): void => {
    const { householdId, keepUnder } = job.asked;
    if (keepUnder !== null) standing.keep(householdId, wordsOf(job), keepUnder);
  };
  return {
    async begin(asked) {
      const job = begun(desk, asked, keep);
      const others = (jobs.get(asked.householdId) ?? []).slice(0, MOST_JOBS - 1);
      jobs.set(asked.householdId, [job, ...others]);
      return job.id;
    },
    now(householdId, id) {
      const job = find(householdId, id);
      const share = Math.min(0.99, (performance.now() - job.begunMs) / job.asked.usualMs);
      return { id, state: job.state, progress: isOver(job.state) ? 1 : Math.round(share * 100) / 100, plan: wordsOf(job) };
    },
    async wait(householdId, id, ms) {
      const { ended } = find(householdId, id);
      let bell: NodeJS.Timeout | undefined;
      await Promise.race([ended, new Promise<void>((resolve) => (bell = setTimeout(resolve, ms)))]);
      clearTimeout(bell);
    },
    cancel: (householdId, id) => find(householdId, id).cancel(),
    settle(householdId, id) {
      const job = find(householdId, id);
      if (!isOver(job.state)) {
        job.cancel();
        job.state = "cancelled";
        keep(job);
      }
      return wordsOf(job);
    },
    running: (householdId) => jobs.get(householdId)?.find(({ state }) => !isOver(state))?.id ?? null,
  };
}

const isOver = (state: JobState): boolean => state === "done" || state === "cancelled" || state === "failed";

function begun(desk: SeasonDesk, asked: AskedSeason, keep: (job: Job) => void): Job {
  const season = asked.instance.toPlan[0] as Season;
  let cancelled = false;
  const work = desk.plan(asked.householdId, season, {
    allowance: asked.instance.ask.allowance,
    secondsPerLevel: asked.secondsPerLevel,
    ...(asked.secondsInAll === undefined ? {} : { secondsInAll: asked.secondsInAll }),
    onBetter: (plan) => {
      if (isOver(job.state)) return;
      job.state = "working";
      job.best = { ...job.best, status: "feasible", plan, verdict: checkSeasonPlan(season, plan) };
    },
  });
  const byRule = checkSeasonPlan(season, work.first);
  const first: WorkedOut = { status: "rule", plan: work.first, verdict: byRule, byRule, gapPct: null, instead: [], helps: [] };
  const job: Job = { id: crypto.randomUUID(), asked, begunMs: performance.now(), cancel, ended: ending(), state: "waiting", best: first, words: null };
  return job;

  function cancel(): void {
    cancelled = true;
    work.cancel();
  }
  async function ending(): Promise<void> {
    try {
      const { status, plan, verdict, gapPct, byRule: rule } = await work.answer;
      // what was answered meanwhile stands as it was answered
      if (isOver(job.state)) return;
      job.best = { ...job.best, status, plan, verdict, gapPct, byRule: rule };
      if (asked.lookFurther && status !== "infeasible" && !cancelled) {
        keep(job);
        job.state = "working";
        for await (const found of furtherLooks(desk, asked.householdId, season, job.best, asked.instance.weeks.first, () => cancelled)) job.best = { ...job.best, ...found };
      }
      job.state = cancelled ? "cancelled" : "done";
    } catch {
      if (isOver(job.state)) return;
      // the rule's plan, or the best that was told, is the answer
      job.state = cancelled ? "cancelled" : "failed";
    }
    keep(job);
  }
}

function wordsOf(job: Job): SeasonAnswerWords {
  if (job.words?.of !== job.best) job.words = { of: job.best, plan: seasonAnswer(job.asked.facts, job.asked.instance, job.best) };
  return job.words.plan;
}
