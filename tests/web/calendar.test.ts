/** The calendar page's own reckoning: which year, where things stand on the plate, what is said, which cook day comes of a week. */
import { describe, expect, it } from "vitest";
import { Calendar, type CalendarCrop, type CalendarWeek } from "#shared/contracts/calendar.ts";
import { NewCookDay } from "#shared/contracts/cook-days.ts";
import type { Household } from "#shared/contracts/household.ts";
import { weekEnd, weeksFrom, weekStart } from "#shared/kernel/iso-week.ts";
import { cautionsOf } from "#web/parts/cautions.ts";
import { usesGoWithoutSaying, whyBesideRow } from "#web/pages/calendar/why-words.ts";
import { cookDayOf, cookDayWords, dishesOfWeek } from "#web/parts/cook-day-from-week.ts";
import { layOut, monthSpans, nameLines } from "#web/pages/calendar/plate.ts";
import { layOutStrip } from "#web/pages/calendar/strip.ts";
import { leadingCrops, pickedWords, ripeCrops, usesWords, weekRuleWords, weekSentence } from "#web/parts/week-words.ts";
import { rowNames } from "#web/parts/crop-names.ts";
import { chosenWeek, yearAround, yearFigures } from "#web/pages/calendar/year.ts";

const TODAY = "2027-07-26";
const loose = (text: string): string => text.replaceAll("\u00a0", " ");

function crop(slug: string, name: string, likely: number, more: Partial<CalendarCrop> = {}): CalendarCrop {
  return { crop: slug, name, grams: { low: likely / 2, likely, high: likely * 1.5 }, pickedGrams: 0, freshGrams: 0, surplusGrams: 0, chanceInHarvest: 1, waits: false, ...more };
}

function week(name: string, crops: CalendarCrop[], more: Partial<CalendarWeek> = {}): CalendarWeek {
  const likely = crops.filter(({ waits }) => !waits).reduce((sum, one) => sum + one.grams.likely, 0);
  return {
    week: name,
    starts: weekStart(name),
    ends: weekEnd(name),
    headline: "",
    crops,
    grams: { low: likely / 2, likely, high: likely * 1.5 },
    pickedGrams: crops.reduce((sum, one) => sum + one.pickedGrams, 0),
    eatsGrams: 6500,
    surplusGrams: 0,
    glut: false,
    planned: [],
    pairings: [],
    cookDay: [],
    ...more,
  };
}

/** Tomatoes ripen from today on; onions are lifted in week 32. */
function calendar(): Calendar {
  const weeks = weeksFrom("2027-W01", 52).map((name) => {
    const tomatoes = name < "2027-W30" ? crop("tomato", "Tomato, large", 0, { pickedGrams: name === "2027-W29" ? 700 : 0 }) : crop("tomato", "Tomato, large", 3000);
    return week(name, [tomatoes, crop("onion", "Onion, sets", name === "2027-W32" ? 12_000 : 0, { waits: true })]);
  });
  const row = { sowings: [{ id: "a", bedName: "Long bed", from: "2027-03-15", until: "2027-10-10" }], bestWeekGrams: 3000, seasonGrams: { low: 20_000, likely: 30_000, high: 45_000 } };
  return Calendar.parse({
    today: TODAY,
    headline: "",
    headlineOver: "",
    overGrams: 0,
    overUntil: null,
    eatsGrams: 6500,
    frost: { lastSpring: null, firstAutumn: null },
    rows: [
      { crop: "tomato", name: "Tomato, large", waits: false, lift: null, ...row },
      { crop: "onion", name: "Onion, sets", waits: true, lift: { low: "2027-08-02", likely: "2027-08-12", high: "2027-08-25" }, ...row },
    ],
    weeks,
    seasonPlan: null,
    missing: [],
    basis: [],
    notes: [],
  });
}

describe("the year shown", () => {
  it("has 53 weeks where ISO 8601 gives it 53", () => {
    expect(yearAround("2027-W30")).toEqual({ year: 2027, from: "2027-W01", weeks: 52 });
    // 2026 begins on a Thursday
    expect(yearAround("2026-W10").weeks).toBe(53);
    expect(yearAround("2026-W53").weeks).toBe(53);
  });

  it("is that of the week in the address, else today's, and a week that is not there is passed over", () => {
    expect(chosenWeek("2027-W34", TODAY)).toBe("2027-W34");
    expect(chosenWeek(null, TODAY)).toBe("2027-W30");
    expect(chosenWeek("2027-W99", TODAY)).toBe("2027-W30");
    expect(chosenWeek("harvest", "2027-01-01")).toBe("2026-W53");
  });

  it("keeps facts before today's week and expectations from it on", () => {
    const { now, crops, total } = yearFigures(calendar());
    expect(now).toBe(29);
    expect(crops[0]?.picked[28]).toBe(700);
    expect(crops[0]?.likely[28]).toBe(0);
    expect(crops[0]?.picked[29]).toBe(0);
    expect(crops[0]?.likely[29]).toBe(3000);
    expect(total.picked[28]).toBe(700);
  });

  it("counts the whole running week as still to come, Monday to Sunday", () => {
    expect(["2027-07-25", "2027-07-26", "2027-07-28", "2027-08-01", "2027-08-02"].map((today) => yearFigures({ ...calendar(), today }).now)).toEqual([28, 29, 29, 29, 30]);
  });
});

describe("the plate", () => {
  const figures = yearFigures(calendar());
  const plate = layOut(figures, { width: 1184, rem: 16 });

  it("puts 26 July 2027, a Monday, at the left edge of week 30", () => {
    expect(plate.xOfDay("2027-07-26")).toBeCloseTo(plate.x(29), 6);
    expect(plate.xOfDay("2027-08-02") - plate.xOfDay("2027-07-26")).toBeCloseTo(plate.week, 6);
  });

  it("finds the week under a press, and the nearest one outside", () => {
    for (let i = 0; i < 52; i++) expect(plate.weekAt(plate.x(i) + plate.week / 2)).toBe(i);
    expect(plate.weekAt(-40)).toBe(0);
    expect(plate.weekAt(5000)).toBe(51);
  });

  it("draws every hill to one scale: twice the weight is twice as high in every row", () => {
    const heights = plate.rows.map(({ base }) => base - plate.ground(base).y(1000));
    expect(new Set([...heights, plate.stripBase - plate.ground(plate.stripBase).y(1000)].map((px) => px.toFixed(6))).size).toBe(1);
  });

  it("keeps rows apart by at least the hill that stands in them", () => {
    plate.rows.forEach(({ base, series }, i) => {
      const above = plate.rows[i - 1]?.base ?? plate.stripBase;
      expect(base - above).toBeGreaterThanOrEqual(base - plate.ground(base).y(series.peak));
    });
  });

  it("divides the year into twelve months in a row", () => {
    const spans = monthSpans(figures, plate);
    expect(spans).toHaveLength(12);
    for (let i = 1; i < 12; i++) expect(spans[i]?.from).toBe(spans[i - 1]?.to);
  });

  it("parts a long name into two lines, never more", () => {
    expect(nameLines("Tomatoes")).toEqual(["Tomatoes"]);
    expect(nameLines("French bean, climbing")).toEqual(["French bean,", "climbing"]);
    expect(nameLines("Mizuna, tatsoi, mustard and more of them").length).toBe(2);
  });

  it("keeps the phone's strip inside the phone", () => {
    const strip = layOutStrip(figures, { lastSpring: { low: "2027-04-14", likely: "2027-05-02", high: "2027-05-19" }, firstAutumn: null }, { width: 288, rem: 32 });
    expect(strip.rem).toBe(18);
    expect(strip.ground.x(52)).toBe(288);
    expect(strip.today).toBeCloseTo((288 * 29) / 52, 6);
    expect(strip.frosts).toHaveLength(1);
  });
});

describe("words of a week", () => {
  const names = rowNames([
    { crop: "tomato", name: "Tomato, large" },
    { crop: "french-bean", name: "French bean, bush" },
    { crop: "climbing-bean", name: "French bean, climbing" },
  ]);

  it("call a crop by its plain plural, and by the table's name where two would be called the same", () => {
    expect(names.get("tomato")).toEqual({ label: "Tomatoes", word: "tomatoes" });
    expect(names.get("french-bean")).toEqual({ label: "French bean, bush", word: "French beans" });
  });

  it("say how much is over only past the household's threshold", () => {
    const over = weekSentence(week("2027-W34", [crop("tomato", "Tomato, large", 10_400)], { surplusGrams: 3900, glut: true }));
    expect(loose(over.before + over.over + over.after)).toBe("5.2 to 15.6 kg, most likely 10.4 kg. We eat about 6.5 kg a week; 3.9 kg is over.");
    const little = weekSentence(week("2027-W34", [crop("tomato", "Tomato, large", 3000)], { surplusGrams: 200 }));
    expect(little.over).toBe("");
    expect(loose(little.before)).toContain("About 200 g of it stays over.");
    expect(weekSentence(week("2027-W02", [])).before).toBe("Nothing ripens this week that has to be eaten.");
  });

  it("put what waits last and leave out what is next to nothing", () => {
    const of = week("2027-W34", [crop("onion", "Onion, sets", 9000, { waits: true }), crop("pea", "Pea", 20), crop("tomato", "Tomato, large", 3000)]);
    expect(ripeCrops(of).map(({ crop: slug }) => slug)).toEqual(["tomato", "onion"]);
    expect(leadingCrops(of, names)).toBe("tomatoes");
  });

  it("write picks as measured and uses as expected", () => {
    const of = week("2027-W29", [crop("tomato", "Tomato, large", 0, { pickedGrams: 1200 })]);
    expect(loose(pickedWords(of, names))).toBe("tomatoes 1,200 g");
    expect(loose(usesWords([{ crop: "tomato", grams: 1170 }, { crop: "french-bean", grams: 14 }], names))).toBe("Uses tomatoes 1.2 kg and French beans 14 g.");
  });

  it("say each caution once, the rarest first, with the ways it is for", () => {
    const ways = [
      { title: "Freeze beans", cautions: ["Chill fast.", "No raw beans."] },
      { title: "Bean soup", cautions: ["Chill fast.", "No raw beans."] },
      { title: "Leek pie", cautions: ["Chill fast."] },
      { title: "Kale in oil", cautions: ["Chill fast.", "Oil in the fridge."] },
      { title: "Plum jam", cautions: ["Chill fast."] },
    ];
    expect(cautionsOf(ways)).toEqual([
      { text: "Oil in the fridge.", ways: "For kale in oil.", general: false },
      { text: "No raw beans.", ways: "For freeze beans and bean soup.", general: false },
      { text: "Chill fast.", ways: "", general: true },
    ]);
  });

  it("tell the slider what the week brings", () => {
    expect(loose(weekRuleWords("Week 34 · 23–29 August", week("2027-W34", [crop("tomato", "Tomato, large", 9000)], { surplusGrams: 7500, glut: true })))).toBe("Week 34, 23–29 August, 7.5 kg over");
  });
});

describe("a cook day from a week", () => {
  const id = (n: number): string => `00000000-0000-4000-8000-00000000000${n}`;
  const pairing = (n: number) => ({ recipeId: id(n), title: `Way ${n}`, way: "cook" as const, batches: 2, uses: [], makes: { amount: 1, unit: "jar" }, handsOnMin: 20, why: "", cautions: [], planned: false, parts: [] });
  const line = (n: number, batches: number) => ({ id: id(9), week: "2027-W34", recipeId: id(n), title: `Way ${n}`, way: "cook" as const, batches, uses: [] });
  const household = { kitchen: { ovens: [{ trays: 2, preheatMin: 10, changeMin: 10 }], burners: 4 }, cooks: 2 } as Household;
  const hasSteps = (recipeId: string): boolean => recipeId !== id(5);

  it("takes what is planned, batches of one recipe together, and leaves out what has no steps", () => {
    const found = dishesOfWeek(week("2027-W34", [], { planned: [line(1, 1), line(5, 1), line(1, 2)], pairings: [pairing(2)] }), hasSteps);
    expect(found).toEqual({ from: "plan", dishes: [{ recipeId: id(1), batches: 3 }] });
    expect(loose(cookDayWords(found, "2027-W34"))).toBe("Takes what is planned for week 34.");
  });

  it("takes the first three ways where nothing is planned, and says so", () => {
    const found = dishesOfWeek(week("2027-W34", [], { pairings: [5, 1, 2, 3, 4].map(pairing) }), hasSteps);
    expect(found.dishes.map(({ recipeId }) => recipeId)).toEqual([1, 2, 3].map(id));
    expect(loose(cookDayWords(found, "2027-W34"))).toBe("Nothing is planned for week 34 yet, so the first three ways that are cooked go in.");
    expect(dishesOfWeek(week("2027-W34", []), hasSteps).from).toBe("nothing");
  });

  it("falls on the Saturday of the week at nine, on the Sunday itself when that is today", () => {
    // 28 and 29 August 2027 are a Saturday and a Sunday
    const of = week("2027-W34", []);
    const dishes = [{ recipeId: id(1), batches: 1 }];
    expect(cookDayOf(of, dishes, household, TODAY)).toMatchObject({ on: "2027-08-28", startsAt: "09:00", cooks: 2 });
    expect(cookDayOf(of, dishes, household, "2027-08-28").on).toBe("2027-08-28");
    expect(cookDayOf(of, dishes, household, "2027-08-29").on).toBe("2027-08-29");
    expect(NewCookDay.safeParse(cookDayOf(of, dishes, household, TODAY)).success).toBe(true);
  });
});

describe("the reason beside its row", () => {
  const way = (why: string, amount = 4, unit = "bags", handsOnMin = 17) => loose(whyBesideRow({ why: why.replaceAll("_", "\u00a0"), makes: { amount, unit }, handsOnMin }));

  it("leaves out what the row has in columns: what comes of it and the work", () => {
    expect(way("Takes 1.0_kg of the 1.2_kg of courgettes over this week and makes 4_bags, which keep 9_months in the freezer, longer than the next way; 17_min of work.")).toBe(
      "Takes 1.0 kg of the 1.2 kg of courgettes over this week; keeps 9 months in the freezer, longer than the next way.",
    );
    expect(way("Nothing of the courgettes is over; 1.0_kg of what there is makes 4_portions, which keep 3_days in the fridge; 10_min of work.", 4, "portions", 10)).toBe("Nothing of the courgettes is over; keeps 3 days in the fridge.");
    expect(way("Potatoes wait for you: 2.0_kg makes 4_portions; 1_h_30 of work, less for each kilo than the next way.", 4, "portions", 90)).toBe("Potatoes wait for you, less work for each kilo than the next way.");
  });

  it("says a reason of another form as it stands", () => {
    expect(way("Planned for this week, because the freezer is full after it.")).toBe("Planned for this week, because the freezer is full after it.");
  });

  it("leaves the amounts to the reason only where one crop is taken", () => {
    expect(usesGoWithoutSaying({ why: "Takes all 1.0 kg of courgettes over this week.", uses: [{ crop: "courgette", grams: 1000 }] })).toBe(true);
    expect(usesGoWithoutSaying({ why: "Takes all 1.0 kg of courgettes over this week.", uses: [{ crop: "courgette", grams: 1000 }, { crop: "onion", grams: 200 }] })).toBe(false);
    expect(usesGoWithoutSaying({ why: "Somebody asked for it.", uses: [{ crop: "courgette", grams: 1000 }] })).toBe(false);
  });
});

it("a cook day takes what the season's plan has where nothing is chosen for the week", () => {
  const dishes = [{ recipeId: "3f8a1c1e-4a59-4a0e-9d57-2b1f6f0c9a11", batches: 2 }];
  const found = dishesOfWeek(week("2027-W34", [], { cookDay: dishes }));
  expect(found).toEqual({ dishes, from: "season" });
  expect(loose(cookDayWords(found, "2027-W34"))).toBe("Takes what the season’s plan has for week 34.");
});
