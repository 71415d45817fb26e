/** Why the day cannot be, and what would make it possible: each way out was worked through before it is offered. */
import type { Timetable } from "#shared/contracts/cook-days.ts";

export function Clashes({ plan }: { readonly plan: Timetable }) {
  if (plan.conflicts.length === 0) return null;
  return (
    <section class="sec" aria-labelledby="clash">
      <h2 id="clash">What cannot all be had</h2>
      {plan.conflicts.map(({ text, ways }) => (
        <div class="notice" key={text}>
          <p>{text}</p>
          {ways.length > 0 && (
            <>
              <p class="label">{ways.length === 1 ? "This would make it possible" : "Each of these would make it possible"}</p>
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
