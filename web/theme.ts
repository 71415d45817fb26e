/** Light, dark or sun, remembered on this device; without a choice the reader's own preference decides. */
import { signal } from "@preact/signals";

export const THEMES = ["light", "dark", "sun"] as const;
export type Theme = (typeof THEMES)[number];

const KEPT = "stillroom-theme";
const isTheme = (text: string | null | undefined): text is Theme => THEMES.some((theme) => theme === text);

/** Null while the reader's preference decides. */
export const theme = signal<Theme | null>(null);

/** Reads what public/early.js set before the first paint. */
export function readTheme(): void {
  const set = document.documentElement.dataset["theme"];
  theme.value = isTheme(set) ? set : null;
}

/** Choosing the theme that is already chosen gives the decision back to the reader's preference. */
export function chooseTheme(chosen: Theme): void {
  theme.value = theme.peek() === chosen ? null : chosen;
  if (theme.value === null) delete document.documentElement.dataset["theme"];
  else document.documentElement.dataset["theme"] = theme.value;
  try {
    if (theme.value === null) localStorage.removeItem(KEPT);
    else localStorage.setItem(KEPT, theme.value);
  } catch {
    // storage may be shut; the choice then lasts as long as the page
  }
}
