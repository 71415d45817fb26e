/** Crops at hand: what stands in the larder as picked, and what the calendar expects this week. Asked for only when somebody wants to know. */
import { calendar, larder } from "../../api/calls.ts";
import { useLoad } from "../../api/load.ts";
import { listed } from "../../format.ts";
import { cropWord } from "#shared/kernel/crop-words.ts";
import { cropsAtHand, type AtHand } from "./at-hand.ts";

/** `crops` is null while it is being fetched, and where it cannot be had. */
export function useAtHand(wanted: boolean): { readonly crops: ReadonlySet<string> | null; readonly sentence: string } {
  const { load } = useLoad<AtHand | null>(`at-hand ${wanted}`, async (signal) => {
    if (!wanted) return null;
    const [held, weeks] = await Promise.all([larder(signal), calendar({ weeks: 1 }, signal)]);
    return cropsAtHand(held, weeks);
  });
  if (load.state === "failed") return { crops: null, sentence: "What is at hand could not be fetched; all recipes are shown." };
  if (load.state !== "ready" || load.value === null) return { crops: null, sentence: wanted ? "Looking what is at hand." : "" };
  const { crops } = load.value;
  const names = [...crops].map(cropWord);
  const shown = names.length > MOST_NAMED ? [...names.slice(0, MOST_NAMED), `${names.length - MOST_NAMED} more`] : names;
  return { crops, sentence: names.length === 0 ? "Nothing from the garden is at hand this week." : `At hand: ${listed(shown)}. A recipe counts when everything it takes from the garden is there.` };
}

const MOST_NAMED = 8;
