/** One step of the list put elsewhere by buttons: five minutes either way, or straight after another. */
import { useState } from "preact/hooks";
import type { Timetable } from "#shared/contracts/cook-days.ts";
import { endOf, type Entry } from "./entries.ts";
import { stepName } from "./move-words.ts";
import { minutesToAfter, MOVE_MIN, nameOf } from "./moves.ts";
import type { Moves } from "./use-moves.ts";

interface MovePanelProps {
  readonly id: string;
  readonly entry: Entry;
  readonly entries: readonly Entry[];
  readonly plan: Timetable;
  readonly moves: Moves;
  /** A step that comes to stand elsewhere in the list keeps the focus on the button that moved it. */
  readonly focusLater: (...ids: readonly string[]) => void;
  readonly onClose: () => void;
}

export function MovePanel({ id, entry, entries, plan, moves: { move, refusal }, focusLater, onClose }: MovePanelProps) {
  const [after, setAfter] = useState("");
  const [first] = entry.steps;
  if (!first) return null;
  const name = stepName(plan, first);
  const others = entries.filter((other) => other !== entry);
  const moveBy = (minutes: number, focus: string): void => {
    focusLater(`${id}-${focus}`);
    move(entry.steps, minutes);
  };
  const putAfter = (): void => {
    const before = others.find((other) => nameAt(other) === after);
    if (before) moveBy(minutesToAfter(entry.steps, before.steps), "after");
  };
  return (
    <div class="move-panel no-print" id={id} role="group" aria-label={`Move ${name}`}>
      <p class="acts">
        <button type="button" class="btn" id={`${id}-earlier`} onClick={() => moveBy(-MOVE_MIN, "earlier")}>
          5 min earlier
        </button>
        <button type="button" class="btn" id={`${id}-later`} onClick={() => moveBy(MOVE_MIN, "later")}>
          5 min later
        </button>
        <button type="button" class="btn word" onClick={onClose}>
          Leave it<span class="vh"> there: {name}</span>
        </button>
      </p>
      <p class="move-after">
        <label for={`${id}-after`}>Straight after</label>
        <select class="field" id={`${id}-after`} value={after} onChange={(event) => setAfter(event.currentTarget.value)}>
          <option value="">choose a step</option>
          {others.map((other) => (
            <option key={nameAt(other)} value={nameAt(other)}>
              {other.steps[0] ? stepName(plan, other.steps[0]) : ""}
            </option>
          ))}
        </select>
        <button type="button" class="btn" onClick={putAfter}>
          Put it there
        </button>
      </p>
      {refusal && refusal.at === nameOf(first) && (
        <div class="notice" key={refusal.n} role="alert">
          <p>{refusal.words}</p>
          {refusal.along && (
            <p class="acts">
              <button
                type="button"
                class="btn"
                onClick={() => {
                  focusLater(`${id}-later`);
                  refusal.along?.();
                }}
              >
                Move all after it too
              </button>
            </p>
          )}
        </div>
      )}
    </div>
  );
}

const nameAt = (entry: Entry): string => `${entry.first} ${Math.max(...entry.steps.map(endOf))}`;
