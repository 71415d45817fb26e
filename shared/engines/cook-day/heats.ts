/** The heat of an oven over a day: which bakes can share it, and at how many degrees. °C. */
import type { OvenNeed } from "../../kernel/recipe.ts";

const lowest = ({ c, fromC }: OvenNeed): number => Math.min(c, fromC ?? c);
const highest = ({ c, toC }: OvenNeed): number => Math.max(c, toC ?? c);

/** Whether there is a heat at which both come out well. Spans of which every two meet have a point in common, so pairs are enough. */
export function suits(one: OvenNeed, other: OvenNeed): boolean {
  return lowest(one) <= highest(other) && lowest(other) <= highest(one);
}

export interface Bake {
  readonly need: OvenNeed;
  readonly startMin: number;
  readonly endMin: number;
}

/** The heat at the start of each bake of one oven, in the order given: as few changes as can be, and near what the first of each run asks for. */
export function heatsOf(bakes: readonly Bake[]): number[] {
  const heats = new Array<number>(bakes.length).fill(0);
  const order = bakes.map((_, k) => k).sort((a, b) => (bakes[a] as Bake).startMin - (bakes[b] as Bake).startMin);
  let run: number[] = [];
  let [low, high] = [-Infinity, Infinity];
  const close = (): void => {
    for (const k of run) heats[k] = Math.min(high, Math.max(low, (bakes[run[0] as number] as Bake).need.c));
  };
  for (const k of order) {
    const { need, startMin } = bakes[k] as Bake;
    const [lower, upper] = [Math.max(low, lowest(need)), Math.min(high, highest(need))];
    if (lower <= upper) [low, high] = [lower, upper];
    else {
      close();
      const inside = bakes.filter((one) => one.startMin < startMin && startMin < one.endMin);
      low = inside.reduce((most, one) => Math.max(most, lowest(one.need)), lowest(need));
      high = inside.reduce((least, one) => Math.min(least, highest(one.need)), highest(need));
      run = [];
    }
    run.push(k);
  }
  close();
  return heats;
}
