/** Reads a tin or dish as people say it: “24 cm round”, “20 × 34”, “20 cm square”, “9 in round”, “9 x 13 in”, “20 × 34 × 5 cm”, “two 20 cm round”. */
import type { Dish } from "#shared/contracts/scaling.ts";
import { numberOf } from "./typed-amount.ts";
import { got, wrong, type Typed } from "./typed.ts";

/** Exact since 1959. */
const CM_PER_INCH = 2.54;
const MOST_CM = 200;
const COUNTS: Readonly<Record<string, number>> = { one: 1, two: 2, three: 3, four: 4, six: 6 };
const WORKS = "Write 24 cm round, 20 cm square or 20 × 34 cm.";

export function readDish(text: string): Typed<Dish> {
  const typed = text.trim().toLowerCase().replace(/[×*]/g, "x").replace(/\bby\b/g, "x");
  if (typed === "") return wrong("No dish is written yet.", WORKS);
  const figure = String.raw`(\d+(?:[.,]\d+)?)`;
  const found = new RegExp(`^(?:(\\d+|one|two|three|four|six)\\s+(?=\\d))?${figure}\\s*(?:cm|in|inch|inches|")?(?:\\s*x\\s*${figure}\\s*(?:cm|in|inch|inches|")?)?(?:\\s*x\\s*${figure})?\\s*(cm|in|inch|inches|")?\\s*(round|square|across)?(?:\\s*(?:tins?|dish(?:es)?|pans?))?$`).exec(typed);
  if (!found) return wrong("That is not a dish we can read.", WORKS);
  const cm = (figureText: string | undefined): number | undefined => (figureText === undefined ? undefined : Math.round((numberOf(figureText, false) ?? 0) * (/in\b|inch|"/.test(typed) ? CM_PER_INCH : 1) * 10) / 10);
  const [first, second, deep] = [cm(found[2]), cm(found[3]), cm(found[4])];
  const count = found[1] === undefined ? undefined : (COUNTS[found[1]] ?? Number(found[1]));
  if ([first, second, deep].some((side) => side !== undefined && (side <= 0 || side > MOST_CM))) return wrong("No tin has that size.", `Write centimetres from 1 to ${MOST_CM}.`);
  return dishOf({ first: first ?? 0, second, deep, round: found[6] === "round" || found[6] === "across", square: found[6] === "square", count });
}

interface Sizes {
  readonly first: number;
  readonly second: number | undefined;
  readonly deep: number | undefined;
  readonly round: boolean;
  readonly square: boolean;
  readonly count: number | undefined;
}

function dishOf({ first, second, deep, round, square, count }: Sizes): Typed<Dish> {
  const tins = count === undefined || count === 1 ? {} : { tins: count };
  const depth = (cm: number | undefined): { deepCm?: number } => (cm === undefined ? {} : { deepCm: cm });
  if (round) return got({ shape: "round", acrossCm: first, ...depth(second), ...tins });
  if (square) return got({ shape: "square", sideCm: first, ...depth(second === first ? deep : second), ...tins });
  if (second === undefined) return wrong("Round or square?", WORKS);
  return got({ shape: "rectangle", longCm: Math.max(first, second), wideCm: Math.min(first, second), ...depth(deep), ...tins });
}
