/** Which page stands at which address. A page is fetched when it is first asked for. */
import type { ComponentType } from "preact";

export interface PageProps {
  /** The id in the address, where there is one: /recipes/{id}, /beds/{id}. */
  readonly id?: string;
  readonly query: URLSearchParams;
}

export interface PageEntry {
  readonly path: RegExp;
  /** In the title bar until the page says something closer with `useTitle`. */
  readonly title: string;
  readonly folder: string;
}

type PageModule = { readonly default: ComponentType<PageProps> };
const modules = import.meta.glob<PageModule>("./pages/*/page.tsx");

export const PAGES: readonly PageEntry[] = [
  { path: /^\/(?:calendar)?$/, title: "Calendar", folder: "calendar" },
  { path: /^\/today$/, title: "Today", folder: "today" },
  { path: /^\/beds(?:\/([0-9a-f-]{36}))?$/i, title: "Beds", folder: "beds" },
  { path: /^\/cook-day(?:\/([0-9a-f-]{36}))?$/i, title: "Cook day", folder: "cook-day" },
  { path: /^\/counter\/([0-9a-f-]{36})$/i, title: "At the counter", folder: "counter" },
  { path: /^\/recipes(?:\/([0-9a-f-]{36}|new))?$/i, title: "Recipes", folder: "recipes" },
  { path: /^\/larder$/, title: "Larder", folder: "larder" },
  { path: /^\/week$/, title: "This week", folder: "week" },
  { path: /^\/season$/, title: "Season", folder: "season" },
  { path: /^\/supplies$/, title: "Supplies and shopping", folder: "supplies" },
  { path: /^\/record$/, title: "Season record", folder: "record" },
  { path: /^\/keeping$/, title: "Can I keep this?", folder: "keeping" },
  { path: /^\/household$/, title: "Household", folder: "household" },
];

/** The running head, in the order of the day's use; on a phone the wide ones stand under More. A word stands only for a page that exists. */
export const WORDS = [
  { folder: "today", word: "Today", wide: false },
  { folder: "calendar", word: "Calendar", wide: false },
  { folder: "beds", word: "Beds", wide: false },
  { folder: "cook-day", word: "Cook day", wide: false },
  { folder: "week", word: "This week", wide: true },
  { folder: "season", word: "Season", wide: true },
  { folder: "larder", word: "Larder", wide: true },
  { folder: "supplies", word: "Supplies", wide: true },
  { folder: "recipes", word: "Recipes", wide: true },
  { folder: "record", word: "Record", wide: true },
  { folder: "household", word: "Household", wide: true },
].filter(({ folder }) => fileOf(folder) in modules);

/** The page at an address and the id in it; null where no page stands. */
export function pageAt(path: string): { readonly entry: PageEntry; readonly id?: string } | null {
  const bare = path.length > 1 ? path.replace(/\/$/, "") : path;
  for (const entry of PAGES) {
    const found = entry.path.exec(bare);
    if (found) return found[1] === undefined ? { entry } : { entry, id: found[1].toLowerCase() };
  }
  return null;
}

export async function loadPage(entry: PageEntry): Promise<ComponentType<PageProps>> {
  const load = modules[fileOf(entry.folder)];
  if (!load) throw new Error(`no page in web/pages/${entry.folder}`);
  return (await load()).default;
}

function fileOf(folder: string): string {
  return `./pages/${folder}/page.tsx`;
}
