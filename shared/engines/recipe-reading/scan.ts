/** A piece of text as numbers, words and marks with their places. One pass, no pattern that could go back over what it has seen. */
import type { Work } from "./types.ts";

export interface Word {
  readonly kind: "number" | "word" | "mark";
  /** Lower case. */
  readonly low: string;
  /** Of a number; 0 for the rest. */
  readonly value: number;
  readonly start: number;
  readonly end: number;
}

const VULGAR: Readonly<Record<string, number>> = { "½": 1 / 2, "⅓": 1 / 3, "⅔": 2 / 3, "¼": 1 / 4, "¾": 3 / 4, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8, "⅕": 1 / 5, "⅙": 1 / 6 };
/** Longer rows of digits are no amount of a kitchen. */
const MOST_DIGITS = 9;

export function wordsOf(text: string, work: Work): Word[] {
  const words: Word[] = [];
  let at = 0;
  while (at < text.length) {
    work.looks++;
    const sign = text[at] as string;
    if (sign.trim() === "") {
      at++;
      continue;
    }
    const end = isDigit(sign) ? numberEnd(text, at) : sign in VULGAR ? at + 1 : isLetter(sign) ? wordEnd(text, at) : at + 1;
    work.looks += end - at;
    const raw = text.slice(at, end);
    const kind = isDigit(sign) || sign in VULGAR ? "number" : isLetter(sign) ? "word" : "mark";
    const word: Word = { kind, low: kind === "mark" && "–—‐‑−".includes(raw) ? "-" : raw.toLowerCase(), value: kind === "number" ? valueOf(raw) : 0, start: at, end };
    const before = words[words.length - 1];
    // 1 1/2 and 1½ are one number
    if (kind === "number" && word.value < 1 && before?.kind === "number" && Number.isInteger(before.value) && (raw in VULGAR || raw.includes("/")) && word.start - before.end <= 1) {
      words[words.length - 1] = { ...before, value: before.value + word.value, end };
    } else words.push(word);
    at = end;
  }
  return words;
}

function valueOf(raw: string): number {
  if (raw in VULGAR) return VULGAR[raw] as number;
  const stroke = raw.indexOf("/");
  if (stroke > 0) return Number(raw.slice(0, stroke)) / Number(raw.slice(stroke + 1));
  return Number(raw.replace(",", "."));
}

/** Digits, one decimal point or comma, or one fraction stroke, each with digits behind it. */
function numberEnd(text: string, at: number): number {
  let end = digitsEnd(text, at);
  const joiner = text[end];
  if (joiner !== undefined && ".,/⁄".includes(joiner) && isDigit(text[end + 1] ?? "")) {
    const stroke = joiner === "/" || joiner === "⁄";
    const then = digitsEnd(text, end + 1);
    const below = Number(text.slice(end + 1, then));
    // 180/160 is two temperatures, 3/0 nothing at all
    if (!stroke || (joiner === "/" && below > 0 && below <= 16 && Number(text.slice(at, end)) < below)) end = then;
  }
  return end;
}

function digitsEnd(text: string, at: number): number {
  let end = at;
  while (end < text.length && end - at < MOST_DIGITS && isDigit(text[end] as string)) end++;
  return end;
}

function wordEnd(text: string, at: number): number {
  let end = at + 1;
  while (end < text.length && (isLetter(text[end] as string) || ("'’".includes(text[end] as string) && isLetter(text[end + 1] ?? "")))) end++;
  return end;
}

const isDigit = (sign: string): boolean => sign >= "0" && sign <= "9";
const isLetter = (sign: string): boolean => (sign >= "a" && sign <= "z") || (sign >= "A" && sign <= "Z") || (sign >= "\u00c0" && sign !== "×" && sign !== "÷" && sign < "\u2000") || sign > "\u2fff";
