/** The main job, as a person does it: sow, see the week, plan the cook day. On the invented demo household. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openBrowser } from "../support/chromium.ts";
import { openPage, ready, TABLE, PHONE } from "../support/pages.ts";
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

interface CalendarAnswer {
  weeks: { week: string; glut: boolean; surplusGrams: number; pairings: { recipeId: string; title: string; way: string; uses: { crop: string; grams: number }[] }[]; planned: unknown[] }[];
  rows: { crop: string }[];
}
const calendar = async (): Promise<CalendarAnswer> => (await (await fetch(`${app.url}/api/calendar?from=2027-W01&weeks=52`)).json()) as CalendarAnswer;

describe("a sowing", () => {
  it("shows its spread of dates while it is typed, and stands on the calendar once saved", async () => {
    const { page, context, faults } = await openPage(browser, app, "/beds", { size: PHONE });
    expect((await calendar()).rows.map((row) => row.crop)).not.toContain("turnip");
    await page.getByLabel("Crop", { exact: true }).fill("Turnip");
    await page.getByLabel(/^Sown: a date/).fill("today");
    await page.getByLabel(/^How much/).fill("3 m");
    const sentence = page.locator("h1.answer");
    await expect.poll(() => sentence.innerText(), { timeout: 20_000 }).toMatch(/most likely .*between/);
    expect(await page.locator(".sow-pic circle").count()).toBeGreaterThanOrEqual(15);
    await page.getByRole("button", { name: "Save sowing" }).click();
    await page.locator(".undo", { hasText: /Turnip[^]*: saved\./i }).waitFor();
    await context.close();
    expect((await calendar()).rows.map((row) => row.crop)).toContain("turnip");
    const year = await openPage(browser, app, "/");
    expect(await year.page.getByText("Turnip", { exact: false }).count()).toBeGreaterThan(0);
    await year.context.close();
    expect([...faults, ...year.faults]).toEqual([]);
  });

  it("keeps what was typed and says what would work when a field is wrong", async () => {
    const { page, context } = await openPage(browser, app, "/beds");
    await page.getByLabel("Crop", { exact: true }).fill("Moonflower");
    await page.getByLabel(/^Sown: a date/).fill("31 April");
    await page.getByLabel(/^How much/).fill("3 buckets");
    await page.getByRole("button", { name: "Save sowing" }).click();
    const note = page.getByRole("alert").first();
    await note.waitFor();
    expect(await note.innerText()).toMatch(/things to put right before this sowing is saved/);
    expect(await page.getByLabel("Crop", { exact: true }).inputValue()).toBe("Moonflower");
    expect(await page.getByLabel(/^How much/).inputValue()).toBe("3 buckets");
    await context.close();
  });
});

describe("a glut", () => {
  it("is chosen, put into the plan, and becomes a cook day with a timetable that prints", async () => {
    const before = await calendar();
    const glut = before.weeks.find((week) => week.glut && week.week >= "2027-W31" && week.pairings.some((pairing) => pairing.way === "cook" || pairing.way === "freeze"));
    if (!glut) throw new Error("the demo has no glut to come");
    const { page, context, faults } = await openPage(browser, app, `/?week=${glut.week}`);
    const chosen = glut.pairings.find((pairing) => pairing.way === "cook" || pairing.way === "freeze");
    await page.getByRole("button", { name: new RegExp(`^Add ${escaped(chosen?.title ?? "")} to`) }).click();
    await page.getByRole("button", { name: new RegExp(`^Undo.*${escaped(chosen?.title ?? "")}`) }).waitFor();
    const after = (await calendar()).weeks.find((week) => week.week === glut.week);
    expect(after?.planned).toHaveLength(glut.planned.length + 1);
    expect(after?.surplusGrams).toBeLessThan(glut.surplusGrams);
    await page.getByRole("button", { name: /^Start a cook day from week/ }).click();
    await page.waitForURL(/\/cook-day\/[0-9a-f-]{36}$/);
    await ready(page);
    expect(await page.locator("h1.answer").innerText()).toMatch(/^Begin at 09:00 on Saturday, .* put away by \d\d:\d\d/);
    expect(await page.locator(".steps > li").count()).toBeGreaterThanOrEqual(3);
    await inOrder(page);
    await page.emulateMedia({ media: "print" });
    expect(await page.locator(".nav").isVisible()).toBe(false);
    expect(await page.getByRole("button", { name: "Print" }).isVisible()).toBe(false);
    expect(await page.locator(".steps > li").first().isVisible()).toBe(true);
    const sheet = await page.pdf({ format: "A4" });
    expect(sheet.subarray(0, 5).toString()).toBe("%PDF-");
    await context.close();
    expect(faults).toEqual([]);
  });
});

describe("today", () => {
  it("logs a pick in two taps and digits, asks about an odd one, and takes it back", async () => {
    const { page, context, faults } = await openPage(browser, app, "/today", { size: PHONE });
    const picks = async (): Promise<number> => ((await (await fetch(`${app.url}/api/picks?from=2027-07-26`)).json()) as unknown[]).length;
    const before = await picks();
    await page.locator(".pick").first().click();
    const field = page.getByLabel(/^Weight on the scale/);
    await field.fill("90000");
    await page.getByText("is far above the usual").waitFor();
    await field.fill("450");
    await page.getByRole("button", { name: "Save pick" }).click();
    await page.locator(".undo", { hasText: /450\sg picked today\. Saved\./ }).waitFor();
    expect(await picks()).toBe(before + 1);
    await page.getByRole("button", { name: /^Undo/ }).click();
    await expect.poll(picks).toBe(before);
    await context.close();
    expect(faults).toEqual([]);
  });
});

describe("by keyboard alone", () => {
  it("a week is chosen on the calendar, a way added, and a cook day started", async () => {
    const { page, context } = await openPage(browser, app, "/", { size: TABLE });
    const rule = page.getByRole("slider");
    await tabTo(page, async () => rule.evaluate((el: unknown) => (el as { ownerDocument: { activeElement: unknown } }).ownerDocument.activeElement === el));
    const before = await page.locator("#week-h").innerText();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => page.locator("#week-h").innerText()).not.toBe(before);
    await tabTo(page, () => focusedText(page, /^Add /));
    await page.keyboard.press("Enter");
    await page.locator(".in-plan").first().waitFor();
    await tabTo(page, () => focusedText(page, /^Start a cook day/), true);
    await page.keyboard.press("Enter");
    await page.waitForURL(/\/cook-day\//);
    await ready(page);
    expect(await page.locator(".steps > li").count()).toBeGreaterThan(0);
    await context.close();
  });
});

async function inOrder(page: Page): Promise<void> {
  const clocks = await page.locator(".steps .at").allInnerTexts();
  expect(clocks).toEqual([...clocks].sort());
}

const focusedText = async (page: Page, text: RegExp): Promise<boolean> => text.test(await page.evaluate<string>("document.activeElement?.textContent ?? ''"));

/** Presses Tab (or Shift+Tab) until the focus is where it should be; fails when it never gets there. */
async function tabTo(page: Page, there: () => Promise<boolean>, back = false): Promise<void> {
  for (let presses = 0; presses < 200; presses++) {
    if (await there()) return;
    await page.keyboard.press(back ? "Shift+Tab" : "Tab");
  }
  throw new Error("the keyboard does not reach it");
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
