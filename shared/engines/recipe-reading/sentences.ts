/** A paragraph of method cut into sentences, and these put together into steps that hold one stretch of waiting each. */
import type { Work } from "./types.ts";
import { LONGEST } from "./types.ts";

/** Ends a sentence: a stop with a space and a capital, or a line's end. An abbreviation such as "min." is followed by a small letter or a number. */
export function sentencesOf(paragraph: string, work: Work): string[] {
  const sentences: string[] = [];
  let from = 0;
  for (let at = 0; at < paragraph.length; at++) {
    work.looks++;
    const stop = isStop(paragraph, at);
    const full = at - from >= LONGEST.step - 1;
    if (!stop && !full) continue;
    const cut = full && !stop ? wordBreak(paragraph, from, at) : at + 1;
    push(sentences, paragraph.slice(from, cut));
    from = cut;
    at = cut - 1;
  }
  push(sentences, paragraph.slice(from));
  return sentences;
}

function isStop(text: string, at: number): boolean {
  if (text[at] === "\n") return true;
  if (text[at] !== "." && text[at] !== "!" && text[at] !== "?") return false;
  if (text[at + 1] !== " " && text[at + 1] !== "\n") return false;
  const next = text[at + 2] ?? "";
  return next !== next.toLowerCase() || next === '"' || next === "“" || next === "(";
}

/** The last space before a place, so that no word is cut, and no piece is empty. */
function wordBreak(text: string, from: number, at: number): number {
  const space = text.slice(from, at + 1).lastIndexOf(" ");
  return space > LONGEST.step / 2 ? from + space + 1 : at + 1;
}

function push(sentences: string[], text: string): void {
  const trimmed = text.trim();
  if (trimmed !== "") sentences.push(trimmed);
}
