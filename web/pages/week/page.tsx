/** /week: what is over, ideas that fit, agreeing and taking back, what to buy, pick and take out. ?week= another week than today's. */
import { addWeeks, isIsoWeek, weekOf, weekStart } from "#shared/kernel/iso-week.ts";
import { addDays } from "#shared/kernel/local-date.ts";
import * as calls from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { newId } from "../../api/new-id.ts";
import { useAttempts } from "../../parts/attempt.ts";
import { cookDayOf } from "../../parts/cook-day-from-week.ts";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import type { PageProps } from "../../pages.ts";
import { goTo } from "../../router.ts";
import { useAgreeing } from "./use-agreeing.ts";
import { WeekView } from "./week-view.tsx";
import "./week.css";

/** The week and the three after it. */
const WEEKS = 4;

export default function WeekPage({ query }: PageProps) {
  const named = query.get("week");
  const asked = named !== null && isIsoWeek(named) ? named : null;
  const { load, again } = useLoad(`week ${asked ?? ""}`, (signal) => fetchWeek(asked, signal));
  const agreeing = useAgreeing(load.state === "ready" ? load.value.week : "", again);
  const cooking = useAttempts();
  if (load.state === "waiting") return <Waiting name="This week" doing="Working out what ripens, what is over and what could be made of it." />;
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  const { week, weeks, home, today } = load.value;
  const chosen = weeks.weeks.find((one) => one.week === week);
  const startCookDay = (): Promise<boolean> =>
    cooking.attempt(async () => {
      if (!chosen) return;
      const id = newId();
      await calls.putCookDay(id, cookDayOf(chosen, chosen.cookDay, home, today));
      goTo(`/cook-day/${id}`);
    });
  return <WeekView {...load.value} agreeing={agreeing} cookDay={() => void startCookDay()} cookDayFailure={cooking.failure} again={again} />;
}

async function fetchWeek(asked: string | null, signal: AbortSignal) {
  const { today } = await calls.health(signal);
  const week = asked ?? weekOf(today);
  const [tonight, weeks, agreed, list, stored, home] = await Promise.all([calls.takeOut(signal), calls.calendar({ from: week, weeks: WEEKS }, signal), calls.agreed(week, signal), calls.shopping({ week }, signal), calls.larder(signal), calls.household(signal)]);
  return { week, today, tonight, weeks, agreed, list, places: stored.places, home, away: awayWeeks(week, home.away) };
}

/** Weeks of which somebody has said that nobody is at home on more than half of the days. */
function awayWeeks(from: string, away: readonly { readonly firstDay: string; readonly lastDay: string }[]): ReadonlySet<string> {
  const weeks = Array.from({ length: WEEKS }, (_, i) => addWeeks(from, i));
  const days = (week: string): string[] => Array.from({ length: 7 }, (_, i) => addDays(weekStart(week), i));
  return new Set(weeks.filter((week) => days(week).filter((day) => away.some(({ firstDay, lastDay }) => firstDay <= day && day <= lastDay)).length > 3));
}

export type WeekFetched = Awaited<ReturnType<typeof fetchWeek>>;
