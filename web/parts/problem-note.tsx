/** What is wrong with an entry: a beet rule with a lead line that takes the focus and links to each field. */
import { useEffect, useRef } from "preact/hooks";
import type { ApiProblem } from "../api/problem.ts";
import { Answer } from "./answer.tsx";
import type { FieldProblem } from "./field-problem.ts";

interface ProblemNoteProps {
  /** “Two things to put right before this sowing is saved”. */
  readonly lead: string;
  readonly faults?: readonly FieldProblem[];
}

/** Give it a new `key` for each failed attempt, so that the focus comes here again. */
export function ProblemNote({ lead, faults = [] }: ProblemNoteProps) {
  const note = useRef<HTMLDivElement>(null);
  useEffect(() => note.current?.focus(), []);
  return (
    <div class="summary" role="alert" tabIndex={-1} ref={note}>
      <p class="lead">{lead}</p>
      {faults.length > 0 && (
        <ul>
          {faults.map(({ field, text }) => (
            <li key={field}>
              <a href={`#${field}`} onClick={toField(field)}>
                {text}
              </a>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

const toField = (id: string) => (event: Event) => {
  event.preventDefault();
  const control = document.getElementById(id);
  control?.focus();
  control?.scrollIntoView({ block: "center" });
};

/** A page whose data did not come. */
export function LoadFailed({ problem, again }: { readonly problem: ApiProblem; readonly again: () => void }) {
  const words = problem.noAnswer ? "The service gives no answer, so this page has nothing to show." : problem.message;
  return (
    <>
      <Answer>{words}</Answer>
      <p class="under">Nothing is lost: what was saved is still saved.</p>
      <p class="acts">
        <button type="button" class="btn main" onClick={again}>
          Try again
        </button>
      </p>
    </>
  );
}
