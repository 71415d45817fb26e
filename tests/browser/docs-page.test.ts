import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { openBrowser } from "../support/chromium.ts";
import { startApp, type RunningApp } from "../support/running-app.ts";

let app: RunningApp;
let browser: Browser;
beforeAll(async () => {
  [app, browser] = await Promise.all([startApp("demo"), openBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

it("the page of the interface works with no way out of this machine", async () => {
  const page = await browser.newPage();
  const out: string[] = [];
  const faults: string[] = [];
  page.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(app.url) && !url.startsWith("data:") && !url.startsWith("blob:")) out.push(url);
  });
  page.on("pageerror", (error) => faults.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") faults.push(message.text());
  });
  await page.goto(`${app.url}/api/docs`);
  await page.getByText("/api/calendar", { exact: true }).first().waitFor();
  const operations = await page.locator(".opblock").count();
  const openApi = (await (await fetch(`${app.url}/api/openapi.json`)).json()) as { openapi: string; paths: Record<string, Record<string, unknown>> };
  const named = Object.values(openApi.paths).flatMap((path) => Object.keys(path)).length;
  expect(openApi.openapi).toMatch(/^3\.1\./);
  expect(named).toBeGreaterThan(25);
  expect(operations).toBe(named);
  expect(out).toEqual([]);
  expect(faults).toEqual([]);
  await page.close();
});
