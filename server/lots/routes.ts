import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import type { Tx } from "#db/client.ts";
import { IdParams } from "#shared/contracts/common.ts";
import { Lot, MovementOfLot, MovementParams, NewLot, NewMovement } from "#shared/contracts/lots.ts";
import { cautionsFor } from "#shared/engines/preservation/index.ts";
import type { LotToday } from "#shared/planning/larder-facts.ts";
import { lotsToday } from "#shared/planning/larder-lots.ts";
import { dayAsked, loadHouse } from "../facts/house.ts";
import { loadLarder, type LotRow } from "../facts/larder.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { tagOf } from "../http/etag.ts";
import { ifMatchOf } from "../http/if-match.ts";
import { granted, notFound } from "../problems.ts";
import { leftOf, recordMovement, takeMovementBack } from "./record-movement.ts";
import { recordLot, takeLotOut } from "./record-lot.ts";
import { findLot, movementsOf } from "./store.ts";
import { toContract, toMovement } from "./to-contract.ts";

const tags = ["lots"];
const movement = "/api/lots/:id/movements/:movementId";

export const lotRoutes: FastifyPluginAsyncZod<Deps> = async (app, { within, clock, books }) => {
  const todayOf = async (tx: Tx, householdId: string) => dayAsked(await loadHouse(tx, householdId), clock, undefined);
  const whole = async (tx: Tx, row: LotRow, today: string): Promise<Lot> => {
    const facts = await loadLarder(tx, await books(), today, row.id);
    const [one] = lotsToday(facts);
    return toContract(row, one as LotToday, await movementsOf(tx, row), lotCautions(one as LotToday, facts));
  };

  app.get("/api/lots/:id", { schema: { tags, summary: "One lot with all its movements", params: IdParams, response: { 200: Lot, ...refusals } } }, async (request, reply) => {
    const { row, lot } = await within(request, async (tx, householdId) => {
      const found = await findLot(tx, householdId, request.params.id);
      if (!found) throw notFound("lot");
      return { row: found, lot: await whole(tx, found, await todayOf(tx, householdId)) };
    });
    return reply.header("etag", tagOf(row)).send(lot);
  });

  app.put(
    "/api/lots/:id",
    { schema: { tags, summary: "Put a lot down, or change its label; its amount is the sum of its movements", params: IdParams, body: NewLot, response: { 200: Lot, 201: Lot, ...refusals } } },
    async (request, reply) => {
      const { id } = request.params;
      const crops = new Set((await books()).crops.keys());
      const { made, row, lot } = await within(request, async (tx, householdId) => {
        const today = await todayOf(tx, householdId);
        const put = granted(await recordLot(tx, householdId, { id, body: request.body, ifMatch: ifMatchOf(request) }, crops, today));
        return { ...put, lot: await whole(tx, put.row, today) };
      });
      reply.header("etag", tagOf(row));
      if (made) return reply.code(201).header("location", `/api/lots/${id}`).send(lot);
      return reply.code(200).send(lot);
    },
  );

  app.delete("/api/lots/:id", { schema: { tags, summary: "Take a lot out of which nothing was ever moved", params: IdParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    granted(await within(request, (tx, householdId) => takeLotOut(tx, householdId, request.params.id, ifMatchOf(request))));
    return reply.code(204).send();
  });

  app.put(
    movement,
    {
      schema: {
        tags,
        summary: "Write down once what was put, taken, given, composted, moved or counted; more than there is is 409 with what is left, unless queued",
        params: MovementParams,
        body: NewMovement,
        response: { 200: MovementOfLot, 201: MovementOfLot, ...refusals },
      },
    },
    async (request, reply) => {
      const { id: lotId, movementId: id } = request.params;
      const { made, answer } = await within(request, async (tx, householdId) => {
        const put = granted(await recordMovement(tx, householdId, { lotId, id, body: request.body }, await todayOf(tx, householdId)));
        const lot = (await findLot(tx, householdId, lotId)) as LotRow;
        return { made: put.made, answer: { ...toMovement(put.row, lot), left: leftOf(lot, await movementsOf(tx, lot)) } };
      });
      if (made) return reply.code(201).header("location", `/api/lots/${lotId}/movements/${id}`).send(answer);
      return reply.code(200).send(answer);
    },
  );

  app.delete(movement, { schema: { tags, summary: "Undo a movement; its row stays, marked", params: MovementParams, response: { 204: z.void(), ...refusals } } }, async (request, reply) => {
    const { id: lotId, movementId: id } = request.params;
    granted(await within(request, (tx, householdId) => takeMovementBack(tx, householdId, lotId, id)));
    return reply.code(204).send();
  });
};

function lotCautions({ lot, stands }: LotToday, { preservation }: Awaited<ReturnType<typeof loadLarder>>): readonly string[] {
  const inFridge = stands.some(({ place }) => place.kind === "fridge");
  return cautionsFor({ ...(lot.recipe === null ? {} : { way: lot.recipe.way }), ...(lot.crop === null ? {} : { crops: [lot.crop] }), topics: lot.recipe !== null && inFridge ? ["fridge", "reheating"] : [] }, preservation);
}
