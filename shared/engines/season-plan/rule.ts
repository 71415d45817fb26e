/**
 * The simple rule: week by week, without looking ahead. It answers when the solver cannot, and is what a plan must beat.
 * Eat fresh; while something goes off this week, make the best that fits; then what was asked for; then give; then eat from the store.
 * With several scenarios it is run on the likeliest, and then in each with those batches as upper limits and recourse free. README, "The rule".
 */
import { RuleWeek, type Limits } from "./rule-week.ts";
import type { Batches, Course, Season, SeasonPlan } from "./types.ts";

export function planByRule(season: Season): SeasonPlan {
  const several = season.scenarios.length > 1;
  const likely = season.scenarios.reduce((best, { chance }, s) => (chance > (season.scenarios[best]?.chance ?? 0) ? s : best), 0);
  const first = runRule(season, likely, { booked: null, recourse: !several });
  if (!several) return { planned: first.made, outcomes: { [season.scenarios[0]?.id ?? ""]: first } };
  const planned = first.made;
  const outcomes = season.scenarios.map(({ id }, s) => [id, runRule(season, s, { booked: planned, recourse: true })] as const);
  return { planned, outcomes: Object.fromEntries(outcomes) };
}

export function runRule(season: Season, s: number, limits: Limits): Course {
  const rule = new RuleWeek(season, s, limits);
  for (let t = 0; t < season.weeks; t++) {
    rule.begin(t);
    if (t < season.frozenWeeks) rule.makeAgreed();
    rule.eatFresh();
    if (t >= season.frozenWeeks) {
      rule.saveWhatGoesOff();
      rule.makeWhatIsAskedFor();
    }
    rule.give();
    rule.end();
  }
  return rule.course();
}

export type { Batches };
