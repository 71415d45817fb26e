/** The referee's eye for order: what comes after what, longest waits, limits also with every range at its longest, fixed times. */
import type { Seen } from "./check.ts";
import type { CookDayInput } from "./types.ts";
import { clockWords, lengthWords } from "./words.ts";

/** Faults of order, waits, limits and fixed times. */
export function checkOrder(day: CookDayInput, seen: readonly Seen[]): string[] {
  return [...seen.flatMap((one) => [...waits(day, seen, one), ...times(day, one)]), ...limits(day, seen)];
}

/** What this one waits for: in equal loads of one dish its own load, else all of them. */
export function before(day: CookDayInput, seen: readonly Seen[], one: Seen): { earlier: Seen; longest: number | undefined }[] {
  return one.step.after.flatMap((id) => {
    const { maxWaitMin } = one.step;
    const longest = typeof maxWaitMin === "number" ? maxWaitMin : maxWaitMin?.[id];
    return named(day, seen, one.dish, id)
      .filter((earlier) => earlier.dish !== one.dish || earlier.loads !== one.loads || earlier.load === one.load)
      .map((earlier) => ({ earlier, longest }));
  });
}

function named(day: CookDayInput, seen: readonly Seen[], dish: number, id: string): Seen[] {
  const own = seen.filter((other) => other.dish === dish && other.step.id === id);
  if (own.length > 0) return own;
  const foreign = seen.filter((other) => `${day.dishes[other.dish]?.id}/${other.step.id}` === id);
  return foreign.filter((other) => other.dish === foreign[0]?.dish);
}

function waits(day: CookDayInput, seen: readonly Seen[], one: Seen): string[] {
  return before(day, seen, one).flatMap(({ earlier, longest }) => {
    if (one.at < earlier.end) return [`${one.name} starts at ${clockWords(day, one.at)}, before ${earlier.name} is done at ${clockWords(day, earlier.end)}.`];
    if (longest === undefined || one.at - earlier.end <= longest) return [];
    return [`${one.name} starts ${lengthWords(one.at - earlier.end)} after ${earlier.name}; it may wait ${lengthWords(longest)} at most.`];
  });
}

function times(day: CookDayInput, one: Seen): string[] {
  const { startAtMin, notBeforeMin, endByMin } = one.step;
  const faults: string[] = [];
  if (startAtMin !== undefined && (one.load === 1 ? one.at !== startAtMin : one.at < startAtMin)) {
    faults.push(`${one.name} starts at ${clockWords(day, one.at)}; its time is ${clockWords(day, startAtMin)}.`);
  }
  if (notBeforeMin !== undefined && one.at < notBeforeMin) faults.push(`${one.name} starts at ${clockWords(day, one.at)}, before ${clockWords(day, notBeforeMin)}.`);
  if (endByMin !== undefined && one.end > endByMin) faults.push(`${one.name} is done at ${clockWords(day, one.end)}, after ${clockWords(day, endByMin)}.`);
  return faults;
}

function limits(day: CookDayInput, seen: readonly Seen[]): string[] {
  return day.dishes.flatMap((dish, d) =>
    dish.limits.flatMap((limit) => {
      const why = limit.why === undefined ? "" : `: ${limit.why}`;
      const froms = named(day, seen, d, limit.from);
      const pairs = named(day, seen, d, limit.to).flatMap((to) => {
        const leading = leadingTo(day, seen, to);
        return froms.map((from) => ({ from, to, joined: leading.has(from) }));
      });
      // Loads that never meet need not keep a limit with each other.
      const kept = pairs.some(({ joined }) => joined) ? pairs.filter(({ joined }) => joined) : pairs;
      return kept.flatMap(({ from, to }) => {
        const words = `${to.name} has to start within ${lengthWords(limit.maxMin)} of the end of ${from.name}${why}`;
        if (to.at - from.end > limit.maxMin) return [`${words}. It starts ${lengthWords(to.at - from.end)} after it.`];
        const late = atLatest(day, seen, from, to) - from.end;
        return late > limit.maxMin ? [`${words}. With the longest times in between it would start ${lengthWords(late)} after it.`] : [];
      });
    }),
  );
}

/** Everything that `to` waits for, directly or not, and itself. */
function leadingTo(day: CookDayInput, seen: readonly Seen[], to: Seen): Set<Seen> {
  const found = new Set([to]);
  for (const one of found) for (const { earlier } of before(day, seen, one)) found.add(earlier);
  return found;
}

/** When `to` starts if everything between `from` and it takes its longest and is begun as planned or as soon as may be. */
function atLatest(day: CookDayInput, seen: readonly Seen[], from: Seen, to: Seen): number {
  const known = new Map<Seen, number>();
  const startOf = (one: Seen): number => {
    const found = known.get(one);
    if (found !== undefined) return found;
    known.set(one, one.at);
    let latest = one.at;
    for (const { earlier } of before(day, seen, one)) {
      if (earlier === from || !leadingTo(day, seen, earlier).has(from)) continue;
      const off = typeof earlier.step.handsOffMin === "number" ? earlier.step.handsOffMin : earlier.step.handsOffMin.high;
      latest = Math.max(latest, startOf(earlier) + earlier.step.handsOnMin + off);
    }
    known.set(one, latest);
    return latest;
  };
  return startOf(to);
}
