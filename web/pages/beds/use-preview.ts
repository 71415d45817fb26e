/** What the sowing being written would come to, asked a moment after the last key. */
import { useEffect, useState } from "preact/hooks";
import type { NewSowing, SowingPreview } from "#shared/contracts/sowings.ts";
import { previewSowing } from "../../api/calls.ts";
import { isAbort } from "../../api/client.ts";
import { asProblem } from "../../api/problem.ts";
import type { SlipReading } from "./slip.ts";

const PAUSE_MS = 250;

export interface Preview {
  /** The slip as it read when this was asked: sentence and picture always speak of the same sowing. */
  readonly read: SlipReading;
  readonly answer: SowingPreview;
}

/** Null while nothing can be said. The last answer for the same crop stays until the next is there, so that nothing blinks. */
export function usePreview(read: SlipReading): { readonly preview: Preview | null; readonly failed: string | null } {
  const [preview, setPreview] = useState<Preview | null>(null);
  const [failed, setFailed] = useState<string | null>(null);
  const asked = read.body === null ? null : askedFor(read.body);
  useEffect(() => {
    const body = read.body;
    if (body === null) return;
    const control = new AbortController();
    const ask = async (): Promise<void> => {
      try {
        const answer = await previewSowing(body, control.signal);
        if (control.signal.aborted) return;
        setPreview({ read, answer });
        setFailed(null);
      } catch (thrown) {
        if (!isAbort(thrown) && !control.signal.aborted) setFailed(asProblem(thrown).message);
      }
    };
    const timer = setTimeout(() => void ask(), PAUSE_MS);
    return () => {
      clearTimeout(timer);
      control.abort();
    };
  }, [asked]);
  const sameCrop = preview?.read.body?.crop === read.body?.crop;
  return { preview: read.body !== null && sameCrop ? preview : null, failed: asked === null ? null : failed };
}

/** What the answer depends on; a note changes nothing. */
function askedFor({ crop, variety, varietyDays, bedId, method, sownOn, plantedOutOn, rowM, plants, areaM2, standsSince }: NewSowing): string {
  return JSON.stringify([crop, variety, varietyDays, bedId, method, sownOn, plantedOutOn, rowM, plants, areaM2, standsSince]);
}
