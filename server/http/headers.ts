/** What every answer says to the browser: nothing from elsewhere, nothing inline, no frame around it, nothing kept of what is personal. */
import helmet from "@fastify/helmet";
import type { FastifyInstance } from "fastify";

export const CONTENT_POLICY = {
  "default-src": ["'none'"],
  "script-src": ["'self'"],
  "style-src": ["'self'"],
  "img-src": ["'self'", "data:", "blob:"],
  "connect-src": ["'self'"],
  "font-src": ["'self'"],
  "manifest-src": ["'self'"],
  "worker-src": ["'self'"],
  "form-action": ["'self'"],
  "base-uri": ["'none'"],
  "object-src": ["'none'"],
  "frame-ancestors": ["'none'"],
} as const;

const UNUSED_FEATURES = ["camera", "microphone", "geolocation", "payment", "usb", "serial", "midi", "display-capture"];

export async function setHeaders(app: FastifyInstance): Promise<void> {
  await app.register(helmet, {
    global: true,
    contentSecurityPolicy: { useDefaults: false, directives: Object.fromEntries(Object.entries(CONTENT_POLICY).map(([name, sources]) => [name, [...sources]])) },
    crossOriginOpenerPolicy: { policy: "same-origin" },
    crossOriginResourcePolicy: { policy: "same-origin" },
    referrerPolicy: { policy: "no-referrer" },
    // only HTTPS may promise HTTPS, and loopback has none
    strictTransportSecurity: false,
    xFrameOptions: { action: "deny" },
  });
  const permissions = UNUSED_FEATURES.map((feature) => `${feature}=()`).join(", ");
  app.addHook("onSend", async (request, reply) => {
    reply.header("permissions-policy", permissions);
    if (request.url.startsWith("/api/") && !reply.hasHeader("cache-control")) reply.header("cache-control", "no-store");
  });
}
