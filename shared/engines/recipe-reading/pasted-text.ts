/**
 * A pasted recipe cut into title, yield, ingredients, method and notes. Each line is looked at once; what stands where no part of a recipe is
 * expected is handed back, so that nothing of what was typed is lost.
 */
import { durationsIn } from "./durations.ts";
import { headingIn, isGroupHeading, isYieldLine, timeLineIn, type Section } from "./headings.ts";
import { LeftOver } from "./left-over.ts";
import { wordsOf } from "./scan.ts";
import { LONGEST, type RecipeParts, type Work } from "./types.ts";

interface Page {
  title: string | null;
  yieldText: string | null;
  prepMin: number | null;
  readonly ingredients: string[];
  readonly method: string[];
  readonly notes: string[];
  readonly left: LeftOver;
  /** Lines taken for the method by their look alone; a heading that comes later says that they were none. */
  byLook: number;
}

export function partsOfText(text: string, work: Work): RecipeParts {
  const page: Page = { title: null, yieldText: null, prepMin: null, ingredients: [], method: [], notes: [], left: new LeftOver(), byLook: 0 };
  let section: Section | null = null;
  for (let from = 0; from <= text.length; ) {
    const to = lineEnd(text, from);
    work.looks += to - from + 1;
    const line = text.slice(from, to).trim();
    from = to + (text[to] === "\r" && text[to + 1] === "\n" ? 2 : 1);
    if (line === "") continue;
    const heading = headingIn(line);
    if (heading) section = heading.section;
    if (heading?.section === "method" && page.byLook > 0) page.notes.unshift(...page.method.splice(0, page.byLook));
    if (heading) page.byLook = 0;
    const content = heading ? heading.rest : line;
    if (content !== "") section = place(content, section, page, work);
  }
  const { title, yieldText, prepMin, ingredients, method, notes, left } = page;
  return { title, yieldText, prepMin, ingredients, method, notes, notUnderstood: left.all() };
}

function lineEnd(text: string, from: number): number {
  let end = from;
  while (end < text.length && text[end] !== "\n" && text[end] !== "\r" && text[end] !== "\u2028") end++;
  return end;
}

/** Puts one line where it belongs and answers in which section the next one stands. */
function place(line: string, section: Section | null, page: Page, work: Work): Section | null {
  if (line.length <= 3 && !hasLetter(line)) return page.left.add(line, "It names no food and says nothing to do."), section;
  const time = timeLineIn(line);
  if (time) {
    page.notes.push(line);
    const [first] = durationsIn(wordsOf(time.rest, work), work);
    if (time.of === "prep" && first) page.prepMin ??= Math.round((first.lowMin + first.highMin) / 2);
    return section;
  }
  if (page.yieldText === null && isYieldLine(line)) {
    page.yieldText = line;
    return section;
  }
  if (section === "notes") return push(page.notes, line, page, LONGEST.steps, "There is more of it than a note can hold."), section;
  if (page.title === null && section === null && line.length <= LONGEST_TITLE && !looksLikeIngredient(line) && !isNumbered(line)) {
    page.title = line;
    return section;
  }
  if (isGroupHeading(line)) return page.left.add(line, "The heading of a group: what stands under it goes into one list."), section;
  if (section === "ingredients" && isSentence(line)) return byLook(line, page), null;
  if (section === null && page.byLook > 0 && !isNumbered(line)) return byLook(line, page), null;
  if (section === "method" || (section !== "ingredients" && (isNumbered(line) || isProse(line) || (page.ingredients.length > 0 && !looksLikeIngredient(line))))) return isNumbered(line) || section === "method" ? (method(line, page), "method") : (byLook(line, page), null);
  if (section === "ingredients" && (isNumbered(line) || isProse(line))) return method(line, page), "method";
  if (section === "ingredients" || looksLikeIngredient(line)) return ingredient(withoutBullet(line), page), section;
  return push(page.notes, line, page, LONGEST.steps, "It stands before the ingredients, and there is more of it than a note can hold."), section;
}

const method = (line: string, page: Page): void => push(page.method, withoutNumber(line), page, LONGEST.steps, `There are more than ${LONGEST.steps} steps.`);

function byLook(line: string, page: Page): void {
  const before = page.method.length;
  method(line, page);
  page.byLook += page.method.length - before;
}

function ingredient(line: string, page: Page): void {
  if (!hasLetter(line)) return page.left.add(line, "It names no food.");
  if (line.length > LONGEST.ingredient) return page.left.add(line, `An ingredient has at most ${LONGEST.ingredient} characters.`);
  push(page.ingredients, line, page, LONGEST.ingredients, `There are more than ${LONGEST.ingredients} ingredients.`);
}

function push(list: string[], line: string, page: Page, most: number, why: string): void {
  if (list.length >= most) page.left.add(line, why);
  else list.push(line);
}

const STARTS: ReadonlySet<string> = new Set(["a", "an", "half", "one", "two", "three", "four", "five", "six", "pinch", "handful", "knob", "dash", "juice", "zest", "about", "few", "salt"]);
/** A longer first line is prose. */
const LONGEST_TITLE = 200;
const LONGEST_INGREDIENT_BY_LOOK = 160;

/** An amount first and a food behind it, too short for a sentence. */
function looksLikeIngredient(line: string): boolean {
  if (line.length > LONGEST_INGREDIENT_BY_LOOK || isNumbered(line)) return false;
  const text = withoutBullet(line);
  const first = text[0] ?? "";
  if (!hasLetter(text)) return false;
  if ((first >= "0" && first <= "9") || "½⅓⅔¼¾⅛~".includes(first)) return true;
  const space = text.indexOf(" ");
  if (text !== line && !text.endsWith(".")) return true;
  return space > 0 && STARTS.has(text.slice(0, space).toLowerCase()) && !text.endsWith(".");
}

/** Five words or more up to a full stop, and no amount in front. */
const isSentence = (line: string): boolean => line.endsWith(".") && !looksLikeIngredient(line) && !isNumbered(line) && line.slice(0, LONGEST_INGREDIENT_BY_LOOK).split(" ").length >= 5;

/** Longer than an ingredient and with the stops of sentences. */
const isProse = (line: string): boolean => line.length > LONGEST_INGREDIENT_BY_LOOK && line.slice(0, LONGEST.step).includes(". ");

/** "1. Chop", "1) Chop", "Step 1". */
function isNumbered(line: string): boolean {
  return /^(?:\d{1,2}[.)]\s+\D|step\s\d)/i.test(line.slice(0, 16));
}

function withoutNumber(line: string): string {
  const head = /^(?:step\s)?\d{1,2}(?:[.):]|\s-)?\s+(?=\D)|^[-•*·▢☐–]\s+|^step\s\d{1,2}[.:)]?\s*/i.exec(line.slice(0, 24));
  const rest = head && (isNumbered(line) || !/\d/.test(head[0])) ? line.slice(head[0].length).trim() : line;
  return rest === "" ? line : rest;
}

function withoutBullet(line: string): string {
  const rest = "-•*·▢☐–".includes(line[0] ?? " ") ? line.slice(1).trim() : line;
  return rest === "" ? line : rest;
}

const hasLetter = (line: string): boolean => /\p{L}/u.test(line);
