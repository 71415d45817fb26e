/** The cautions of the ways in sight, each once, with the ways that it is for; what holds for most of them stands folded behind. */
import type { CalendarWeek } from "#shared/contracts/calendar.ts";
import { count } from "../format.ts";
import { cautionsOf, type GatheredCaution } from "./cautions.ts";

export function TakeCare({ week, shown }: { readonly week: CalendarWeek; readonly shown: number }) {
  const cautions = cautionsOf(week.pairings.slice(0, shown));
  const general = cautions.filter((caution) => caution.general);
  if (cautions.length === 0) return null;
  return (
    <section class="care" aria-label="Take care">
      <h4 class="what">Take care</h4>
      <Cautions cautions={cautions.filter((caution) => !caution.general)} />
      {general.length > 0 && (
        <details>
          <summary class="word">{count(general.length, "caution", "cautions")} for most of these ways</summary>
          <Cautions cautions={general} />
        </details>
      )}
    </section>
  );
}

function Cautions({ cautions }: { readonly cautions: readonly GatheredCaution[] }) {
  return (
    <ul>
      {cautions.map(({ text, ways }) => (
        <li key={text}>
          {text} {ways && <span class="quiet">{ways}</span>}
        </li>
      ))}
    </ul>
  );
}
