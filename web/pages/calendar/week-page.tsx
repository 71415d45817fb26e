/** The chosen week: what ripens, in words and ranges, and beside it what to do with it. */
import type { Calendar, CalendarWeek } from "#shared/contracts/calendar.ts";
import { inOurUnits, weekName, weekTitle } from "../../format.ts";
import { cookDayWords, dishesOfWeek } from "../../parts/cook-day-from-week.ts";
import { RipeTable } from "../../parts/ripe-table.tsx";
import { Ways, type WaysProps } from "./ways.tsx";
import { pickedWords, weekSentence } from "../../parts/week-words.ts";

export interface WeekProps extends WaysProps {
  /** Gone by: what was picked, nothing to choose. */
  readonly past: boolean;
  /** The season's plan that the first ways come from, if one stands. */
  readonly seasonPlan: Calendar["seasonPlan"];
  readonly onCookDay: () => void;
}

interface WeekPageProps extends WeekProps {
  readonly onStep: (weeks: number) => void;
  /** What the last press did. */
  readonly said: string;
}

export function WeekPage(props: WeekPageProps) {
  const { week, names, past, onStep, said } = props;
  return (
    <section class="week-page" aria-labelledby="week-h">
      <div>
        <h2 class="week-title" id="week-h">
          {weekTitle(week.week)}
        </h2>
        <p aria-live="polite">{past ? `Picked: ${pickedWords(week, names)}.` : <Sentence week={week} />}</p>
        <p class="week-step">
          <button type="button" class="btn word" onClick={() => onStep(-1)}>
            Week earlier
          </button>
          <button type="button" class="btn word" onClick={() => onStep(1)}>
            Week later
          </button>
        </p>
        {!past && <RipeTable week={week} names={names} width={84} />}
      </div>
      <div>
        <div class="headline-row">
          <h3 class="week-title">{past ? "What was done with it" : "What to do with it"}</h3>
          {!past && <CookDayButton {...props} />}
        </div>
        {!past && <CookDayWords {...props} />}
        <p class="said" role="status">
          {said}
        </p>
        {!past && <PlannedBy {...props} />}
        {past ? <p>Eaten fresh, or put up on a cook day.</p> : <Ways {...props} />}
      </div>
    </section>
  );
}

/** The same week under its heading in the phone's list. */
export function WeekInList(props: WeekProps & { readonly said: string }) {
  return (
    <div class="inside">
      <p>
        <Sentence week={props.week} short />
      </p>
      <RipeTable week={props.week} names={props.names} width={48} />
      <h3 class="head">What to do with it</h3>
      <p class="said" role="status">
        {props.said}
      </p>
      <PlannedBy {...props} />
      <Ways {...props} />
      <p class="acts">
        <CookDayButton {...props} />
      </p>
      <CookDayWords {...props} />
    </div>
  );
}

function Sentence({ week, short = false }: { readonly week: CalendarWeek; readonly short?: boolean }) {
  const { before, over, after } = weekSentence(week, short);
  return (
    <>
      {before}
      {over && <b class="over">{over}</b>}
      {after}
    </>
  );
}

/** Who planned what stands first, and whether it still holds. */
function PlannedBy({ seasonPlan }: Pick<WeekProps, "seasonPlan">) {
  if (!seasonPlan) return null;
  return (
    <p class="say">
      {inOurUnits(seasonPlan.text)}{" "}
      <a class="hitline" href="/season">
        {seasonPlan.upToDate ? "The season’s plan" : "Plan the season anew"}
      </a>
    </p>
  );
}

function CookDayButton({ week, onCookDay }: Pick<WeekProps, "week" | "onCookDay">) {
  return (
    <button type="button" class="btn main" aria-describedby={`cook-${week.week}`} onClick={onCookDay}>
      Start a cook day from {weekName(week.week)}
    </button>
  );
}

function CookDayWords({ week }: Pick<WeekProps, "week">) {
  return (
    <p class="say" id={`cook-${week.week}`}>
      {cookDayWords(dishesOfWeek(week), week.week)}
    </p>
  );
}
