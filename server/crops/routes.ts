import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { Crops } from "#shared/contracts/crops.ts";
import { refusals } from "../http/contract.ts";
import type { Deps } from "../http/deps.ts";
import { toContract } from "./to-contract.ts";

export const cropRoutes: FastifyPluginAsyncZod<Deps> = async (app, { books }) => {
  app.get("/api/crops", { schema: { tags: ["crops"], summary: "The crops in the book, with whose figures they are", response: { 200: Crops, ...refusals } } }, async () => {
    const book = await books();
    return [...book.crops.values()].map((crop) => toContract(crop, book));
  });
};
