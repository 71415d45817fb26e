/** The content policy and its companions: CSP Level 3, Fetch standard (CORP, nosniff), HTML standard (COOP), RFC 9111 §5.2 (no-store). */
import { afterAll, beforeAll, expect, it } from "vitest";
import { testApp, type TestApp } from "#tests/support/build-app.ts";

let stillroom: TestApp;
beforeAll(async () => {
  stillroom = await testApp();
});
afterAll(() => stillroom.close());

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; font-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; object-src 'none'; frame-ancestors 'none'";
const directives = (policy: unknown): string[] => String(policy).split(";").map((directive) => directive.trim()).sort();

it.each(["/api/health", "/api/beds", "/api/openapi.json", "/api/docs/", "/api/docs/static/swagger-ui-bundle.js", "/api/nothing-here", "/nothing-here"])("%s says what a browser may do with it", async (address) => {
  const { headers } = await stillroom.call("GET", address);
  expect(directives(headers["content-security-policy"])).toEqual(directives(POLICY));
  expect(headers).toMatchObject({
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
  });
  if (!address.startsWith("/api/docs/static")) expect(headers["cache-control"]).toBe("no-store");
  expect(headers["permissions-policy"]).toMatch(/camera=\(\).*geolocation=\(\)/);
  // no promise of HTTPS where there is none, and no word about what runs here
  expect(headers["strict-transport-security"]).toBeUndefined();
  expect(headers["x-powered-by"]).toBeUndefined();
  expect(headers["server"]).toBeUndefined();
});
