/** How the scheduler speaks: steps by what they say, never by id; times by the clock where the day says when it begins. */
import type { Copy } from "./copies.ts";
import type { CookDayInput } from "./types.ts";

/** “Bake blind” (Onion tart), with the load where there are several. */
export function stepName(day: CookDayInput, copy: Copy | undefined): string {
  if (!copy) return "the end of the day";
  const load = copy.load === null ? "" : `, load ${copy.load}`;
  return `“${copy.step.text}” (${day.dishes[copy.dish]?.title}${load})`;
}

/** 15:20 where the day's beginning is known, else 1 h 20 min after the start. */
export function clockWords(day: CookDayInput, minute: number): string {
  if (day.startsAtMin === undefined) return minute === 0 ? "the start" : `${lengthWords(minute)} after the start`;
  const at = day.startsAtMin + minute;
  const inDay = ((at % 1440) + 1440) % 1440;
  const clock = `${String(Math.floor(inDay / 60)).padStart(2, "0")}:${String(inDay % 60).padStart(2, "0")}`;
  return at >= 1440 ? `${clock} the next day` : clock;
}

/** 45 min, 2 h, 1 h 20 min. */
export function lengthWords(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

export function waitWords(after: string, before: string, maxWait: number): string {
  return maxWait === 0 ? `${after} at once after ${before}` : `${after} within ${lengthWords(maxWait)} of the end of ${before}`;
}

/** one pot, 2 pots. */
export function countWords(count: number, one: string, many: string): string {
  return count === 1 ? `one ${one}` : `${count === 0 ? "no" : count} ${many}`;
}

/** a, b and c. */
export function listWords(words: readonly string[]): string {
  if (words.length <= 1) return words[0] ?? "";
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}

export function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

/**
 * What cannot all be had: each dish with its limits, then the day's and the kitchen's, then (`nature`) what merely takes long or
 * needs much.
 */
export function clashWords(limits: readonly { dish: string | null; words: string }[], nature: readonly string[]): string {
  const dishes = [...new Set(limits.flatMap(({ dish }) => (dish === null ? [] : [dish])))];
  const byDish = dishes.map((dish) => `${dish}: ${listWords(limits.filter((limit) => limit.dish === dish).map((limit) => limit.words))}`);
  const rest = [...limits.filter(({ dish }) => dish === null).map(({ words }) => words), ...nature.filter((words) => words !== "")];
  return `${[...byDish, ...rest].map(sentence).join(" ")} All that together cannot be had.`;
}

/** “Boil” (Soup) needs 3 burners. `thing` is the name of a capacity. */
export function needWords(day: CookDayInput, copy: Copy, thing: string, amount: number): string {
  const [one, many] = THINGS[thing] ?? [thing, thing];
  return `${stepName(day, copy)} needs ${countWords(amount, one, many)}`;
}

const THINGS: Readonly<Record<string, readonly [string, string]>> = {
  burners: ["burner", "burners"],
  pots: ["large pot", "large pots"],
  sinks: ["sink", "sinks"],
  trays: ["tray in the oven", "trays in the oven"],
  ovens: ["tray in the oven", "trays in the oven"],
  cooks: ["pair of hands", "pairs of hands"],
};
