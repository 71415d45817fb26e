/** Addresses of pages: one signal says where the reader is, links and `goTo` change it, the browser's history keeps it. */
import { signal } from "@preact/signals";

export interface Place {
  readonly path: string;
  readonly query: URLSearchParams;
  /** Rises by one when the reader goes to another page; the shell then moves the focus and announces the page. */
  readonly arrival: number;
}

const here = (arrival: number): Place => ({ path: location.pathname, query: new URLSearchParams(location.search), arrival });

export const place = signal<Place>({ path: "/", query: new URLSearchParams(), arrival: 0 });

let owed = false;

/** Whether the reader has just come to a page and has not touched anything since: its first sentence then takes the focus, also when it replaces one that waited. */
export const focusOwed = (): boolean => owed;

/** Goes to an address of this site, as a press on a link would. */
export function goTo(href: string): void {
  history.pushState(null, "", href);
  arrive();
  scrollTo(0, 0);
}

/** Writes what is chosen on the page into its address without leaving the page; `null` takes a name out. */
export function setQuery(changes: Readonly<Record<string, string | null>>): void {
  const query = new URLSearchParams(location.search);
  for (const [name, value] of Object.entries(changes)) {
    if (value === null) query.delete(name);
    else query.set(name, value);
  }
  const text = query.toString();
  history.replaceState(null, "", location.pathname + (text ? `?${text}` : ""));
  place.value = here(place.peek().arrival);
}

/** Starts to follow the address bar and the links of the page; called once. */
export function followAddresses(): void {
  place.value = here(0);
  addEventListener("popstate", arrive);
  for (const touch of ["pointerdown", "keydown"]) addEventListener(touch, () => (owed = false), { capture: true });
  document.addEventListener("click", (event) => {
    const href = ownPageBehind(event);
    if (href === null) return;
    event.preventDefault();
    goTo(href);
  });
}

function arrive(): void {
  owed = true;
  place.value = here(place.peek().arrival + 1);
}

/** The address a plain press leads to, or null when the browser should deal with it: another site, a file of the API, a new tab, a place on this page. */
function ownPageBehind(event: MouseEvent): string | null {
  if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return null;
  const link = event.target instanceof Element ? event.target.closest("a") : null;
  if (!link || link.target || link.hasAttribute("download")) return null;
  const to = new URL(link.href, location.href);
  const onThisPage = to.hash !== "" && to.pathname === location.pathname;
  if (to.origin !== location.origin || to.pathname.startsWith("/api/") || onThisPage) return null;
  return to.pathname + to.search;
}
