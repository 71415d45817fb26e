/** Lines that say what the lines under them are. British and American spellings; common practice of recipe writing, no source. */
export type Section = "ingredients" | "method" | "notes";

const HEADINGS: Readonly<Record<string, Section>> = {
  ingredients: "ingredients", ingredient: "ingredients", "you will need": "ingredients", "you'll need": "ingredients", "what you need": "ingredients", "what you'll need": "ingredients", "shopping list": "ingredients",
  method: "method", methods: "method", directions: "method", direction: "method", instructions: "method", steps: "method", preparation: "method", procedure: "method", "how to make it": "method", "to make": "method", "what to do": "method",
  notes: "notes", note: "notes", tips: "notes", tip: "notes", "cook's notes": "notes", "cook's tip": "notes", storage: "notes", "to store": "notes", nutrition: "notes", "recipe notes": "notes",
};
const LONGEST_HEADING = 30;

/** The section that a line opens, and what stands behind its colon. */
export function headingIn(line: string): { readonly section: Section; readonly rest: string } | null {
  const colon = line.slice(0, LONGEST_HEADING + 4).indexOf(":");
  if ((colon < 0 && line.length > LONGEST_HEADING + 4) || !mayBegin(line, "iymdspwthcnr")) return null;
  const name = plainName(colon >= 0 && colon <= LONGEST_HEADING ? line.slice(0, colon) : line);
  const section = name.length <= LONGEST_HEADING && Object.hasOwn(HEADINGS, name) ? HEADINGS[name] : undefined;
  if (section === undefined) return null;
  return { section, rest: colon >= 0 ? line.slice(colon + 1).trim() : "" };
}

/** "For the sauce:" heads a group of ingredients. */
export const isGroupHeading = (line: string): boolean => line.length <= 60 && line.endsWith(":") && !/\d/.test(line);

const YIELD_STARTS = ["serves", "makes", "yield", "yields", "servings", "portions", "serving size", "for about", "feeds"];

export function isYieldLine(line: string): boolean {
  if (line.length > 80 || !mayBegin(line, "smyfp0123456789")) return false;
  const low = line.toLowerCase();
  if (low.length <= 30 && /^(?:for )?\d+(?:\s?[-–]\s?\d+)? (?:people|servings|portions|persons)\.?$/.test(low)) return true;
  return YIELD_STARTS.some((start) => low.startsWith(start) && !isLetter(low[start.length]));
}

export type TimeOf = "prep" | "cook" | "total";
const TIMES: readonly (readonly [start: string, of: TimeOf])[] = [["preparation time", "prep"], ["prep time", "prep"], ["hands-on time", "prep"], ["active time", "prep"], ["prep", "prep"], ["cooking time", "cook"], ["cook time", "cook"], ["cook", "cook"], ["total time", "total"], ["ready in", "total"]];

/** "Prep time: 20 min". A step that begins with "Cook" has no figure straight behind it. */
export function timeLineIn(line: string): { readonly of: TimeOf; readonly rest: string } | null {
  if (line.length > 60 || !mayBegin(line, "phacrt")) return null;
  const low = line.toLowerCase();
  for (const [start, of] of TIMES) {
    if (!low.startsWith(start)) continue;
    const rest = line.slice(start.length).replace(/^[\s:–-]{1,4}/, "");
    if (rest !== line.slice(start.length) && /^(?:about )?[\d½¼¾]/.test(rest)) return { of, rest };
  }
  return null;
}

/** Most lines are told by their first letter; the marks of headings and figures may stand before any word. */
function mayBegin(line: string, letters: string): boolean {
  const first = (line[0] ?? "").toLowerCase();
  return letters.includes(first) || "#*_= ".includes(first);
}

const isLetter = (sign: string | undefined): boolean => sign !== undefined && /[a-z]/.test(sign);

/** Without the marks of headings and in lower case. */
function plainName(text: string): string {
  const short = text.length > 60 ? text.slice(0, 60) : text;
  return short.replace(/[#*_=:]/g, "").replace(/’/g, "'").trim().toLowerCase();
}
