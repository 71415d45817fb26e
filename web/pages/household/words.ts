/** The page's sentences. */
import type { Household } from "#shared/contracts/household.ts";
import type { WeatherHeld } from "#shared/contracts/weather.ts";
import { amount, monthYear, whole } from "../../format.ts";

export function householdSentence(home: Household, held: WeatherHeld): string {
  if (!home.placed) return "Say where the garden lies and who eats from it, and the calendar can begin.";
  if (held.days === 0 && held.normals === null) return "The garden has a place. Give it a year’s weather, and the calendar can begin.";
  const eats = home.eats.reduce((sum, { gramsPerWeek }) => sum + gramsPerWeek, 0);
  const people = home.people === 1 ? "One person eats" : `${home.people} people eat`;
  return `${people} up to ${amount(eats)} of garden produce a week when everything is in season.`;
}

/** What weather the forecasts rest on. */
export function weatherSentence(held: WeatherHeld): string {
  if (held.days > 0 && held.from !== null && held.until !== null) {
    const years = held.wholeYears === 1 ? "1 whole year" : `${held.wholeYears} whole years`;
    const enough = held.wholeYears >= 10 ? "" : held.normals === null ? " Ten whole years are needed for seasons to come; add monthly means meanwhile." : " Until there are ten, the monthly means below stand in.";
    return `${whole(held.days)} days on record, ${monthYear(held.from)} to ${monthYear(held.until)}, ${years}.${enough}`;
  }
  if (held.normals !== null) return "Twelve monthly means: enough to start. A file of daily maxima and minima makes the forecast better.";
  return "No weather yet. Twelve monthly means, from any climate table, are enough to start.";
}
