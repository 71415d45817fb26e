/**
 * Question: at what temperature is the oven set? °C of a still oven.
 * Gas marks: °F = 250 + 25 × mark, ½ is 250, ¼ is 225 (encyclopaedia article "Gas mark"). A fan oven is set 20 °C lower (New South Wales Health, recipe
 * conversion chart). °C = (°F − 32) × 5/9 (UCUM, [degF]).
 */
import { celsius } from "../../kernel/units.ts";
import type { Word } from "./scan.ts";
import type { Work } from "./types.ts";

export interface OvenHeat {
  readonly c: number;
  /** Places in the words, the end not included. */
  readonly from: number;
  readonly to: number;
  /** What the figure was read from, where it was not °C of a still oven. */
  readonly by: "celsius" | "fahrenheit" | "gas" | "fan" | "unsaid";
}

interface Reading {
  readonly by: OvenHeat["by"];
  readonly c: number;
  readonly from: number;
  readonly to: number;
}

/** Coolest and hottest that an oven is set to here, as the book of recipes takes it. */
const OVEN_C = { least: 30, most: 350 } as const;
const FAN_LOWER_C = 20;
/** Without a letter: above this no kitchen sets °C. Common practice, no source. */
const SURELY_FAHRENHEIT = 290;
/** A still oven's own figure first, the one that needs most conversion last. */
const TRUST: readonly OvenHeat["by"][] = ["celsius", "fahrenheit", "gas", "fan", "unsaid"];
const OVEN_WORDS: ReadonlySet<string> = new Set(["oven", "bake", "baking", "roast", "roasting", "preheat", "fan", "gas", "bakes", "reheat", "convection"]);
/** Between the word and its figure: a fan oven at 160 °C. */
const PASSED_OVER: ReadonlySet<string> = new Set(["oven", "at", "to", "of"]);
const OTHER_HEAT: ReadonlySet<string> = new Set(["oil", "internal", "core", "thermometer", "probe", "centre", "center", "inside", "syrup"]);

/** The oven's temperature in these words, or null; that of oil, of the middle of a roast or of warm water is not the oven's. */
export function ovenHeat(words: readonly Word[], work: Work): OvenHeat | null {
  work.looks += words.length;
  if (!words.some((word) => OVEN_WORDS.has(word.low)) || words.some((word) => OTHER_HEAT.has(word.low))) return null;
  const readings = words.flatMap((_, at) => readingAt(words, at) ?? []).filter(({ c }) => c >= OVEN_C.least && c <= OVEN_C.most);
  const best = TRUST.map((by) => readings.find((reading) => reading.by === by)).find((reading) => reading !== undefined);
  if (!best) return null;
  return { c: best.c, by: best.by, from: Math.min(...readings.map((r) => r.from)), to: Math.max(...readings.map((r) => r.to)) };
}

function readingAt(words: readonly Word[], at: number): Reading | null {
  const word = words[at];
  if (word?.kind !== "number") return null;
  const gas = gasAt(words, at);
  if (gas) return gas;
  let next = at + 1;
  let degrees = false;
  while (isDegree(words[next])) {
    degrees = true;
    next++;
  }
  const unit = words[next]?.low;
  const fan = isFan(words, at, next);
  if (unit === "c" || unit === "celsius" || unit === "centigrade") return reading(word.value + (fan ? FAN_LOWER_C : 0), fan ? "fan" : "celsius", at, next + 1);
  if (unit === "f" || unit === "fahrenheit") return reading(celsius(word.value) + (fan ? FAN_LOWER_C : 0), fan ? "fan" : "fahrenheit", at, next + 1);
  if (!degrees) return null;
  return reading(word.value > SURELY_FAHRENHEIT ? celsius(word.value) : word.value, "unsaid", at, next);
}

const reading = (c: number, by: Reading["by"], from: number, to: number): Reading => ({ c: Math.round(c), by, from, to });
const isDegree = (word: Word | undefined): boolean => word !== undefined && (word.low === "°" || word.low === "º" || word.low === "˚" || word.low === "degrees" || word.low === "degree" || word.low === "deg");

function gasAt(words: readonly Word[], at: number): Reading | null {
  const before = words[at - 1]?.low;
  const named = before === "gas" || (before === "mark" && words[at - 2]?.low === "gas");
  const mark = (words[at] as Word).value;
  if (!named || mark > 10) return null;
  const f = mark === 0.25 ? 225 : mark === 0.5 ? 250 : 250 + 25 * mark;
  return reading(celsius(f), "gas", before === "gas" ? at - 1 : at - 2, at + 1);
}

/** "160°C fan" and "fan 160°C"; in "200°C/fan 180°C" the word belongs to the figure behind it. */
function isFan(words: readonly Word[], at: number, unitAt: number): boolean {
  const beside = (from: number, step: 1 | -1): number => {
    let place = from;
    while (words[place]?.kind === "mark" && !isDegree(words[place])) place += step;
    return place;
  };
  const fanWord = (place: number): boolean => words[place]?.low === "fan" || words[place]?.low === "convection";
  let before = beside(at - 1, -1);
  while (PASSED_OVER.has(words[before]?.low ?? "")) before--;
  if (fanWord(before)) return true;
  const after = beside(unitAt + 1, 1);
  return fanWord(after) && words[after + 1]?.kind !== "number";
}
