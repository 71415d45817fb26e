/** A step moved by hand: judged in the page, kept by the service when it may be, taken back with one press. */
import { useState } from "preact/hooks";
import type { CookDay, Timetable, TimetableStep } from "#shared/contracts/cook-days.ts";
import type { PlacedStep } from "#shared/contracts/day-plans.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { putPlan, removePlan } from "../../api/counter-calls.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem } from "../../api/problem.ts";
import { clockAt } from "./day-words.ts";
import { movedWords, refusalWords } from "./move-words.ts";
import { andAllAfter, nameOf, renumbered, shifted } from "./moves.ts";

export interface Refusal {
  readonly n: number;
  /** Name of the step that was to move. */
  readonly at: string;
  readonly words: string;
  /** Moves it with all that begins after it, where that may be. */
  readonly along: (() => void) | null;
}

export interface Moves {
  /** The plan as it is tried just now; the stored one else. */
  readonly plan: Timetable;
  readonly refusal: Refusal | null;
  readonly done: string | null;
  readonly undo: (() => void) | null;
  readonly move: (moving: readonly TimetableStep[], byMin: number) => void;
  /** Takes the plan as it stands. */
  readonly agree: () => void;
  /** While the day is under way it is planned anew at the counter. */
  readonly open: boolean;
}

export function useMoves({ day, plan, recipes, open, again }: { readonly day: CookDay; readonly plan: Timetable; readonly recipes: readonly Recipe[]; readonly open: boolean; readonly again: () => Promise<void> }): Moves {
  const [tried, setTried] = useState<readonly TimetableStep[] | null>(null);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [done, setDone] = useState<{ readonly words: string; readonly planId: string } | null>(null);
  const refuse = (at: string, words: string, along: Refusal["along"] = null): void => {
    setTried(null);
    setRefusal((before) => ({ n: (before?.n ?? 0) + 1, at, words, along }));
  };
  const keep = async (steps: readonly TimetableStep[], at: string, words: string): Promise<void> => {
    const planId = newId();
    setTried(steps);
    try {
      await putPlan(day.id, planId, { kind: "agree", steps: steps.map(placed) });
      await again();
      setRefusal(null);
      setDone({ words, planId });
      setTried(null);
    } catch (thrown) {
      const { message, fields } = asProblem(thrown);
      refuse(at, fields.length > 0 ? refusalWords(fields.map((field) => field.message)) : `Not moved. ${message}`);
    }
  };
  const move = async (moving: readonly TimetableStep[], byMin: number): Promise<void> => {
    const [first] = moving;
    if (!first || byMin === 0 || tried) return;
    const at = nameOf(first);
    if (first.startMin + byMin < 0) return refuse(at, `Not moved. The day begins at ${day.startsAt}, and it would start before that.`);
    const { refereed } = await import("./referee.ts");
    const words = movedWords(day, plan, moving, byMin);
    const alone = renumbered(shifted(plan.steps, moving, byMin));
    const { faults } = refereed(day, recipes, alone);
    if (faults.length === 0) return keep(alone, at, words);
    const rest = andAllAfter(plan.steps, moving);
    const together = renumbered(shifted(plan.steps, rest, byMin));
    const mayAlong = byMin > 0 && rest.length > moving.length && refereed(day, recipes, together).faults.length === 0;
    refuse(at, refusalWords(faults), mayAlong ? () => void keep(together, at, movedWords(day, plan, rest, byMin)) : null);
  };
  const undo = async (planId: string): Promise<void> => {
    try {
      await removePlan(day.id, planId);
      setDone(null);
      await again();
    } catch (thrown) {
      refuse("", asProblem(thrown).message);
    }
  };
  return {
    plan: tried ? { ...plan, steps: [...tried] } : plan,
    refusal,
    done: done?.words ?? null,
    undo: done ? () => void undo(done.planId) : null,
    move: (moving, byMin) => void move(moving, byMin),
    agree: () => void keep(plan.steps, "", `Agreed: begin at ${day.startsAt}, done by ${clockAt(day, plan.endMin ?? 0)}.`),
    open,
  };
}

const placed = ({ dish, step, load, startMin, cook, oven, burner }: TimetableStep): PlacedStep => ({
  dish,
  step,
  startMin,
  ...(load === undefined ? {} : { load }),
  ...(cook === undefined ? {} : { cook }),
  ...(oven === undefined ? {} : { oven }),
  ...(burner === undefined ? {} : { burner }),
});
