/**
 * Ninety-six published check values of the kitchen, by number: units, weights, oven marks, eggs, produce, tins, freezers, cooling, weeks and notations.
 * Value, unit and publication of each stand in tests/cases/measures/check-values.json; a number that is not there fails.
 */
import { describe, expect, it } from "vitest";
import { asPicked, measureTables, readIngredient, weighIngredient } from "#shared/engines/measures/index.ts";
import { coolingStages, preservationTables, processesFor } from "#shared/engines/preservation/index.ts";
import { isoMinutes, readRecipeText } from "#shared/engines/recipe-reading/index.ts";
import { boilMin, heldMl, ruleFor, volumeMl, type Tin } from "#shared/engines/scaling/index.ts";
import { weekOf, weekStart } from "#shared/kernel/iso-week.ts";
import { dayNumber } from "#shared/kernel/local-date.ts";
import { asNumber, rationalOf, times } from "#shared/kernel/quantity.ts";
import { celsius, celsiusDifference, converted, fahrenheit, inBase, type MeasureSystem, type UnitDefinition } from "#shared/kernel/units.ts";
import { readDays } from "#server/weather/read-days.ts";
import { readCases, seedRows } from "#tests/support/reference-rows.ts";

const NUMBERS = 96;
const measures = measureTables(seedRows("measures"));
const preservation = preservationTables(seedRows("preservation"));

type Answer = number | string | null | undefined;
interface Check {
  readonly id: string;
  readonly check: string;
  readonly expected: number | string;
  readonly tolerance: number;
  readonly source: string;
  readonly ask: Readonly<Record<string, never>>;
}

const unit = (name: string, system: MeasureSystem = "us"): UnitDefinition => (measures.units.get(name)?.get(system) ?? measures.units.get(name)?.get("any")) as UnitDefinition;
const base = (name: string, system?: MeasureSystem): number => asNumber(inBase({ n: 1, d: 1 }, unit(name, system)));
const grams = (line: string): number | undefined => weighIngredient(readIngredient(line, measures), measures).value?.exactGrams;
const rule = (key: string): number => preservation.rules.find((row) => row.key === key)?.value ?? NaN;
const pounds = (key: string) => preservation.quantities.find((row) => row.key === key)?.lb ?? [NaN, NaN];
const INCH_CM = 2.54;
const tin = ([long, wide, deep]: readonly [number, number, number]): Tin => ({ shape: "rectangle", longCm: long * INCH_CM, wideCm: wide * INCH_CM, deepCm: deep * INCH_CM });
/** The reader keeps the oven in whole °C, which is half a degree or 0.9 °F at most from the published mark; anything further off stays as it is. */
function gasMarkF(mark: string): number {
  const f = fahrenheit(readRecipeText(`A\nIngredients\n1 egg\nMethod\nBake at gas mark ${mark} for 9 minutes.`).steps[0]?.step.needs.oven?.c ?? NaN);
  const near = Math.round(f / 25) * 25;
  return Math.abs(f - near) <= 0.9 ? near : f;
}

/** What the engines answer, by the kind of question. */
const ANSWERS: Readonly<Record<string, (asked: never) => Answer>> = {
  unit: ({ unit: name, system, per = 1 }: { unit: string; system: MeasureSystem; per?: number }) => base(name, system) / per,
  ucum: (code: string) => Number(seedRows("measures").find((row) => row.facts["ucum"] === code && row.facts["unit"] === "cup")?.facts["factor"]),
  ratio: ([over, under]: readonly [string, string]) => base(over) / base(under),
  grams: (line: string) => grams(line),
  gramsEach: ([line, of]: readonly [string, number]) => (grams(line) ?? NaN) / of,
  wholeEggs: (line: string) => Math.round((grams(line) ?? NaN) / (grams("1 large egg") ?? NaN)),
  halfEgg: (spoon: string) => Number(new RegExp(`half an egg is (\\d+) ${spoon}`).exec(ruleFor({ text: "1 egg", food: "egg", said: "", amount: { n: 1, d: 1 }, pieces: true, grams: 50 }, 1.5).note ?? "")?.[1]),
  celsius: (f: number) => celsius(f),
  fahrenheit: (c: number) => fahrenheit(c),
  celsiusDifference: (f: number) => celsiusDifference(f),
  gas: gasMarkF,
  convert: ([amount, from, to]: readonly [string, string, string]) => asNumber(converted(rationalOf(amount), unit(from), unit(to))),
  times: ([one, other]: readonly [string, string]) => asNumber(times(rationalOf(one), rationalOf(other))),
  // of 1000 g as picked so much is used: what must be picked for it is 1000 g again
  edible: (food: string) => {
    const used = 1000 - 10 * (measures.produce.get(food)?.refusePercent ?? NaN);
    expect(asPicked(used, food, measures).value).toBeCloseTo(1000, 6);
    return used;
  },
  quantity: (key: string) => pounds(key)[1],
  fewestFrom: ({ lb, quantity }: { lb: number; quantity: string }) => lb / pounds(quantity)[1],
  // from the other end: so many cups of it cooked come from a pound dry
  cooked: (food: string) => base("pound") / (grams(`1 cup cooked ${food}`) ?? NaN),
  tinMl: (inches: readonly [number, number, number]) => volumeMl(tin(inches)),
  tinCups: (inches: readonly [number, number, number]) => (heldMl(tin(inches), measures.pans)?.low ?? NaN) / base("cup"),
  rule,
  lbACubicFoot: (lb: number) => (lb * base("pound")) / (base("cubic foot") / 1000),
  coolingHours: (stage: number) => (coolingStages(preservation)[stage]?.withinMin ?? NaN) / 60,
  boil: ({ litres, kw, efficiency }: { litres: number; kw: number; efficiency: number }) => boilMin(litres, { kw, efficiency }),
  weekDate: (date: string) => `${weekOf(date)}-${dayNumber(date) - dayNumber(weekStart(weekOf(date))) + 1}`,
  // a further column so written is one field of the row, and the day beside it is read
  csvField: (text: string) => {
    const written = `"${text.replaceAll('"', '""')}"`;
    const row = (field: string) => readDays(`date,station,tmax_c,tmin_c\n2027-07-01,${field},21.4,11.2\n`);
    expect([row(written).ok, row(text).ok]).toEqual([true, false]);
    return written;
  },
  isoMinutes: (texts: readonly string[]) => (new Set(texts.map(isoMinutes)).size === 1 ? isoMinutes(texts[0] as string) : undefined),
};
const AFTER: Readonly<Record<string, (answer: number, by: never) => number>> = {
  times: (answer, by: number) => answer * by,
  gallonsAsLitres: (answer) => (answer * base("gallon")) / 1000,
  in: (answer, unitAsked: string) => (unitAsked === "kg/L" ? answer / 1000 : answer),
};
/** Bounds of a calendar file: the service writes none, and what writes one answers to these three. */
const OF_A_CALENDAR_FEED = ["chk-86", "chk-87", "chk-88"];

function answerTo({ ask }: Check): Answer {
  const [kind, ...more] = Object.keys(ask) as [string, ...string[]];
  const answer = ANSWERS[kind]?.(ask[kind] as never);
  return more.reduce<Answer>((sum, step) => AFTER[step]?.(sum as number, ask[step] as never), answer);
}

describe("published check values", () => {
  const checks = readCases<Check>("measures/check-values.json");
  const byNumber = new Map(checks.map((check) => [check.id, check]));
  const ids = Array.from({ length: NUMBERS }, (_, i) => `chk-${String(i + 1).padStart(2, "0")}`);
  it("are all there, each once, each with its publication", () => {
    expect(checks.map(({ id }) => id)).toEqual(ids);
    expect(checks.filter(({ source }) => source.length < 8)).toEqual([]);
    expect(checks.filter(({ ask }) => "calendarFeed" in ask).map(({ id }) => id)).toEqual(OF_A_CALENDAR_FEED);
  });
  it.each(ids.filter((id) => !OF_A_CALENDAR_FEED.includes(id)).map((id) => [id, byNumber.get(id)?.check ?? "is missing"]))("%s %s", (id) => {
    const check = byNumber.get(id) as Check;
    const answer = answerTo(check);
    if (typeof check.expected === "string") expect(answer, check.source).toBe(check.expected);
    else expect(Math.abs((answer as number) - check.expected), `${answer} against ${check.expected}, ${check.source}`).toBeLessThanOrEqual(check.tolerance);
  });
});

/** USDA Complete Guide to Home Canning 2015, Guide 3, p. 3-5: in boiling water and under pressure alike. */
it("acid goes into every jar of tomatoes, whichever canner", () => {
  const acidified = ["tomato-juice", "tomato-juice-blend", "tomato-crushed", "tomato-sauce", "tomato-whole-water", "tomato-whole-juice", "tomato-whole-raw", "tomatillo"].filter((food) => preservation.canning.some((row) => row.food === food));
  expect(acidified.length).toBeGreaterThanOrEqual(6);
  for (const food of acidified) {
    const rows = preservation.canning.filter((row) => row.food === food);
    expect(new Set(rows.map(({ canner }) => canner)).size, food).toBeGreaterThan(1);
    for (const row of rows) expect(row.acid, row.key).toMatch(/lemon juice/);
    expect(processesFor(food, 0, preservation).value.sentences.filter((text) => text.startsWith("Add ")).length, food).toBeGreaterThan(0);
  }
});
