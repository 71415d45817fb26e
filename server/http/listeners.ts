/**
 * Who listens for changes, by household. A write through this service nudges them at once; what another program writes is seen by a look at the stamps
 * every other second, for as long as somebody listens. What is told is which parts have changed; whoever wants them asks.
 */
import { PassThrough, type Readable } from "node:stream";
import type { Db } from "#db/client.ts";
import type { Changed } from "#shared/contracts/events.ts";
import type { Clock } from "../clock.ts";
import { loadStamps } from "../facts/house.ts";
import { changedSince, standOf } from "./changes.ts";
import { Refusal } from "../problems.ts";

export interface Listeners {
  /** `since`: where the asker's data stand; undefined = as they are now. */
  listen(householdId: string, since: string | undefined): Promise<Readable>;
  /** Something of this household was written. */
  nudge(householdId: string): void;
  /** Ends every stream, so that the service can stop. */
  close(): void;
}

interface Listener {
  readonly out: PassThrough;
  stand: string;
}

const LOOK_MS = 2_000;
/** A line that carries nothing for a minute is put down (server/app.ts). */
const STILL_HERE_MS = 15_000;
/** A browser opens one for each page that is open. */
const MOST_OF_A_HOUSEHOLD = 40;
const AGAIN_AFTER_MS = 3_000;

export function listenersOn(db: Db, clock: Clock, onFault: (error: unknown) => void): Listeners {
  const households = new Map<string, Set<Listener>>();
  let timers: NodeJS.Timeout[] = [];
  const stands = (householdId: string): Promise<string> => db.inHousehold(householdId, async (tx) => standOf(await loadStamps(tx, householdId)));

  const look = async (householdId: string): Promise<void> => {
    if (!households.has(householdId)) return;
    const stand = await stands(householdId);
    for (const listener of households.get(householdId) ?? []) tell(listener, stand, clock.now());
  };
  const lookAtAll = (): void => {
    for (const householdId of households.keys()) look(householdId).catch(onFault);
  };
  const stillHere = (): void => {
    for (const all of households.values()) for (const { out } of all) out.write(": still here\n\n");
  };
  const leave = (householdId: string, listener: Listener): void => {
    const all = households.get(householdId);
    all?.delete(listener);
    if (all?.size === 0) households.delete(householdId);
    if (households.size > 0) return;
    for (const timer of timers) clearInterval(timer);
    timers = [];
  };

  return {
    async listen(householdId, since) {
      const stand = await stands(householdId);
      const all = households.get(householdId) ?? new Set<Listener>();
      if (all.size >= MOST_OF_A_HOUSEHOLD) throw new Refusal({ code: "unavailable", detail: "Too many pages of this household are open. Close some of them." });
      households.set(householdId, all);
      const listener: Listener = { out: new PassThrough(), stand: since ?? stand };
      all.add(listener);
      listener.out.once("close", () => leave(householdId, listener));
      if (timers.length === 0) timers = [setInterval(lookAtAll, LOOK_MS).unref(), setInterval(stillHere, STILL_HERE_MS).unref()];
      // an id without data is kept by the browser and told to no page
      listener.out.write(`retry: ${AGAIN_AFTER_MS}\nid: ${listener.stand}\n\n`);
      tell(listener, stand, clock.now());
      return listener.out;
    },
    nudge(householdId) {
      look(householdId).catch(onFault);
    },
    close() {
      for (const all of households.values()) for (const { out } of all) out.end();
    },
  };
}

function tell(listener: Listener, stand: string, nowMs: number): void {
  if (listener.stand === stand) return;
  const parts = changedSince(listener.stand, stand);
  listener.stand = stand;
  const data: Changed = { parts, now: new Date(nowMs).toISOString() };
  listener.out.write(`id: ${stand}\nevent: changed\ndata: ${JSON.stringify(data)}\n\n`);
}
