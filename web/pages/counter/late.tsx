/** Running late: by how much, in one press more. What is in hand takes so much longer; with nothing in hand, nothing new begins before. */
import { useState } from "preact/hooks";
import type { CounterStep } from "#shared/contracts/counter.ts";
import { useFocusLater } from "../../parts/focus-later.ts";
import type { Acts } from "./use-acts.ts";

const MINUTES = [5, 10, 20, 30];

export function Late({ step, acts }: { readonly step: CounterStep | null; readonly acts: Acts }) {
  const [asked, setAsked] = useState(false);
  const focusLater = useFocusLater();
  if (!asked)
    return (
      <button
        type="button"
        class="btn"
        id="late"
        onClick={() => {
          focusLater(`late-${MINUTES[0]}`);
          setAsked(true);
        }}
      >
        {acts.planning ? "Planning again" : "Running late"}
      </button>
    );
  const late = (byMin: number): void => {
    focusLater("late");
    setAsked(false);
    acts.replan({ kind: "late", byMin, ...(step ? { step: { dish: step.dish, step: step.step, ...(step.load === undefined ? {} : { load: step.load }) } } : {}) });
  };
  return (
    <span class="c-late" role="group" aria-label="How late">
      {MINUTES.map((minutes) => (
        <button key={minutes} type="button" class="btn" id={`late-${minutes}`} onClick={() => late(minutes)}>
          {minutes} min<span class="vh"> late</span>
        </button>
      ))}
      <button
        type="button"
        class="btn"
        onClick={() => {
          focusLater("late");
          setAsked(false);
        }}
      >
        Not late
      </button>
    </span>
  );
}
