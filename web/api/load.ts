/** What a page has of the data it needs: nothing yet, the data, or the reason why not. */
import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import { isAbort } from "./client.ts";
import { asProblem, type ApiProblem } from "./problem.ts";

export type Load<T> = { readonly state: "waiting" } | { readonly state: "ready"; readonly value: T } | { readonly state: "failed"; readonly problem: ApiProblem };

/**
 * Loads when `key` changes. `again` loads once more and keeps what is shown until the new data is there, so that a page changes
 * in place; it settles when the new data is on the page.
 */
export function useLoad<T>(key: string, fetchIt: (signal: AbortSignal) => Promise<T>): { readonly load: Load<T>; readonly again: () => Promise<void> } {
  const [load, setLoad] = useState<Load<T>>({ state: "waiting" });
  const latest = useRef(fetchIt);
  latest.current = fetchIt;
  const running = useRef<AbortController | null>(null);
  const run = useCallback(async (): Promise<void> => {
    running.current?.abort();
    const control = new AbortController();
    running.current = control;
    try {
      const value = await latest.current(control.signal);
      if (!control.signal.aborted) setLoad({ state: "ready", value });
    } catch (thrown) {
      if (!isAbort(thrown) && !control.signal.aborted) setLoad({ state: "failed", problem: asProblem(thrown) });
    }
  }, []);
  useEffect(() => {
    setLoad((before) => (before.state === "failed" ? { state: "waiting" } : before));
    void run();
    return () => running.current?.abort();
  }, [key, run]);
  return { load, again: run };
}
