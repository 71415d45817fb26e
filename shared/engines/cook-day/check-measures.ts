/** What a plan scores, level by level (README): end, longest stand, heat-ups, short gaps, changes of dish, spread of the work. */
import type { Seen } from "./check.ts";
import { heatUps } from "./check-heat.ts";
import { before } from "./check-order.ts";
import type { CookDayInput } from "./types.ts";

export interface Measures {
  readonly endMin: number;
  /** Longest actual wait over all that have a longest wait; 0 where nothing has. */
  readonly longestStandMin: number;
  /** Runs of one temperature, over all ovens. */
  readonly heatUps: number;
  /** Pauses of a cook too short to be worth anything. */
  readonly shortGaps: number;
  /** Times that a cook goes over to another dish. */
  readonly dishChanges: number;
  /** Most − least hands-on minutes among the cooks; 0 for one cook. */
  readonly handsSpreadMin: number;
}

/** A pause under ten minutes is worth nothing to a cook (common practice, no source). */
const SHORT_GAP_MIN = 10;

export function measure(day: CookDayInput, seen: readonly Seen[]): Measures {
  const stands = seen.flatMap((one) => before(day, seen, one).flatMap(({ earlier, longest }) => (longest === undefined ? [] : [one.at - earlier.end])));
  const byCook = Array.from({ length: day.kitchen.cooks }, (_, c) =>
    seen.filter((one) => one.step.handsOnMin > 0 && (one.placed.cook ?? 1) === c + 1).sort((a, b) => a.at - b.at),
  );
  const follow = byCook.flatMap((work) => work.slice(1).map((later, k) => ({ earlier: work[k] as Seen, later })));
  const minutes = byCook.map((work) => work.reduce((sum, one) => sum + one.step.handsOnMin, 0));
  return {
    endMin: seen.reduce((last, one) => Math.max(last, one.end), 0),
    longestStandMin: stands.reduce((longest, stand) => Math.max(longest, stand), 0),
    heatUps: heatUps(seen),
    shortGaps: follow.filter(({ earlier, later }) => later.at > earlier.handsEnd && later.at - earlier.handsEnd < SHORT_GAP_MIN).length,
    dishChanges: follow.filter(({ earlier, later }) => earlier.dish !== later.dish).length,
    handsSpreadMin: minutes.length > 0 ? Math.max(...minutes) - Math.min(...minutes) : 0,
  };
}
