/** Instants of the service on this device: by the household's clock, and against a device whose own clock may be wrong. */
import { useEffect, useState } from "preact/hooks";

const clocks = new Map<string, Intl.DateTimeFormat>();

/** “15:45”, where the household lives. */
export function clockIn(zone: string, instant: string | number): string {
  let format = clocks.get(zone);
  if (!format) clocks.set(zone, (format = new Intl.DateTimeFormat("en-GB", { timeZone: zone, hour: "2-digit", minute: "2-digit", hourCycle: "h23" })));
  return format.format(typeof instant === "number" ? instant : Date.parse(instant));
}

/** How far the service's clock is before this device's, in ms, taken when its answer comes. */
export const aheadOf = (now: string): number => Date.parse(now) - Date.now();

/** The service's time in ms, each second anew. It is never counted up: a page that slept is right again at once. */
export function useServiceTime(aheadMs: number): number {
  const [, tick] = useState(0);
  useEffect(() => {
    const again = (): void => tick((n) => n + 1);
    const every = setInterval(again, 1000);
    document.addEventListener("visibilitychange", again);
    return () => {
      clearInterval(every);
      document.removeEventListener("visibilitychange", again);
    };
  }, []);
  return Date.now() + aheadMs;
}
