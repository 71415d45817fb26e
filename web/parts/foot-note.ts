/** The sentence at the foot of the page: what its figures rest on. */
import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";

const USUAL = "Your local food-safety authority and extension advice come first.";
export const footNote = signal(USUAL);

export function useFootNote(sentence: string | null): void {
  useEffect(() => {
    footNote.value = sentence ?? USUAL;
    return () => {
      footNote.value = USUAL;
    };
  }, [sentence]);
}
