/** The steps in the order they begin; the list carries all that the lanes show. */
import type { CookDay, Timetable } from "#shared/contracts/cook-days.ts";
import { clockAt, stepSentence } from "./day-words.ts";

export function StepList({ day, plan }: { readonly day: CookDay; readonly plan: Timetable }) {
  if (plan.steps.length === 0) return <div />;
  const letters = new Map(plan.dishes.map(({ dish, letter }) => [dish, letter]));
  const loads = new Map<string, number>();
  for (const step of plan.steps) if (step.load !== undefined) loads.set(`${step.dish} ${step.step}`, Math.max(step.load, loads.get(`${step.dish} ${step.step}`) ?? 0));
  return (
    <section class="sec" aria-labelledby="steps-h">
      <h2 id="steps-h">The steps in order</h2>
      <ol class="steps">
        {plan.steps.map((step, i) => {
          const of = loads.get(`${step.dish} ${step.step}`) ?? 1;
          return (
            <li key={`${step.dish}${step.step}${step.load ?? ""}`}>
              <span class="no">{i + 1}</span>
              <span class="at">{clockAt(day, step.startMin)}</span>
              <span class="letter">{letters.get(step.dish)}</span>
              <p>
                <span class="what">
                  {step.text}
                  {of > 1 ? `, load ${step.load} of ${of}` : ""}
                </span>
                <span class="quiet">{stepSentence(day, step)}</span>
              </p>
            </li>
          );
        })}
      </ol>
    </section>
  );
}
