/** The whole service on one screen: what every request goes through, then every slice. */
import Fastify, { LogController, type FastifyInstance, type FastifyRequest } from "fastify";
import { serializerCompiler, type ZodTypeProvider } from "fastify-type-provider-zod";
import { randomUUID } from "node:crypto";
import type { Db } from "#db/client.ts";
import { adviceRoutes } from "./advice/routes.ts";
import { bedRoutes } from "./beds/routes.ts";
import { calendarRoutes } from "./calendar/routes.ts";
import type { Clock } from "./clock.ts";
import type { Mode } from "./config.ts";
import { choosingRoutes } from "./cook-days/choosing-routes.ts";
import { cookDayRoutes } from "./cook-days/routes.ts";
import { counterRoutes } from "./counter/routes.ts";
import { cropRoutes } from "./crops/routes.ts";
import { listenersOn } from "./http/listeners.ts";
import { eventRoutes, nudgeAfterWrites } from "./events/routes.ts";
import { referenceBooks } from "./facts/reference.ts";
import { standingSeasons } from "./facts/standing-season.ts";
import { gramAccountRoutes } from "./gram-account/routes.ts";
import { healthRoutes } from "./health/routes.ts";
import { householdRoutes } from "./household/routes.ts";
import { answers } from "./http/answers.ts";
import { readJson } from "./http/body.ts";
import { readByContract } from "./http/contract.ts";
import { answerErrors, answerUnreadable } from "./http/errors.ts";
import { setHeaders } from "./http/headers.ts";
import { logAnswers, loggerOf, type LogStyle } from "./http/log-lines.ts";
import { answerNotModified } from "./http/known-already.ts";
import { inTurn } from "./http/in-turn.ts";
import { knownPaths } from "./http/known-paths.ts";
import { guardLoopback } from "./http/loopback.ts";
import { keeper, within, type MemberOf } from "./http/member.ts";
import { publishDocs, publishOpenApi } from "./http/openapi.ts";
import { packAnswers } from "./http/packing.ts";
import { servePages } from "./http/pages.ts";
import { putLinesDown } from "./http/stopping.ts";
import { larderRoutes } from "./larder/routes.ts";
import { batchRoutes } from "./lots/batch-routes.ts";
import { lotRoutes } from "./lots/routes.ts";
import { keepingRoutes } from "./keeping/routes.ts";
import { pickRoutes } from "./picks/routes.ts";
import { placeRoutes } from "./places/routes.ts";
import { planLineRoutes } from "./plan-lines/routes.ts";
import { recipeRoutes } from "./recipes/routes.ts";
import { seasonDesks } from "./season-desks.ts";
import { lineFits } from "./season/agree.ts";
import { agreedRoutes, seasonRoutes } from "./season/routes.ts";
import { lockAgreeing } from "./season/store.ts";
import { shoppingRoutes } from "./shopping/routes.ts";
import { sightingRoutes } from "./sightings/routes.ts";
import { sowingRoutes } from "./sowings/routes.ts";
import { stockTargetRoutes } from "./stock-targets/routes.ts";
import { supplyRoutes } from "./supplies/routes.ts";
import { tasteRoutes } from "./tastes/routes.ts";
import { timetables } from "./timetables.ts";
import { todayRoutes } from "./today/routes.ts";
import { weatherRoutes } from "./weather/routes.ts";
import { wishRoutes } from "./wishes/routes.ts";

export interface AppOptions {
  readonly db: Db;
  readonly clock: Clock;
  readonly mode: Mode;
  readonly version: string;
  readonly log: LogStyle;
  /** Takes the lines of the log instead of the console. */
  readonly writeLog?: (line: string) => void;
  /** Where the built pages lie; null = none are served. */
  readonly pages: string | null;
  /** Who is asking; on loopback always the keeper of the one household. */
  readonly memberOf?: MemberOf;
  /** How long a season's plan at once is looked for. */
  readonly seasonMs?: number;
}

/** A caller that is slower than this, or a handler that takes longer, is given up. */
const LIMITS = {
  bodyLimit: 1024 * 1024,
  requestTimeout: 30_000,
  connectionTimeout: 60_000,
  keepAliveTimeout: 65_000,
  handlerTimeout: 30_000,
  routerOptions: { maxParamLength: 100, ignoreTrailingSlash: false },
} as const;

export async function buildApp({ db, clock, mode, version, log, writeLog, pages, memberOf = keeper, seasonMs }: AppOptions): Promise<FastifyInstance> {
  const app = Fastify({ ...LIMITS, logger: loggerOf(log, writeLog), logController: new LogController({ disableRequestLogging: true }), genReqId: () => randomUUID(), frameworkErrors: answerUnreadable }).withTypeProvider<ZodTypeProvider>();
  app.setValidatorCompiler(readByContract);
  app.setSerializerCompiler(serializerCompiler);
  answerErrors(app);
  guardLoopback(app);
  putLinesDown(app);
  logAnswers(app, memberOf);
  await setHeaders(app);
  answerNotModified(app);
  await packAnswers(app);
  readJson(app);
  const methodsAt = knownPaths(app);
  await publishOpenApi(app, version);

  const inHousehold = within(db, memberOf);
  const deps = { db, clock, within: inHousehold, householdOf: (request: FastifyRequest) => memberOf(request).householdId, answer: answers(inHousehold, clock), books: referenceBooks(db) };
  const desk = timetables(async () => (await deps.books()).preservation);
  app.addHook("onClose", () => desk.close());
  const [planners, standing, turn] = [seasonDesks(), standingSeasons(), inTurn()];
  app.addHook("onClose", () => planners.close());

  const hearing = { listeners: listenersOn(db, clock, (error) => app.log.warn({ err: error }, "changes could not be looked at")), memberOf };
  nudgeAfterWrites(app, hearing);

  await app.register(healthRoutes, { ...deps, version, mode });
  await app.register(householdRoutes, deps);
  await app.register(weatherRoutes, deps);
  await app.register(cropRoutes, deps);
  await app.register(bedRoutes, deps);
  await app.register(sowingRoutes, deps);
  await app.register(sightingRoutes, deps);
  await app.register(pickRoutes, deps);
  await app.register(calendarRoutes, { ...deps, standing });
  await app.register(adviceRoutes, deps);
  await app.register(todayRoutes, deps);
  await app.register(recipeRoutes, deps);
  await app.register(keepingRoutes, deps);
  await app.register(planLineRoutes, { ...deps, turn, reserving: { lock: lockAgreeing, fits: lineFits } });
  await app.register(cookDayRoutes, { ...deps, desk });
  await app.register(choosingRoutes, { ...deps, desk });
  await app.register(counterRoutes, { ...deps, desk });
  await app.register(placeRoutes, deps);
  await app.register(lotRoutes, deps);
  await app.register(batchRoutes, deps);
  await app.register(larderRoutes, deps);
  await app.register(wishRoutes, deps);
  await app.register(tasteRoutes, deps);
  await app.register(stockTargetRoutes, deps);
  await app.register(supplyRoutes, deps);
  await app.register(gramAccountRoutes, deps);
  await app.register(shoppingRoutes, deps);
  await app.register(eventRoutes, hearing);
  await app.register(agreedRoutes, { ...deps, turn });
  await app.register(seasonRoutes, { ...deps, desk: planners, standing, ...(seasonMs === undefined ? {} : { seasonMs }) });

  await publishDocs(app);
  await servePages(app, pages, methodsAt);
  return app;
}
