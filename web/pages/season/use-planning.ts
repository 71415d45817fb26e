/** Planning the season anew: begun with one press, followed to its end, and stopped with another. The old plan stays on show meanwhile. */
import { useEffect, useRef, useState } from "preact/hooks";
import type { SeasonJob, SeasonQuestion } from "#shared/contracts/season-plan.ts";
import { cancelSeasonJob, planSeason, seasonJob } from "../../api/calls.ts";
import { ApiProblem, asProblem } from "../../api/problem.ts";

/** How often is asked how far it is. */
const ASK_MS = 1000;

export interface Planning {
  readonly job: SeasonJob | null;
  readonly working: boolean;
  readonly problem: ApiProblem | null;
  /** What has happened, once, for the status line. */
  readonly said: string;
  readonly begin: (question: SeasonQuestion) => Promise<void>;
  readonly cancel: () => Promise<void>;
}

const isUnderWay = ({ state }: Pick<SeasonJob, "state">): boolean => state === "waiting" || state === "working";

/** `running`: the work that is under way already when the page comes. `again` fetches the plan that then stands. */
export function usePlanning(running: string | null, again: () => Promise<void>): Planning {
  const [job, setJob] = useState<SeasonJob | null>(null);
  const [problem, setProblem] = useState<ApiProblem | null>(null);
  const [said, setSaid] = useState("");
  const followed = useRef<string | null>(null);
  const leaving = useRef(new AbortController());

  const follow = async (id: string): Promise<void> => {
    if (followed.current === id) return;
    followed.current = id;
    const { signal } = leaving.current;
    try {
      for (;;) {
        const now = await seasonJob(id, signal);
        if (signal.aborted) return;
        setJob(now);
        if (!isUnderWay(now)) return await ended(now);
        await pause(signal);
      }
    } catch (thrown) {
      if (signal.aborted) return;
      setProblem(asProblem(thrown));
      setJob(null);
    }
  };
  const ended = async (last: SeasonJob): Promise<void> => {
    if (last.state === "failed") setProblem(new ApiProblem(-1, last.text));
    setSaid(last.state === "done" ? "The new plan is here." : last.state === "cancelled" ? "Planning was stopped; the best plan so far is kept." : "");
    await again();
    setJob(null);
  };
  useEffect(() => () => leaving.current.abort(), []);
  useEffect(() => {
    if (running !== null) void follow(running);
  }, [running]);
  return {
    job,
    working: job !== null && isUnderWay(job),
    problem,
    said,
    begin: async (question) => {
      setProblem(null);
      setSaid("Planning has begun.");
      try {
        const begun = await planSeason(question, leaving.current.signal);
        setJob(begun);
        await follow(begun.id);
      } catch (thrown) {
        setProblem(asProblem(thrown));
      }
    },
    cancel: async () => {
      if (job === null) return;
      try {
        await cancelSeasonJob(job.id);
      } catch (thrown) {
        setProblem(asProblem(thrown));
      }
    },
  };
}

function pause(signal: AbortSignal): Promise<void> {
  return new Promise((go) => {
    const timer = setTimeout(go, ASK_MS);
    signal.addEventListener("abort", () => {
      clearTimeout(timer);
      go();
    });
  });
}
