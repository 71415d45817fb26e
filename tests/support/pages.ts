/** Pages of the running product in Chromium: opened without any way out of this machine, watched for faults. */
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import type { Browser, BrowserContext, Page } from "playwright-core";
import type { RunningApp } from "./running-app.ts";

export const PHONE = { width: 390, height: 844 };
export const TABLE = { width: 1280, height: 900 };

export interface OpenedPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Requests that tried to leave the service, and what the page complained of. */
  readonly faults: string[];
}

export interface Looks {
  readonly size?: { readonly width: number; readonly height: number };
  readonly scheme?: "light" | "dark";
}

export async function openPage(browser: Browser, app: RunningApp, path: string, { size = TABLE, scheme = "light" }: Looks = {}): Promise<OpenedPage> {
  const context = await browser.newContext({ viewport: size, colorScheme: scheme, baseURL: app.url, reducedMotion: "reduce" });
  const faults: string[] = [];
  const page = await context.newPage();
  await page.route("**/*", async (route) => {
    const url = route.request().url();
    if (url.startsWith(app.url) || url.startsWith("data:") || url.startsWith("blob:")) return route.continue();
    faults.push(`asked for ${url}`);
    return route.abort();
  });
  page.on("pageerror", (error) => faults.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") faults.push(message.text());
  });
  await page.goto(path);
  await ready(page);
  return { page, context, faults };
}

/** Waits until the page has its sentence. */
export async function ready(page: Page): Promise<void> {
  await page.locator("h1.answer:not(.waits)").first().waitFor();
}

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

interface AxeResult {
  violations: { id: string; impact: string | null; help: string; nodes: { html: string; target: string[] }[] }[];
}

const RULES = "['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']";
const COLOURS = "{ type: 'rule', values: ['color-contrast', 'link-in-text-block'] }";

/** Serious and critical findings of axe-core (WCAG 2.2 A and AA rules), each with the element it stands at. `colours`: only the rules that another theme can break. */
export async function seriousFindings(page: Page, only?: "colours"): Promise<string[]> {
  // the content policy forbids added scripts, so the rules run through the debugger's own channel
  if (!(await page.evaluate<boolean>("'axe' in window"))) await page.evaluate(axeSource);
  const { violations } = await page.evaluate<AxeResult>(`axe.run(document, { runOnly: ${only === "colours" ? COLOURS : RULES}, resultTypes: ['violations'], preload: false })`);
  return violations.filter(({ impact }) => impact === "serious" || impact === "critical").flatMap(({ id, help, nodes }) => nodes.map((node) => `${id}: ${help} at ${node.html.slice(0, 160)}`));
}

/** How far the page can be scrolled sideways, in px, once pictures have taken the width that there is: they are told of it a frame later. */
export async function sidewaysScroll(page: Page): Promise<number> {
  return page.evaluate<number>(`new Promise((done) => {
    const frames = (left) => (left === 0 ? done(document.documentElement.scrollWidth - document.documentElement.clientWidth) : requestAnimationFrame(() => frames(left - 1)));
    frames(4);
  })`);
}
