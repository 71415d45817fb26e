/**
 * Plans of the same season with one thing changed, worked out after the plan itself: with one step more of a limit (what would it save?) and with one
 * batch less of a line (what takes its place?). Each is a plan of its own, so what is told of it was found and not guessed.
 */
import { withLess, withMore, type Batches, type Season, type SeasonAnswer } from "#shared/engines/season-plan/index.ts";
import { lossyWeeks } from "#shared/planning/season-in-the-way.ts";
import type { WorkedOut } from "#shared/planning/season-answer.ts";
import type { SeasonDesk } from "./jobs.ts";

/** Steps that a household thinks in: an hour, 5 litres, a kilogram, half a litre, one jar or load; common practice, no source. */
const STEPS: Readonly<Record<string, number>> = { min: 60, l: 5, g: 1000, ml: 500 };
const MOST_WEEKS = 2;
const MOST_LIMITS = 3;
const MOST_LINES = 3;
/** So long is looked for each of them. */
const LOOK_MS = 4_000;
const WORTH_TELLING_GRAMS = 50;
/** A plan that shuffles more than this says nothing of one line. */
const MOST_CHANGES = 8;

type Found = Partial<Pick<WorkedOut, "helps" | "instead">>;

/** Tells more with each plan that is found; ends early when it is told to. */
export async function* furtherLooks(desk: SeasonDesk, household: string, season: Season, done: WorkedOut, first: number, stopped: () => boolean): AsyncGenerator<Found> {
  let helps: WorkedOut["helps"] = [];
  for (const { week, limits } of lossyWeeks(season, done.plan.planned, done.verdict, first).slice(0, MOST_WEEKS)) {
    for (const id of limits.slice(0, MOST_LIMITS)) {
      const resource = season.resources.find((one) => one.id === id);
      if (!resource || stopped()) continue;
      const more = STEPS[resource.unit] ?? 1;
      const answer = await looked(desk, household, heldTo(withMore(season, resource, week, more), done));
      const savesGrams = answer ? done.verdict.score.wasteGrams - answer.verdict.score.wasteGrams : 0;
      if (savesGrams < WORTH_TELLING_GRAMS) continue;
      const before = helps.find((one) => one.week === week)?.helps ?? [];
      helps = [...helps.filter((one) => one.week !== week), { week, helps: [...before, { resource: id, unit: resource.unit, more, savesGrams }].sort((a, b) => b.savesGrams - a.savesGrams) }];
      yield { helps };
    }
  }
  let instead: WorkedOut["instead"] = [];
  for (const line of [...done.plan.planned].sort((a, b) => a.week - b.week).slice(0, MOST_LINES)) {
    if (stopped()) return;
    const left = withLess(season, done.plan, line).planned.find(({ method, week }) => method === line.method && week === line.week)?.batches ?? 0;
    const answer = await looked(desk, household, heldTo({ ...season, atMost: [...(season.atMost ?? []).filter(({ method, week }) => method !== line.method || week !== line.week), { ...line, batches: left }] }, done));
    if (!answer || answer.verdict.score.changes > MOST_CHANGES) continue;
    instead = [...instead, { line, instead: grown(done.plan.planned, answer.plan.planned) }];
    yield { instead };
  }
}

/** As few lines as may be are changed, so that what differs is the answer. */
const heldTo = (season: Season, done: WorkedOut): Season => ({ ...season, agreed: done.plan.planned, agreedUntil: season.weeks });

/** Null where nothing was found in time. */
async function looked(desk: SeasonDesk, household: string, season: Season): Promise<SeasonAnswer | null> {
  const work = desk.plan(household, season, { allowance: 0.02, secondsPerLevel: 1 });
  const bell = setTimeout(() => work.cancel(), LOOK_MS);
  try {
    return await work.answer;
  } catch {
    return null;
  } finally {
    clearTimeout(bell);
  }
}

function grown(before: readonly Batches[], after: readonly Batches[]): Batches[] {
  return after.flatMap((line) => {
    const more = line.batches - (before.find(({ method, week }) => method === line.method && week === line.week)?.batches ?? 0);
    return more > 0 ? [{ ...line, batches: more }] : [];
  });
}
