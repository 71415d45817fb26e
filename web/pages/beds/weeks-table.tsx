/** The amounts of one sowing by week: the same figures as in the picture. */
import type { Pick } from "#shared/contracts/picks.ts";
import type { Forecast } from "#shared/contracts/sowings.ts";
import { weekOf } from "#shared/kernel/iso-week.ts";
import type { LocalDate } from "#shared/kernel/local-date.ts";
import { capital, measured, seasons, tableUnit, weekNumber, weekSpan, weightCell, weightSpanCell } from "../../format.ts";

/** Weeks that hardly any season reaches are left out. */
const LEAST_CHANCE = 0.025;

export function WeeksTable({ forecast, picks, today }: { readonly forecast: Forecast; readonly picks: readonly Pick[]; readonly today: LocalDate }) {
  const now = weekOf(today);
  const pickedIn = (week: string): number => picks.filter(({ pickedOn }) => weekOf(pickedOn) === week).reduce((sum, { grams }) => sum + grams, 0);
  const weeks = forecast.weeks.filter(({ week, chanceInHarvest }) => pickedIn(week) > 0 || (week >= now && chanceInHarvest >= LEAST_CHANCE));
  if (weeks.length === 0) return null;
  return (
    <details class="by-week">
      <summary class="word">The weeks as a table</summary>
      <div class="scroll" tabIndex={0} role="region" aria-label="The weeks as a table">
        <table>
          <thead>
            <tr>
              <th scope="col">Week</th>
              <th scope="col" class="num">
                Picked
              </th>
              <th scope="col" class="num">
                Likely, {tableUnit().word}
              </th>
              <th scope="col" class="num">
                Low–high
              </th>
              <th scope="col">In harvest</th>
            </tr>
          </thead>
          <tbody>
            {weeks.map(({ week, grams, chanceInHarvest }) => (
              <tr key={week}>
                <th scope="row">
                  {weekNumber(week)} · {weekSpan(week, "short")}
                </th>
                <td class="num">{pickedIn(week) > 0 ? measured(pickedIn(week)) : ""}</td>
                <td class="num">{week < now ? "" : weightCell(grams.likely)}</td>
                <td class="num quiet">{week < now ? "" : weightSpanCell(grams.low, grams.high)}</td>
                <td class="quiet">{week < now ? "picked" : capital(seasons(chanceInHarvest))}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
