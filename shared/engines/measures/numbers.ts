/** Numbers as recipes print them: 1 1/2, 1½, 1.5, 1,5, 1,000, 2-1/4. Read at a place in the text, without trying it twice. */

export interface ScannedNumber {
  readonly n: number;
  readonly d: number;
  /** As printed, in one spelling: 1 1/2. */
  readonly text: string;
  readonly end: number;
}

/** Unicode's vulgar fractions (Unicode 15, block Number Forms and Latin-1). */
const VULGAR: Readonly<Record<string, readonly [number, number]>> = {
  "¼": [1, 4], "½": [1, 2], "¾": [3, 4], "⅓": [1, 3], "⅔": [2, 3], "⅕": [1, 5], "⅖": [2, 5], "⅗": [3, 5], "⅘": [4, 5],
  "⅙": [1, 6], "⅚": [5, 6], "⅛": [1, 8], "⅜": [3, 8], "⅝": [5, 8], "⅞": [7, 8], "⅐": [1, 7], "⅑": [1, 9], "⅒": [1, 10],
};
/** Below a printed stroke in a kitchen. */
const PARTS: ReadonlySet<number> = new Set([2, 3, 4, 5, 6, 8, 10, 12, 16]);

export const isDigit = (code: number): boolean => code >= 48 && code <= 57;
export const isVulgar = (char: string): boolean => char in VULGAR;

/** The number that begins at `at`, or null: 00 flour begins with a name. */
export function scanNumber(text: string, at: number): ScannedNumber | null {
  const alone = VULGAR[text[at] as string];
  if (alone) return { n: alone[0], d: alone[1], text: `${alone[0]}/${alone[1]}`, end: at + 1 };
  let end = at;
  while (isDigit(text.charCodeAt(end))) end++;
  const whole = text.slice(at, end);
  if (whole.length > 1 && whole[0] === "0" && text[end] !== "." && text[end] !== ",") return null;
  const decimal = scanDecimal(text, whole, end);
  if (decimal) return decimal;
  const over = scanOver(text, end);
  const glued = over && unglued(whole, over.d);
  if (over && glued) return { ...glued, text: `${whole[0] as string} ${whole[1] as string}/${over.d}`, end: over.end };
  if (over && over.of === "stroke" && whole !== "") return { n: Number(whole), d: over.d, text: `${whole}/${over.d}`, end: over.end };
  if (whole === "") return null;
  const part = scanPart(text, end);
  if (part) return { n: Number(whole) * part.d + part.n, d: part.d, text: `${whole} ${part.n}/${part.d}`, end: part.end };
  return { n: Number(whole), d: 1, text: whole, end };
}

/** 1.5, 1,5 and 1,000: a comma before exactly three digits groups thousands, before one or two it is a decimal comma. */
function scanDecimal(text: string, whole: string, at: number): ScannedNumber | null {
  const mark = text[at];
  if ((mark !== "." && mark !== ",") || !isDigit(text.charCodeAt(at + 1))) return null;
  let end = at + 1;
  while (isDigit(text.charCodeAt(end))) end++;
  const digits = text.slice(at + 1, end);
  if (mark === "," && digits.length === 3 && whole !== "") {
    const more = scanDecimal(text, whole + digits, end);
    return more ?? { n: Number(whole + digits), d: 1, text: whole + digits, end };
  }
  if (mark === "," && digits.length > 2) return null;
  return { n: Number(whole + digits), d: 10 ** digits.length, text: `${whole || "0"}.${digits}`, end };
}

/** /4 after a whole number. */
function scanOver(text: string, at: number): { of: "stroke"; d: number; end: number } | null {
  if (text[at] !== "/" && text[at] !== "⁄") return null;
  let end = at + 1;
  while (isDigit(text.charCodeAt(end))) end++;
  const d = Number(text.slice(at + 1, end));
  return PARTS.has(d) && text[end] !== "." ? { of: "stroke", d, end } : null;
}

/** 11/2 is 1½ that has lost its space: nobody writes eleven halves. */
function unglued(whole: string, d: number): { n: number; d: number } | null {
  const [first = 0, second = 0] = [...whole].map(Number);
  return whole.length === 2 && d < 10 && first > 0 && second > 0 && second < d ? { n: first * d + second, d } : null;
}

/** The part after a whole number: ½ at once or after a space, 1/2 after a space, a hyphen or "and", if it is less than one. */
function scanPart(text: string, at: number): { n: number; d: number; end: number } | null {
  let start = at;
  if (text[start] === " ") start++;
  else if (text[start] === "-" || text[start] === "–") start++;
  if (text.startsWith("and ", start) && start > at) start += 4;
  else if (text.startsWith("& ", start) && start > at) start += 2;
  const vulgar = VULGAR[text[start] as string];
  if (vulgar) return { n: vulgar[0], d: vulgar[1], end: start + 1 };
  if (start === at || !isDigit(text.charCodeAt(start))) return null;
  let mid = start;
  while (isDigit(text.charCodeAt(mid))) mid++;
  const over = scanOver(text, mid);
  const n = Number(text.slice(start, mid));
  if (!over || n >= over.d) return null;
  return { n, d: over.d, end: over.end };
}
