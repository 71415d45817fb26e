/**
 * Fewer gaps that are too short for the cook to be worth anything: each is closed, or else widened, near the plan in hand. What is
 * better above (end, stand, heat-ups) is never given for it. Minutes.
 */
import { planWith } from "./ask.ts";
import type { Copy, DayCopies } from "./copies.ts";
import { startOf } from "./day-to-lags.ts";
import { heatUpsOf } from "./heat-ups.ts";
import type { HandsIn, Settled } from "./levels.ts";
import type { Lag, Plan, Project } from "./project.ts";

/** A pause under ten minutes is worth nothing to a cook (common practice, no source). */
const SHORT_GAP_MIN = 10;
/** Conflicts that one question may cost, and questions. */
const ONE_QUESTION = 150;
const MOST_QUESTIONS = 24;

/** The given plan, or one with fewer short gaps; `project` holds what must stay as good as it is. */
export function fewerGaps(project: Project, model: DayCopies, plan: Plan, conflicts: number, handsIn: HandsIn): Settled {
  let best = plan;
  let gaps = shortGaps(model, plan, handsIn);
  const heatUps = heatUpsOf(model, plan);
  let used = 0;
  let asked = 0;
  for (let better = true; better && gaps.length > 0; ) {
    better = false;
    for (const lags of gaps.flatMap((gap) => changes(model, gap))) {
      if (used >= conflicts || asked++ >= MOST_QUESTIONS) return { plan: best, used };
      const answer = planWith(project, lags, best, Math.min(ONE_QUESTION, conflicts - used));
      used += answer.used + 1;
      if (answer.plan === null || heatUpsOf(model, answer.plan) > heatUps) continue;
      const left = shortGaps(model, answer.plan, handsIn);
      if (left.length >= gaps.length) continue;
      [best, gaps, better] = [answer.plan, left, true];
      break;
    }
  }
  return { plan: best, used };
}

interface Gap {
  /** Copies. */
  readonly earlier: number;
  readonly later: number;
}

function shortGaps({ copies }: DayCopies, plan: Plan, handsIn: HandsIn): Gap[] {
  const hands = handsIn(plan);
  const at = (copy: number): number => plan.starts[startOf(copy)] as number;
  return [...new Set(hands.flatMap(({ cook }) => cook ?? []))].flatMap((cook) => {
    const work = copies.flatMap((_, i) => (hands[i]?.cook === cook ? [i] : [])).sort((a, b) => at(a) - at(b));
    return work.slice(1).flatMap((later, k): Gap[] => {
      const earlier = work[k] as number;
      const gap = at(later) - at(earlier) - (copies[earlier] as Copy).step.handsOnMin;
      return gap > 0 && gap < SHORT_GAP_MIN ? [{ earlier, later }] : [];
    });
  });
}

/** No gap at all, or a long one. */
function changes({ copies }: DayCopies, { earlier, later }: Gap): Lag[][] {
  const { handsOnMin } = (copies[earlier] as Copy).step;
  const least = (gap: number): Lag => ({ from: startOf(earlier), to: startOf(later), min: handsOnMin + gap, why: "" });
  return [[least(0), { from: startOf(later), to: startOf(earlier), min: -handsOnMin, why: "" }], [least(SHORT_GAP_MIN)]];
}
