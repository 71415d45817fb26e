/**
 * What a page costs to load and to use. Sizes are gzip sizes of what the page fetches; times are those of a mid phone profile
 * (processor four times slower, 1.6 Mbit/s, 150 ms; experience reference §14, from memory there) in Chromium at 390 px.
 */
import { gzipSync } from "node:zlib";
import type { Page } from "playwright-core";
import { openBrowser } from "../support/chromium.ts";
import { startApp } from "../support/running-app.ts";

const PAGES = { calendar: "/", today: "/today", beds: "/beds", sowing: "/beds/5cf581e3-d521-559f-88bc-2e5b4c97c750", record: "/record", recipes: "/recipes", "cook-day": "/cook-day", household: "/household" } as const;

interface PageFigures {
  readonly jsGzipKb: number;
  readonly cssGzipKb: number;
  readonly largestPaintMs: number;
  readonly interactionMs: number;
  readonly layoutShift: number;
}

export async function run(): Promise<Record<string, unknown>> {
  const app = await startApp("demo");
  const browser = await openBrowser();
  const byPage: Record<string, PageFigures> = {};
  try {
    for (const [name, path] of Object.entries(PAGES)) {
      const context = await browser.newContext({ viewport: { width: 390, height: 844 }, deviceScaleFactor: 2 });
      byPage[name] = await measure(await context.newPage(), app.url + path);
      console.error(`${name}: ${JSON.stringify(byPage[name])}`);
      await context.close();
    }
  } finally {
    await browser.close();
    await app.stop();
  }
  const worst = (key: keyof PageFigures): number => Math.max(...Object.values(byPage).map((figures) => figures[key]));
  return { jsGzipKb: worst("jsGzipKb"), cssGzipKb: worst("cssGzipKb"), largestPaintMs: worst("largestPaintMs"), interactionMs: worst("interactionMs"), layoutShift: worst("layoutShift"), byPage };
}

async function measure(page: Page, url: string): Promise<PageFigures> {
  const sizes = { js: 0, css: 0 };
  const reading: Promise<void>[] = [];
  page.on("response", (response) => {
    const kind = /\.(js|css)$/.exec(new URL(response.url()).pathname)?.[1];
    if (kind !== "js" && kind !== "css") return;
    reading.push(response.body().then((body) => void (sizes[kind] += gzipSync(body).length)));
  });
  const control = await page.context().newCDPSession(page);
  await control.send("Network.enable");
  await control.send("Network.emulateNetworkConditions", { offline: false, latency: 150, downloadThroughput: 1_600_000 / 8, uploadThroughput: 750_000 / 8 });
  await control.send("Emulation.setCPUThrottlingRate", { rate: 4 });
  await page.addInitScript(WATCH);
  await page.goto(url, { waitUntil: "networkidle" });
  await page.locator("h1.answer:not(.waits)").first().waitFor();
  const loaded = await page.evaluate<{ paintMs: number; shift: number }>("({ paintMs: window.benchPaintMs, shift: window.benchShift })");
  await page.keyboard.press("Tab");
  await page.locator("summary, button").locator("visible=true").first().click();
  await page.waitForTimeout(600);
  const interactionMs = await page.evaluate<number>("window.benchInteractionMs");
  await Promise.all(reading);
  const kb = (bytes: number): number => Math.round(bytes / 102.4) / 10;
  return { jsGzipKb: kb(sizes.js), cssGzipKb: kb(sizes.css), largestPaintMs: Math.round(loaded.paintMs), interactionMs: Math.round(interactionMs), layoutShift: Math.round(loaded.shift * 1000) / 1000 };
}

/** Runs in the page before anything else. */
const WATCH = `
  window.benchPaintMs = window.benchShift = window.benchInteractionMs = 0;
  const watch = (options, take) => new PerformanceObserver((list) => list.getEntries().forEach(take)).observe({ buffered: true, ...options });
  watch({ type: "largest-contentful-paint" }, (entry) => { window.benchPaintMs = entry.startTime; });
  watch({ type: "layout-shift" }, (entry) => { if (!entry.hadRecentInput) window.benchShift += entry.value; });
  watch({ type: "event", durationThreshold: 16 }, (entry) => { window.benchInteractionMs = Math.max(window.benchInteractionMs, entry.duration); });
`;
