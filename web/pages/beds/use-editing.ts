/** Acts that may fail, and a form that opens on the thing as just read: what every entry with a “Change” button does. */
import { useState } from "preact/hooks";
import { asProblem } from "../../api/problem.ts";

export interface Editing<T> {
  /** The thing as just read while its form is open. */
  readonly editing: T | null;
  /** Why the last act failed, in words. */
  readonly problem: string | null;
  readonly attempt: (act: () => Promise<void>) => Promise<void>;
  /** Reads the thing and opens its form; closes it where it is open. */
  readonly toggle: (read: () => Promise<T>) => Promise<void>;
  /** Leaves the form; after a change the page is drawn again. */
  readonly done: (changed: boolean) => void;
}

export function useEditing<T>(again: () => Promise<void>): Editing<T> {
  const [editing, setEditing] = useState<T | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const attempt = async (act: () => Promise<void>): Promise<void> => {
    try {
      setProblem(null);
      await act();
    } catch (thrown) {
      setProblem(asProblem(thrown).message);
    }
  };
  return {
    editing,
    problem,
    attempt,
    toggle: (read) => attempt(async () => setEditing(editing === null ? await read() : null)),
    done: (changed) => {
      setEditing(null);
      if (changed) void again();
    },
  };
}
