/** What is pressed at the counter, each written down at the service at once; the last one can be taken back. */
import { useRef, useState } from "preact/hooks";
import type { Counter, CounterStep, NewMark } from "#shared/contracts/counter.ts";
import type { NewDayPlan, StepRef } from "#shared/contracts/day-plans.ts";
import type { NewTimer, Timer } from "#shared/contracts/timers.ts";
import { changeTimer, putMark, putPlan, putTimer, removeBatch, removeMark, removePlan } from "../../api/counter-calls.ts";
import { newId } from "../../api/new-id.ts";
import { useAttempts, type Attempts } from "../../parts/attempt.ts";
import { changed, firstWords, timerFor, type Pot } from "./pots.ts";

export interface Acts {
  readonly attempts: Attempts;
  /** What was done last, and how to take it back. */
  readonly done: { readonly words: string; readonly undo: () => void } | null;
  readonly mark: (mark: NewMark, words: string) => void;
  /** The timer of what goes on by itself is set with the same press. */
  readonly start: (step: CounterStep) => void;
  readonly finish: (step: CounterStep) => void;
  readonly unmark: (markId: string) => void;
  /** Everything that putting a dish away did. */
  readonly unbatch: (batchId: string) => void;
  readonly replan: (plan: NewDayPlan) => void;
  readonly undoPlan: () => void;
  readonly setTimer: (timer: NewTimer) => void;
  readonly hear: (timer: Timer) => void;
  readonly putOff: (pot: Pot, minutes: number) => void;
  readonly clear: (pot: Pot) => void;
  /** While a new plan is being worked out. */
  readonly planning: boolean;
}

const SAME_PRESS_MS = 2000;

/** `serviceTime`: ms; a timer is put off from then. */
export function useActs(counter: Counter, serviceTime: () => number, again: () => Promise<void>): Acts {
  const attempts = useAttempts();
  const [done, setDone] = useState<Acts["done"]>(null);
  const [planning, setPlanning] = useState(false);
  const { id } = counter;
  const queue = useRef(Promise.resolve());
  const waiting = useRef(new Set<string>());
  /** One after the other, so that a quick second press is not lost. The same press again, from a wet finger, is one with the first. */
  const run = (what: string, act: () => Promise<unknown>, after: Acts["done"] = null): Promise<void> => {
    if (waiting.current.has(what)) return queue.current;
    waiting.current.add(what);
    queue.current = queue.current.then(async () => {
      const went = await attempts.attempt(async () => void (await act()));
      if (went) setDone(after);
      // after a refusal too: another phone may have been faster
      await again();
      if (what.startsWith("undo")) waiting.current.clear();
      else setTimeout(() => waiting.current.delete(what), went ? SAME_PRESS_MS : 0);
    });
    return queue.current;
  };
  const unmark = (markId: string): void => void run(`undo ${markId}`, () => removeMark(id, markId));
  const mark = (body: NewMark, words: string): void => {
    const markId = newId();
    void run(JSON.stringify(body), () => putMark(id, markId, body), { words, undo: () => unmark(markId) });
  };
  const at = ({ dish, step, load }: CounterStep) => ({ dish, step, ...(load === undefined ? {} : { load }) });
  const start = (step: CounterStep): void => {
    const [markId, timerId, timer] = [newId(), newId(), timerFor(counter, step)];
    const act = async (): Promise<void> => {
      await putMark(id, markId, { kind: "started", ...at(step), ...(step.oven === undefined ? {} : { oven: step.oven }) });
      if (timer) await putTimer(id, timerId, timer);
    };
    const undo = async (): Promise<void> => {
      await removeMark(id, markId);
      if (timer) await putTimer(id, timerId, { ...timer, stopped: true });
    };
    void run(`start ${step.key}`, act, { words: `${firstWords(step.text)}: begun.`, undo: () => void run(`undo ${markId}`, undo) });
  };
  const timerOf = ({ dish, step, load }: StepRef): Timer | undefined => counter.timers.find((one) => one.state !== "stopped" && one.step?.dish === dish && one.step.step === step && one.step.load === load);
  const finish = (step: CounterStep): void => {
    const markId = newId();
    const timer = timerOf(step);
    const act = async (): Promise<void> => {
      await putMark(id, markId, { kind: "done", ...at(step) });
      if (timer) await changeTimer(id, timer, changed(timer, { stopped: true }));
    };
    void run(`done ${step.key}`, act, { words: `${firstWords(step.text)}: done.`, undo: () => unmark(markId) });
  };
  const replan = async (plan: NewDayPlan): Promise<void> => {
    // what takes longer rings later
    const timer = plan.kind === "late" && plan.step ? timerOf(plan.step) : undefined;
    setPlanning(true);
    await run(JSON.stringify(plan), async () => {
      await putPlan(id, newId(), plan);
      if (timer && plan.kind === "late") await changeTimer(id, timer, changed(timer, { endsAt: later(timer.endsAt, plan.byMin), heard: false }));
    });
    setPlanning(false);
  };
  const change = (timer: Timer, to: Parameters<typeof changed>[1]): void => void run(`timer ${timer.id} ${JSON.stringify(to)}`, () => changeTimer(id, timer, changed(timer, to)));
  return {
    attempts,
    done,
    mark,
    start,
    finish,
    unmark,
    unbatch: (batchId) => void run(`undo ${batchId}`, () => removeBatch(id, batchId)),
    replan: (plan) => void replan(plan),
    undoPlan: () => {
      const { plan } = counter;
      if (plan) void run(`undo ${plan.id}`, () => removePlan(id, plan.id));
    },
    setTimer: (timer) => void run(`set ${JSON.stringify(timer)}`, () => putTimer(id, newId(), timer)),
    hear: (timer) => change(timer, { heard: true }),
    putOff: ({ timer }, minutes) => {
      if (timer) change(timer, { endsAt: later(new Date(serviceTime()).toISOString(), minutes), heard: false });
    },
    clear: ({ timer }) => {
      if (timer) change(timer, { stopped: true });
    },
    planning,
  };
}

const later = (instant: string, minutes: number): string => new Date(Date.parse(instant) + minutes * 60_000).toISOString();
