import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { Health } from "#shared/contracts/health.ts";
import { loadHouse } from "../facts/house.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import type { Mode } from "../config.ts";

export interface HealthDeps extends Deps {
  readonly version: string;
  readonly mode: Mode;
}

export const healthRoutes: FastifyPluginAsyncZod<HealthDeps> = async (app, { within, clock, db, version, mode }) => {
  app.get("/api/health", { schema: { tags: ["health"], summary: "Whether the service and its database answer", response: { 200: Health, ...refusals } } }, async (request) => {
    const house = await within(request, loadHouse);
    return { status: "ok" as const, database: db.kind, version, mode, today: clock.today(house.zone) };
  });
};
