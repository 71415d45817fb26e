import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openBrowser } from "../support/chromium.ts";
import { openPage, PHONE, seriousFindings, sidewaysScroll, TABLE } from "../support/pages.ts";
import { startApp, type RunningApp } from "../support/running-app.ts";

let app: RunningApp;
let browser: Browser;
let paths: readonly string[];

const PLAIN = ["/", "/today", "/beds", "/recipes", "/recipes/new", "/cook-day", "/household", "/week", "/season", "/supplies", "/record"];

beforeAll(async () => {
  [app, browser] = await Promise.all([startApp("demo"), openBrowser()]);
  const first = async (list: string): Promise<string> => ((await (await fetch(`${app.url}/api/${list}`)).json()) as { id: string }[])[0]?.id ?? "";
  // a season without a plan has little to look at
  const planned = await fetch(`${app.url}/api/season/plan`, { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify({ from: "2027-W30", weeks: 3 }) });
  if (!planned.ok) throw new Error(`no plan of the season: ${planned.status} ${await planned.text()}`);
  paths = [...PLAIN, `/beds/${await first("sowings")}`, `/recipes/${await first("recipes")}`, `/cook-day/${await first("cook-days")}`];
});
afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

const inTheme = (page: Page, theme: "light" | "dark" | "sun"): Promise<unknown> => page.evaluate(`document.documentElement.dataset.theme = "${theme}"`);
const NARROW = { width: 320, height: 640 };

interface Box {
  readonly words: string;
  readonly height: number;
}
const CONTROLS =
  "[...document.querySelectorAll('button, .btn, .nav a, select, input:not([type=radio]):not([type=range]):not([type=checkbox]), .opt, .tick')].filter((el) => el.offsetParent).map((el) => ({ words: (el.innerText || el.id || el.className).slice(0, 40), height: el.getBoundingClientRect().height }))";

describe("every page", () => {
  // WCAG 2.2 A and AA as axe-core tests them; the floor, not the proof. All rules run on a phone and on a laptop; in the other themes those that a theme can break.
  it("has no serious finding of the accessibility rules, no sideways scroll, and controls that a thumb hits", async () => {
    const findings: string[] = [];
    let runs = 0;
    let controls = 0;
    for (const path of paths) {
      const { page, context, faults } = await openPage(browser, app, path, { size: PHONE });
      const look = async (where: string, only?: "colours"): Promise<void> => {
        runs++;
        findings.push(...(await seriousFindings(page, only)).map((finding) => `${path} ${where}: ${finding}`));
      };
      await inTheme(page, "light");
      await look("phone, light");
      for (const theme of ["dark", "sun"] as const) {
        await inTheme(page, theme);
        await look(`phone, ${theme}`, "colours");
      }
      // every control 44 px high or a line of text of its own (WCAG 2.5.8 asks 24, the house 44)
      const boxes = await page.evaluate<Box[]>(CONTROLS);
      controls += boxes.length;
      findings.push(...boxes.filter(({ height }) => height < 43.5).map(({ words, height }) => `${path}: ${words} is ${height} px high`));
      // WCAG 1.4.10: no sideways scroll at 320 px
      await page.setViewportSize(NARROW);
      const px = await sidewaysScroll(page);
      if (px > 0) findings.push(`${path} scrolls ${px} px at ${NARROW.width} px`);
      await page.setViewportSize(TABLE);
      await inTheme(page, "dark");
      await look("laptop, dark");
      findings.push(...faults.map((fault) => `${path}: ${fault}`));
      await context.close();
    }
    expect(findings).toEqual([]);
    expect(runs).toBe(paths.length * 4);
    expect(runs).toBeGreaterThanOrEqual(56);
    expect(controls).toBeGreaterThan(100);
  }, 300_000);

  it("would not pass with a planted fault, nor with a word too faint for its theme", async () => {
    const { page, context } = await openPage(browser, app, "/supplies");
    await page.evaluate("document.querySelector('main').insertAdjacentHTML('beforeend', '<img src=\"data:image/gif;base64,R0lGODlhAQABAAAAACw=\"><input><p id=faint>faint words</p>')");
    const found = (await seriousFindings(page)).join("\n");
    await inTheme(page, "dark");
    // set through the object model, which the content policy leaves alone
    await page.evaluate("document.getElementById('faint').style.setProperty('color', '#333')");
    const faint = (await seriousFindings(page, "colours")).join("\n");
    await page.evaluate("document.querySelector('main').insertAdjacentHTML('beforeend', '<p id=wide>wide</p>'); document.getElementById('wide').style.setProperty('width', '4000px')");
    const wide = await sidewaysScroll(page);
    await context.close();
    expect(found).toContain("image-alt");
    expect(found).toContain("label");
    expect(faint).toContain("color-contrast");
    expect(wide).toBeGreaterThan(1000);
  });
});
