/**
 * The levels below the end, one after another, each kept while the next is looked at: the longest stand, the oven's heat-ups, gaps too
 * short for the cook to be worth anything. All ask the same search, near the plan in hand, and count its conflicts. Minutes.
 */
import { planWith } from "./ask.ts";
import type { Hands } from "./assign.ts";
import { likelyMin, type Copy, type DayCopies } from "./copies.ts";
import { startOf } from "./day-to-lags.ts";
import { fewerGaps } from "./gaps.ts";
import { fewerHeatUps } from "./heat-ups.ts";
import { longestStand } from "./margins.ts";
import { onGrid, type Lag, type Plan, type Project } from "./project.ts";

/** Conflicts that one question about the stand may cost, and all of them. */
const ONE_QUESTION = 1_500;
const ALL_QUESTIONS = 4_000;

export interface Settled {
  readonly plan: Plan;
  readonly used: number;
}

/** Who does what in a plan, by copy. */
export type HandsIn = (plan: Plan) => readonly Hands[];

/** The given plan, or one that ends no later and is better at the first level that differs. */
export function settleLevels(project: Project, model: DayCopies, plan: Plan, conflicts: number, handsIn: HandsIn): Settled {
  const standing = shortestStand(project, model, plan, conflicts);
  const stand = standOf(model, standing.plan);
  const frozen = { ...project, lags: [...project.lags, ...noLaterThan(project, plan), ...noLonger(model, stand)] };
  const heated = fewerHeatUps(frozen, model, standing.plan, conflicts - standing.used);
  const used = standing.used + heated.used;
  const filled = fewerGaps(frozen, model, heated.plan, conflicts - used, handsIn);
  return { plan: filled.plan, used: used + filled.used };
}

/** The given plan, or one that ends no later and in which food stands for a shorter time: the bound on the stand is halved in on. */
function shortestStand(project: Project, model: DayCopies, plan: Plan, conflicts: number): Settled {
  const most = Math.min(conflicts, ALL_QUESTIONS);
  const { grid } = onGrid(project);
  const ended = { ...project, lags: [...project.lags, ...noLaterThan(project, plan)] };
  let best = plan;
  let used = 0;
  // `low` is known or taken to be too short, `high` is had.
  let [low, high] = [-grid, standOf(model, plan)];
  while (high - low > grid && used < most) {
    const stand = low + Math.max(1, Math.floor((high - low) / grid / 2)) * grid;
    const answer = planWith(ended, noLonger(model, stand), best, Math.min(ONE_QUESTION, most - used));
    used += answer.used;
    if (answer.plan === null) low = stand;
    else [best, high] = [answer.plan, standOf(model, answer.plan)];
  }
  return { plan: best, used };
}

const standOf = (model: DayCopies, { starts }: Plan): number => longestStand(model, model.copies.map((_, i) => starts[startOf(i)] as number));

const noLaterThan = (project: Project, plan: Plan): Lag[] => [{ from: project.end, to: 0, min: -(plan.starts[project.end] as number), why: "" }];

function noLonger({ copies, links }: DayCopies, stand: number): Lag[] {
  return links.flatMap(({ before, after, maxWait }): Lag[] =>
    maxWait === null || maxWait <= stand ? [] : [{ from: startOf(after), to: startOf(before), min: -(likelyMin(copies[before] as Copy) + stand), why: "" }],
  );
}
