/** The plan of a day: lanes, steps in order that can be moved, dishes beside them, and the way on to the counter. */
import type { ComponentChildren } from "preact";
import type { CookDay, Timetable } from "#shared/contracts/cook-days.ts";
import type { Counter } from "#shared/contracts/counter.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { entriesOf } from "./entries.ts";
import { LanesPlate } from "./lanes-plate.tsx";
import { StepList } from "./step-list.tsx";
import { useMoves } from "./use-moves.ts";

interface PlanViewProps {
  readonly day: CookDay;
  readonly plan: Timetable;
  readonly counter: Counter;
  readonly recipes: readonly Recipe[];
  readonly again: () => Promise<void>;
  /** Dishes and what else stands beside the steps. */
  readonly children: ComponentChildren;
}

export function PlanView({ day, plan, counter, recipes, again, children }: PlanViewProps) {
  const open = counter.state === "draft" || counter.state === "agreed";
  const moves = useMoves({ day, plan, recipes, open, again });
  const onDrag = (first: number, byMin: number): void => {
    const entry = entriesOf(moves.plan).find((one) => one.first === first);
    if (entry) moves.move(entry.steps, byMin);
  };
  const agreed = counter.plan !== null && !counter.stale;
  return (
    <>
      {counter.stale && open && <p class="notice">The day was changed after its plan was agreed on. This is the plan that fits it now; agree on it before you begin.</p>}
      <LanesPlate day={day} plan={moves.plan} recipes={recipes} onDrag={open ? onDrag : undefined} />
      <p class="acts no-print">
        {agreed ? (
          <a class="btn main" href={`/counter/${day.id}`}>
            {counter.state === "agreed" ? "To the counter" : counter.state === "finished" ? "What was cooked" : "Back to the counter"}
          </a>
        ) : (
          <button type="button" class="btn main" onClick={moves.agree}>
            Agree to this plan
          </button>
        )}
        <button type="button" class="btn" onClick={() => print()}>
          Print the plan
        </button>
      </p>
      <div class="cook-grid">
        <StepList day={day} moves={moves} />
        <div>{children}</div>
      </div>
    </>
  );
}
