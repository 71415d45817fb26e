import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { IdParams } from "#shared/contracts/common.ts";
import { AgreedWeek, NewAgreed, SeasonJob, SeasonPlanAnswer, SeasonQuestion, StandingSeason, WeekParams } from "#shared/contracts/season-plan.ts";
import { weekOf } from "#shared/kernel/iso-week.ts";
import { seasonInstance } from "#shared/planning/season-instance.ts";
import type { FastifyRequest } from "fastify";
import { dayAsked, loadHouse, loadStamps } from "../facts/house.ts";
import { loadSeason } from "../facts/season.ts";
import { isUpToDate, type StandingSeasons } from "../facts/standing-season.ts";
import { badFields, refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import type { InTurn } from "../http/in-turn.ts";
import { granted } from "../problems.ts";
import { agree, loadAgreedWeek } from "./agree.ts";
import { seasonJobs, type Pace, type SeasonDesk, type SeasonJobNow } from "./jobs.ts";
import { deleteWeek, lockAgreeing } from "./store.ts";

const tags = ["season"];
/** Of what is picked may be lost so that what was asked for is made, unless asked otherwise; common practice, no source. */
const ALLOWANCE = 0.02;
/**
 * An answer at once is looked for until then, reckoned from its asking; facts, reasons and words take the rest of the five seconds in which
 * it is promised, on a busy machine too. One in the background takes its time.
 */
const LOOKED_FOR_MS = 3_000;
const SECONDS_PER_LEVEL = 4.5;
const IN_BACKGROUND = { secondsPerLevel: SECONDS_PER_LEVEL, usualMs: 90_000, lookFurther: true };

export interface SeasonDeps extends Deps {
  readonly desk: SeasonDesk;
  readonly standing: StandingSeasons;
  /** How long an answer at once may be looked for, reading the facts included. */
  readonly seasonMs?: number;
}

export const seasonRoutes: FastifyPluginAsyncZod<SeasonDeps> = async (app, { within, clock, books, householdOf, desk, standing, seasonMs = LOOKED_FOR_MS }) => {
  const jobs = seasonJobs(desk, standing);

  const begin = async (request: FastifyRequest, { from, weeks, allowance, asOf }: SeasonQuestion, pace: () => Pace): Promise<{ householdId: string; id: string }> => {
    const book = await books();
    const { facts, house } = await within(request, async (tx, householdId) => {
      const house = await loadHouse(tx, householdId);
      return { house, facts: await loadSeason(tx, house, book, dayAsked(house, clock, asOf)) };
    });
    const today = facts.garden.asOf;
    if (from < weekOf(today)) throw badFields([{ path: "from", message: `must not be before the running week, ${weekOf(today)}` }]);
    const { householdId } = house;
    const earlier = (standing.find(householdId)?.answer.weeks ?? []).flatMap(({ week, lines }) => lines.filter(({ agreedIds, way }) => agreedIds.length === 0 && way !== "give").map(({ recipeId, batches }) => ({ week, recipeId, batches })));
    const instance = seasonInstance(facts, { from, weeks, allowance: allowance ?? ALLOWANCE }, asOf === undefined ? earlier : []);
    return { householdId, id: await jobs.begin({ householdId, facts, instance, ...pace(), keepUnder: asOf === undefined ? house.stamps : null }) };
  };

  app.post(
    "/api/season/plan",
    { schema: { tags, summary: "Which way in which week: the best plan so far at once, or in the background with Prefer: respond-async", body: SeasonQuestion, response: { 200: SeasonPlanAnswer, 202: SeasonJob, ...refusals } } },
    async (request, reply) => {
      const begunMs = performance.now();
      const leftMs = (): number => Math.max(0, seasonMs - (performance.now() - begunMs));
      const background = /\brespond-async\b/i.test(String(request.headers["prefer"] ?? ""));
      const { householdId, id } = await begin(request, request.body, () => (background ? IN_BACKGROUND : { secondsPerLevel: SECONDS_PER_LEVEL, secondsInAll: leftMs() / 1000, usualMs: seasonMs, lookFurther: false }));
      if (background) return reply.code(202).header("location", `/api/season/jobs/${id}`).header("preference-applied", "respond-async").send(toJob(jobs.now(householdId, id)));
      await jobs.wait(householdId, id, leftMs());
      return jobs.settle(householdId, id);
    },
  );

  app.get("/api/season/plan", { schema: { tags, summary: "The plan that stands: the last one worked out", response: { 200: StandingSeason, ...refusals } } }, async (request) => {
    const { householdId, stamps } = await within(request, async (tx, household) => ({ householdId: household, stamps: await loadStamps(tx, household) }));
    const found = standing.find(householdId);
    return { plan: found?.answer ?? null, upToDate: found !== undefined && isUpToDate(found, stamps), jobId: jobs.running(householdId) };
  });

  app.get("/api/season/jobs/:id", { schema: { tags, summary: "How far a plan in the background is, and the best so far", params: IdParams, response: { 200: SeasonJob, ...refusals } } }, async (request) =>
    toJob(jobs.now(householdOf(request), request.params.id)),
  );

  app.delete("/api/season/jobs/:id", { schema: { tags, summary: "End a plan in the background with the best so far", params: IdParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    jobs.cancel(householdOf(request), request.params.id);
    return reply.code(204).send();
  });
};

export interface AgreedDeps extends Deps {
  readonly turn: InTurn;
}

export const agreedRoutes: FastifyPluginAsyncZod<AgreedDeps> = async (app, { within, clock, books, householdOf, turn }) => {
  const address = "/api/season/weeks/:week/agreed";
  app.get(address, { schema: { tags, summary: "What is agreed for a week, and what is left for it", params: WeekParams, response: { 200: AgreedWeek, ...refusals } } }, async (request) => {
    const book = await books();
    return within(request, async (tx, householdId) => {
      const house = await loadHouse(tx, householdId);
      return loadAgreedWeek(tx, house, book, request.params.week, dayAsked(house, clock, undefined));
    });
  });

  app.put(address, { schema: { tags, summary: "Agree lines for a week, all or none: their produce, room and jars are given out once", params: WeekParams, body: NewAgreed, response: { 200: AgreedWeek, ...refusals } } }, async (request) => {
    const book = await books();
    const { week } = request.params;
    return turn(householdOf(request), () =>
      within(request, async (tx, householdId) => {
        const day = dayAsked(await loadHouse(tx, householdId), clock, undefined);
        if (week < weekOf(day)) throw badFields([{ path: "week", message: `must not be before the running week, ${weekOf(day)}` }]);
        return granted(await agree(tx, householdId, book, { week, body: request.body, day }));
      }),
    );
  });

  app.delete(address, { schema: { tags, summary: "Take back all that is agreed for a week", params: WeekParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    await within(request, async (tx, householdId) => {
      await lockAgreeing(tx, householdId);
      await deleteWeek(tx, householdId, request.params.week);
    });
    return reply.code(204).send();
  });
};

const WORDS: Readonly<Record<SeasonJobNow["state"], string>> = {
  waiting: "Waiting for its turn. Until then the simple rule's plan stands.",
  working: "A better plan is being looked for.",
  done: "Worked out.",
  cancelled: "Ended with the best so far.",
  failed: "The search failed. The best so far stands.",
};

function toJob({ id, state, progress, plan }: SeasonJobNow): SeasonJob {
  return { id, state, progress, text: WORDS[state], plan };
}
