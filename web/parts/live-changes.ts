/** Hears from the service that something has changed, whoever changed it, so that a page can read it again. The stream carries no data. */
import { useEffect, useRef } from "preact/hooks";

/** After a stream that the browser has given up on, in ms. */
const ANEW_MS = 5000;

/**
 * Calls `changed` for changes in one of `parts` and whenever the page comes back into sight: a hidden page may have slept. `since` says
 * where the stream stood when the page was read; null while nothing has been read.
 */
export function useLiveChanges(parts: readonly string[], since: string | null, changed: () => void): void {
  const latest = useRef(changed);
  latest.current = changed;
  const known = since !== null;
  const from = useRef(since);
  from.current = since;
  const wanted = parts.join();
  useEffect(() => {
    if (!known) return;
    let stream: EventSource | null = null;
    let later = 0;
    const open = (): void => {
      stream = new EventSource(`/api/events?since=${encodeURIComponent(from.current ?? "")}`);
      stream.addEventListener("changed", (event) => {
        if (partsIn(event.data).some((part) => wanted.split(",").includes(part))) latest.current();
      });
      stream.addEventListener("error", () => {
        if (stream?.readyState !== EventSource.CLOSED) return;
        clearTimeout(later);
        later = window.setTimeout(open, ANEW_MS);
      });
    };
    const inSight = (): void => {
      if (document.visibilityState === "visible") latest.current();
    };
    open();
    document.addEventListener("visibilitychange", inSight);
    return () => {
      clearTimeout(later);
      stream?.close();
      document.removeEventListener("visibilitychange", inSight);
    };
  }, [known, wanted]);
}

/** The parts that an event names; none where it cannot be read. */
export function partsIn(data: unknown): string[] {
  try {
    const { parts } = JSON.parse(String(data)) as { parts?: unknown };
    return Array.isArray(parts) ? parts.filter((part) => typeof part === "string") : [];
  } catch {
    return [];
  }
}
