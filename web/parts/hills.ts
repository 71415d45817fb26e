/** Paths of hills and pegs. A hill is a smooth run through the week values that never rises above them (monotone cubic). */
import { area, curveMonotoneX, line } from "d3-shape";

export type Point = readonly [x: number, y: number];
export interface Run {
  readonly first: number;
  readonly last: number;
}

/** Where things stand: `x` of the left edge of a week by index (fractions allowed), `y` of an amount above the ground line. */
export interface Ground {
  readonly x: (week: number) => number;
  readonly y: (grams: number) => number;
  readonly base: number;
  readonly weeks: number;
  /** Index of the week with today in it: hills that begin there begin at the seam. */
  readonly now: number;
}

/** Unbroken stretches of weeks from `from` on in which the value is at least `least`. */
export function runsOf(values: readonly number[], from: number, least: number): Run[] {
  const runs: Run[] = [];
  let first = -1;
  for (let i = from; i <= values.length; i++) {
    const on = i < values.length && (values[i] as number) >= least;
    if (on && first < 0) first = i;
    if (!on && first >= 0) {
      runs.push({ first, last: i - 1 });
      first = -1;
    }
  }
  return runs;
}

/** A hill rises from the ground a fifth of a week before its first week and falls back a fifth after its last, unless the year or the seam cuts it. */
export function hillPoints(values: readonly number[], run: Run, ground: Ground): Point[] {
  const at = (i: number): number => ground.y(values[i] as number);
  const points: Point[] = [run.first === ground.now || run.first === 0 ? [ground.x(run.first), at(run.first)] : [ground.x(run.first - 0.2), ground.base]];
  for (let i = run.first; i <= run.last; i++) points.push([ground.x(i + 0.5), at(i)]);
  points.push(run.last === ground.weeks - 1 ? [ground.x(ground.weeks), at(run.last)] : [ground.x(run.last + 1.2), ground.base]);
  return points;
}

/** Points of a whole series from the seam to the end of the year. */
export function seriesPoints(values: readonly number[], ground: Ground): Point[] {
  const run = { first: ground.now, last: ground.weeks - 1 };
  return run.first > run.last ? [] : hillPoints(values, run, ground);
}

export function areaPath(points: readonly Point[], base: number): string {
  const shape = area<Point>().x(([x]) => x).y1(([, y]) => y).y0(base).curve(curveMonotoneX).digits(1);
  return shape([...points]) ?? "";
}

export function linePath(points: readonly Point[]): string {
  return line<Point>().x(([x]) => x).y(([, y]) => y).curve(curveMonotoneX).digits(1)([...points]) ?? "";
}

/** The field between two series with the same weeks. */
export function bandPath(lower: readonly Point[], upper: readonly Point[]): string {
  const pairs = upper.map(([x, y], i) => [x, y, lower[i]?.[1] ?? y] as const);
  const shape = area<(typeof pairs)[number]>().x(([x]) => x).y1(([, y]) => y).y0(([, , y]) => y).curve(curveMonotoneX).digits(1);
  return shape(pairs) ?? "";
}

/** Picked amounts as bars 56 % of a week wide, all in one path. */
export function pegsPath(values: readonly number[], ground: Pick<Ground, "x" | "y" | "base">): string {
  return values
    .map((grams, i) => {
      if (grams <= 0) return "";
      const [left, right, top] = [ground.x(i + 0.22), ground.x(i + 0.78), ground.y(grams)];
      return `M${left.toFixed(1)} ${ground.base.toFixed(1)}V${top.toFixed(1)}H${right.toFixed(1)}V${ground.base.toFixed(1)}Z`;
    })
    .join("");
}

/** The eating line: level within a week, so that a week away shows as a step to the ground. */
export function stepPath(values: readonly number[], ground: Pick<Ground, "x" | "y">): string {
  return values
    .map((grams, i) => {
      const y = ground.y(grams).toFixed(1);
      const x = ground.x(i).toFixed(1);
      const moved = i === 0 ? `M${x} ${y}` : grams === values[i - 1] ? "" : `H${x}V${y}`;
      return i === values.length - 1 ? `${moved}H${ground.x(i + 1).toFixed(1)}` : moved;
    })
    .join("");
}
