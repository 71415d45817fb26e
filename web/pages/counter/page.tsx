/** /counter/{cook day}: what to do now, what next, and every pot; the same on each device of the household. */
import { household, recipes } from "../../api/calls.ts";
import { counter } from "../../api/counter-calls.ts";
import { useLoad } from "../../api/load.ts";
import { aheadOf } from "../../parts/instants.ts";
import { useLiveChanges } from "../../parts/live-changes.ts";
import { LoadFailed } from "../../parts/problem-note.tsx";
import { Waiting } from "../../parts/waiting.tsx";
import type { PageProps } from "../../pages.ts";
import { CounterView } from "./view.tsx";
import "./counter.css";

const PARTS = ["counter", "kitchen", "larder"];

export default function CounterPage({ id = "", query }: PageProps) {
  const { load, again } = useLoad(id, async (signal) => {
    const [held, all, home] = await Promise.all([counter(id, signal), recipes({}, signal), household(signal)]);
    return { counter: held, aheadMs: aheadOf(held.now), all, home };
  });
  const value = load.state === "ready" ? load.value : null;
  useLiveChanges(PARTS, value?.counter.since ?? null, () => void again());
  if (load.state === "failed") return <LoadFailed problem={load.problem} again={() => void again()} />;
  if (value === null) return <Waiting name="At the counter" doing="Fetching where the cook day stands." />;
  return <CounterView {...value} closing={query.get("close")} again={again} />;
}
