/**
 * A cook day as a time-indexed 0/1 programme in LP format: a second, separately built reading of the model, to be solved by
 * another program. x_i_t = 1 when step i starts in slot t (Pritsker, Watters, Wolfe, Management Science 16 (1969); waits in the step form of
 * Christofides, Alvarez-Valdés, Tamarit, EJOR 29 (1987); both from memory). For days of one oven without loads or ranges.
 */
import type { CookDayInput, DayDish } from "#shared/engines/cook-day/index.ts";
import type { RecipeStep } from "#shared/kernel/recipe.ts";

interface Row {
  readonly dish: DayDish;
  readonly step: RecipeStep;
  readonly i: number;
  readonly hands: number;
  readonly length: number;
}

/** Asks whether there is a plan that ends by `endMin`; feasible = yes. All minutes must be multiples of `gridMin`. */
export function cookDayProgramme(day: CookDayInput, endMin: number, gridMin: number): string {
  const slots = endMin / gridMin;
  const q = (minutes: number): number => {
    if (minutes % gridMin !== 0) throw new RangeError(`${minutes} min is not on a grid of ${gridMin} min`);
    return minutes / gridMin;
  };
  const rows = day.dishes.flatMap((dish) => dish.steps.map((step) => ({ dish, step }))).map(({ dish, step }, i): Row => ({ dish, step, i, hands: q(step.handsOnMin), length: q(step.handsOnMin + (step.handsOffMin as number)) }));
  const find = (dish: DayDish, id: string): Row => rows.find((row) => row.dish === dish && row.step.id === id) as Row;
  const x = (i: number, t: number): string => `x_${i}_${t}`;
  const last = (row: Row): number => slots - row.length;
  const starts = (row: Row, from: number, to: number): string[] => Array.from({ length: Math.max(0, Math.min(to, last(row)) - Math.max(from, 0) + 1) }, (_, k) => x(row.i, Math.max(from, 0) + k));
  const lines: string[] = [];
  const add = (terms: string[], sign: string, right: number): void => void (terms.length > 0 && lines.push(` ${terms.join(" + ")} ${sign} ${right}`));

  for (const row of rows) {
    add(starts(row, 0, slots), "=", 1);
    const { startAtMin, notBeforeMin, endByMin, needs } = row.step;
    if (startAtMin !== undefined) add(starts(row, q(startAtMin), q(startAtMin)), "=", 1);
    add(starts(row, 0, q(Math.max(notBeforeMin ?? 0, needs.oven ? (day.kitchen.ovens[0]?.preheatMin ?? 0) : 0)) - 1), "=", 0);
    if (endByMin !== undefined) add(starts(row, q(endByMin) - row.length + 1, slots), "=", 0);
    for (const id of row.step.after) {
      const before = find(row.dish, id);
      // Not both: the one before starts at t or later, this one earlier than it then could.
      for (let t = 0; t <= last(before); t++) add([...starts(before, t, slots), ...starts(row, 0, t + before.length - 1)], "<=", 1);
      const wait = typeof row.step.maxWaitMin === "object" ? row.step.maxWaitMin[id] : row.step.maxWaitMin;
      if (wait !== undefined) within(before, row, q(wait));
    }
  }
  for (const dish of day.dishes) for (const limit of dish.limits) within(find(dish, limit.from), find(dish, limit.to), q(limit.maxMin));

  /** `after` starts at most `wait` slots after the end of `before`. */
  function within(before: Row, after: Row, wait: number): void {
    for (let t = 0; t <= last(before); t++) add([...starts(before, 0, t), ...starts(after, t + before.length + wait + 1, slots)], "<=", 1);
  }

  /** Starts for which a block of `length` from the start covers slot t. */
  const covering = (row: Row, length: number, t: number): string[] => starts(row, t - length + 1, t);
  for (let t = 0; t < slots; t++) {
    const away = day.unavailable.filter((one) => q(one.fromMin) <= t && t < q(one.toMin)).length;
    add(rows.flatMap((row) => covering(row, row.hands, t)), "<=", day.kitchen.cooks - away);
    for (const what of ["burners", "pots", "sinks"] as const) {
      const used = rows.flatMap((row) => (row.step.needs[what] ? covering(row, row.length, t).map((name) => `${row.step.needs[what]} ${name}`) : []));
      // Held = has started − has ended.
      const holds = day.dishes.flatMap((dish) => dish.holds.filter((hold) => hold.what === what).map((hold) => ({ from: find(dish, hold.from), to: find(dish, hold.to) })));
      const begun = holds.flatMap(({ from }) => starts(from, 0, t));
      const ended = holds.flatMap(({ to }) => starts(to, 0, t - to.length));
      const left = [...used, ...begun].join(" + ");
      if (left !== "") lines.push(` ${left}${ended.map((name) => ` - ${name}`).join("")} <= ${day.kitchen[what]}`);
    }
    const baked = rows.filter((row) => row.step.needs.oven);
    add(baked.flatMap((row) => covering(row, row.length, t).map((name) => `${row.step.needs.oven?.trays} ${name}`)), "<=", day.kitchen.ovens[0]?.trays ?? 0);
    // Two heats: neither at once nor within the change.
    const change = q(day.kitchen.ovens[0]?.changeMin ?? 0);
    for (const one of baked) {
      for (const other of baked) {
        if (one.step.needs.oven?.c === other.step.needs.oven?.c) continue;
        add([x(one.i, t), ...starts(other, t - other.length - change + 1, t + one.length + change - 1)].filter((name) => name !== x(one.i, t) || t <= last(one)), "<=", 1);
      }
    }
  }
  const binaries = rows.flatMap((row) => starts(row, 0, slots));
  return `Minimize\n obj: 0 ${binaries[0]}\nSubject To\n${lines.map((line, k) => ` r${k}:${line}`).join("\n")}\nBinary\n ${binaries.join("\n ")}\nEnd\n`;
}
