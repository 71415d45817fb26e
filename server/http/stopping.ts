/**
 * What is under way when the service stops is finished, and the line is put down after it: a browser keeps its connections open for a minute,
 * and a stop must not wait for that.
 */
import type { FastifyInstance } from "fastify";

const SWEEP_MS = 50;

export function putLinesDown(app: FastifyInstance): void {
  let stopping = false;
  app.addHook("onSend", async (_request, reply) => {
    if (stopping) reply.header("connection", "close");
  });
  app.addHook("preClose", async () => {
    stopping = true;
    // a line whose request began before the stop falls idle after it
    const sweep = setInterval(() => app.server.closeIdleConnections(), SWEEP_MS);
    app.server.once("close", () => clearInterval(sweep));
    sweep.unref();
  });
}
