/** What a timer does at a moment: nothing ticks anywhere, it is the instant at which it rings held against the clock. */
export type TimerState = "running" | "ringing" | "heard" | "stopped";

export function timerState({ endsMs, heardMs, stoppedMs }: { readonly endsMs: number; readonly heardMs: number | null; readonly stoppedMs: number | null }, nowMs: number): TimerState {
  if (stoppedMs !== null) return "stopped";
  if (nowMs < endsMs) return "running";
  return heardMs === null ? "ringing" : "heard";
}
