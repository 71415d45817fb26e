/** /cook-day: the days and a new one. /cook-day/{id}: one day with its timetable, as lanes and as a list. */
import { cookDay, cookDays, crops, health, household, recipe, recipes, timetable } from "../../api/calls.ts";
import { counter } from "../../api/counter-calls.ts";
import { isAbort } from "../../api/client.ts";
import { useLoad } from "../../api/load.ts";
import { asProblem } from "../../api/problem.ts";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import type { PageProps } from "../../pages.ts";
import { agreedPlan } from "./agreed.ts";
import { DayList } from "./day-list.tsx";
import { DayView, type Planned } from "./day-view.tsx";
import "./cook-day.css";

export default function CookDayPage({ id, query }: PageProps) {
  return id === undefined ? <Days recipeId={query.get("recipe")} /> : <One id={id} />;
}

function Days({ recipeId }: { readonly recipeId: string | null }) {
  const { load, again } = useLoad(`cook-days ${recipeId ?? ""}`, async (signal) => {
    const [days, home, state, asked] = await Promise.all([cookDays(signal), household(signal), health(signal), recipeId === null ? null : recipe(recipeId, signal)]);
    return { days, home, asked, today: state.today };
  });
  if (load.state === "waiting") return <Waiting name="Cook day" doing="Fetching the cook days." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  return <DayList {...load.value} />;
}

function One({ id }: { readonly id: string }) {
  const { load, again } = useLoad(id, async (signal) => {
    const [planned, all, book, state] = await Promise.all([plannedDay(id, signal), recipes({}, signal), crops(signal), health(signal)]);
    return { planned, all, book, today: state.today };
  });
  if (load.state === "waiting") return <Waiting name="Cook day" doing="Fitting the steps to your hands, oven, burners and pots." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  return <DayView {...load.value} again={again} />;
}

/**
 * The plan agreed on, or the service's own timetable. A day whose timetable takes too long to work out is shown all the same, so that a
 * dish can be taken out of it.
 */
async function plannedDay(id: string, signal: AbortSignal): Promise<Planned> {
  const [day, atCounter] = await Promise.all([cookDay(id, signal), counter(id, signal)]);
  const agreed = agreedPlan(atCounter);
  if (agreed) return { day, counter: atCounter, plan: agreed };
  const plan = await timetable(id, signal).catch((thrown: unknown) => {
    if (isAbort(thrown)) throw thrown;
    return asProblem(thrown);
  });
  return { day, counter: atCounter, plan };
}
