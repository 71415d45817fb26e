/** Plans the season anew: for how many weeks, how far it is, and a way to stop it. */
import { useState } from "preact/hooks";
import type { SeasonQuestion } from "#shared/contracts/season-plan.ts";
import { Choice } from "../../parts/form-field.tsx";
import { ProblemNote } from "../../parts/problem-note.tsx";
import type { Planning } from "./use-planning.ts";

const LENGTHS = [
  { value: "8", words: "8 weeks" },
  { value: "20", words: "20 weeks" },
  { value: "30", words: "30 weeks" },
] as const;

interface PlanAnewProps {
  readonly planning: Planning;
  readonly from: string;
  readonly weeks: number | null;
  /** A plan stands already. */
  readonly anew: boolean;
}

export function PlanAnew({ planning, from, weeks, anew }: PlanAnewProps) {
  const [span, setSpan] = useState<(typeof LENGTHS)[number]["value"]>(LENGTHS.find(({ value }) => Number(value) === weeks)?.value ?? "20");
  const { job, working, problem, said } = planning;
  const question: SeasonQuestion = { from, weeks: Number(span) };
  return (
    <div class="plan-anew no-print">
      {problem && <ProblemNote key={problem.message} lead={problem.message} faults={problem.fields.map(({ path, message }) => ({ field: "plan-weeks", text: `${path}: ${message}` }))} />}
      {working && job ? (
        <>
          <p id="plan-progress">{job.text}</p>
          <p class="acts">
            <progress max={1} value={job.progress} aria-labelledby="plan-progress" />
            <button type="button" class="btn" onClick={() => void planning.cancel()}>
              Stop and keep the best so far
            </button>
          </p>
        </>
      ) : (
        <>
          <Choice name="plan-weeks" legend="From this week on, for" chosen={span} onChoose={setSpan} options={LENGTHS} />
          <p class="acts">
            <button type="button" class="btn main" onClick={() => void planning.begin(question)}>
              {anew ? "Plan anew" : "Plan the season"}
            </button>
          </p>
        </>
      )}
      <p class="said" role="status">
        {said}
      </p>
    </div>
  );
}
