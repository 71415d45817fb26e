/** The contracts as OpenAPI 3.1, and a page to read them that works without a network. */
import swagger from "@fastify/swagger";
import swaggerUi from "@fastify/swagger-ui";
import type { FastifyInstance } from "fastify";
import { jsonSchemaTransform, jsonSchemaTransformObject } from "fastify-type-provider-zod";
import { asAnswered, bodiesThatMayBeLeftOut } from "./openapi-truths.ts";

const ABOUT =
  "The working book of a household that grows a kitchen garden and cooks in batches. Masses are whole grams, times whole minutes, temperatures degrees Celsius, lengths metres; " +
  "days are YYYY-MM-DD and weeks ISO 8601. A new thing is put under an id that the caller makes; a thing that is there is changed by naming its ETag as If-Match. " +
  "Errors are problem documents (RFC 9457).";

export async function publishOpenApi(app: FastifyInstance, version: string): Promise<void> {
  const { note, mayBeLeftOut } = bodiesThatMayBeLeftOut();
  await app.register(swagger, {
    openapi: { openapi: "3.1.0", info: { title: "Stillroom", version, description: ABOUT } },
    transform: (route) => {
      note(route);
      return jsonSchemaTransform(route);
    },
    transformObject: (document) => withoutUnused(asAnswered(jsonSchemaTransformObject(document), mayBeLeftOut)),
  });
}

/** A sprout of two leaves, for the tab of the browser. */
const FAVICON =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16"><path fill="none" stroke="#3c6e3c" stroke-width="2" d="M8 15V7M8 8C3 8 2 4 2 2c4 0 6 2 6 6Zm0 2c0-4 2-5 6-5 0 3-2 5-6 5Z"/></svg>';

export async function publishDocs(app: FastifyInstance): Promise<void> {
  app.get("/api/openapi.json", { schema: { hide: true } }, () => app.swagger());
  await app.register(swaggerUi, {
    routePrefix: "/api/docs",
    // the plain layout has no bar with somebody's sign in it
    uiConfig: { layout: "BaseLayout", docExpansion: "list", deepLinking: true },
    theme: { title: "Stillroom: the interface", favicon: [{ filename: "sprout.svg", rel: "icon", sizes: "any", type: "image/svg+xml", content: Buffer.from(FAVICON) }] },
  });
}

type Document = ReturnType<typeof jsonSchemaTransformObject>;

/** Only what a route takes or answers is described: contracts are written both ways round, and each is used one way. */
function withoutUnused(document: Document): Document {
  const schemas = ("components" in document && document.components?.schemas) || {};
  const used = new Set<string>();
  const follow = (part: unknown): void => {
    for (const [, name] of JSON.stringify(part ?? {}).matchAll(/"#\/components\/schemas\/([^"]+)"/g)) {
      if (name === undefined || used.has(name)) continue;
      used.add(name);
      follow(schemas[name]);
    }
  };
  follow("paths" in document ? document.paths : {});
  return { ...document, components: { schemas: Object.fromEntries(Object.entries(schemas).filter(([name]) => used.has(name)).sort(([a], [b]) => (a < b ? -1 : 1))) } };
}
