/** What is typed about the household. Allowed values are those of the contract (shared/contracts/household.ts, weather.ts, kitchen.ts). */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Household } from "#shared/contracts/household.ts";
import type { WeatherHeld } from "#shared/contracts/weather.ts";
import { MONTHS } from "#web/format.ts";
import { minutesIn, readYear, yearFieldsOf, type YearFields } from "#web/pages/household/year-read.ts";
import { fieldAt, fieldsOf, LABELS, numberIn, readHousehold, type HouseholdFields } from "#web/pages/household/household-form.ts";
import { monthFields, readNormals } from "#web/pages/household/normals-form.ts";
import { householdSentence, rowFaults, weatherSentence } from "#web/pages/household/words.ts";

const HOME: Household = {
  name: "Garden on the dyke",
  zone: "Europe/Amsterdam",
  latitude: 52.1,
  longitude: 5.18,
  altitudeM: 4,
  away: [],
  avoids: { crops: [], allergens: [] },
  people: 4,
  weekStart: "monday",
  units: "metric",
  eats: [],
  eatsFrom: "book",
  glutGrams: 1000,
  kitchen: { ovens: [{ trays: 2, preheatMin: 15, changeMin: 10 }], burners: 4, pots: 2, sinks: 1 },
  cooks: 1,
  placed: true,
};
const FIELDS = fieldsOf(HOME, "UTC");
const faultsOf = (change: Partial<HouseholdFields>): string[] => {
  const read = readHousehold({ ...FIELDS, ...change }, null, HOME);
  return read.ok ? [] : read.faults.map(({ field }) => field);
};

describe("the household's form", () => {
  it("gives back what is stored", () => {
    const read = readHousehold(FIELDS, null, HOME);
    const { name, zone, latitude, longitude, altitudeM, people, weekStart, units, glutGrams, kitchen, cooks, away, avoids } = HOME;
    expect(read).toEqual({ ok: true, body: { name, zone, latitude, longitude, altitudeM, people, weekStart, units, glutGrams, kitchen, cooks, away, avoids } });
  });

  it("sends its own appetite only where it has one", () => {
    const eats = [{ crop: "carrot", gramsPerWeek: 600 }];
    expect(readHousehold(FIELDS, eats, HOME)).toMatchObject({ ok: true, body: { eats } });
    expect(readHousehold(FIELDS, null, HOME)).not.toHaveProperty("body.eats");
  });

  it("starts empty where nobody has said where the garden lies, with the browser's own time zone", () => {
    expect(fieldsOf({ ...HOME, placed: false, zone: "UTC", latitude: 0, longitude: 0, altitudeM: 0 }, "Pacific/Auckland")).toMatchObject({ zone: "Pacific/Auckland", latitude: "", longitude: "", altitudeM: "" });
  });

  it.each([
    ["52,1", 52.1],
    ["52.1", 52.1],
    [" -33.9 ", -33.9],
    // U+2212, the minus sign of typography; phones and texts also bring the en rule
    ["−33,9", -33.9],
    ["–33,9", -33.9],
    ["0", 0],
  ])("reads “%s” as %d", (typed, value) => {
    expect(numberIn(typed)).toBe(value);
    expect(readHousehold({ ...FIELDS, latitude: typed }, null)).toMatchObject({ ok: true, body: { latitude: value } });
  });

  it("takes nothing else for a number", () => {
    for (const typed of ["", "  ", "north", "5 2", "5.2.1", "1e3", "0x10", "--5", "5-"]) expect(numberIn(typed)).toBeNaN();
  });

  it.each([
    ["name", ""],
    ["zone", "Middle/Earth"],
    ["latitude", "91"],
    ["latitude", "north"],
    ["longitude", "−180,5"],
    ["altitudeM", "6000"],
    ["people", "0"],
    ["people", "2,5"],
    ["glutGrams", "−1"],
    ["cooks", "7"],
    ["ovens", "5"],
    ["ovens", "one"],
    ["trays", "0"],
    ["preheatMin", "soon"],
    ["changeMin", "−5"],
    ["burners", "13"],
    ["pots", "1.5"],
    ["sinks", ""],
  ] as const)("names the field %s for “%s”, and no other", (field, typed) => {
    expect(faultsOf({ [field]: typed })).toEqual([field]);
  });

  it("says every bad field at once, each with its label and words that a gardener can use", () => {
    const read = readHousehold({ ...FIELDS, latitude: "far north", people: "some", burners: "" }, null);
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.faults.map(({ field }) => field).sort()).toEqual(["burners", "latitude", "people"]);
    for (const { field, text } of read.faults) {
      expect(text.startsWith(`${LABELS[field]}: `)).toBe(true);
      expect(text).not.toMatch(/NaN|expected|invalid|undefined/i);
    }
  });

  it("keeps ovens that differ while the first one's figures stand as they were, and makes them alike when they are changed", () => {
    const ovens = [
      { trays: 2, preheatMin: 15, changeMin: 10 },
      { trays: 1, preheatMin: 5, changeMin: 5 },
    ];
    const kitchen = { ...HOME.kitchen, ovens };
    const fields = fieldsOf({ ...HOME, kitchen }, "UTC");
    expect(readHousehold(fields, null, { ...HOME, kitchen })).toMatchObject({ body: { kitchen: { ovens } } });
    expect(readHousehold({ ...fields, trays: "3" }, null, { ...HOME, kitchen })).toMatchObject({ body: { kitchen: { ovens: [{ trays: 3 }, { trays: 3, preheatMin: 15 }] } } });
    expect(readHousehold({ ...fields, ovens: "0" }, null, { ...HOME, kitchen })).toMatchObject({ body: { kitchen: { ovens: [] } } });
  });

  it("finds the control for a path of the service's answer", () => {
    expect(fieldAt(["latitude"])).toBe("latitude");
    expect(fieldAt(["kitchen", "ovens", "0", "trays"])).toBe("trays");
    expect(fieldAt(["kitchen", "ovens"])).toBe("ovens");
    expect(fieldAt(["somewhere"])).toBe("name");
  });
});

const year = (tmaxC: string, tminC: string) => MONTHS.map(() => ({ tmaxC, tminC }));

describe("twelve monthly means", () => {
  it("are read with comma and minus, and come back as they were", () => {
    const typed = year("5,6", "−0.4");
    const read = readNormals(typed);
    expect(read).toMatchObject({ ok: true });
    if (!read.ok) return;
    expect(read.body.months).toEqual(MONTHS.map((_, i) => ({ month: i + 1, tmaxC: 5.6, tminC: -0.4 })));
    expect(monthFields(read.body)).toEqual(year("5.6", "-0.4"));
    expect(monthFields(null)).toEqual(year("", ""));
  });

  it("read back as typed for any twelve pairs with one decimal", () => {
    let reached = 0;
    const tenths = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 10);
    fc.assert(
      fc.property(fc.array(fc.tuple(tenths(-300, 300), tenths(1, 200)), { minLength: 12, maxLength: 12 }), (months) => {
        const typed = months.map(([tmin, above]) => ({ tmaxC: String(Math.round((tmin + above) * 10) / 10).replace(".", ","), tminC: String(tmin).replace("-", "−") }));
        const read = readNormals(typed);
        expect(read.ok).toBe(true);
        if (read.ok) expect(read.body.months.map(({ tminC }) => tminC)).toEqual(months.map(([tmin]) => tmin));
        reached++;
      }),
    );
    expect(reached).toBeGreaterThanOrEqual(100);
  });

  it("name the month and the column of each bad one", () => {
    const typed = year("20", "10").map((month, i) => (i === 1 ? { tmaxC: "", tminC: "10" } : i === 6 ? { tmaxC: "9", tminC: "12" } : i === 11 ? { tmaxC: "20", tminC: "−99" } : month));
    const read = readNormals(typed);
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.faults.map(({ field }) => field)).toEqual(["tmaxC-1", "tmaxC-6", "tminC-11"]);
    expect(read.faults[0]?.text).toBe("February, mean maximum: a temperature in °C is needed, such as 5.6");
    expect(read.faults[1]?.text).toBe("July, mean maximum: the mean maximum must be above the mean minimum");
    expect(read.faults[2]?.text).toBe("December, mean minimum: colder than any garden");
  });
});

const WEATHER: WeatherHeld = { days: 11_285, from: "1990-01-01", until: "2027-07-25", wholeYears: 30, normals: null, attribution: null };
const NO_WEATHER: WeatherHeld = { ...WEATHER, days: 0, from: null, until: null, wholeYears: 0 };
const NORMALS = { months: MONTHS.map((_, i) => ({ month: i + 1, tmaxC: 10, tminC: 2 })) };

describe("the household's sentences", () => {
  it("say what the calendar still wants, and what it rests on", () => {
    expect(householdSentence({ ...HOME, placed: false }, NO_WEATHER)).toBe("Say where the garden lies and who eats from it, and the calendar can begin.");
    expect(householdSentence({ ...HOME, people: 1 }, NO_WEATHER)).toBe("One person eats from this garden. Give it a year’s weather, and the calendar can begin.");
    expect(householdSentence(HOME, WEATHER)).toBe("Four people eat from this garden, and 30\u00a0years of weather stand behind its forecasts.");
    expect(householdSentence(HOME, { ...NO_WEATHER, normals: NORMALS })).toBe("Four people eat from this garden, and twelve monthly means of weather stand behind its forecasts.");
    expect(householdSentence({ ...HOME, people: 12 }, { ...WEATHER, wholeYears: 1 })).toBe("12 people eat from this garden, and one year of weather stands behind its forecasts.");
  });

  it("say how much weather there is and whether it is enough (ten whole years or the means)", () => {
    expect(weatherSentence(WEATHER)).toBe("11,285 days on record, Jan\u00a01990 to Jul\u00a02027, 30 whole years.");
    expect(weatherSentence({ ...WEATHER, wholeYears: 9 })).toMatch(/Ten whole years are needed/);
    expect(weatherSentence({ ...WEATHER, wholeYears: 9, normals: NORMALS })).toMatch(/monthly means below stand in/);
    expect(weatherSentence(NO_WEATHER)).toMatch(/^No weather yet/);
    expect(weatherSentence({ ...NO_WEATHER, normals: NORMALS })).toMatch(/enough to start/);
  });

  it("name the lines of a bad file as an editor counts them, the first eight and how many more", () => {
    expect(rowFaults([{ path: "rows.17.tmax_c", message: "is missing" }, { path: "rows.18", message: "has too few columns" }, { path: "body", message: "is empty" }])).toEqual(["Line 17, tmax_c: is missing", "Line 18: has too few columns", "is empty"]);
    const many = Array.from({ length: 1009 }, (_, i) => ({ path: `rows.${i + 2}.date`, message: "is no day" }));
    expect(rowFaults(many)).toHaveLength(9);
    expect(rowFaults(many).at(-1)).toBe("and 1,001 more like these");
  });
});

describe("hours, days away and what is never eaten", () => {
  const book = [{ crop: "kale", name: "Kale" }, { crop: "french-bean", name: "French bean, bush" }];
  const typed = (change: Partial<YearFields>): YearFields => ({ hours: "", away: [], crops: "", allergens: "", ...change });
  const TODAY = "2027-07-26";

  it.each([["4", 240], ["4.5", 270], ["4,5", 270], ["4 h 30", 270], ["90 min", 90], ["a while", null], ["-2", null]] as const)("reads %j as minutes", (text, minutes) => {
    expect(minutesIn(text)).toBe(minutes);
  });

  it("comes back as it was stored, days of another year too", () => {
    const stored = { kitchenMinPerWeek: 270, away: [{ firstDay: "2027-08-07", lastDay: "2027-08-15" }, { firstDay: "2027-01-03", lastDay: "2027-01-09" }], avoids: { crops: ["kale", "french-bean"], allergens: ["nuts", "celery"] } };
    expect(readYear(yearFieldsOf(stored, book), book, TODAY)).toEqual({ ok: true, part: stored });
    expect(readYear(typed({}), book, TODAY)).toEqual({ ok: true, part: { away: [], avoids: { crops: [], allergens: [] } } });
  });

  it("names each bad field", () => {
    const read = readYear(typed({ hours: "200", crops: "Moonflower", away: [{ firstDay: "10 August", lastDay: "3 August" }, { firstDay: "31 April", lastDay: "" }] }), book, TODAY);
    expect(read.ok ? [] : read.faults.map(({ field }) => field)).toEqual(["year-hours", "year-last-0", "year-first-1", "year-last-1", "year-crops"]);
  });

  it("is handed back by the other forms", () => {
    const home = { ...HOME, kitchenMinPerWeek: 300, away: [{ firstDay: "2027-08-07", lastDay: "2027-08-15" }], avoids: { crops: ["kale"], allergens: ["nuts"] } };
    expect(readHousehold(FIELDS, null, home)).toMatchObject({ ok: true, body: { kitchenMinPerWeek: 300, away: home.away, avoids: home.avoids } });
  });
});
