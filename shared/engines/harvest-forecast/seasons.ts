/** First pick, end and length of the picking season in every scenario: ripeness, then frost, bolting, the calendar and the spade. */
import type { DayNumber } from "../../kernel/local-date.ts";
import { waitsForTheGrower } from "../../kernel/crop-facts.ts";
import { monthStart } from "./calendar-days.ts";
import type { FirstPicks } from "./first-picks.ts";
import { ranToSeedOn, RUN_TO_SEED_DAYS } from "./flowering.ts";
import type { KnownFacts } from "./known-facts.ts";
import { standsUntil } from "./lifting.ts";
import type { Deal } from "./scenario-deal.ts";
import { bearsUnderground, boltingDays, BOLTER_PICK_DAYS, diesUnripe, endingDays, hurtFrom, killingDays, SKINS_SET_DAYS, yieldUnderDeadTops } from "./season-limits.ts";
import type { CoveredWeather } from "./thermal-time.ts";
import type { CurveShape, ForecastQuestion } from "./types.ts";
import { endsBy } from "./winter.ts";

/** One entry for each scenario. */
export interface Seasons {
  /** −1 where no pick comes. */
  readonly first: Int32Array;
  /** Days from 0 to 1 of the yield curve. */
  readonly spanDays: Float64Array;
  /** First day that brings nothing more. */
  readonly until: Int32Array;
  /** Last day on which it may still stand there. */
  readonly outBy: Int32Array;
  /** Part of the yield that is there: less than all of it under tops that frost has killed early. */
  readonly share: Float64Array;
  /** Scenarios that frost kills before the first pick; that never get warm enough; whose picking frost, or long days, cut short. */
  readonly counts: { readonly lostToFrost: number; readonly tooSlow: number; readonly cutByFrost: number; readonly cutByBolting: number; readonly underDeadTops: number };
}

export interface SeasonPlan {
  readonly beganOn: DayNumber;
  readonly pickWeeks: { readonly low: number; readonly high: number };
  readonly ready: FirstPicks;
  readonly deal: Deal;
  readonly perYear: number;
  readonly shape: CurveShape;
}

/** The plants of one sowing come ready within about a tenth of their growing time either way (common practice); at least so many days. */
const ONE_CUT_SPREAD = 0.2;
const ONE_CUT_AT_LEAST_DAYS = 7;

export function seasonsOf(q: ForecastQuestion, facts: KnownFacts, air: CoveredWeather, plan: SeasonPlan): Seasons {
  const { crop } = q.planting;
  const { firstDay, days } = q.weather;
  const n = plan.deal.part.length;
  const waits = waitsForTheGrower(crop);
  const lastDay = facts.season ? facts.season.until : endsBy(crop, plan.beganOn, q.southern);
  const kills = killingDays(crop, air);
  const ends = endingDays(crop, air);
  const bolts = boltingDays(crop, air, q.latitudeDeg ?? null);
  // frosts before a sighting or a pick did not kill; a perennial's only count from midsummer on
  const autumn = facts.season && crop.perennial ? monthStart(facts.season.name, 7, q.southern) : hurtFrom(crop, plan.beganOn, q.southern);
  const hardyUntil = Math.max((facts.aliveOn ?? -Infinity) + 1, autumn);
  const next = (table: Int32Array | null, y: number, day: DayNumber): DayNumber => {
    if (!table || day >= firstDay + days) return Infinity;
    const at = table[y * (days + 1) + Math.max(0, day - firstDay)] as number;
    return at >= days ? Infinity : firstDay + at;
  };
  // what was picked was there, whatever the book says of its last day
  const picked = (facts.lastPick ?? facts.firstPick ?? -Infinity) + 1;
  const seeded = ranToSeedOn(crop, facts.seen);
  const usedUp = seeded === null ? Infinity : seeded + RUN_TO_SEED_DAYS;
  const closed = Math.max(picked, Math.min(lastDay, usedUp, facts.finishedOn === null ? Infinity : facts.finishedOn + 1));
  const first = new Int32Array(n).fill(-1);
  const until = new Int32Array(n).fill(-1);
  const outBy = new Int32Array(n).fill(-1);
  const spanDays = new Float64Array(n);
  const share = new Float64Array(n).fill(1);
  const counts = { lostToFrost: 0, tooSlow: 0, cutByFrost: 0, cutByBolting: 0, underDeadTops: 0 };
  for (let s = 0; s < n; s++) {
    const y = Math.floor(s / plan.perYear);
    const at = plan.ready.days[y * plan.perYear + (plan.deal.part[s] as number)] as number;
    const up = plan.ready.upFrom[y] as number;
    // what runs to seed is as ready as it will be
    let ripe = facts.firstPick ?? Math.min(seeded ?? Infinity, at < 0 ? Infinity : firstDay + at);
    const killed = up >= 0 && facts.firstPick === null && diesUnripe(crop) ? next(kills, y, Math.max(firstDay + up, hardyUntil)) : Infinity;
    if (killed < Math.min(ripe, closed - SKINS_SET_DAYS) && bearsUnderground(crop)) {
      const there = yieldUnderDeadTops(plan.ready.ripenessBy(y, plan.deal.part[s] as number, killed));
      if (there > 0) {
        counts.underDeadTops++;
        share[s] = there;
        ripe = Math.min(ripe, killed + SKINS_SET_DAYS);
      }
    }
    if (ripe >= Math.min((share[s] as number) < 1 ? Infinity : killed, closed)) {
      if (killed <= closed && killed < Infinity) counts.lostToFrost++;
      else counts.tooSlow++;
      continue;
    }
    const span = spanOf(facts, plan, s, ripe);
    const frost = next(ends, y, Math.max(ripe, hardyUntil));
    const bolt = Math.max(next(bolts, y, ripe), ripe + BOLTER_PICK_DAYS);
    const end = Math.max(Math.min(ripe + span, frost, bolt, closed), (facts.lastPick ?? -Infinity) + 1, ripe + 1);
    if (frost < Math.min(ripe + span, closed)) counts.cutByFrost++;
    else if (bolt < Math.min(ripe + span, closed)) counts.cutByBolting++;
    first[s] = ripe;
    until[s] = end;
    outBy[s] = Math.max(end, Math.min(frost, bolt, closed, standsUntil(crop, ripe))) - 1;
    // what waits is lifted before the frost, so a shorter season loses nothing
    spanDays[s] = waits ? end - ripe : span;
  }
  return { first, spanDays, until, outBy, share, counts };
}

/** Planned length of the season, whole days; at least until the last logged pick. */
function spanOf(facts: KnownFacts, plan: SeasonPlan, s: number, ripe: DayNumber): number {
  const { low, high } = plan.pickWeeks;
  const weeks = low + (high - low) * (plan.deal.length[s] as number);
  const whole = Math.max(1, Math.round(weeks * 7));
  const spread = plan.shape === "one-cut" ? Math.min(whole, Math.max(ONE_CUT_AT_LEAST_DAYS, Math.round(ONE_CUT_SPREAD * (ripe - plan.beganOn)))) : whole;
  return Math.max(spread, facts.lastPick === null ? 0 : facts.lastPick - ripe + 1);
}
