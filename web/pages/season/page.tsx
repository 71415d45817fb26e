/** /season: what is planned when, what is wanted filling up, the freezer week by week, and how sure all that is. */
import { weekOf } from "#shared/kernel/iso-week.ts";
import { health, recipeBriefs, seasonPlan, stockTargets, suggestedTargets, wishes } from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import { SeasonView } from "./season-view.tsx";
import { usePlanning } from "./use-planning.ts";
import { wantedOf } from "./wanted-words.ts";
import "./season.css";

export default function SeasonPage() {
  const { load, again } = useLoad("season", async (signal) => {
    const [standing, targets, asked, suggested, all, state] = await Promise.all([seasonPlan(signal), stockTargets(signal), wishes(signal), suggestedTargets(signal), recipeBriefs(signal), health(signal)]);
    // what is wanted already needs no suggesting
    const open = suggested.filter(({ recipeId }) => !targets.some((target) => target.recipeId === recipeId));
    return { standing, wanted: wantedOf(targets, asked), suggested: open, all, today: state.today };
  });
  const planning = usePlanning(load.state === "ready" ? load.value.standing.jobId : null, again);
  if (load.state === "waiting") return <Waiting name="Season" doing="Fetching the plan of the season." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  const { standing, wanted, suggested, all, today } = load.value;
  return <SeasonView standing={standing} planning={planning} wanted={wanted} suggested={suggested} recipes={all} today={today} thisWeek={weekOf(today)} again={again} />;
}
