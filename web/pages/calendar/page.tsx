/** The calendar: how much is over, until when, of what; the year as a plate; the chosen week and what to do with it. */
import { useEffect, useRef, useState } from "preact/hooks";
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
import { isIsoWeek, type IsoWeek } from "#shared/kernel/iso-week.ts";
import { cookDayOf, dishesOfWeek } from "../../parts/cook-day-from-week.ts";
import { CalendarView, type CalendarActs } from "./view.tsx";
import { chosenWeek, yearAround } from "./year.ts";
import "./calendar.css";

export default function CalendarPage({ query }: PageProps) {
  const asked = query.get("week");
  const [year, setYear] = useState<string | null>(asked?.slice(0, 4) ?? null);
  /** A week of another year: it is shown when that year is there, until then the week before stays. */
  const [wanted, setWanted] = useState<IsoWeek | null>(null);
  const { load, again } = useLoad(`calendar ${year ?? "now"}`, (signal) => fetchYear(year, signal));
  const calendar = load.state === "ready" ? load.value : null;
  const choose = (week: IsoWeek): void => {
    if (calendar?.weeks.some((shown) => shown.week === week)) return setQuery({ week });
    setWanted(week);
    setYear(week.slice(0, 4));
  };
  useEffect(() => {
    if (wanted === null || !calendar?.weeks.some(({ week }) => week === wanted)) return;
    setWanted(null);
    setQuery({ week: wanted });
  }, [wanted, calendar]);
  useEffect(() => {
    // the address was changed by a link or by going back
    if (asked !== null && isIsoWeek(asked) && asked.slice(0, 4) !== year && calendar !== null && !calendar.weeks.some(({ week }) => week === asked)) setYear(asked.slice(0, 4));
  }, [asked]);
  const acts = useActs(again, calendar, choose);
  if (load.state === "waiting") return <Waiting name="Calendar" doing="Working out the year from the sowings, the picks and the weather on record." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  return <CalendarView calendar={load.value} chosen={chosenWeek(asked, load.value.today)} acts={acts} />;
}

/** The year asked for, else the service's own choice: that of today. */
function fetchYear(year: string | null, signal: AbortSignal): Promise<Calendar> {
  if (year === null || !isIsoWeek(`${year}-W01`)) return calls.calendar({}, signal);
  const { from, weeks } = yearAround(`${year}-W01`);
  return calls.calendar({ from, weeks }, signal);
}

function useActs(again: () => Promise<void>, calendar: Calendar | null, choose: (week: IsoWeek) => void): CalendarActs {
  const [said, setSaid] = useState("");
  const [problem, setProblem] = useState<ApiProblem | null>(null);
  const focusLater = useFocusLater();
  const underWay = useRef(new Set<string>());

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
  return {
    said,
    problem,
    choose: (week: IsoWeek) => {
      setSaid("");
      choose(week);
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
        const [household, cookable] = await Promise.all([calls.household(), withSteps(week)]);
        const found = dishesOfWeek(week, cookable);
        if (found.from === "nothing") return setSaid("Nothing to cook is planned or suggested for this week, so there is no day to make of it.");
        const id = newId();
        await calls.putCookDay(id, cookDayOf(week, found.dishes, household, calendar?.today ?? week.starts));
        goTo(`/cook-day/${id}`);
      }),
  };
}

/** Of what is planned or suggested for the week, the recipes that have steps. */
async function withSteps(week: CalendarWeek): Promise<(recipeId: string) => boolean> {
  const ids = new Set([...week.planned, ...week.pairings].map(({ recipeId }) => recipeId));
  const recipes = await Promise.all([...ids].map((id) => calls.recipe(id)));
  const cookable = new Set(recipes.filter(({ steps }) => steps.length > 0).map(({ id }) => id));
  return (recipeId) => cookable.has(recipeId);
}
