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

interface AgreedAnswer {
  lines: { id: string; recipeId: string; title: string }[];
  limits: { kind: string; id: string; reserved: number; left: number }[];
}
interface ShoppingAnswer {
  crops: { crop: string; needGrams: number }[];
}

describe("a week agreed on", () => {
  it("reserves what it uses, stands on the shopping list, and gives all of it back", async () => {
    const week = "2027-W32";
    const agreed = async (): Promise<AgreedAnswer> => (await (await fetch(`${app.url}/api/season/weeks/${week}/agreed`)).json()) as AgreedAnswer;
    const needs = async (crop: string): Promise<number> => ((await (await fetch(`${app.url}/api/shopping?week=${week}`)).json()) as ShoppingAnswer).crops.find((one) => one.crop === crop)?.needGrams ?? 0;
    const before = await agreed();
    const idea = (await calendar()).weeks.find((one) => one.week === week)?.pairings.find(({ way, uses }) => way === "freeze" && uses.length === 1);
    const [use] = idea?.uses ?? [];
    if (!idea || !use) throw new Error("the demo has nothing to freeze in that week");
    const neededBefore = await needs(use.crop);
    const { page, context, faults } = await openPage(browser, app, `/week?week=${week}`, { size: PHONE });
    const more = page.getByRole("button", { name: /more ways?$/ });
    if (await more.isVisible()) await more.click();
    await page.getByRole("button", { name: new RegExp(`^Agree on ${escaped(idea.title)} for`) }).click();
    await page.locator(".undo", { hasText: "What is used is reserved." }).waitFor();
    const after = await agreed();
    expect(after.lines.map(({ recipeId }) => recipeId)).toContain(idea.recipeId);
    const ofCrop = (of: AgreedAnswer) => of.limits.find(({ kind, id }) => kind === "crop" && id === use.crop);
    expect(ofCrop(after)?.reserved).toBeGreaterThan(ofCrop(before)?.reserved ?? 0);
    expect(await needs(use.crop)).toBeGreaterThan(neededBefore);
    await page.getByRole("link", { name: "Supplies and shopping" }).click();
    await page.waitForURL(/\/supplies\?week=/);
    await ready(page);
    expect(await page.locator(".tick-list li").count()).toBeGreaterThan(0);
    await page.goBack();
    await ready(page);
    await page.getByRole("button", { name: new RegExp(`^Undo.*take ${escaped(idea.title)} out`) }).click();
    await page.locator(".undo", { hasText: "taken back" }).waitFor();
    expect(await agreed()).toEqual(before);
    expect(await needs(use.crop)).toBe(neededBefore);
    await context.close();
    expect(faults).toEqual([]);
  });
});

interface LarderAnswer {
  places: { id: string; name: string; litres?: number; lots: number }[];
  lots: { id: string; title: string; countedIn: string | null; stands: { placeId: string; portions: number | null }[] }[];
}

describe("a drawer", () => {
  it("is counted anew, a lot is split over two of them, and an empty one is made, changed and taken away", async () => {
    const larder = async (): Promise<LarderAnswer> => (await (await fetch(`${app.url}/api/larder`)).json()) as LarderAnswer;
    const before = await larder();
    const drawer = before.places.find(({ id }) => before.lots.some(({ countedIn, stands }) => countedIn === "portions" && stands.some((stand) => stand.placeId === id && (stand.portions ?? 0) > 2)));
    const lot = before.lots.find(({ countedIn, stands }) => countedIn === "portions" && stands.some((stand) => stand.placeId === drawer?.id && (stand.portions ?? 0) > 2));
    if (!drawer || !lot) throw new Error("the demo larder has no lot of three portions");
    const standing = async (placeId: string): Promise<number> => (await larder()).lots.find(({ id }) => id === lot.id)?.stands.find((stand) => stand.placeId === placeId)?.portions ?? 0;
    const { page, context, faults } = await openPage(browser, app, `/larder?count=${drawer.id}`, { size: PHONE });
    await page.locator(`#count-${lot.id}`).fill("2");
    await page.getByRole("button", { name: "Save the count" }).click();
    await page.waitForURL(/\/larder$/);
    await ready(page);
    expect(await standing(drawer.id)).toBe(2);
    const place = (name: string) => page.locator(".place").filter({ has: page.locator("h3", { hasText: new RegExp(`^${escaped(name)}$`) }) });
    const other = before.places.find(({ id, lots }) => id !== drawer.id && lots > 0);
    const row = place(drawer.name).locator(".stand", { hasText: lot.title });
    await row.getByRole("button", { name: /^Move/ }).click();
    await row.getByLabel("Where to").selectOption(other?.id ?? "");
    await row.locator(".amounts button").first().click();
    await page.locator(".undo", { hasText: /^1.portion moved/ }).waitFor();
    expect([await standing(drawer.id), await standing(other?.id ?? "")]).toEqual([1, 1]);
    await page.getByText("Another place", { exact: true }).click();
    await page.locator("#place-name").fill("Chest in the shed");
    await page.getByRole("button", { name: "Save the place" }).click();
    await place("Chest in the shed").getByRole("button", { name: /^Change/ }).click();
    await place("Chest in the shed").getByLabel(/^Litres it holds/).fill("90,5 l");
    await page.getByRole("button", { name: "Save the change" }).click();
    await page.locator(".undo", { hasText: "Chest in the shed: changed." }).waitFor();
    const chest = async () => (await larder()).places.find(({ name }) => name === "Chest in the shed");
    expect((await chest())?.litres).toBe(90.5);
    await place("Chest in the shed").getByRole("button", { name: /^Change/ }).click();
    await page.getByRole("button", { name: "Take the place away" }).click();
    await page.locator(".undo", { hasText: "Chest in the shed: taken away." }).waitFor();
    expect(await chest()).toBeUndefined();
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
