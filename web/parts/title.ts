/** The name of the page in the title bar. */
import { useEffect } from "preact/hooks";

/** Says something closer than the page's own name: the recipe, the day. */
export function useTitle(title: string | null): void {
  useEffect(() => {
    if (title !== null) document.title = `${title} · Stillroom`;
  }, [title]);
}
