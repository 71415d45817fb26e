/** What was pasted, kept in this window over a reload until it is stored. */
const KEPT = "stillroom-pasted-recipe";

export function keptText(): string {
  try {
    return sessionStorage.getItem(KEPT) ?? "";
  } catch {
    return "";
  }
}

/** Nothing where the browser keeps its storage shut: the page then holds the text alone. */
export function keepText(text: string): void {
  try {
    if (text === "") sessionStorage.removeItem(KEPT);
    else sessionStorage.setItem(KEPT, text);
  } catch {
    return;
  }
}
