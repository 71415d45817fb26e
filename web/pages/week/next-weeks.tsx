/** The week and the three after it, one bar each on one scale: eaten or planned solid, over hatched, pale to the high end. */
import type { CalendarWeek } from "#shared/contracts/calendar.ts";
import { amount, expectedAmount, weekTitle } from "../../format.ts";
import { Hatch } from "../../parts/hatch.tsx";
import { Measured } from "../../parts/measured.tsx";
import { weekBars } from "./week-glut.ts";

interface NextWeeksProps {
  readonly weeks: readonly CalendarWeek[];
  readonly chosen: string;
  /** Weeks in which nobody is at home. */
  readonly away: ReadonlySet<string>;
}

export function NextWeeks({ weeks, chosen, away }: NextWeeksProps) {
  return (
    <ol class="next-weeks rows">
      {weeks.map((week, i) => (
        <li key={week.week} class={week.week === chosen ? "is-chosen" : undefined}>
          <p class="headline-row">
            <span>
              {week.week === chosen ? (
                <b class="what" aria-current="true">
                  {weekTitle(week.week)}
                </b>
              ) : (
                <a class="what hitline" href={`/week?week=${week.week}`}>
                  {weekTitle(week.week)}
                </a>
              )}
              {away.has(week.week) && <span class="quiet"> away</span>}
            </span>
            {week.glut ? <b class="over">{amount(week.surplusGrams)} over</b> : <span class="quiet">nothing over</span>}
          </p>
          <Measured>
            {({ width, rem }) => {
              const bar = weekBars(weeks, width - 2)[i];
              if (!bar) return null;
              const height = 0.9 * rem;
              return (
                <svg width={width} height={height + 2} role="img" aria-label={expectedAmount(week.grams)}>
                  <defs>
                    <Hatch id={`over-${week.week}`} />
                  </defs>
                  <rect x={1} y={1} width={bar.high} height={height} class="k-edge" />
                  <rect x={1} y={1} width={bar.eaten} height={height} class="k-hill" />
                  {bar.over > 0 && <rect x={1 + bar.eaten} y={1} width={bar.over} height={height} class="k-over-bg" />}
                  {bar.over > 0 && <rect x={1 + bar.eaten} y={1} width={bar.over} height={height} fill={`url(#over-${week.week})`} />}
                </svg>
              );
            }}
          </Measured>
          <p class="say">{expectedAmount(week.grams)}</p>
        </li>
      ))}
    </ol>
  );
}
