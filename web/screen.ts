/** Whether the page is set for a phone: under 52 em, as in the sheets of styles. */
import { signal } from "@preact/signals";

export const narrow = signal(false);

export function watchScreen(): void {
  const query = matchMedia("(max-width: 52em)");
  narrow.value = query.matches;
  query.addEventListener("change", () => {
    narrow.value = query.matches;
  });
}
