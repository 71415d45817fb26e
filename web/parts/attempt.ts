/** One entry at a time, and what is wrong with it: a second press while the first is under way does nothing, and what failed is said in words. */
import { useRef, useState } from "preact/hooks";
import { asProblem } from "../api/problem.ts";
import { leadFor, type FieldProblem } from "./field-problem.ts";

export interface Failure {
  /** Rises with each failure, so that the note takes the focus again. */
  readonly n: number;
  readonly lead: string;
  readonly faults: readonly FieldProblem[];
}

export interface Attempts {
  readonly failure: Failure | null;
  /** Said of what was typed, before anything is sent. `what`: “the place”. */
  readonly refuse: (faults: readonly FieldProblem[], what: string) => void;
  /** Said of the entry as a whole. */
  readonly say: (lead: string) => void;
  /** Sends; whatever goes wrong is kept as the failure. Settles with whether it went well. A way back is offered last, when the next press counts again. */
  readonly attempt: (act: () => Promise<void>) => Promise<boolean>;
  /** What stands below a field. */
  readonly bad: (field: string) => { readonly wrong: string } | null;
}

/** `fieldAt` names the control that a path of the service's answer belongs to. */
export function useAttempts(fieldAt: (path: string) => string | null = () => null): Attempts {
  const [failure, setFailure] = useState<Failure | null>(null);
  const underWay = useRef(false);
  const put = (lead: string, faults: readonly FieldProblem[]): void => setFailure((before) => ({ n: (before?.n ?? 0) + 1, lead, faults }));
  return {
    failure,
    refuse: (faults, what) => put(leadFor(faults.length, what), faults),
    say: (lead) => put(lead, []),
    attempt: async (act) => {
      if (underWay.current) return false;
      underWay.current = true;
      try {
        await act();
        setFailure(null);
        return true;
      } catch (thrown) {
        const problem = asProblem(thrown);
        put(problem.message, problem.fields.flatMap(({ path, message }) => faultAt(fieldAt(path), message)));
        return false;
      } finally {
        underWay.current = false;
      }
    },
    bad: (field) => {
      const fault = failure?.faults.find((one) => one.field === field);
      return fault ? { wrong: fault.text } : null;
    },
  };
}

const faultAt = (field: string | null, text: string): FieldProblem[] => (field === null ? [] : [{ field, text }]);
