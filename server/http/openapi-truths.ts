/** What the service does and its schemas cannot say: answers without a body, bodies that may be left out, and the version named in a header. */
import type { jsonSchemaTransform, jsonSchemaTransformObject } from "fastify-type-provider-zod";

type Route = Parameters<typeof jsonSchemaTransform>[0];
type Document = ReturnType<typeof jsonSchemaTransformObject>;
type MayBeLeftOut = (method: string, path: string) => boolean;

interface Operation {
  parameters?: object[];
  requestBody?: { required?: boolean };
  responses: Record<string, { content?: unknown }>;
}

/** Picks, movements, plans, marks, closed dishes and weather are only ever added to, an opinion is said anew, what is agreed is no body, and emptying the household asks for no version. */
const WITHOUT_VERSION = /^(?:put|delete) \/api\/(?:picks|weather)\/|^(?:put|delete) \/api\/lots\/\{id\}\/movements\/|^(?:put|delete) \/api\/cook-days\/\{id\}\/(?:plans|marks|batches)\/|^(?:put|delete) \/api\/(?:tastes|season)\/|^delete \/api\/household$/;

/** Remembers, while routes are read, whose body need not be sent. */
export function bodiesThatMayBeLeftOut(): { note: (route: Route) => void; mayBeLeftOut: MayBeLeftOut } {
  const found = new Set<string>();
  const key = (method: string, path: string): string => `${method.toLowerCase()} ${path}`;
  return {
    note: ({ schema, url, route }) => {
      const body = schema.body as { safeParse?: (value: unknown) => { success: boolean } } | undefined;
      if (body?.safeParse?.(undefined).success !== true) return;
      for (const method of [route.method].flat()) found.add(key(method, url.replaceAll(/:(\w+)/g, "{$1}")));
    },
    mayBeLeftOut: (method, path) => found.has(key(method, path)),
  };
}

/** Changes the document in place and hands it back. */
export function asAnswered(document: Document, mayBeLeftOut: MayBeLeftOut): Document {
  const paths = ("paths" in document ? document.paths : {}) as Record<string, Record<string, Operation>>;
  for (const [path, methods] of Object.entries(paths))
    for (const [method, call] of Object.entries(methods)) {
      delete call.responses["204"]?.content;
      if (call.requestBody && mayBeLeftOut(method, path)) call.requestBody.required = false;
      if (/^(?:put|delete)$/.test(method) && !WITHOUT_VERSION.test(`${method} ${path}`)) call.parameters = [...(call.parameters ?? []), ifMatch(method)];
    }
  return document;
}

const ifMatch = (method: string): object => ({
  name: "If-Match",
  in: "header",
  required: false,
  schema: { type: "string" },
  description:
    method === "put"
      ? "The ETag last seen. Needed to change what is stored (428 without, 412 when it was changed meanwhile); left out for what is new."
      : "The ETag last seen; when it is sent and something was changed meanwhile, nothing is removed (412).",
});
