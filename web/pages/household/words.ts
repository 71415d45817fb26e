/** The page's sentences. */
import type { Household } from "#shared/contracts/household.ts";
import type { WeatherHeld } from "#shared/contracts/weather.ts";
import type { FieldFault } from "#shared/kernel/outcome.ts";
import { capital, count, monthYear, whole } from "../../format.ts";

const NUMBERS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];

export function householdSentence(home: Household, held: WeatherHeld): string {
  if (!home.placed) return "Say where the garden lies and who eats from it, and the calendar can begin.";
  const people = home.people === 1 ? "One person eats" : `${capital(NUMBERS[home.people] ?? String(home.people))} people eat`;
  if (held.days === 0 && held.normals === null) return `${people} from this garden. Give it a year’s weather, and the calendar can begin.`;
  const weather = held.wholeYears >= 10 || held.normals === null ? years(held.wholeYears) : "twelve monthly means";
  return `${people} from this garden, and ${weather} of weather ${weather === "one year" ? "stands" : "stand"} behind its forecasts.`;
}

/** "30 years"; what is less than one is said as days elsewhere. */
const years = (n: number): string => (n === 0 ? "less than a year" : n === 1 ? "one year" : count(n, "year", "years"));

/** What weather the forecasts rest on. */
export function weatherSentence(held: WeatherHeld): string {
  if (held.days > 0 && held.from !== null && held.until !== null) {
    const wholeYears = held.wholeYears === 1 ? "1 whole year" : `${held.wholeYears} whole years`;
    const enough = held.wholeYears >= 10 ? "" : held.normals === null ? " Ten whole years are needed for seasons to come; add monthly means meanwhile." : " Until there are ten, the monthly means below stand in.";
    return `${whole(held.days)} days on record, ${monthYear(held.from)} to ${monthYear(held.until)}, ${wholeYears}.${enough}`;
  }
  if (held.normals !== null) return "Twelve monthly means: enough to start. A file of daily maxima and minima makes the forecast better.";
  return "No weather yet. Twelve monthly means, from any climate table, are enough to start.";
}

const SHOWN_ROWS = 8;

/** The bad rows of a file in the words of somebody who has it open; the first few, then how many more. */
export function rowFaults(fields: readonly FieldFault[]): string[] {
  const lines = fields.slice(0, SHOWN_ROWS).map(({ path, message }) => {
    const [, line, column] = /^rows\.(\d+)(?:\.(.+))?$/.exec(path) ?? [];
    return line === undefined ? message : `Line ${line}${column ? `, ${column}` : ""}: ${message}`;
  });
  const more = fields.length - lines.length;
  return more > 0 ? [...lines, `and ${whole(more)} more like these`] : lines;
}
