/** The kitchen as a person uses it: a pasted recipe becomes ours, a larder lot is taken from, a food is asked about. On the invented demo household. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openBrowser } from "../support/chromium.ts";
import { openPage, PHONE, ready, seriousFindings, sidewaysScroll, TABLE } from "../support/pages.ts";
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

const answer = async <T>(path: string): Promise<T> => (await (await fetch(`${app.url}${path}`)).json()) as T;

/** A machine that does other work answers later than in the second that is usual. */
const PATIENT = { timeout: 20_000 };

const PASTED = `Bean and tomato soup
Serves 6

500 g runner beans, sliced
1 x 400g can tomatoes
2 tbsp oil
salt to taste

1. Soften the beans in the oil, 10 minutes.
2. Add the tomatoes and simmer 35-40 minutes.`;

const LINKED = {
  "@context": "https://schema.org",
  "@type": "Recipe",
  name: "Plum &amp; oat bars",
  recipeYield: "12 bars",
  recipeIngredient: ["250 g plums", "&frac12; cup sugar", "2 cloves plain flour"],
  recipeInstructions: [{ "@type": "HowToStep", text: "<p>Bake at 350°F for 25 to 30 minutes.</p>" }, { "@type": "HowToStep", text: "Keeps for 2 months in the freezer." }],
};

interface StoredRecipe {
  id: string;
  title: string;
  origin: string;
  makes: { amount: number; unit: string };
  uses: { crop: string; grams: number }[];
  steps: { handsOffMin: unknown }[];
}

describe("a pasted recipe", () => {
  it("is read, looked over, changed and stored", async () => {
    const { page, context, faults } = await openPage(browser, app, "/recipes/new?paste", { size: PHONE });
    await page.getByLabel("The recipe as you found it").fill(PASTED);
    // what was pasted is there after a reload
    await page.reload();
    await ready(page);
    expect(await page.getByLabel("The recipe as you found it").inputValue()).toBe(PASTED);
    await page.getByRole("button", { name: "Read it" }).click();
    await page.getByRole("button", { name: "Save recipe" }).waitFor();
    expect(await page.locator("h1").innerText()).toMatch(/^The recipe is read/);
    expect(await page.getByLabel("Name of the dish").inputValue()).toBe("Bean and tomato soup");
    expect(await page.getByLabel("Ingredient 1", { exact: true }).inputValue()).toBe("500 g runner beans, sliced");
    await page.getByLabel("Fridge, days").fill("3");
    await page.getByRole("button", { name: "Save recipe" }).click();
    await page.waitForURL(/\/recipes\/[0-9a-f-]{36}$/);
    await ready(page);
    expect(await page.locator("h1").innerText()).toMatch(/^Bean and tomato soup makes 6/);
    const id = page.url().split("/").pop() ?? "";
    await context.close();
    const stored = await answer<StoredRecipe>(`/api/recipes/${id}`);
    expect(stored).toMatchObject({ origin: "own", makes: { amount: 6, unit: "portions" } });
    expect(stored.uses).toEqual([{ crop: "runner-bean", grams: 500 }]);
    expect(stored.steps).toHaveLength(2);
    expect(faults).toEqual([]);
  });

  it("that is nothing is answered, and nothing typed is lost", async () => {
    const { page, context } = await openPage(browser, app, "/recipes/new?paste");
    await page.getByRole("button", { name: "Read it" }).click();
    expect(await page.getByRole("alert").first().innerText()).toContain("Paste a recipe first");
    await page.getByLabel("The recipe as you found it").fill("<script>alert(1)</script>\n???");
    await page.getByRole("button", { name: "Read it" }).click();
    await page.getByRole("button", { name: "Save recipe" }).waitFor();
    await page.getByText("What was pasted").click();
    expect(await page.getByLabel("The recipe as you found it").inputValue()).toBe("<script>alert(1)</script>\n???");
    // a page's own data in its place: read, whose cups it means, a unit that does not fit, how long it keeps
    await page.getByLabel("The recipe as you found it").fill(JSON.stringify(LINKED));
    await page.getByRole("button", { name: "Read it again" }).click();
    await expect.poll(() => page.getByLabel("Name of the dish").inputValue(), PATIENT).toBe("Plum & oat bars");
    expect(await page.getByLabel("Cups and spoons").inputValue()).toBe("us");
    expect(await page.getByLabel("Freezer, days").inputValue()).toBe("60");
    expect(await page.locator(".doubts").innerText()).toMatch(/clove does not fit/);
    expect(await page.getByLabel("Ingredient 3", { exact: true }).inputValue()).toBe("2 cloves plain flour");
    await context.close();
  });
});

describe("a recipe for more", () => {
  it("says what changes and what does not", async () => {
    const recipe = (await answer<StoredRecipe[]>("/api/recipes")).find(({ title }) => title === "Courgette gratin");
    if (!recipe) throw new Error("the book has no courgette gratin");
    const { page, context, faults } = await openPage(browser, app, `/recipes/${recipe.id}`);
    const weight = page.locator(".ingr tbody tr").first().locator("td").first();
    const before = await weight.innerText();
    await page.getByRole("radio", { name: /^2: / }).check();
    await expect.poll(() => page.locator("h1").innerText(), PATIENT).toMatch(/takes twice the amounts/);
    // 1.6 kg of courgettes in the book's recipe
    expect([before, await weight.innerText()]).toEqual(["1.6\u00a0kg", "3.2\u00a0kg"]);
    expect(await page.locator(".checks dt").count()).toBeGreaterThanOrEqual(2);
    expect(page.url()).toContain("batches=2");
    await context.close();
    expect(faults).toEqual([]);
  });
});

interface LarderAnswer {
  useFirst: { lotId: string }[];
  lots: { id: string; title: string; portions: number | null; countedIn: string | null }[];
  places: { id: string; name: string }[];
}

describe("the larder", () => {
  it("gives up a portion in two presses, and takes it back", async () => {
    const before = await answer<LarderAnswer>("/api/larder");
    const lot = before.useFirst.map(({ lotId }) => before.lots.find(({ id }) => id === lotId)).find((one) => one?.countedIn === "portions" && (one.portions ?? 0) > 1);
    if (!lot) throw new Error("the demo larder has nothing counted in portions to use first");
    const left = async (): Promise<number | null | undefined> => (await answer<LarderAnswer>("/api/larder")).lots.find(({ id }) => id === lot.id)?.portions;
    const { page, context, faults } = await openPage(browser, app, "/larder", { size: PHONE });
    const row = page.locator(".first > li", { hasText: lot.title }).first();
    await row.getByRole("button", { name: /^Take out/ }).click();
    await row.locator(".amounts button").first().click();
    await page.locator(".undo", { hasText: /^1.portion taken out/ }).waitFor();
    expect(await left()).toBe((lot.portions ?? 0) - 1);
    await page.getByRole("button", { name: /^Undo/ }).click();
    await page.locator(".undo").waitFor({ state: "detached" });
    expect(await left()).toBe(lot.portions);
    await context.close();
    expect(faults).toEqual([]);
  });

  it("takes in something new, which then stands in its place and has a label", async () => {
    const { page, context, faults } = await openPage(browser, app, "/larder");
    await page.locator("#in-what").fill("Courgette soup");
    await page.getByLabel("How much", { exact: true }).fill("6");
    await page.getByRole("button", { name: "Put it in" }).click();
    await page.locator(".undo", { hasText: "6\u00a0portions put in: Courgette soup" }).waitFor();
    await page.locator(".place", { hasText: "Courgette soup" }).first().waitFor();
    await context.close();
    const labels = await openPage(browser, app, "/larder?view=labels");
    expect(await labels.page.locator(".label-slip", { hasText: "Courgette soup" }).first().innerText()).toMatch(/6.portions[^]*Best until/);
    await labels.context.close();
    expect([...faults, ...labels.faults]).toEqual([]);
  });
});

describe("can I keep this", () => {
  // USDA Complete Guide to Home Canning, guide 3: every tomato pack needs added acid; guide 4 has no process for summer squash by itself
  it("answers tomatoes with acid for every jar, and never lets a squash into a jar by itself", async () => {
    const { page, context, faults } = await openPage(browser, app, "/keeping");
    await page.getByLabel("What is it").fill("Tomato, large");
    await page.getByRole("radio", { name: "Bottle" }).check();
    await page.getByRole("button", { name: "Look it up" }).click();
    await expect.poll(() => page.locator("h1").innerText(), PATIENT).toMatch(/tested process/);
    await page.locator(".processes summary", { hasText: /crushed/i }).first().click();
    expect(await page.locator(".processes details[open]").first().innerText()).toMatch(/lemon juice|citric acid/i);
    await page.getByLabel("What is it").fill("Courgette");
    await page.getByRole("button", { name: "Look it up" }).click();
    await expect.poll(() => page.locator(".notice").first().innerText(), PATIENT).toMatch(/squash|courgette|zucchini/i);
    await context.close();
    expect(faults).toEqual([]);
  });
});

describe("the kitchen's pages", () => {
  it("have no serious finding of the accessibility rules and no sideways scroll, on phone and laptop", async () => {
    const findings: string[] = [];
    const { places } = await answer<LarderAnswer>("/api/larder");
    const paths = ["/larder", "/larder?view=account", "/larder?view=labels", `/larder?count=${places[0]?.id ?? ""}`, "/keeping?food=tomato&way=bottle", "/recipes/new?paste", "/recipes?hand=1"];
    let looked = 0;
    const walk = async (size: typeof PHONE, scheme: "dark" | "light"): Promise<void> => {
      const { page, context, faults } = await openPage(browser, app, paths[0] as string, { size, scheme });
      for (const path of paths) {
        if (path !== paths[0]) {
          await page.goto(path);
          await ready(page);
        }
        findings.push(...(await seriousFindings(page)).map((finding) => `${path} ${size.width}: ${finding}`), ...faults.splice(0).map((fault) => `${path}: ${fault}`));
        const px = await sidewaysScroll(page);
        if (px > 0) findings.push(`${path} ${size.width} scrolls ${px} px`);
        looked++;
      }
      await context.close();
    };
    // one page each goes from address to address, both at a time
    await Promise.all([walk(PHONE, "dark"), walk(TABLE, "light")]);
    expect(findings).toEqual([]);
    expect(looked).toBe(2 * paths.length);
  }, 120_000);
});
