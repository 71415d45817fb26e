import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openBrowser } from "../support/chromium.ts";
import { openPage, PHONE, seriousFindings, sidewaysScroll, TABLE } from "../support/pages.ts";
import { startApp, type RunningApp } from "../support/running-app.ts";

let app: RunningApp;
let browser: Browser;
let paths: readonly string[];

beforeAll(async () => {
  [app, browser] = await Promise.all([startApp("demo"), openBrowser()]);
  const first = async (list: string): Promise<string> => ((await (await fetch(`${app.url}/api/${list}`)).json()) as { id: string }[])[0]?.id ?? "";
  paths = ["/", "/today", "/beds", `/beds/${await first("sowings")}`, "/recipes", `/recipes/${await first("recipes")}`, "/recipes/new", "/cook-day", `/cook-day/${await first("cook-days")}`, "/household"];
});
afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

describe("every page", () => {
  // WCAG 2.2 A and AA as axe-core tests them; the floor, not the proof
  it("has no serious finding of the accessibility rules, on phone and laptop, light, dark and in the sun", async () => {
    const findings: string[] = [];
    let looked = 0;
    for (const path of paths)
      for (const size of [PHONE, TABLE]) {
        const { page, context, faults } = await openPage(browser, app, path, { size });
        for (const theme of ["light", "dark", "sun"] as const) {
          await page.evaluate(`document.documentElement.dataset.theme = "${theme}"`);
          findings.push(...(await seriousFindings(page)).map((finding) => `${path} ${size.width} ${theme}: ${finding}`));
          looked++;
        }
        findings.push(...faults.map((fault) => `${path}: ${fault}`));
        await context.close();
      }
    expect(findings).toEqual([]);
    expect(looked).toBe(paths.length * 6);
    expect(looked).toBeGreaterThanOrEqual(60);
  }, 300_000);

  it("the rules would notice a planted fault", async () => {
    const { page, context } = await openPage(browser, app, "/recipes");
    await page.evaluate("document.querySelector('main').insertAdjacentHTML('beforeend', '<img src=\"data:image/gif;base64,R0lGODlhAQABAAAAACw=\"><input>')");
    const found = (await seriousFindings(page)).join("\n");
    await context.close();
    expect(found).toContain("image-alt");
    expect(found).toContain("label");
  });

  it("reflows at 320 px without sideways scrolling (WCAG 1.4.10)", async () => {
    const wide: string[] = [];
    for (const path of paths) {
      const { page, context } = await openPage(browser, app, path, { size: { width: 320, height: 640 } });
      const px = await sidewaysScroll(page);
      if (px > 0) wide.push(`${path} scrolls ${px} px`);
      await context.close();
    }
    expect(wide).toEqual([]);
  });

  it("gives every control 44 px or a line of text of its own (WCAG 2.5.8 asks 24, the house 44)", async () => {
    const small: string[] = [];
    let seen = 0;
    for (const path of paths) {
      const { page, context } = await openPage(browser, app, path, { size: PHONE });
      const boxes = await page.evaluate<{ words: string; width: number; height: number }[]>(
        "[...document.querySelectorAll('button, .btn, .nav a, select, input:not([type=radio]):not([type=range]), .opt')].filter((el) => el.offsetParent).map((el) => ({ words: (el.innerText || el.id || el.className).slice(0, 40), width: el.getBoundingClientRect().width, height: el.getBoundingClientRect().height }))",
      );
      seen += boxes.length;
      small.push(...boxes.filter(({ height }) => height < 43.5).map(({ words, height }) => `${path}: ${words} is ${height} px high`));
      await context.close();
    }
    expect(seen).toBeGreaterThan(60);
    expect(small).toEqual([]);
  });
});
