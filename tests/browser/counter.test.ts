/** A cook day at the counter on two devices at once: agreed, begun, ticked, reloaded, late, finished, put away. On the invented demo household. */
import { randomUUID } from "node:crypto";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openBrowser } from "../support/chromium.ts";
import { openPage, PHONE, ready, seriousFindings, sidewaysScroll, type OpenedPage } from "../support/pages.ts";
import { startApp, type RunningApp } from "../support/running-app.ts";

let app: RunningApp;
let browser: Browser;
let phone: OpenedPage;
let table: OpenedPage;
const id = randomUUID();

const answer = async <T>(path: string): Promise<T> => (await (await fetch(`${app.url}${path}`)).json()) as T;

beforeAll(async () => {
  [app, browser] = await Promise.all([startApp("demo"), openBrowser()]);
  const recipe = (await answer<{ id: string; title: string }[]>("/api/recipes")).find(({ title }) => title === "Apple sauce for the freezer");
  const day = { on: "2027-08-07", startsAt: "10:00", cooks: 1, kitchen: { ovens: [], burners: 2, pots: 2, sinks: 1 }, dishes: [{ recipeId: recipe?.id, batches: 1 }] };
  const made = await fetch(`${app.url}/api/cook-days/${id}`, { method: "PUT", headers: { "content-type": "application/json" }, body: JSON.stringify(day) });
  expect(made.status).toBe(201);
  phone = await openPage(browser, app, `/cook-day/${id}`, { size: PHONE, scheme: "dark" });
});
afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

const put = (path: string, body: unknown): Promise<Response> => fetch(`${app.url}/api/cook-days/${id}/${path}`, { method: "PUT", headers: { "content-type": "application/json" }, body: JSON.stringify(body) });
const eventually = <T>(look: () => Promise<T>) => expect.poll(look, { timeout: 20_000 });
const now = (of: OpenedPage): Promise<string> => of.page.locator("h1").innerText();
const press = (of: OpenedPage, name: RegExp | string): Promise<void> => of.page.getByRole("button", { name }).first().click();

describe("a cook day", () => {
  it("is moved by buttons, refused with a reason, kept and taken back", async () => {
    const { page } = phone;
    await press(phone, "Move step 2");
    await press(phone, "5 min earlier");
    await eventually(() => page.locator(".move-panel [role=alert]").innerText()).toMatch(/^Not moved\. .* before .* is done at 10:22/);
    await press(phone, "Leave it");
    await press(phone, "Move step 4");
    await press(phone, "5 min later");
    await eventually(() => page.locator(".undo").innerText()).toMatch(/moved from 11:39 to 11:44/);
    await press(phone, /^Undo/);
    await eventually(() => page.getByRole("button", { name: "Agree to this plan" }).count()).toBe(1);
  });

  it("is agreed on, and begun on one device while the other looks on", async () => {
    await press(phone, "Agree to this plan");
    await phone.page.getByRole("link", { name: "To the counter" }).click();
    await eventually(() => now(phone)).toMatch(/^Ready for Saturday, 7.August, 10:00\.$/);
    table = await openPage(browser, app, `/counter/${id}`);
    await press(phone, "Begin now");
    for (const device of [phone, table]) await eventually(() => now(device)).toMatch(/^Quarter|^Cut|apples/i);
    expect(await sidewaysScroll(phone.page)).toBe(0);
    expect(await seriousFindings(phone.page)).toEqual([]);
  });

  it("shows what went in with its time, on both, after a reload too", async () => {
    await press(phone, /^Start/);
    await phone.page.getByRole("checkbox").first().click();
    for (const device of [phone, table]) await eventually(() => device.page.locator(".c-tick small").first().textContent()).toMatch(/in, \d\d:\d\d/);
    await phone.page.reload();
    await ready(phone.page);
    expect(await phone.page.getByRole("checkbox").first().isChecked()).toBe(true);
    expect(await phone.page.getByRole("button", { name: /^Done/ }).count()).toBeGreaterThan(0);
  });

  it("goes on under the hands of one without taking the other's place or words", async () => {
    await table.page.getByText("A timer of your own").click();
    await table.page.getByLabel("Which pot").fill("Eggs");
    const before = await now(table);
    await press(phone, /^Done/);
    await eventually(() => now(table)).not.toBe(before);
    expect(await table.page.evaluate<string>("document.activeElement.id + ' ' + document.activeElement.value")).toBe("own-pot Eggs");
    await press(phone, /^Start/);
    for (const device of [phone, table]) await eventually(() => device.page.locator(".c-pot .c-min").first().innerText()).toMatch(/^2[34] min/);
  });

  it("is planned anew when late: each moved step by name, the timer with it, and back again", async () => {
    await press(table, "Running late");
    await press(table, /^20 min/);
    for (const device of [phone, table]) {
      await eventually(() => device.page.locator(".c-moved").innerText()).toMatch(/takes 20.min longer.*Apple sauce for the freezer\): from \d\d:\d\d to \d\d:\d\d/s);
      await eventually(() => device.page.locator(".c-pot .c-min").first().innerText()).toMatch(/^4[34] min/);
    }
    await press(table, "Back to the plan before");
    await eventually(() => table.page.locator(".c-moved").count()).toBe(0);
  });

  it("rings on every device until one has heard it", async () => {
    const at = Date.parse((await answer<{ now: string }>(`/api/cook-days/${id}/counter`)).now) + 2_000;
    await put(`timers/${randomUUID()}`, { label: "Stir it", pot: "Jam", endsAt: new Date(at).toISOString() });
    for (const device of [phone, table]) await device.page.getByRole("button", { name: "Stop the ring: Jam" }).waitFor();
    await press(phone, "Stop the ring: Jam");
    for (const device of [phone, table]) await eventually(() => device.page.locator(".ring").count()).toBe(0);
  });

  it("is finished when every step is done", async () => {
    const { steps } = await answer<{ steps: { dish: string; step: string; state: string }[] }>(`/api/cook-days/${id}/counter`);
    for (const { dish, step } of steps.filter(({ state }) => state !== "done")) await put(`marks/${randomUUID()}`, { kind: "done", dish, step });
    for (const device of [phone, table]) await eventually(() => now(device)).toBe("Every step is done.");
    await press(phone, "Finish the day");
    await eventually(() => table.page.locator(".c-dishes").innerText()).toMatch(/Apple sauce for the freezer cooling/);
    expect(table.faults).toEqual([]);
  });

  it("puts nothing hot into the cold, and everything else into the larder to the portion", async () => {
    const { page } = phone;
    await page.getByRole("link", { name: /^Put away/ }).click();
    await page.getByLabel("Portions made").fill("5");
    await page.getByLabel("Eaten now, portions").fill("2");
    await press(phone, "Put it away");
    await eventually(() => page.getByRole("alert").first().innerText()).toMatch(/1 of 5 are neither eaten, given nor put away/);
    await page.locator("#close-lot-0").fill("3");
    await press(phone, "Put it away");
    await eventually(() => page.getByRole("alert").first().innerText()).toMatch(/21\.1.°C/);
    await page.getByRole("link", { name: "Back to the counter" }).click();
    for (const stage of [0, 1]) {
      await page.locator(".c-cooling input").nth(stage).click();
      await eventually(() => page.locator(".c-cooling input").nth(stage).isChecked()).toBe(true);
    }
    await page.getByRole("link", { name: /^Put away/ }).click();
    await page.getByLabel("Portions made").fill("5");
    await page.getByLabel("Eaten now, portions").fill("2");
    await page.locator("#close-lot-0").fill("3");
    await press(phone, "Put it away");
    await eventually(() => page.locator(".c-dishes").innerText()).toMatch(/5.portions: 2 eaten and 3 in/);
    const { lots } = await answer<{ lots: { title: string; portions: number; madeOn: string }[] }>("/api/larder");
    expect(lots.filter(({ title, portions }) => title.startsWith("Apple sauce") && portions === 3)).toHaveLength(1);
    await page.getByRole("link", { name: /^Labels/ }).click();
    await eventually(() => now(phone)).toMatch(/^1.label to print and cut\.$/);
  });
});
