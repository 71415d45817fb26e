/** The week from its data: sentence, four weeks as a picture, ideas, what is reserved, lists, cook day. */
import { weekOf } from "#shared/kernel/iso-week.ts";
import { weekName, weekTitle } from "../../format.ts";
import { Answer } from "../../parts/answer.tsx";
import type { Failure } from "../../parts/attempt.ts";
import { rowNames } from "../../parts/crop-names.ts";
import { ProblemNote } from "../../parts/problem-note.tsx";
import { RipeTable } from "../../parts/ripe-table.tsx";
import { ShoppingParts } from "../../parts/shopping-parts.tsx";
import { TakeOutList } from "../../parts/take-out-list.tsx";
import { useTitle } from "../../parts/title.ts";
import { weekSentence } from "../../parts/week-words.ts";
import { written } from "../../parts/written.ts";
import { narrow } from "../../screen.ts";
import { Ideas } from "./ideas.tsx";
import { NextWeeks } from "./next-weeks.tsx";
import type { WeekFetched } from "./page.tsx";
import { Reserved } from "./reserved.tsx";
import type { Agreeing } from "./use-agreeing.ts";
import { glutSentence } from "./week-glut.ts";

interface WeekViewProps extends WeekFetched {
  readonly agreeing: Agreeing;
  readonly cookDay: () => void;
  readonly cookDayFailure: Failure | null;
  readonly again: () => Promise<void>;
}

export function WeekView({ week, today, tonight, weeks, agreed, list, places, away, agreeing, cookDay, cookDayFailure, again }: WeekViewProps) {
  useTitle(week === weekOf(today) ? "This week" : weekTitle(week));
  const chosen = weeks.weeks.find((one) => one.week === week);
  if (!chosen) return <Answer>Nothing is known of {weekName(week)}.</Answer>;
  const names = rowNames(weeks.rows);
  const said = glutSentence(chosen, names, week === weekOf(today));
  const { before, over, after } = weekSentence(chosen);
  return (
    <>
      <Answer>
        {said.before}
        {said.over && <span class="over">{said.over}</span>}
        {said.after}
      </Answer>
      <p class="under">
        {before}
        {over}
        {after}
        {away.has(week) && " Nobody is at home this week."}
      </p>
      <NextWeeks weeks={weeks.weeks} chosen={week} away={away} />
      <p class="say">Solid: eaten or planned. Hatched: over. Pale: up to the high end.</p>
      <details class="week-ripe">
        <summary class="word">What ripens, crop by crop</summary>
        <RipeTable week={chosen} names={names} width={narrow.value ? 48 : 84} />
      </details>
      <Ideas week={chosen} names={names} agreeing={agreeing} />
      <CookDay dishes={chosen.cookDay.length} agreed={chosen.planned.length > 0} week={week} cookDay={cookDay} failure={cookDayFailure} />
      <Reserved agreed={agreed} />
      <TakeOutList tonight={tonight} places={places} again={again} />
      <section class="sec" aria-labelledby="list-h">
        <div class="headline-row">
          <h2 id="list-h">What it takes</h2>
          <a class="hitline no-print" href={`/supplies?week=${week}`}>
            Supplies and shopping
          </a>
        </div>
        <p class="under">{written(list.headline)}</p>
        {list.supplies
          .filter(({ short }) => short > 0)
          .map(({ kind, text }) => (
            <p class="notice" key={kind}>
              {text}
            </p>
          ))}
        <ShoppingParts list={list} />
      </section>
    </>
  );
}

interface CookDayProps {
  readonly dishes: number;
  readonly agreed: boolean;
  readonly week: string;
  readonly cookDay: () => void;
  readonly failure: Failure | null;
}

function CookDay({ dishes, agreed, week, cookDay, failure }: CookDayProps) {
  if (dishes === 0) return null;
  return (
    <div class="no-print">
      {failure && <ProblemNote key={failure.n} lead={failure.lead} faults={failure.faults} />}
      <p class="acts">
        <button type="button" class={`btn${agreed ? " main" : ""}`} onClick={cookDay}>
          Start a cook day from {weekName(week)}
        </button>
        <span class="say">{agreed ? "It takes the batches that are agreed." : "Nothing is agreed yet, so it takes what the season’s plan has for this week."}</span>
      </p>
    </div>
  );
}
