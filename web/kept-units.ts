/** The household's units as this device remembers them, so that a page does not begin in others than it ends in. */
import { effect } from "@preact/signals";
import { units } from "./units.ts";

const KEPT = "stillroom-units";

export function keepUnits(): void {
  try {
    const kept = localStorage.getItem(KEPT);
    if (kept === "us" || kept === "imperial") units.value = kept;
    effect(() => localStorage.setItem(KEPT, units.value));
  } catch {
    // storage may be shut; the household's answer then decides alone
  }
}
