/** The calendar: how much is over, until when, of what; the year as a plate; the chosen week and what to do with it. */
import { useMemo, useRef, useState } from "preact/hooks";
import * as calls from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem, type ApiProblem } from "../../api/problem.ts";
import { weekName } from "../../format.ts";
import type { PageProps } from "../../pages.ts";
import { useFocusLater } from "../../parts/focus-later.ts";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import { goTo, setQuery } from "../../router.ts";
import type { Calendar, CalendarWeek, Pairing } from "#shared/contracts/calendar.ts";
import type { PlanLine } from "#shared/contracts/plan-lines.ts";
import type { IsoWeek } from "#shared/kernel/iso-week.ts";
import { cookDayOf, dishesOfWeek } from "./cook-day-from-week.ts";
import { CalendarView, type CalendarActs } from "./view.tsx";
import { chosenWeek, yearAround } from "./year.ts";
import "./calendar.css";

export default function CalendarPage({ query }: PageProps) {
  const asked = query.get("week");
  const [year, setYear] = useState<string | null>(asked?.slice(0, 4) ?? null);
  const { load, again } = useLoad(`calendar ${year ?? "now"}`, (signal) => fetchYear(year, asked, signal));
  const acts = useActs(again, load.state === "ready" ? load.value : null, setYear);
  if (load.state === "waiting") return <Waiting name="Calendar" doing="Working out the year from the sowings, the picks and the weather on record." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  return <CalendarView calendar={load.value} chosen={chosenWeek(asked, load.value.today)} acts={acts} />;
}

/** The year of the week asked for, else today's. */
async function fetchYear(year: string | null, asked: string | null, signal: AbortSignal): Promise<Calendar> {
  const today = year === null ? (await calls.health(signal)).today : `${year}-07-01`;
  const shown = yearAround(chosenWeek(asked?.slice(0, 4) === year ? asked : null, today));
  return calls.calendar(shown.from, shown.weeks, signal);
}

function useActs(again: () => Promise<void>, calendar: Calendar | null, setYear: (year: string) => void): CalendarActs {
  const [said, setSaid] = useState("");
  const [problem, setProblem] = useState<ApiProblem | null>(null);
  const focusLater = useFocusLater();
  const underWay = useRef(new Set<string>());
  const recipes = useLoad("recipes", (signal) => calls.recipes({}, signal)).load;
  const cookable = useMemo(() => new Set(recipes.state === "ready" ? recipes.value.filter(({ steps }) => steps.length > 0).map(({ id }) => id) : []), [recipes]);

  /** One press, one entry: a second press while the first is under way does nothing. */
  const once = async (name: string, act: () => Promise<void>): Promise<void> => {
    if (underWay.current.has(name)) return;
    underWay.current.add(name);
    setProblem(null);
    try {
      await act();
    } catch (thrown) {
      setProblem(asProblem(thrown));
    } finally {
      underWay.current.delete(name);
    }
  };
  const dishes = (week: CalendarWeek) => dishesOfWeek(week, cookable);
  return {
    said,
    problem,
    dishes,
    choose: (week: IsoWeek) => {
      setSaid("");
      setQuery({ week });
      if (calendar && week.slice(0, 4) !== calendar.weeks[0]?.week.slice(0, 4)) setYear(week.slice(0, 4));
    },
    add: (week: CalendarWeek, { recipeId, batches, title }: Pairing) =>
      once(recipeId, async () => {
        const id = newId();
        await calls.putPlanLine(id, { week: week.week, recipeId, batches });
        focusLater(`undo-${id}`);
        await again();
        setSaid(`${title}: in the plan for ${weekName(week.week)}.`);
      }),
    undo: (week: CalendarWeek, line: PlanLine) =>
      once(line.id, async () => {
        await calls.removePlanLine(line.id);
        focusLater(`add-${week.week}-${line.recipeId}`, "week-rule");
        await again();
        setSaid(`${line.title}: taken out of the plan again.`);
      }),
    cookDay: (week: CalendarWeek) =>
      once("cook day", async () => {
        const found = dishes(week);
        if (found.from === "nothing") return setSaid("Nothing to cook is planned or suggested for this week, so there is no day to make of it.");
        const household = await calls.household();
        const id = newId();
        await calls.putCookDay(id, cookDayOf(week, found.dishes, household, calendar?.today ?? week.starts));
        goTo(`/cook-day/${id}`);
      }),
  };
}

