import { mkdirSync, mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { buildPages } from "#server/build-pages.ts";
import { testApp } from "#tests/support/build-app.ts";

let root: string;
let built: number;
let said: string[];
beforeEach(() => {
  root = mkdtempSync(path.join(tmpdir(), "stillroom-build-"));
  built = 0;
  said = [];
  for (const [file, text] of Object.entries({ "web/index.html": "<!doctype html>", "web/pages/beds/page.tsx": "export {};", "shared/kernel/band.ts": "export {};", "vite.config.ts": "export default {};", "package-lock.json": "{}", "server/app.ts": "export {};" })) put(file, text);
});
afterEach(() => rmSync(root, { recursive: true }));

function put(file: string, text: string): void {
  mkdirSync(path.join(root, path.dirname(file)), { recursive: true });
  writeFileSync(path.join(root, file), text);
}
const start = async (): Promise<number> => {
  const build = async (into: string): Promise<void> => {
    built++;
    put(path.join(path.relative(root, into), "index.html"), "<!doctype html>");
  };
  await buildPages({ root, say: (line) => said.push(line), build });
  return built;
};

it("builds the pages at the first start, and not at the next", async () => {
  expect(await start()).toBe(1);
  expect(await start()).toBe(1);
  expect(said).toEqual(["Building the pages …"]);
});

it.each<[string, () => void]>([
  ["a page has changed", () => put("web/pages/beds/page.tsx", "export const changed = 1;")],
  ["the core has changed", () => put("shared/kernel/band.ts", "export const changed = 1;")],
  ["a file has come", () => put("web/pages/beds/view.tsx", "export {};")],
  ["a file has gone", () => rmSync(path.join(root, "shared/kernel/band.ts"))],
  ["a dependency has changed", () => put("package-lock.json", '{"lockfileVersion":3}')],
  ["nobody knows from what they were built", () => rmSync(path.join(root, "web/dist/.built-from"))],
])("builds them again when %s", async (_what, change) => {
  await start();
  change();
  expect(await start()).toBe(2);
  expect(await start()).toBe(2);
  expect(said[1]).toBe("The pages have changed; building them again …");
});

it("keeps what stands there when the new build fails, and leaves nothing half made", async () => {
  await start();
  put("web/pages/beds/page.tsx", "export const changed = 1;");
  const build = async (into: string): Promise<void> => {
    put(path.join(path.relative(root, into), "half.js"), "");
    throw new Error("no room");
  };
  await expect(buildPages({ root, say: () => undefined, build })).rejects.toThrow("no room");
  expect(readdirSync(path.join(root, "web/dist")).sort()).toEqual([".built-from", "index.html"]);
  expect(readdirSync(path.join(root, "web")).sort()).toEqual(["dist", "index.html", "pages"]);
});

it("leaves them when only the service has changed, or the times of files", async () => {
  await start();
  put("server/app.ts", "export const changed = 1;");
  utimesSync(path.join(root, "web/index.html"), new Date("2030-01-01"), new Date("2030-01-01"));
  expect(await start()).toBe(1);
});

it("serves the pages that are there where their sources are not", async () => {
  await start();
  rmSync(path.join(root, "web/index.html"));
  expect(await start()).toBe(1);
  rmSync(path.join(root, "web/dist"), { recursive: true });
  expect(await start()).toBe(1);
  expect(said.at(-1)).toBe("There are no pages here, only the interface");
});

it("does not hand out from what they were built", async () => {
  await start();
  const stillroom = await testApp({ pages: path.join(root, "web/dist") });
  expect((await stillroom.call("GET", "/")).statusCode).toBe(200);
  expect((await stillroom.call("GET", "/.built-from")).statusCode).toBe(404);
  await stillroom.close();
});
