/**
 * Who does what: starts become cooks, ovens and burners by number. Cooks are alike, so any free one will do and there always is
 * one (blocks of hands-on work are spans, and no minute has more of them than cooks). Minutes.
 */
import { likelyMin, type Copy, type DayCopies } from "./copies.ts";
import { absencesByCook } from "./day-to-lags.ts";
import { heatsOf } from "./heats.ts";
import type { CookDayInput } from "./types.ts";

export interface Hands {
  readonly cook: number | null;
  readonly oven: number | null;
  /** What the oven stands at when it goes in. */
  readonly ovenC: number | null;
  readonly burner: number | null;
}

/** For each copy, from 1: its cook while hands-on, its oven, the first of its burners. `starts` and `ovens` by copy. */
export function assign(day: CookDayInput, model: DayCopies, starts: readonly number[], ovens: readonly number[]): Hands[] {
  const cooks = cooksOf(day, model.copies, starts);
  const burners = burnersOf(day, model, starts);
  const heats = ovenHeats(model.copies, starts, ovens);
  return model.copies.map((copy, i) => {
    const bakes = copy.step.needs.oven !== undefined && likelyMin(copy) > 0;
    const oven = (ovens[i] as number) >= 0 ? (ovens[i] as number) : 0;
    return { cook: cooks.get(i) ?? null, oven: bakes ? oven + 1 : null, ovenC: heats.get(i) ?? null, burner: burners.get(i) ?? null };
  });
}

/** A step of no length is in no oven, and is told the heat that it asks for. */
function ovenHeats(copies: readonly Copy[], starts: readonly number[], ovens: readonly number[]): Map<number, number> {
  const by = new Map(copies.flatMap(({ step }, i) => (step.needs.oven ? [[i, step.needs.oven.c] as const] : [])));
  for (const oven of new Set(ovens)) {
    const baked = copies.flatMap((copy, i) => (copy.step.needs.oven && likelyMin(copy) > 0 && ovens[i] === oven ? [{ i, need: copy.step.needs.oven, startMin: starts[i] as number, endMin: (starts[i] as number) + likelyMin(copy) }] : []));
    heatsOf(baked).forEach((c, k) => by.set(baked[k]?.i ?? -1, c));
  }
  return by;
}

interface Block {
  readonly fromMin: number;
  readonly toMin: number;
  /** Null for an absence. */
  readonly copy: number | null;
}

/** Each block goes to a free cook: the one with least to do so far, and among equals the one already at that dish. */
function cooksOf(day: CookDayInput, copies: readonly Copy[], starts: readonly number[]): Map<number, number> {
  const away = absencesByCook(day).map(({ fromMin, toMin }): Block => ({ fromMin, toMin, copy: null }));
  const work = copies.flatMap((copy, i): Block[] => {
    const at = starts[i] as number;
    return copy.step.handsOnMin > 0 ? [{ fromMin: at, toMin: at + copy.step.handsOnMin, copy: i }] : [];
  });
  const cooks = Array.from({ length: day.kitchen.cooks }, () => ({ freeAt: 0, minutes: 0, dish: -1 }));
  const by = new Map<number, number>();
  for (const block of [...away, ...work].sort((a, b) => a.fromMin - b.fromMin || a.toMin - b.toMin)) {
    const dish = block.copy === null ? -1 : (copies[block.copy] as Copy).dish;
    const free = cooks.filter((cook) => cook.freeAt <= block.fromMin);
    const cook = free.sort((a, b) => a.minutes - b.minutes || Number(b.dish === dish) - Number(a.dish === dish))[0];
    if (!cook) continue;
    cook.freeAt = block.toMin;
    if (block.copy === null) continue;
    cook.minutes += block.toMin - block.fromMin;
    cook.dish = dish;
    by.set(block.copy, cooks.indexOf(cook) + 1);
  }
  return by;
}

/** A dish stays on the burner it was on where that one is free; otherwise the lowest free numbers. */
function burnersOf(day: CookDayInput, { copies, holds }: DayCopies, starts: readonly number[]): Map<number, number> {
  const end = (i: number): number => (starts[i] as number) + likelyMin(copies[i] as Copy);
  const needed = copies.flatMap((copy, i) => ((copy.step.needs.burners ?? 0) > 0 ? [{ copy: i, from: starts[i] as number, to: end(i), count: copy.step.needs.burners as number }] : []));
  const held = holds.filter((hold) => hold.what === "burners").map((hold) => ({ copy: hold.from, from: starts[hold.from] as number, to: end(hold.to), count: 1 }));
  const freeAt = new Array<number>(day.kitchen.burners).fill(0);
  const lastDish = new Array<number>(day.kitchen.burners).fill(-1);
  const by = new Map<number, number>();
  for (const use of [...held, ...needed].sort((a, b) => a.from - b.from || a.to - b.to)) {
    const { dish } = copies[use.copy] as Copy;
    const free = freeAt.flatMap((at, b) => (at <= use.from ? [b] : []));
    const taken = free.sort((a, b) => Number(lastDish[b] === dish) - Number(lastDish[a] === dish) || a - b).slice(0, use.count);
    for (const burner of taken) [freeAt[burner], lastDish[burner]] = [use.to, dish];
    if (taken[0] !== undefined) by.set(use.copy, taken[0] + 1);
  }
  return by;
}
