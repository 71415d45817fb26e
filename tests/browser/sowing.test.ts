/** One sowing on a page of its own: found from the beds, read, a sighting and a pick written down, taken back, removed and put back. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openBrowser } from "../support/chromium.ts";
import { openPage, PHONE, ready, sidewaysScroll } from "../support/pages.ts";
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

interface SowingAnswer {
  id: string;
  crop: string;
  variety?: string;
  pickedGrams: number;
  sightings: { stage: string; seenOn: string }[];
  forecast: { firstPick: { low: string; likely: string; high: string } | null; dots: string[] };
}
const sowings = async (): Promise<SowingAnswer[]> => (await (await fetch(`${app.url}/api/sowings`)).json()) as SowingAnswer[];
const DAY = "2027-07-26";

describe("the page of one sowing", () => {
  it("is reached from its bed, says when and how much in words, and draws its dots", async () => {
    const ahead = (await sowings()).find(({ crop, forecast }) => crop === "carrot" && forecast.firstPick !== null && forecast.firstPick.low > DAY);
    if (!ahead) throw new Error("the demo has no carrots to come");
    const { page, context, faults } = await openPage(browser, app, "/beds", { size: PHONE });
    await page.locator(`.stands a[href="/beds/${ahead.id}"]`).click();
    await page.waitForURL(`**/beds/${ahead.id}`);
    await ready(page);
    expect(await page.locator("h1.answer").innerText()).toMatch(/^Carrots, .* are most likely ready .*, between .*, and give .*\skg/);
    expect(await page.locator(".season svg[role=img] circle.k-hill").count()).toBe(ahead.forecast.dots.length);
    expect(await page.locator(".nav [aria-current=page]").first().innerText()).toBe("Beds");
    expect(await sidewaysScroll(page)).toBe(0);
    expect(await page.locator("#lift-words").innerText()).toMatch(/^Ready from about .* At its best from about/);
    expect(await page.locator("#warmth-words").innerText()).toMatch(/degree-days above 4\.4\s°C; by today [\d,]+ are usual/);
    expect(await page.locator(".warmth-plate path.k-season").count()).toBe(1);
    await page.getByText("The sources").click();
    expect(await page.locator(".behind li").count()).toBeGreaterThan(2);
    await context.close();
    expect(faults).toEqual([]);
  });

  it("has advice beside it: what still ripens in a bed, when to sow for the table, and how past forecasts did", async () => {
    const { page, context, faults } = await openPage(browser, app, "/beds", { size: PHONE });
    await page.getByRole("button", { name: /^What to sow in Bean bed/ }).click();
    await page.locator(".still .stands li").first().waitFor();
    expect(await page.locator(".still [role=status]").innerText()).toMatch(/crops sown or planted here today ripen in at least 16 seasons of 20/);
    await page.getByText("When to sow for the table").click();
    await page.getByRole("button", { name: "Work out the sowings" }).click();
    await page.getByRole("alert").first().waitFor();
    await page.locator("#table-crop").fill("lettuce, leaf");
    await page.locator("#table-first").fill("1 June 2028");
    await page.getByRole("button", { name: "Work out the sowings" }).click();
    await expect.poll(() => page.locator(".by-turn tbody tr").count()).toBeGreaterThan(1);
    expect(await sidewaysScroll(page)).toBe(0);
    await page.goto(`${app.url}/record`);
    await ready(page);
    expect(await page.locator("h1.answer").innerText()).toMatch(/^\d+ of \d+ first picks fell inside the span/);
    expect(await page.locator(".spans-plate rect.k-edge").count()).toBeGreaterThanOrEqual(5);
    await context.close();
    expect(faults).toEqual([]);
  });

  it("takes a pick and a sighting by keyboard, which change its sentence, and takes them back", async () => {
    const beans = (await sowings()).find(({ crop, pickedGrams, sightings }) => crop === "climbing-bean" && pickedGrams === 0 && sightings.every(({ stage }) => stage !== "first-pick"));
    if (!beans) throw new Error("the demo has no beans to come");
    const { page, context, faults } = await openPage(browser, app, `/beds/${beans.id}`);
    const sentence = page.locator("h1.answer");
    const before = await sentence.innerText();
    await page.getByLabel(/^Weight in grams/).focus();
    await page.keyboard.type("450");
    await page.keyboard.press("Enter");
    await expect.poll(() => sentence.innerText()).toMatch(/have been picked since 26\sJuly: 450\sg so far/);
    await page.getByRole("button", { name: /^Undo the pick of 450/ }).click();
    await expect.poll(() => sentence.innerText()).toBe(before);
    await page.getByRole("radio", { name: "First pick" }).focus();
    await page.keyboard.press("Space");
    await page.getByRole("button", { name: "Write it down" }).focus();
    await page.keyboard.press("Enter");
    await page.locator(".season text", { hasText: "first pick 26" }).waitFor();
    await page.getByRole("button", { name: /^Undo the sighting: First pick/ }).click();
    await expect.poll(() => sentence.innerText()).toBe(before);
    await context.close();
    expect(faults).toEqual([]);
  });

  it("keeps what was typed when a pick cannot be read, and says what would work", async () => {
    const [one] = await sowings();
    const { page, context } = await openPage(browser, app, `/beds/${one?.id ?? ""}`);
    await page.getByLabel(/^Weight in grams/).fill("a basket");
    await page.getByRole("button", { name: "Log this pick" }).click();
    const note = page.getByRole("alert").first();
    await note.waitFor();
    expect(await page.getByLabel(/^Weight in grams/).inputValue()).toBe("a basket");
    expect(await page.getByText("Write grams or kilograms: 450 g or 1.2 kg.").count()).toBe(1);
    await context.close();
  });

  it("can be removed and put back with what was seen of it", async () => {
    const kept = (await sowings()).find(({ pickedGrams, sightings }) => pickedGrams === 0 && sightings.length > 0);
    if (!kept) throw new Error("the demo has no sowing to remove");
    const { page, context, faults } = await openPage(browser, app, `/beds/${kept.id}`);
    await page.getByRole("button", { name: "Remove it" }).click();
    await page.getByRole("button", { name: "Undo", exact: true }).waitFor();
    expect((await sowings()).some(({ id }) => id === kept.id)).toBe(false);
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    await page.getByRole("button", { name: "Remove it" }).waitFor();
    const back = (await sowings()).find(({ id }) => id === kept.id);
    expect(back?.sightings.map(({ stage }) => stage).sort()).toEqual(kept.sightings.map(({ stage }) => stage).sort());
    await context.close();
    expect(faults).toEqual([]);
  });

  it("says so where no such sowing is", async () => {
    const { page, context } = await openPage(browser, app, "/beds/00000000-0000-4000-8000-00000000dead");
    expect(await page.locator("h1.answer").innerText()).toContain("not in the book");
    await context.close();
  });

  it("reads in pounds and feet for a household that chose them, from the first page on", async () => {
    const household = (await (await fetch(`${app.url}/api/household`)).json()) as Record<string, unknown>;
    const response = await fetch(`${app.url}/api/household`);
    const { eatsFrom: _, placed: __, ...body } = household;
    const put = await fetch(`${app.url}/api/household`, { method: "PUT", headers: { "content-type": "application/json", "if-match": response.headers.get("etag") ?? "" }, body: JSON.stringify({ ...body, units: "us" }) });
    expect(put.status).toBe(200);
    for (const path of ["/", "/today", "/beds", `/beds/${(await sowings())[0]?.id ?? ""}`]) {
      const { page, context } = await openPage(browser, app, path);
      await expect.poll(() => page.locator("main").innerText()).toMatch(/\d\s(?:lb|oz|ft)\b/);
      expect(await page.locator("main").innerText(), path).not.toMatch(/\d\s(?:kg|g|m|m²)\b(?! or)/);
      await context.close();
    }
  });
});
