/** /cook-day: the days and a new one. /cook-day/{id}: one day with its timetable, as lanes and as a list. */
import { cookDay, cookDays, health, household, recipes, timetable } from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import type { PageProps } from "../../pages.ts";
import { DayList } from "./day-list.tsx";
import { DayView } from "./day-view.tsx";
import "./cook-day.css";

export default function CookDayPage({ id, query }: PageProps) {
  return id === undefined ? <Days recipeId={query.get("recipe")} /> : <One id={id} />;
}

function Days({ recipeId }: { readonly recipeId: string | null }) {
  const { load, again } = useLoad("cook-days", async (signal) => {
    const [days, home, all, state] = await Promise.all([cookDays(signal), household(signal), recipes({}, signal), health(signal)]);
    return { days, home, all, today: state.today };
  });
  if (load.state === "waiting") return <Waiting name="Cook day" doing="Fetching the cook days." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  return <DayList {...load.value} recipeId={recipeId} />;
}

function One({ id }: { readonly id: string }) {
  const { load, again } = useLoad(id, async (signal) => {
    const [day, plan, all, state] = await Promise.all([cookDay(id, signal), timetable(id, signal), recipes({}, signal), health(signal)]);
    return { day, plan, all, today: state.today };
  });
  if (load.state === "waiting") return <Waiting name="Cook day" doing="Fitting the steps to your hands, oven, burners and pots." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  return <DayView {...load.value} again={again} />;
}
