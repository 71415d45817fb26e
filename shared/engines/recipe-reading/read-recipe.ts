/**
 * Question: what does this recipe say? Title, yield, ingredients as lines, steps with their times, heat and order, with every part that was taken
 * rather than read named as a doubt, and what has no place handed back. Nothing is guessed silently and nothing typed is lost.
 */
import type { Way } from "../../kernel/way.ts";
import { partsOfJsonLd } from "./json-ld.ts";
import { keepsSaid } from "./keeps-said.ts";
import { LeftOver } from "./left-over.ts";
import { partsOfText } from "./pasted-text.ts";
import { readMethod } from "./steps.ts";
import { LONGEST, type Doubt, type ReadRecipe, type RecipeParts, type Work } from "./types.ts";
import { whoseMeasures } from "./whose-measures.ts";
import { yieldIn } from "./yields.ts";

/** A recipe as somebody copied it; text that is linked data is read as that. */
export function readRecipeText(text: string): ReadRecipe {
  const work: Work = { looks: 0 };
  const start = text.trimStart().slice(0, 1);
  const linked = start === "{" || start === "[" || text.includes("ld+json") ? partsOfJsonLd(text, work) : null;
  return finished(linked ?? partsOfText(text, work), work);
}

/** A schema.org Recipe, wherever it stands in the data; null where there is none. */
export function readJsonLd(data: unknown): ReadRecipe | null {
  const work: Work = { looks: 0 };
  const parts = partsOfJsonLd(data, work);
  return parts && finished(parts, work);
}

function finished(parts: RecipeParts, work: Work): ReadRecipe {
  const left = new LeftOver();
  for (const { text, why } of parts.notUnderstood) left.add(text, why);
  const doubts: Doubt[] = [];
  const title = titleOf(parts.title, doubts, left);
  const makes = makesOf(parts.yieldText, doubts, left, work);
  const isNote = (paragraph: string): boolean => IS_ON_KEEPING.test(paragraph.slice(0, 40)) && keepsSaid([paragraph], work).length > 0;
  const notes = [...parts.notes, ...parts.method.filter(isNote)];
  const { steps, doubts: ofSteps, left: stepsLeft } = readMethod(parts.method.filter((paragraph) => !isNote(paragraph)), parts.prepMin, work);
  for (const sentence of stepsLeft) left.add(sentence, `There are more than ${LONGEST.steps} steps.`);
  if (parts.ingredients.length === 0) doubts.push({ path: "ingredients", text: "", why: "No ingredients were found." });
  if (steps.length === 0) doubts.push({ path: "steps", text: "", why: "No steps were found." });
  else doubts.push({ path: "steps", text: "", why: `${parts.prepMin === null ? "Where no time is given for the work itself, a few minutes are taken" : "The time for preparing is shared among the steps that give none"}; the steps follow one another as written, but for what is said to be done meanwhile.` });
  const keeps = keepsSaid([...parts.method, ...parts.notes], work);
  doubts.push({ path: "way", text: "", why: "Taken from the words of the method." });
  if (keeps.length === 0) doubts.push({ path: "keeps", text: "", why: "How long it keeps is yours to enter. A recipe of one's own is for the fridge or freezer only." });
  const whose = whoseMeasures([...parts.notes, ...parts.ingredients, ...parts.method, ...parts.notUnderstood.slice(0, LONGEST.steps).map(({ text }) => text)], parts.ingredients, parts.method);
  if (whose) doubts.push(whose.doubt);
  return { measures: whose?.measures ?? null, keeps, title, way: wayOf(parts), makes, ingredients: parts.ingredients, steps, note: noteOf(notes, left), doubts: [...doubts, ...ofSteps], notUnderstood: left.all(), looks: work.looks };
}

/** "Keeps for 3 days in the fridge" among the steps is nothing to do. */
const IS_ON_KEEPING = /^(?:(?:it|they|this|these|the \w+) )?(?:will )?(?:keeps?|stores?|freezes?|lasts?) /i;

function titleOf(title: string | null, doubts: Doubt[], left: LeftOver): string {
  if (title === null) {
    doubts.push({ path: "title", text: "", why: "No title was found." });
    return "Untitled recipe";
  }
  if (title.length <= LONGEST.title) return title;
  doubts.push({ path: "title", text: title.slice(0, LONGEST.title), why: `Longer than ${LONGEST.title} characters: cut off.` });
  left.add(title, "Too long for a title.");
  return wholeWords(title, LONGEST.title);
}

function makesOf(text: string | null, doubts: Doubt[], left: LeftOver, work: Work): ReadRecipe["makes"] {
  const found = text === null ? null : yieldIn(text, work);
  if (found) {
    doubts.push(...found.doubts);
    return found.makes;
  }
  if (text !== null) left.add(text, "It names no amount.");
  doubts.push({ path: "makes", text: text ?? "", why: "No yield was found: written down as one batch. Say how many portions, jars or litres it makes." });
  return { amount: 1, unit: "batch" };
}

function noteOf(notes: readonly string[], left: LeftOver): string | null {
  const note = notes.join("\n");
  if (note === "") return null;
  if (note.length <= LONGEST.note) return note;
  const kept = wholeWords(note, LONGEST.note);
  left.add(note.slice(kept.length).trim(), "There is more of it than a note can hold.");
  return kept;
}

function wholeWords(text: string, most: number): string {
  const cut = text.slice(0, most);
  const space = cut.lastIndexOf(" ");
  return (space > most / 2 ? cut.slice(0, space) : cut).trim();
}

/** By the words of the title and the method: what stands in jars first, then what is cooked; the rest is eaten as it is. */
function wayOf(parts: RecipeParts): Way {
  const words = new Set([parts.title ?? "", ...parts.method].join(" ").slice(0, 20_000).toLowerCase().split(/[^a-z]+/));
  const any = (...some: string[]): boolean => some.some((word) => words.has(word));
  if (any("ferment", "fermented", "brine", "sauerkraut", "kimchi")) return "ferment";
  if (any("pickle", "pickled", "pickles", "pickling")) return "pickle";
  if (any("canner", "sterilised", "sterilized", "sterilise", "sterilize") || (any("jar", "jars") && any("seal", "sealed", "lids"))) return "bottle";
  if (any("dehydrator")) return "dry";
  return any("bake", "roast", "simmer", "boil", "cook", "fry", "oven", "grill", "steam", "poach", "stew", "braise", "heat", "pan", "saute", "toast") ? "cook" : "eat";
}
