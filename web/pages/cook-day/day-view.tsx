/** One cook day: sentence, lanes, steps in order, dishes; where it cannot be, what clashes and what would help. */
import { useState } from "preact/hooks";
import type { CookDay, NewCookDay, Timetable } from "#shared/contracts/cook-days.ts";
import type { Counter } from "#shared/contracts/counter.ts";
import type { Crop } from "#shared/contracts/crops.ts";
import type { Recipe } from "#shared/contracts/recipes.ts";
import { putCookDay, removeCookDay } from "../../api/calls.ts";
import { asProblem, type ApiProblem } from "../../api/problem.ts";
import { day as dayName } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import { useFootNote } from "../../parts/foot-note.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { useTitle } from "../../parts/title.ts";
import { UndoLine } from "../../parts/undo-line.tsx";
import { written } from "../../parts/written.ts";
import { Clashes } from "./clashes.tsx";
import { Advice } from "./day-advice.tsx";
import { bodyOf } from "./day-body.ts";
import { DayForm, type Failed } from "./day-form.tsx";
import { fieldAt, labelAt } from "./day-frame.ts";
import { daySentence, underSentence, weekdayOf } from "./day-words.ts";
import { DishList } from "./dish-list.tsx";
import { PlanView } from "./plan-view.tsx";

/** A day as it is stored, with its timetable or the reason why there is none. */
export interface Planned {
  readonly day: CookDay;
  readonly plan: Timetable | ApiProblem;
  readonly counter: Counter;
}

interface DayViewProps {
  readonly planned: Planned;
  readonly all: readonly Recipe[];
  readonly book: readonly Crop[];
  readonly today: string;
  readonly again: () => Promise<void>;
}

export function DayView({ planned: { day, plan: asked, counter }, all, book, today, again }: DayViewProps) {
  const plan = asked instanceof Error ? null : asked;
  const [failed, setFailed] = useState<(Failed & { readonly n: number }) | null>(null);
  const [doing, setDoing] = useState("");
  const [changed, setChanged] = useState(false);
  const [gone, setGone] = useState(false);
  useTitle(`Cook day, ${weekdayOf(day.on)}`);
  useFootNote(plan && plan.steps.length > 0 ? "This plan has passed the checker: hands, oven, burners and pots are never taken twice, and every longest wait is kept." : null);
  const fail = (problem: Failed | null): void => setFailed((before) => problem && { ...problem, n: (before?.n ?? 0) + 1 });
  const put = async (body: NewCookDay): Promise<Failed | null> => {
    try {
      await putCookDay(day.id, body);
      await again();
      return null;
    } catch (thrown) {
      return failedOf(thrown, again);
    }
  };
  /** The form is set anew with the new plan, so the focus goes to the sentence that tells of it. */
  const putFrame = async (body: NewCookDay): Promise<Failed | null> => {
    const problem = await put(body);
    if (problem === null) document.querySelector<HTMLElement>("main h1")?.focus();
    return problem;
  };
  const putDishes = async (dishes: NewCookDay["dishes"], words: string): Promise<void> => {
    if (doing) return;
    setDoing(words);
    const problem = await put({ ...bodyOf(day), dishes });
    fail(problem);
    setChanged(problem === null);
    setDoing("");
  };
  const attempt = async (act: () => Promise<unknown>, gone: boolean): Promise<void> => {
    try {
      await act();
      setGone(gone);
      fail(null);
    } catch (thrown) {
      fail(await failedOf(thrown, again));
    }
  };
  if (gone)
    return (
      <>
        <Answer>This cook day is no longer planned.</Answer>
        {failed && <ProblemNote key={failed.n} lead={failed.lead} />}
        <UndoLine done={`${weekdayOf(day.on)}, ${dayName(day.on, today)}, is removed.`} undo={() => void attempt(() => putCookDay(day.id, bodyOf(day)), false)} of="the removal" />
        <p class="acts">
          <a class="btn main" href="/cook-day">
            To the cook days
          </a>
        </p>
      </>
    );
  const impossible = plan?.status === "infeasible";
  const form = <DayForm key={JSON.stringify({ ...day, dishes: [] })} frame={day} today={today} dishes={bodyOf(day).dishes} button="Save and plan again" solid={impossible} onSave={putFrame} />;
  const beside = (
    <>
      <DishList day={day} plan={plan} all={all} names={new Map(book.map(({ crop, name }) => [crop, name]))} doing={doing} onChange={(dishes, words) => void putDishes(dishes, words)} />
      {plan?.notes.map((words) => (
        <p class="notes" key={words}>
          {written(words)}
        </p>
      ))}
      <p class="acts no-print">
        <button type="button" class="btn word" onClick={() => void attempt(() => removeCookDay(day.id), true)}>
          Remove this day
        </button>
      </p>
    </>
  );
  return (
    <>
      <Answer>{daySentence(day, plan, today)}</Answer>
      <p class="vh" role="status">
        {changed ? `Planned again. ${daySentence(day, plan, today)}` : ""}
      </p>
      {plan && <p class="under">{underSentence(day, plan)}</p>}
      {asked instanceof Error && <ProblemNote lead={asked.message} />}
      {failed && <ProblemNote key={failed.n} lead={failed.lead} faults={failed.faults} />}
      {impossible && (
        <>
          <Clashes plan={plan} />
          <section class="sec" aria-labelledby="change-h">
            <h2 id="change-h">Change the day</h2>
            {form}
          </section>
        </>
      )}
      {plan && plan.steps.length > 0 ? (
        <PlanView day={day} plan={plan} counter={counter} recipes={all} again={again}>
          {beside}
        </PlanView>
      ) : (
        <div class="cook-grid">
          <div>{beside}</div>
        </div>
      )}
      {plan && plan.steps.length > 0 && (counter.state === "draft" || counter.state === "agreed") && <Advice dayId={day.id} />}
      {plan && <Care cautions={plan.cautions} />}
      {!impossible && (
        <details class="sec no-print">
          <summary class="word">Change the day, the hours or the kitchen</summary>
          {form}
        </details>
      )}
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
          <li key={words}>{written(words)}</li>
        ))}
      </ul>
    </section>
  );
}

/** After somebody else's change the day is shown as they left it, so that the next try is made on theirs. */
async function failedOf(thrown: unknown, again: () => Promise<void>): Promise<Failed> {
  const problem = asProblem(thrown);
  if (problem.stale) {
    await again();
    return { lead: "Somebody else changed this day meanwhile. It now stands as they left it; make your change again.", faults: [] };
  }
  const faults = problem.fields.map(({ path, message }) => {
    const field = fieldAt(path.split("."));
    return { field, text: `${labelAt(field)}: ${message}` };
  });
  return { lead: problem.message, faults };
}
