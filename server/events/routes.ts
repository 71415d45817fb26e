/** Server-sent events (WHATWG HTML, section 9.2): one stream for each page, which says what has changed and never what it is. */
import type { FastifyInstance } from "fastify";
import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { EventsQuery } from "#shared/contracts/events.ts";
import { refusals } from "../http/contract.ts";
import type { Listeners } from "../http/listeners.ts";
import type { MemberOf } from "../http/member.ts";

/** A stream is an answer that goes on; a browser opens another one when it ends. */
const A_DAY_MS = 86_400_000;
const WRITES = new Set(["PUT", "POST", "DELETE"]);

export interface EventDeps {
  readonly listeners: Listeners;
  readonly memberOf: MemberOf;
}

/** Every write that went well may have changed something; before the slices, so that it holds for all of them. */
export function nudgeAfterWrites(app: FastifyInstance, { listeners, memberOf }: EventDeps): void {
  app.addHook("onResponse", async (request, reply) => {
    if (WRITES.has(request.method) && reply.statusCode < 300) listeners.nudge(memberOf(request).householdId);
  });
  app.addHook("preClose", async () => listeners.close());
}

export const eventRoutes: FastifyPluginAsyncZod<EventDeps> = async (app, { listeners, memberOf }) => {
  app.get(
    "/api/events",
    {
      handlerTimeout: A_DAY_MS,
      exposeHeadRoute: false,
      schema: {
        tags: ["events"],
        summary: "A stream of what has changed, as server-sent events; each `changed` names parts of the household's data to be loaded again",
        querystring: EventsQuery,
        response: { 200: { description: "Events, until one side ends it", content: { "text/event-stream": { schema: z.any() } } }, ...refusals },
      },
    },
    async (request, reply) => {
      const last = request.headers["last-event-id"];
      const stream = await listeners.listen(memberOf(request).householdId, typeof last === "string" && last !== "" ? last : request.query.since);
      return reply.type("text/event-stream; charset=utf-8").header("cache-control", "no-store, no-transform").send(stream);
    },
  );
};
