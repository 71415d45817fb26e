/** The bed used last, remembered on this device, so that a row of sowings is quickly written. */
const KEPT = "stillroom-last-bed";

export function lastBed(): string | null {
  try {
    return localStorage.getItem(KEPT);
  } catch {
    return null;
  }
}

export function rememberBed(id: string): void {
  try {
    localStorage.setItem(KEPT, id);
  } catch {
    // storage may be shut; the next slip then begins with the bed that has most room
  }
}
