/** Where a Chromium is on this machine, and how the tests start it. */
import { existsSync } from "node:fs";
import { chromium, type Browser } from "playwright-core";

const PLACES = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome", "/Applications/Chromium.app/Contents/MacOS/Chromium"];

export function chromiumPath(): string | null {
  const named = process.env["STILLROOM_CHROMIUM"];
  return [...(named ? [named] : []), ...PLACES].find((place) => existsSync(place)) ?? null;
}

export async function openBrowser(): Promise<Browser> {
  const executablePath = chromiumPath();
  if (executablePath === null) throw new Error("no Chromium on this machine; see tests/run.ts for how to get one");
  return chromium.launch({
    executablePath,
    headless: true,
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
  });
}
