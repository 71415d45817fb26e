/** The referee's eye for heat: between what degrees a step comes out well, and how often an oven has to change. °C. */
import type { Seen } from "./check.ts";

/** Lowest and highest. */
export function heatSpan({ step }: Seen): readonly [number, number] {
  const { c = 0, fromC = c, toC = c } = step.needs.oven ?? {};
  return [Math.min(c, fromC), Math.max(c, toC)];
}

export function shareHeat(one: Seen, other: Seen): boolean {
  const [[low, high], [otherLow, otherHigh]] = [heatSpan(one), heatSpan(other)];
  return Math.max(low, otherLow) <= Math.min(high, otherHigh);
}

/** 180, or 180–200. */
export function heatWords(one: Seen): string {
  const [low, high] = heatSpan(one);
  return low === high ? `${low}` : `${low}–${high}`;
}

/** Runs of one heat over all ovens, each held for as long as one heat suits all that is put in. */
export function heatUps(seen: readonly Seen[]): number {
  const ovens = new Map<number, Seen[]>();
  for (const one of seen) {
    if (one.step.needs.oven === undefined || one.end === one.at) continue;
    const oven = one.placed.oven ?? 1;
    ovens.set(oven, [...(ovens.get(oven) ?? []), one]);
  }
  return [...ovens.values()].reduce((sum, inside) => sum + runs(inside.sort((a, b) => a.at - b.at)), 0);
}

function runs(inOrder: readonly Seen[]): number {
  let count = 0;
  let heat: readonly [number, number] = [0, 0];
  for (const one of inOrder) {
    const both = meeting([heat, heatSpan(one)]);
    if (count > 0 && both[0] <= both[1]) {
      heat = both;
      continue;
    }
    count++;
    heat = meeting(inOrder.filter((other) => other === one || (other.at < one.at && one.at < other.end)).map(heatSpan));
  }
  return count;
}

function meeting(spans: readonly (readonly [number, number])[]): readonly [number, number] {
  return [Math.max(...spans.map(([low]) => low)), Math.min(...spans.map(([, high]) => high))];
}
