/** Agreeing on ways for a week, which reserves what they use, and taking that back. One press, one entry. */
import { useState } from "preact/hooks";
import { agreeWeek, removePlanLine, unagreeWeek } from "../../api/calls.ts";
import { newId } from "../../api/new-id.ts";
import { asProblem } from "../../api/problem.ts";
import { useAttempts, type Failure } from "../../parts/attempt.ts";
import { useFocusLater } from "../../parts/focus-later.ts";
import { count } from "../../format.ts";

export interface Way {
  readonly recipeId: string;
  readonly title: string;
  readonly batches: number;
}

interface Done {
  readonly words: string;
  readonly ids: readonly string[];
}

export interface Agreeing {
  readonly failure: Failure | null;
  readonly done: Done | null;
  /** What did not fit as it stands, and may be agreed on if the rest is bought. */
  readonly short: readonly Way[] | null;
  readonly agree: (ways: readonly Way[], buyMissing?: boolean) => Promise<void>;
  readonly takeBack: (ids: readonly string[], words: string) => Promise<void>;
  readonly takeAllBack: () => Promise<void>;
}

const CONFLICT = 409;

export function useAgreeing(week: string, again: () => Promise<void>): Agreeing {
  const { failure, attempt } = useAttempts();
  const [done, setDone] = useState<Done | null>(null);
  const [short, setShort] = useState<readonly Way[] | null>(null);
  const focusLater = useFocusLater();
  const finish = async (next: Done): Promise<void> => {
    setShort(null);
    await again();
    setDone(next);
  };
  return {
    failure,
    done,
    short,
    agree: async (ways, buyMissing = false) => {
      await attempt(async () => {
        const lines = ways.map(({ recipeId, batches }) => ({ id: newId(), recipeId, batches }));
        try {
          await agreeWeek(week, { lines, ...(buyMissing ? { buyMissing } : {}) });
        } catch (thrown) {
          const problem = asProblem(thrown);
          setShort(problem.status === CONFLICT && !buyMissing ? ways : null);
          throw thrown;
        }
        focusLater("agreed-undo");
        await finish({ words: `${ways.length === 1 ? (ways[0]?.title ?? "") : count(ways.length, "way", "ways")}: agreed. What is used is reserved.`, ids: lines.map(({ id }) => id) });
      });
    },
    takeBack: async (ids, words) => {
      await attempt(async () => {
        for (const id of ids) await removePlanLine(id);
        focusLater("ways-h");
        await finish({ words, ids: [] });
      });
    },
    takeAllBack: async () => {
      await attempt(async () => {
        await unagreeWeek(week);
        focusLater("ways-h");
        await finish({ words: "The whole week is taken back; nothing is reserved for it any more.", ids: [] });
      });
    },
  };
}
