/**
 * The scenarios of the forecast as three courses of the season that belong together crop by crop: a poor, a usual and a good year. A course is one
 * scenario of the forecast, the one nearest to the middle of its group, and stands for the share of scenarios in it; it is never a table of percentiles.
 */
import type { CropOutlook } from "./outlook-supply.ts";

export const COURSES = ["usual", "poor", "good"] as const;
export type CourseId = (typeof COURSES)[number];

export interface SeasonCourse {
  readonly id: CourseId;
  readonly chance: number;
  /** Scenario of the forecast that stands for the group. */
  readonly scenario: number;
}

/** Poorest and best fifth of the scenarios; common practice, no source. */
const TAIL = 0.2;

/** `first` and `until`: weeks of the supplies that count, the end not included. The usual year comes first. */
export function seasonCourses(crops: readonly CropOutlook[], first: number, until: number): SeasonCourse[] {
  const count = crops[0]?.kept.scenarios.length ?? 0;
  if (count === 0) return [{ id: "usual", chance: 1, scenario: 0 }];
  const totals = Float64Array.from({ length: count }, (_, s) => crops.reduce((sum, crop) => sum + gramsOf(crop, s, first, until), 0));
  const order = Array.from({ length: count }, (_, s) => s).sort((a, b) => (totals[a] as number) - (totals[b] as number) || a - b);
  const tail = Math.floor(count * TAIL);
  const groups: [CourseId, number[]][] = [["usual", order.slice(tail, count - tail)], ["poor", order.slice(0, tail)], ["good", order.slice(count - tail)]];
  return groups.filter(([, group]) => group.length > 0).map(([id, group]) => ({ id, chance: group.length / count, scenario: nearestToMiddle(crops, group, first, until) }));
}

/** The scenario whose weeks differ least from the mean of its group, all crops together. */
function nearestToMiddle(crops: readonly CropOutlook[], group: readonly number[], first: number, until: number): number {
  const far = new Float64Array(group.length);
  for (const { kept } of crops) {
    for (let w = first; w < until; w++) {
      let mean = 0;
      for (const s of group) mean += (kept.scenarios[s] as Float64Array)[w] as number;
      mean /= group.length;
      for (let i = 0; i < group.length; i++) far[i] = (far[i] as number) + Math.abs(((kept.scenarios[group[i] as number] as Float64Array)[w] as number) - mean);
    }
  }
  let nearest = 0;
  for (let i = 1; i < far.length; i++) if ((far[i] as number) < (far[nearest] as number)) nearest = i;
  return group[nearest] as number;
}

function gramsOf({ kept }: CropOutlook, s: number, first: number, until: number): number {
  const grams = kept.scenarios[s] as Float64Array;
  let sum = 0;
  for (let w = first; w < until; w++) sum += grams[w] as number;
  return sum;
}
