/** How the plan fares in a poor, a usual and a good year: each in words, and as a bar on one scale with what is lost hatched. */
import { Hatch } from "../../parts/hatch.tsx";
import { Measured } from "../../parts/measured.tsx";
import { written } from "../../parts/written.ts";
import { inOrder, type Plan } from "./season-words.ts";

export function Courses({ plan }: { readonly plan: Plan }) {
  if (plan.courses.length === 0) return null;
  const most = Math.max(1, ...plan.courses.map(({ pickedGrams }) => pickedGrams));
  return (
    <section class="sec" aria-labelledby="courses-h">
      <h2 id="courses-h">If the year is poor or good</h2>
      <ul class="rows courses">
        {inOrder(plan.courses).map(({ id, pickedGrams, lostGrams, text }) => (
          <li key={id}>
            <p>{written(text)}</p>
            <Measured>
              {({ width, rem }) => {
                const x = (grams: number): number => (grams / most) * (width - 2);
                const kept = x(Math.max(0, pickedGrams - lostGrams));
                const height = 0.9 * rem;
                return (
                  <svg width={width} height={height + 2} aria-hidden="true">
                    <defs>
                      <Hatch id={`lost-${id}`} />
                    </defs>
                    <rect x={1} y={1} width={kept} height={height} class="k-hill" />
                    <rect x={1 + kept} y={1} width={x(pickedGrams) - kept} height={height} class="k-over-bg" />
                    <rect x={1 + kept} y={1} width={x(pickedGrams) - kept} height={height} fill={`url(#lost-${id})`} />
                  </svg>
                );
              }}
            </Measured>
          </li>
        ))}
      </ul>
      <p class="say">Solid: finds a use. Hatched: finds none.</p>
    </section>
  );
}
