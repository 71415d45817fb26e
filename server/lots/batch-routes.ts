import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { Batch, BatchParams, NewBatch } from "#shared/contracts/batches.ts";
import { batchWords } from "../facts/batches.ts";
import { loadDish } from "../facts/cook-day.ts";
import { loadHouse } from "../facts/house.ts";
import { loadLarder } from "../facts/larder.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { granted } from "../problems.ts";
import { closeBatch, takeBatchBack } from "./close-batch.ts";

const tags = ["counter"];
const batch = "/api/cook-days/:id/batches/:batchId";

export const batchRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, clock, books }) => {
  app.put(
    batch,
    { schema: { tags, summary: "Close a dish to the gram: what it took, what was eaten and lost, and the lots it became; hot food is refused with what to do", params: BatchParams, body: NewBatch, response: { 200: Batch, 201: Batch, ...refusals } } },
    async (request, reply) => {
      const { id: dayId, batchId: id } = request.params;
      const book = await books();
      const { made, answer } = await within(request, async (tx, householdId) => {
        const house = await loadHouse(tx, householdId);
        const today = clock.today(house.zone);
        const dish = await loadDish(tx, house, request.body.recipeId, 1, book);
        const asked = { dayId, id, body: request.body, zone: house.zone, nowMs: clock.now(), today, keeps: dish?.recipe.keeps ?? [], tables: book.preservation };
        const put = granted(await closeBatch(tx, householdId, asked));
        const [words] = await batchWords(tx, householdId, [put.row], await loadLarder(tx, book, today));
        return { made: put.made, answer: words as Batch };
      });
      if (made) return reply.code(201).header("location", `/api/cook-days/${dayId}/batches/${id}`).send(answer);
      return reply.code(200).send(answer);
    },
  );

  app.delete(batch, { schema: { tags, summary: "Undo the closing of a dish: its lots go, and what it took is back", params: BatchParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    granted(await within(request, (tx, householdId) => takeBatchBack(tx, householdId, request.params.id, request.params.batchId)));
    return reply.code(204).send();
  });
};
