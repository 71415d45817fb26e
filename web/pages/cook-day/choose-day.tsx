/** Before a day is put down: which dishes of a week's plan fit together into the time there is, and what each of them adds. */
import { useState } from "preact/hooks";
import type { Choice } from "#shared/contracts/choosing.ts";
import type { NewCookDay } from "#shared/contracts/cook-days.ts";
import { addWeeks, weekOf } from "#shared/kernel/iso-week.ts";
import { chooseDay } from "../../api/counter-calls.ts";
import { length, weekTitle } from "../../format.ts";
import { useAttempts } from "../../parts/attempt.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { DishCosts } from "./dish-costs.tsx";

interface ChooseDayProps {
  readonly today: string;
  /** A day of these dishes, with the usual hours and kitchen. */
  readonly onPlan: (dishes: NewCookDay["dishes"]) => void;
}

const HOURS = [2, 3, 4, 5];
const WEEKS = [0, 1, 2];

export function ChooseDay({ today, onPlan }: ChooseDayProps) {
  const [week, setWeek] = useState(weekOf(today));
  const [hours, setHours] = useState(3);
  const [choice, setChoice] = useState<Choice | null>(null);
  const [asking, setAsking] = useState(false);
  const { failure, attempt } = useAttempts();
  const ask = async (event: Event): Promise<void> => {
    event.preventDefault();
    setAsking(true);
    setChoice(null);
    await attempt(async () => setChoice(await chooseDay({ week, withinMin: hours * 60 })));
    setAsking(false);
  };
  return (
    <section class="sec" aria-labelledby="choose-h">
      <h2 id="choose-h">What fits together</h2>
      {failure && <ProblemNote key={failure.n} lead={failure.lead} />}
      <form class="choose-row" onSubmit={(event) => void ask(event)}>
        <div class="form-field">
          <label for="choose-week">Of what is planned for</label>
          <select class="field" id="choose-week" value={week} onChange={(event) => setWeek(event.currentTarget.value)}>
            {WEEKS.map((n) => addWeeks(weekOf(today), n)).map((one) => (
              <option key={one} value={one}>
                {weekTitle(one, "short")}
              </option>
            ))}
          </select>
        </div>
        <div class="form-field">
          <label for="choose-hours">Time there is</label>
          <select class="field" id="choose-hours" value={hours} onChange={(event) => setHours(Number(event.currentTarget.value))}>
            {HOURS.map((n) => (
              <option key={n} value={n}>
                {length(n * 60)}
              </option>
            ))}
          </select>
        </div>
        <button type="submit" class="btn">
          See what fits
        </button>
      </form>
      <p role="status">{asking ? "Trying the dishes together, in your kitchen." : (choice?.text ?? "")}</p>
      {choice && <Sets choice={choice} onPlan={onPlan} />}
      {choice && <DishCosts dishes={choice.dishes} />}
      {choice && choice.leftOut.length > 0 && <p class="quiet">Without steps written, and so not tried: {choice.leftOut.join("; ")}.</p>}
    </section>
  );
}

function Sets({ choice: { sets, dishes, complete }, onPlan }: { readonly choice: Choice; readonly onPlan: ChooseDayProps["onPlan"] }) {
  const batches = (recipeId: string): number => dishes.find((dish) => dish.recipeId === recipeId)?.batches ?? 1;
  return (
    <>
      <ul class="rows days">
        {sets.map(({ recipeIds, text }) => (
          <li key={recipeIds.join()}>
            <p>{text}</p>
            <button type="button" class="btn" onClick={() => onPlan(recipeIds.map((recipeId) => ({ recipeId, batches: batches(recipeId) })))}>
              Plan these<span class="vh">: {text}</span>
            </button>
          </li>
        ))}
      </ul>
      {!complete && <p class="quiet">There are more ways to put them together than were tried.</p>}
    </>
  );
}
