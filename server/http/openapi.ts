/** The contracts as OpenAPI 3.1, and a page to read them that works without a network. */
import swagger from "@fastify/swagger";
import swaggerUi from "@fastify/swagger-ui";
import type { FastifyInstance } from "fastify";
import { jsonSchemaTransform, jsonSchemaTransformObject } from "fastify-type-provider-zod";

export async function publishOpenApi(app: FastifyInstance, version: string): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: "3.1.0",
      info: {
        title: "Stillroom",
        version,
        description:
          "The working book of a household that grows a kitchen garden and cooks in batches. Masses are whole grams, times whole minutes, temperatures degrees Celsius, lengths metres; days are YYYY-MM-DD and weeks ISO 8601. Errors are problem documents (RFC 9457).",
      },
    },
    transform: jsonSchemaTransform,
    transformObject: jsonSchemaTransformObject,
  });
}

export async function publishDocs(app: FastifyInstance): Promise<void> {
  app.get("/api/openapi.json", { schema: { hide: true } }, () => app.swagger());
  await app.register(swaggerUi, { routePrefix: "/api/docs", uiConfig: { docExpansion: "list", deepLinking: true }, theme: { title: "Stillroom: the interface" } });
}
