/**
 * Timetables are searched for beside the service, in a thread of their own, so that a day of many dishes keeps nobody else waiting.
 * One at a time, a short queue, and a time after which a search is given up; the thread goes when nobody has asked for a while.
 */
import { Worker } from "node:worker_threads";
import type { PreservationTables } from "#shared/engines/preservation/index.ts";
import type { CookDayDesk, CookDayTasks } from "#shared/planning/cook-day-tasks.ts";
import { Refusal } from "./problems.ts";
import type { DeskAnswer, DeskData, DeskQuestion } from "./timetable-desk.ts";

const BOOT = new URL("./boot.mjs", import.meta.url);
const DESK = new URL("./timetable-desk.ts", import.meta.url).href;
/** Less than a connection may be silent, so that the answer says what was too long. */
const LONGEST_MS = 50_000;
const IDLE_MS = 30_000;
const MOST_WAITING = 4;

export interface Timetables extends CookDayDesk {
  close(): Promise<void>;
}

export function timetables(tables: () => Promise<PreservationTables>): Timetables {
  let worker: Worker | null = null;
  let idle: NodeJS.Timeout | undefined;
  let waiting = 0;
  let last: Promise<unknown> = Promise.resolve();

  const dismiss = async (): Promise<void> => {
    clearTimeout(idle);
    const gone = worker;
    worker = null;
    await gone?.terminate();
  };
  const search = async (question: DeskQuestion): Promise<unknown> => {
    clearTimeout(idle);
    worker ??= new Worker(BOOT, { workerData: { entry: DESK, tables: await tables() } satisfies DeskData });
    worker.unref();
    try {
      return await asked(worker, question);
    } catch (error) {
      await dismiss();
      throw error;
    } finally {
      idle = setTimeout(() => void dismiss(), IDLE_MS).unref();
    }
  };

  const inTurn = async (question: DeskQuestion): Promise<unknown> => {
    if (waiting >= MOST_WAITING) throw new Refusal({ code: "unavailable", detail: "Several timetables are being worked out already. Try again in a moment." });
    waiting += 1;
    const mine = last.then(() => search(question));
    // the next in the queue comes after this one, whatever became of it
    last = mine.catch(() => undefined);
    try {
      return await mine;
    } finally {
      waiting -= 1;
    }
  };
  const task = <Task extends keyof CookDayTasks>(name: Task): CookDayDesk[Task] => ((ask: unknown) => inTurn({ task: name, ask })) as CookDayDesk[Task];

  return {
    propose: task("propose"),
    replan: task("replan"),
    choose: task("choose"),
    advise: task("advise"),
    close: dismiss,
  };
}

function asked(worker: Worker, question: DeskQuestion): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const given = setTimeout(() => finish(() => reject(TOO_LONG)), LONGEST_MS);
    const finish = (answer: () => void): void => {
      clearTimeout(given);
      worker.off("message", told).off("error", failed).off("exit", ended);
      answer();
    };
    const told = (answer: DeskAnswer): void => finish(() => ("found" in answer ? resolve(answer.found) : reject(new Error(answer.fault))));
    const failed = (error: Error): void => finish(() => reject(error));
    const ended = (): void => finish(() => reject(STOPPING));
    worker.on("message", told).on("error", failed).on("exit", ended);
    worker.postMessage(question);
  });
}

const TOO_LONG = new Refusal({ code: "unavailable", detail: "This day takes too long to work out. Take a dish or some batches out of it, or put them into a day of their own." });
const STOPPING = new Refusal({ code: "unavailable", detail: "The service is stopping." });
