/** How the plan fares in a poor, a usual and a good year. */
import { amount } from "../../format.ts";
import { written } from "../../parts/written.ts";
import { chanceWords, courseName, type Plan } from "./season-words.ts";

export function Courses({ plan }: { readonly plan: Plan }) {
  if (plan.courses.length === 0) return null;
  return (
    <section class="sec" aria-labelledby="courses-h">
      <h2 id="courses-h">If the year is poor or good</h2>
      <ul class="rows courses">
        {plan.courses.map(({ id, chance, pickedGrams, text }) => (
          <li key={id}>
            <p>
              <b class="what">{courseName(id)}</b>
              <span class="quiet">
                {chanceWords(chance)}, about {amount(pickedGrams)}
              </span>
            </p>
            <p>{written(text)}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}
