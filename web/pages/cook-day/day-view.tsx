/** One cook day: sentence, lanes, steps in order, dishes; where it cannot be, what clashes and what would help. */
import { useState } from "preact/hooks";
import type { CookDay, NewCookDay, Timetable } from "#shared/contracts/cook-days.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { putCookDay, removeCookDay } from "../../api/calls.ts";
import { asProblem } from "../../api/problem.ts";
import { Answer } from "../../parts/answer.tsx";
import { useFootNote } from "../../parts/foot-note.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { useTitle } from "../../parts/title.ts";
import { goTo } from "../../router.ts";
import { DayForm } from "./day-form.tsx";
import { daySentence, underSentence, weekdayOf } from "./day-words.ts";
import { DishList } from "./dish-list.tsx";
import { LanesPlate } from "./lanes-plate.tsx";
import { StepList } from "./step-list.tsx";

interface DayViewProps {
  readonly day: CookDay;
  readonly plan: Timetable;
  readonly all: readonly Recipe[];
  readonly today: string;
  readonly again: () => Promise<void>;
}

export function DayView({ day, plan, all, today, again }: DayViewProps) {
  const [failed, setFailed] = useState<{ readonly n: number; readonly lead: string } | null>(null);
  useTitle(`Cook day, ${weekdayOf(day.on)}`);
  useFootNote("Every plan shown here has passed the checker: hands, oven, burners and pots are never taken twice, and every longest wait is kept.");
  const put = async (body: NewCookDay) => {
    try {
      await putCookDay(day.id, body);
      await again();
      return null;
    } catch (thrown) {
      const problem = asProblem(thrown);
      return { lead: problem.stale ? "Somebody else changed this day meanwhile. Load the page again, then make your change." : problem.message, faults: [] };
    }
  };
  const putDishes = async (dishes: NewCookDay["dishes"]): Promise<void> => {
    const problem = await put({ ...bodyOf(day), dishes });
    setFailed((before) => problem && { n: (before?.n ?? 0) + 1, lead: problem.lead });
  };
  const remove = async (): Promise<void> => {
    try {
      await removeCookDay(day.id);
      goTo("/cook-day");
    } catch (thrown) {
      setFailed((before) => ({ n: (before?.n ?? 0) + 1, lead: asProblem(thrown).message }));
    }
  };
  return (
    <>
      <Answer>{daySentence(day, plan, today)}</Answer>
      <p class="under">{underSentence(day, plan)}</p>
      {failed && <ProblemNote key={failed.n} lead={failed.lead} />}
      <Clashes plan={plan} />
      {plan.steps.length > 0 && <LanesPlate day={day} plan={plan} />}
      <div class="cook-grid">
        <StepList day={day} plan={plan} />
        <div>
          <DishList day={day} plan={plan} all={all} onChange={putDishes} />
          {plan.notes.map((words) => (
            <p class="notice" key={words}>
              {words}
            </p>
          ))}
          <p class="acts no-print">
            {plan.steps.length > 0 && (
              <button type="button" class="btn" onClick={() => print()}>
                Print
              </button>
            )}
            <button type="button" class="btn word" onClick={() => void remove()}>
              Remove this day
            </button>
          </p>
        </div>
      </div>
      <Care cautions={plan.cautions} />
      <details class="sec no-print">
        <summary class="word">Change the day, the hours or the kitchen</summary>
        <DayForm frame={day} today={today} dishes={day.dishes} kept={day} button="Save and plan again" onSave={put} />
      </details>
    </>
  );
}

function Care({ cautions }: { readonly cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <section class="sec" aria-labelledby="care">
      <h2 id="care">Take care</h2>
      <ul class="rows care">
        {cautions.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </section>
  );
}

function Clashes({ plan }: { readonly plan: Timetable }) {
  if (plan.conflicts.length === 0) return null;
  return (
    <section class="sec" aria-labelledby="clash">
      <h2 id="clash">What cannot all be had</h2>
      {plan.conflicts.map(({ text, ways }) => (
        <div class="notice" key={text}>
          <p>{text}</p>
          {ways.length > 0 && (
            <>
              <p class="label">Each of these would make it possible</p>
              <ul class="ways-out">
                {ways.map((way) => (
                  <li key={way}>{way}</li>
                ))}
              </ul>
            </>
          )}
        </div>
      ))}
    </section>
  );
}

function bodyOf(day: CookDay): NewCookDay {
  return {
    on: day.on,
    startsAt: day.startsAt,
    cooks: day.cooks,
    kitchen: day.kitchen,
    dishes: day.dishes.map(({ recipeId, batches }) => ({ recipeId, batches })),
    ...(day.endsBy === undefined ? {} : { endsBy: day.endsBy }),
    ...(day.unavailable.length > 0 ? { unavailable: day.unavailable } : {}),
    ...(day.title === undefined ? {} : { title: day.title }),
  };
}
