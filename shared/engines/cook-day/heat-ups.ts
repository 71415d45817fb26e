/**
 * Fewer changes of the oven's heat: where one heat comes twice, what lies between is put before the first or after the second.
 * Ovens stay as they were chosen. As many heats as there are bakes that need to keep apart, each from all others, cannot be spared. Minutes.
 */
import { planWith } from "./ask.ts";
import { likelyMin, type Copy, type DayCopies } from "./copies.ts";
import { startOf } from "./day-to-lags.ts";
import { heatsOf, suits } from "./heats.ts";
import type { Settled } from "./levels.ts";
import type { Lag, Plan, Project } from "./project.ts";

/** Conflicts that one question may cost, and questions. */
const ONE_QUESTION = 400;
const MOST_QUESTIONS = 16;

/** The given plan, or one with fewer heat-ups; `project` holds what must stay as good as it is. */
export function fewerHeatUps(project: Project, model: DayCopies, plan: Plan, conflicts: number): Settled {
  let best = plan;
  let used = 0;
  let asked = 0;
  let heatUps = heatUpsOf(model, plan);
  const least = heatsNeeded(model);
  for (let better = true; better && heatUps > least; ) {
    better = false;
    for (const lags of mergers(project, model, best)) {
      if (used >= conflicts || asked++ >= MOST_QUESTIONS) return { plan: best, used };
      const answer = planWith(inSameOvens(project, best), lags, best, Math.min(ONE_QUESTION, conflicts - used));
      used += answer.used + 1;
      const fewer = answer.plan === null ? heatUps : heatUpsOf(model, answer.plan);
      if (answer.plan === null || fewer >= heatUps) continue;
      [best, heatUps, better] = [answer.plan, fewer, true];
      break;
    }
  }
  return { plan: best, used };
}

/** Runs of one heat, over all ovens. */
export function heatUpsOf(model: DayCopies, plan: Plan): number {
  return runsByOven(model, plan).reduce((sum, runs) => sum + runs.length, 0);
}

/** Bakes of which no two can share a heat, taken one by one: so many heats there are in any plan. */
function heatsNeeded({ copies }: DayCopies): number {
  const taken: Copy[] = [];
  for (const copy of copies) {
    const need = copy.step.needs.oven;
    if (need && likelyMin(copy) > 0 && taken.every((other) => other.step.needs.oven && !suits(other.step.needs.oven, need))) taken.push(copy);
  }
  return taken.length;
}

/** Each a way to bring two runs of one heat together. */
function mergers(project: Project, model: DayCopies, plan: Plan): Lag[][] {
  return runsByOven(model, plan).flatMap((runs) =>
    runs.flatMap((run, k) => {
      const next = runs.findIndex((other, n) => n > k && other.c === run.c);
      if (next < 0) return [];
      const between = runs.slice(k + 1, next).flatMap((other) => other.copies);
      const before = between.flatMap((other) => run.copies.flatMap((copy) => keepApart(project, other, copy)));
      const after = between.flatMap((other) => (runs[next] as Run).copies.flatMap((copy) => keepApart(project, copy, other)));
      return [after, before].filter((lags) => lags.length > 0);
    }),
  );
}

interface Run {
  readonly c: number;
  readonly copies: number[];
}

function runsByOven({ copies }: DayCopies, { starts, options }: Plan): Run[][] {
  const baked = copies.flatMap((copy, i) => {
    const startMin = starts[startOf(i)] as number;
    return copy.step.needs.oven && likelyMin(copy) > 0 ? [{ i, oven: options[startOf(i)] as number, need: copy.step.needs.oven, startMin, endMin: startMin + likelyMin(copy) }] : [];
  });
  return [...new Set(baked.map(({ oven }) => oven))].map((oven) => {
    const inside = baked.filter((one) => one.oven === oven).sort((a, b) => a.startMin - b.startMin);
    const heats = heatsOf(inside);
    const runs: Run[] = [];
    inside.forEach(({ i }, k) => {
      const c = heats[k] as number;
      if (runs[runs.length - 1]?.c === c) runs[runs.length - 1]?.copies.push(i);
      else runs.push({ c, copies: [i] });
    });
    return runs;
  });
}

/** One bake before another, with the change between, where the two have to keep apart at all. */
function keepApart(project: Project, first: number, second: number): Lag[] {
  const [a, b] = [startOf(first), startOf(second)];
  const pair = project.pairs.find((one) => (one.a === a && one.b === b) || (one.a === b && one.b === a));
  return pair ? [{ from: a, to: b, min: pair.a === a ? pair.ab : pair.ba, why: "" }] : [];
}

function inSameOvens(project: Project, { options }: Plan): Project {
  return { ...project, choices: project.choices.map((choice) => ({ ...choice, earliest: choice.earliest.map((at, k) => (k === options[choice.start] ? at : null)) })) };
}
