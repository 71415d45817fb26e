/** What a new plan changed: each step that moved, by name, and each limit that was or will be passed. The same on every device. */
import type { Counter } from "#shared/contracts/counter.ts";
import { clockIn } from "../../parts/instants.ts";
import { written } from "../../parts/written.ts";
import type { Acts } from "./use-acts.ts";
import { movedWords } from "./words.ts";

const SHOWN = 4;

export function Moved({ counter, acts }: { readonly counter: Counter; readonly acts: Acts }) {
  const { plan, zone } = counter;
  if (plan === null || plan.kind === "agree" || counter.state !== "under way") return null;
  const { moved, passed, notes } = plan;
  const rows = (from: number, to?: number) => moved.slice(from, to).map((step) => <li key={`${step.dish} ${step.step} ${step.load ?? ""}`}>{movedWords(counter, step)}</li>);
  return (
    <section class="c-moved" aria-label="The new plan">
      <p role="status">
        {plan.title}. The plan is new: done by {clockIn(zone, plan.endsAt)}.{moved.length === 0 ? " No step moves." : ""}
      </p>
      {passed.map((words) => (
        <p class="notice" key={words}>
          {written(words)}
        </p>
      ))}
      <ul>{rows(0, SHOWN)}</ul>
      {moved.length > SHOWN && (
        <details>
          <summary>{moved.length - SHOWN} more that moved</summary>
          <ul>{rows(SHOWN)}</ul>
        </details>
      )}
      {notes.map((words) => (
        <p class="quiet" key={words}>
          {written(words)}
        </p>
      ))}
      {counter.planCanBeUndone && (
        <button type="button" class="btn" onClick={acts.undoPlan}>
          Back to the plan before
        </button>
      )}
    </section>
  );
}
