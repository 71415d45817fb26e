/** What is ticked off a list, kept on this device: a list in the hand in a shop has no need of the service. */
import { useState } from "preact/hooks";

const NAME = "stillroom-ticked";

interface Kept {
  /** The list that the ticks belong to; another list begins without any. */
  readonly list: string;
  readonly lines: readonly string[];
}

export function useTicks(list: string): { readonly has: (line: string) => boolean; readonly toggle: (line: string) => void } {
  const [kept, setKept] = useState(readKept);
  const lines = kept.list === list ? kept.lines : [];
  return {
    has: (line) => lines.includes(line),
    toggle: (line) => {
      const next: Kept = { list, lines: lines.includes(line) ? lines.filter((one) => one !== line) : [...lines, line] };
      setKept(next);
      try {
        localStorage.setItem(NAME, JSON.stringify(next));
      } catch {
        /* storage may be shut; the ticks then last as long as the page */
      }
    },
  };
}

function readKept(): Kept {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(NAME) ?? "null");
    if (typeof kept === "object" && kept !== null && "list" in kept && "lines" in kept && Array.isArray(kept.lines)) return { list: String(kept.list), lines: kept.lines.filter((line) => typeof line === "string") };
  } catch {
    /* nothing that can be read is nothing ticked */
  }
  return { list: "", lines: [] };
}
