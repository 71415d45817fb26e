/** The day's list, on gardens made in code. What is expected stands beside it as arithmetic, or is a rule of the trade said to be one. */
import { describe, expect, it } from "vitest";
import { addDays, daysBetween, dayNumber } from "#shared/kernel/local-date.ts";
import { weekStart } from "#shared/kernel/iso-week.ts";
import { gardenOutlook } from "#shared/planning/garden-outlook.ts";
import { sowingOutlook } from "#shared/planning/sowing-forecast.ts";
import { todayList } from "#shared/planning/today-list.ts";
import { glutNotices } from "#shared/planning/today-urgent.ts";
import type { GardenReckoning } from "#shared/planning/garden-reckoning.ts";
import { CROPS, garden, kitchen, madeRecord, recipe, type Sown } from "#tests/support/make-garden.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const EATS = { courgette: 1200, chard: 400, tomato: 2400, "french-bean": 800 };
const GLUT: Sown = { id: "c", crop: "courgette", sownOn: "2027-05-10", plants: 12 };

describe("a glut", () => {
  const facts = garden([GLUT], { asOf: "2027-07-05" });
  const gluts = todayList(facts, kitchen(EATS)).urgent.filter((one) => one.kind === "glut");
  const weeks = gardenOutlook(facts, kitchen(EATS), { from: "2027-W27", weeks: 6 }).weeks;

  it("is told ten days or more before its first week, with the way to it", () => {
    const first = weeks.find((week) => week.glut)!;
    expect(gluts).toHaveLength(1);
    expect(gluts[0]?.href).toBe(`/calendar?week=${first.week}`);
    expect(daysBetween(facts.asOf, weekStart(first.week))).toBeGreaterThanOrEqual(10);
    expect(plain(gluts[0]!.text)).toMatch(/^In week \d+, .* about [\d.]+ kg is over, most of it courgettes; it goes on for \d weeks, up to [\d.]+ kg a week\.$/);
  });
  it("names the crops of its first week, not those that come later in the run, and most only for more than half", () => {
    const over = (weekGrams: number[], byCrop: Record<string, number[]>) =>
      plain(
        glutNotices(
          {
            span: { current: 0, weeks: ["2027-W30", "2027-W31"] },
            crops: Object.keys(byCrop).map((slug) => ({ crop: CROPS.get(slug), waits: false })),
            glut: {
              weeks: weekGrams.map((surplusGrams) => ({ glut: true, surplusGrams })),
              crops: Object.values(byCrop).map((grams) => ({ surplusGrams: grams, ledger: { scenarios: 1, from: 0, weeks: 2, over: Float64Array.from(grams) } })),
            },
          } as unknown as GardenReckoning,
          "2027-07-26",
        )[0]!.text,
      );
    // 2,400 of 3,000 g in the first week are cabbage and courgettes; the beans come a week later
    expect(over([3000, 6000], { "french-bean": [0, 5000], courgette: [750, 600], cabbage: [1650, 0] })).toMatch(/^This week about 3\.0 kg is over, most of it (summer )?cabbages? and courgettes; it goes on for 2 weeks, up to 6\.0 kg a week\.$/);
    // 1,200 of 3,000 g are not most of it
    expect(over([3000, 3000], { courgette: [700, 700], chard: [500, 500], tomato: [450, 450] })).toMatch(/, above all courgettes and chard; /);
  });
  it("is not told where every week stays under the household's threshold", () => {
    const most = Math.max(...weeks.map((week) => week.surplusGrams));
    expect(todayList(facts, kitchen(EATS, { glutGrams: most + 1 })).urgent).toEqual([]);
  });
  it("of the running week is told as such", () => {
    const text = todayList({ ...facts, asOf: "2027-08-10" }, kitchen(EATS)).urgent.find((one) => one.kind === "glut")?.text;
    expect(text).toMatch(/^This week about/);
  });
});

describe("to pick today", () => {
  it("is what came since the last pick: nothing on the day, more each day after", () => {
    const chard: Sown = { id: "f", crop: "chard", sownOn: "2027-04-01", rowM: 6, picks: [["2027-06-20", 700], ["2027-07-05", 800]] };
    const on = (asOf: string) => todayList(garden([chard], { asOf }), kitchen(EATS)).pick;
    expect(on("2027-07-05")).toEqual([]);
    const [three] = on("2027-07-08");
    const [six] = on("2027-07-11");
    expect([three?.daysSince, six?.daysSince]).toEqual([3, 6]);
    // within the first week evenly: six days bring twice as much as three
    for (const part of ["low", "likely", "high"] as const) expect(Math.abs((six?.grams[part] as number) - 2 * (three?.grams[part] as number))).toBeLessThanOrEqual(1);
    expect(six).toMatchObject({ sowingId: "f", crop: "chard", bedName: "Long bed" });
    expect(plain(todayList(garden([chard], { asOf: "2027-07-11" }), kitchen(EATS)).headline)).toMatch(/^Pick chard today, about \d+ g\.$/);
  });
  it("is never more than the forecast of the same day has left", () => {
    let capped = 0;
    let said = 0;
    for (const asOf of ["2027-07-10", "2027-07-20", "2027-07-30", "2027-08-09", "2027-08-19"])
      for (const crop of ["dill", "lettuce", "french-bean", "radish", "coriander"]) {
        const facts = garden([{ id: "x", crop, sownOn: "2027-05-05", rowM: 3, picks: [["2027-07-08", 100]] }], { asOf });
        const [row] = todayList(facts, kitchen(EATS)).pick;
        if (!row) continue;
        said++;
        const { totalGrams } = sowingOutlook(facts, facts.plantings[0]!).forecast;
        // one pick of 100 g is known; whole grams on both sides
        for (const part of ["low", "likely", "high"] as const) expect([crop, asOf, part, row.grams[part] <= totalGrams[part] - 100 + 1]).toEqual([crop, asOf, part, true]);
        if (row.grams.high >= totalGrams.high - 101) capped++;
      }
    expect(said).toBeGreaterThan(3);
    expect(capped).toBeGreaterThan(0);
  });
  it("leaves out what waits, what is finished and what is not ripe", () => {
    const list = todayList(
      garden(
        [
          { id: "o", crop: "onion", sownOn: "2027-03-10", rowM: 8 },
          { id: "b", crop: "french-bean", sownOn: "2027-05-01", rowM: 8, sightings: [["finished", "2027-08-01"]] },
          { id: "k", crop: "tomato", plantedOutOn: "2027-08-01", plants: 3 },
        ],
        { asOf: "2027-08-14" },
      ),
      kitchen(EATS),
    );
    expect(list.pick).toEqual([]);
    expect(list.headline).toBe("Nothing has to be picked today.");
  });
});

describe("frost", () => {
  const tomato: Sown = { id: "t", crop: "tomato", plantedOutOn: "2027-05-25", plants: 6 };
  /** Every year frost on the nights of 8 to 10 October and on none before. */
  function frosty(years: (year: number) => boolean) {
    const record = madeRecord(2005, "2027-12-31", 6);
    for (let year = 2005; year <= 2027; year++)
      if (years(year)) for (const day of ["08", "09", "10"]) record.tminC[dayNumber(`${year}-10-${day}`) - record.firstDay] = -2;
    return record;
  }
  const frostOn = (asOf: string, years: (year: number) => boolean, cover: "open" | "greenhouse" | "indoors" = "open") => {
    const facts = garden([tomato], { asOf, record: frosty(years) });
    return todayList({ ...facts, plantings: facts.plantings.map((one) => ({ ...one, cover })) }, kitchen(EATS)).urgent.filter((one) => one.kind === "frost");
  };

  it("is told when a night of the next seven kills what stands outside in one season of ten or more", () => {
    // 22 whole years 2005 … 2026; every second one has the frost, so 11 of 22
    const [notice] = frostOn("2027-10-01", (year) => year % 2 === 0);
    expect(plain(notice?.text ?? "")).toMatch(/^In 10 seasons of 20 a night of the next seven kills tomatoes\. Look at tonight's weather/);
    expect(frostOn("2027-09-30", (year) => year % 2 === 0)).toEqual([]);
    expect(frostOn("2027-10-01", (year) => year === 2010)).toEqual([]);
  });
  it("is not told for what is indoors, nor where the cover holds it off", () => {
    // the unheated greenhouse is taken to add 2 °C at night: −2 becomes 0, which still kills tomatoes; indoors nothing does
    expect(frostOn("2027-10-01", () => true, "greenhouse")).toHaveLength(1);
    expect(frostOn("2027-10-01", () => true, "indoors")).toEqual([]);
  });
  it("puts the lifting of tender roots on the list when it may be three weeks away", () => {
    const potato: Sown = { id: "p", crop: "potato", sownOn: "2027-04-20", rowM: 10 };
    const jobs = (asOf: string) => todayList(garden([potato], { asOf, record: frosty(() => true) }), kitchen(EATS)).jobs.map((one) => plain(one.text));
    expect(jobs("2027-09-20").join(" ")).toMatch(/Lift the potatoes in Long bed before hard frost; the first frost comes/);
    expect(jobs("2027-09-10").join(" ")).not.toMatch(/before hard frost/);
  });
  it("brings in squash and leaves the hardy out", () => {
    const sown = (id: string, crop: string): Sown => ({ id, crop, sownOn: "2027-05-01", plantedOutOn: "2027-05-25", plants: 4 });
    const jobs = todayList(garden([sown("s", "winter-squash"), sown("l", "leek"), sown("b", "brussels-sprouts"), sown("j", "winter-cabbage")], { asOf: "2027-09-20", record: frosty(() => true) }), kitchen(EATS)).jobs;
    const before = jobs.map((one) => plain(one.text)).filter((text) => text.includes("before hard frost"));
    expect(before).toHaveLength(1);
    expect(before[0]).toMatch(/^Bring in the /);
  });
});

describe("to sow and to do", () => {
  const ahead = (sown: Sown, asOf = "2027-07-05") => todayList(garden([sown], { asOf }), kitchen(EATS));
  it("lists what is put down for the next fortnight, the planting out by itself", () => {
    const { sow } = ahead({ id: "b", crop: "french-bean", sownOn: "2027-07-09", rowM: 4 });
    expect(sow).toMatchObject([{ sowingId: "b", on: "2027-07-09", bedName: "Long bed" }]);
    expect(plain(sow[0]!.text)).toMatch(/^Long bed, 4 m of row\. Sow on Friday\. Ready most likely \d+ \w+, between/);
    expect(ahead({ id: "b", crop: "french-bean", sownOn: "2027-07-20", rowM: 4 }).sow).toEqual([]);
    expect(plain(ahead({ id: "k", crop: "kale", sownOn: "2027-05-20", plantedOutOn: "2027-07-10", plants: 8 }).sow[0]!.text)).toMatch(/8 plants\. Plant out on Saturday\./);
  });
  it("reminds of hardening off in the week before planting out", () => {
    const kale: Sown = { id: "k", crop: "kale", sownOn: "2027-05-20", plantedOutOn: "2027-07-10", plants: 8 };
    expect(ahead(kale).jobs.map((one) => [one.on, plain(one.text)])).toEqual([["2027-07-10", "Harden off the kale: planting out on Saturday."]]);
    expect(ahead(kale, "2027-07-02").jobs).toEqual([]);
  });
  it("puts every job on its likely day, the soonest first, and none into the past", () => {
    const sown: Sown[] = [
      { id: "b", crop: "french-bean", sownOn: "2027-05-20", rowM: 4 },
      { id: "c", crop: "courgette", sownOn: "2027-05-01", plantedOutOn: "2027-05-25", plants: 2 },
      { id: "k", crop: "kale", sownOn: "2027-05-20", plantedOutOn: "2027-07-16", plants: 8 },
      { id: "p", crop: "potato", sownOn: "2027-04-10", rowM: 6 },
    ];
    let compared = 0;
    for (let asOf = "2027-06-28"; asOf < "2027-10-10"; asOf = addDays(asOf, 5)) {
      const facts = garden(sown, { asOf });
      const { jobs } = todayList(facts, kitchen(EATS));
      const days = jobs.map((one) => one.on);
      expect(days).toEqual([...days].sort());
      expect(days.filter((day) => day < asOf)).toEqual([]);
      for (const { sowingId, on, text } of jobs.filter((one) => one.text.startsWith("Start looking"))) {
        const { likely } = sowingOutlook(facts, facts.plantings.find((one) => one.id === sowingId)!).forecast.firstPick!;
        expect([text, on]).toEqual([text, likely < asOf ? asOf : likely]);
        compared++;
      }
    }
    expect(compared).toBeGreaterThanOrEqual(5);
  });
  it("says to start looking ten days before the early date, and stops when the first is picked", () => {
    const beans: Sown = { id: "b", crop: "french-bean", sownOn: "2027-05-20", rowM: 4 };
    const looking = (asOf: string, sown = beans) => ahead(sown, asOf).jobs.filter((one) => one.text.startsWith("Start looking")).length;
    const seen = { yes: 0, no: 0 };
    for (let asOf = "2027-06-20"; asOf < "2027-08-20"; asOf = addDays(asOf, 4)) {
      const facts = garden([beans], { asOf });
      const { low, high } = sowingOutlook(facts, facts.plantings[0]!).forecast.firstPick!;
      const due = addDays(asOf, 10) >= low && asOf <= high;
      expect([asOf, looking(asOf)]).toEqual([asOf, due ? 1 : 0]);
      seen[due ? "yes" : "no"]++;
    }
    expect(Math.min(seen.yes, seen.no)).toBeGreaterThan(2);
    expect(looking("2027-08-01", { ...beans, picks: [["2027-07-25", 300]] })).toBe(0);
  });
});

it("cook days to come stand on the list, and ways chosen that are in none of them", () => {
  const recipes = [recipe("Courgette soup", { courgette: 1000 }, { way: "cook" }), recipe("Bags of beans", { "french-bean": 500 })];
  const planLines = [
    { id: "1", week: "2027-W27", recipeId: "Courgette soup", batches: 2 },
    { id: "2", week: "2027-W27", recipeId: "Bags of beans", batches: 1 },
    { id: "3", week: "2027-W29", recipeId: "Bags of beans", batches: 1 },
  ];
  const cookDays = [
    { id: "past", on: "2027-07-04", startsAt: "10:00", title: null, dishes: [] },
    { id: "next", on: "2027-07-11", startsAt: "14:00", title: null, dishes: [{ recipeId: "Courgette soup", batches: 2 }] },
  ];
  const { cook } = todayList(garden([GLUT]), kitchen(EATS, { recipes, planLines, cookDays }));
  expect(cook).toEqual([
    { cookDayId: "next", on: "2027-07-11", text: "On Sunday at 14:00: Courgette soup.", href: "/cook-day/next" },
    { cookDayId: null, on: "2027-07-11", text: "Chosen for this week: Bags of beans.", href: "/calendar?week=2027-W27" },
  ]);
});

it("an empty house is told what to put in first", () => {
  const list = todayList(garden([], { placed: false, record: null, beds: [] }), kitchen({}));
  expect(list.urgent.map((one) => [one.kind, one.href])).toEqual([["setup", "/household"], ["setup", "/household"], ["setup", "/beds"], ["setup", "/beds"]]);
  expect(list).toMatchObject({ pick: [], sow: [], jobs: [], useFirst: [], cook: [], headline: "There is nothing to pick yet." });
});
