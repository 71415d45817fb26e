/**
 * Fewer gaps that are too short for the cook to be worth anything: each is closed, or else widened, near the plan in hand. What is
 * better above (end, stand, heat-ups) is never given for it. Minutes.
 */
import { planWith } from "./ask.ts";
import type { Hands } from "./assign.ts";
import type { Copy, DayCopies } from "./copies.ts";
import { startOf } from "./day-to-lags.ts";
import type { Judge, Settled } from "./levels.ts";
import type { Lag, Plan, Project } from "./project.ts";

/** A pause under ten minutes is worth nothing to a cook (common practice, no source). */
const SHORT_GAP_MIN = 10;
/** Conflicts that one question may cost, and questions. */
const ONE_QUESTION = 150;
const MOST_QUESTIONS = 24;

/** The given plan, or one with fewer short gaps; `project` holds what must stay as good as it is. */
export function fewerGaps(project: Project, model: DayCopies, plan: Plan, conflicts: number, judge: Judge): Settled {
  let best = plan;
  let score = judge(plan);
  let used = 0;
  let asked = 0;
  for (let better = true; better && score !== null && score.shortGaps > 0; ) {
    better = false;
    for (const lags of score.shortGaps > 0 ? changes(model, best, score.hands) : []) {
      if (used >= conflicts || asked++ >= MOST_QUESTIONS) return { plan: best, used };
      const answer = planWith(project, lags, best, Math.min(ONE_QUESTION, conflicts - used));
      used += answer.used;
      const other = answer.plan && judge(answer.plan);
      if (!answer.plan || !other || other.heatUps > score.heatUps || other.shortGaps >= score.shortGaps) continue;
      [best, score, better] = [answer.plan, other, true];
      break;
    }
  }
  return { plan: best, used };
}

/** For each short gap: no gap at all, or a long one. */
function changes({ copies }: DayCopies, { starts }: Plan, hands: readonly Hands[]): Lag[][] {
  const at = (copy: number): number => starts[startOf(copy)] as number;
  const handsOn = (copy: number): number => (copies[copy] as Copy).step.handsOnMin;
  const cooks = [...new Set(hands.flatMap(({ cook }) => cook ?? []))];
  return cooks.flatMap((cook) => {
    const work = copies.flatMap((_, i) => (hands[i]?.cook === cook ? [i] : [])).sort((a, b) => at(a) - at(b));
    return work.slice(1).flatMap((later, k): Lag[][] => {
      const earlier = work[k] as number;
      const gap = at(later) - at(earlier) - handsOn(earlier);
      if (gap <= 0 || gap >= SHORT_GAP_MIN) return [];
      const least = (min: number): Lag => ({ from: startOf(earlier), to: startOf(later), min: handsOn(earlier) + min, why: "" });
      const closed: Lag = { from: startOf(later), to: startOf(earlier), min: -handsOn(earlier), why: "" };
      return [[least(0), closed], [least(SHORT_GAP_MIN)]];
    });
  });
}
