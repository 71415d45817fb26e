/** A clock that stands until a test moves it. */
import { dayAt, type Clock } from "#server/clock.ts";

export interface HandClock extends Clock {
  set(instant: string): void;
  pass(minutes: number): void;
}

export function handClock(instant: string): HandClock {
  let ms = Date.parse(instant);
  return {
    today: (zone) => dayAt(ms, zone),
    now: () => ms,
    set: (other) => void (ms = Date.parse(other)),
    pass: (minutes) => void (ms += minutes * 60_000),
  };
}
