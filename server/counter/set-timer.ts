/** Sets a timer, hears it, puts it off, stops it. What is kept is the instant at which it rings. */
import type { Tx } from "#db/client.ts";
import type { NewTimer } from "#shared/contracts/timers.ts";
import { clockAt, nextMoment } from "#shared/kernel/clock-time.ts";
import { refuse, type FieldFault, type Result } from "#shared/kernel/outcome.ts";
import { minutesWords } from "#shared/kernel/words.ts";
import type { TimerRow } from "../facts/counter.ts";
import { badFields } from "../http/contract.ts";
import { tagOf } from "../http/etag.ts";
import { putEditable, type Put } from "../http/put-once.ts";
import { cookDayIsThere, insertTimer, lockTimer, updateTimer } from "./store.ts";

export interface AskedTimer {
  readonly dayId: string;
  readonly id: string;
  readonly body: NewTimer;
  readonly ifMatch: string | undefined;
  readonly zone: string;
  readonly nowMs: number;
}

const MS_A_MINUTE = 60_000;
/** What a phone sends in the very second in which it rings is no mistake. */
const JUST_NOW_MS = 5_000;

export async function setTimer(tx: Tx, householdId: string, { dayId, id, body, ifMatch, zone, nowMs }: AskedTimer): Promise<Result<Put<TimerRow>>> {
  if (!(await cookDayIsThere(tx, householdId, dayId))) return refuse("not-found", "There is no such cook day.");
  let endsMs = 0;
  return putEditable<TimerRow, Said>({
    body: { ...body, heard: body.heard ?? false, stopped: body.stopped ?? false, dayId },
    bodyOf: saidBy,
    ifMatch,
    tagOf,
    find: () => lockTimer(tx, householdId, id),
    check: async (stored) => {
      if (stored !== undefined && stored.cookDayId !== dayId) return refuse("conflict", "This timer belongs to another cook day.").problem;
      const same = stored !== undefined && sameTime(stored, body);
      const when = same ? { ms: Date.parse(stored.endsAt) } : momentOf(body, zone, nowMs);
      if ("fault" in when) return badFields([when.fault], "The timer cannot be set like this.").problem;
      endsMs = when.ms;
      return undefined;
    },
    insert: () => insertTimer(tx, { householdId, id, cookDayId: dayId, ...columnsOf(body, endsMs), ...toldAt(body, undefined, nowMs) }),
    update: (stored) => updateTimer(tx, stored, { ...columnsOf(body, endsMs), ...toldAt(body, sameTime(stored, body) ? stored : undefined, nowMs) }),
  });
}

/** Nobody has said another time: what was counted from the first setting goes on. */
const sameTime = (stored: TimerRow, { minutes, clock, endsAt }: NewTimer): boolean =>
  (stored.minutes ?? undefined) === minutes && (stored.clock ?? undefined) === clock && (endsAt === undefined || Date.parse(endsAt) === Date.parse(stored.endsAt));

function momentOf({ minutes, clock, endsAt }: NewTimer, zone: string, nowMs: number): { readonly ms: number } | { readonly fault: FieldFault } {
  if (minutes !== undefined) return { ms: nowMs + minutes * MS_A_MINUTE };
  if (clock !== undefined) {
    const { ms } = nextMoment(zone, clock, nowMs);
    return ms === null ? { fault: { path: "clock", message: `${clock} does not come that night: the clocks are put forward over it` } } : { ms };
  }
  const ms = Date.parse(endsAt as string);
  if (ms >= nowMs - JUST_NOW_MS) return { ms };
  const ago = Math.max(1, Math.round((nowMs - ms) / MS_A_MINUTE));
  return { fault: { path: "endsAt", message: `that was ${clockAt(zone, ms)}, ${minutesWords(ago)} ago; it is ${clockAt(zone, nowMs)} now` } };
}

function columnsOf({ label, pot, step, minutes, clock }: NewTimer, endsMs: number) {
  return { label, pot: pot ?? null, dish: step?.dish ?? null, step: step?.step ?? null, load: step?.load ?? null, minutes: minutes ?? null, clock: clock ?? null, endsAt: new Date(endsMs).toISOString() };
}

/** The first moment counts; a timer that was set anew has not been heard. */
function toldAt({ heard, stopped }: NewTimer, stored: TimerRow | undefined, nowMs: number) {
  const now = new Date(nowMs).toISOString();
  return { heardAt: heard === true ? (stored?.heardAt ?? now) : null, stoppedAt: stopped === true ? (stored?.stoppedAt ?? now) : null };
}

type Said = Omit<NewTimer, "heard" | "stopped"> & { readonly dayId: string; readonly heard: boolean; readonly stopped: boolean };

function saidBy({ cookDayId, label, pot, dish, step, load, minutes, clock, endsAt, heardAt, stoppedAt }: TimerRow): Said {
  return {
    dayId: cookDayId,
    label,
    pot: pot ?? undefined,
    step: dish === null || step === null ? undefined : { dish, step, load: load ?? undefined },
    minutes: minutes ?? undefined,
    clock: clock ?? undefined,
    endsAt: minutes === null && clock === null ? new Date(endsAt).toISOString() : undefined,
    heard: heardAt !== null,
    stopped: stoppedAt !== null,
  };
}
