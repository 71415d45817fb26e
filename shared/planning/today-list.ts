/** Facts of garden and kitchen → the day's list: what is urgent, to pick, to sow, to do, to cook. */
import { frostDates } from "../engines/harvest-forecast/index.ts";
import { cropWord } from "../kernel/crop-words.ts";
import { addWeeks, weekEnd, weekOf } from "../kernel/iso-week.ts";
import { dayNumber, type LocalDate } from "../kernel/local-date.ts";
import { amountWords, listWords, nearDayWords, sentenceCase } from "../kernel/words.ts";
import { asKnown } from "./as-known.ts";
import { toDatesOrNull } from "./day-bands.ts";
import type { GardenFacts, KitchenFacts } from "./facts.ts";
import { asker } from "./garden-forecasts.ts";
import { missingOf } from "./garden-outlook.ts";
import { reckonGarden, type GardenReckoning } from "./garden-reckoning.ts";
import type { LarderFacts } from "./larder-facts.ts";
import { useFirstToday } from "./larder-overview.ts";
import { seasonOf } from "./season.ts";
import { jobsToday, sowingsAhead } from "./today-jobs.ts";
import { picksToday } from "./today-picks.ts";
import type { PickRow, TodayList } from "./today-types.ts";
import { frostNotices, glutNotices, setUpNotices } from "./today-urgent.ts";

/** Far enough for a glut to be seen ten days before it is on the table, and for what is sown in a fortnight. */
const WEEKS_AHEAD = 6;

/** Without a larder nothing is to be used first. */
export function todayList(facts: GardenFacts, kitchen: KitchenFacts, larder?: LarderFacts): TodayList {
  const garden = asKnown(facts);
  const today = dayNumber(garden.asOf);
  const reckoning = reckonGarden(garden, kitchen, { from: weekOf(garden.asOf), weeks: WEEKS_AHEAD });
  const { grown } = reckoning;
  const weather = grown.weather.value;
  const dates = frostDates(weather, seasonOf(today, grown.southern), grown.southern);
  const frost = { lastSpring: toDatesOrNull(dates.lastSpring), firstAutumn: toDatesOrNull(dates.firstAutumn) };
  const frosts = frostNotices(grown.forecasts, weather, today);
  const missing = missingOf(garden, grown);
  const pick = picksToday(grown.forecasts, today, asker(garden, weather));
  return {
    today: garden.asOf,
    headline: headlineOf(pick, frosts.length > 0, missing.length > 0),
    urgent: [...setUpNotices(missing), ...frosts, ...glutNotices(reckoning, garden.asOf)],
    pick,
    sow: sowingsAhead(grown.forecasts, today),
    jobs: jobsToday(grown.forecasts, frost, today),
    useFirst: larder === undefined ? [] : useFirstToday(larder),
    cook: cookAhead(kitchen, reckoning, garden.asOf),
  };
}

const NAMED = 3;

function headlineOf(pick: readonly PickRow[], frost: boolean, missing: boolean): string {
  const words = [...new Set(pick.map((row) => cropWord(row.name)))];
  const named = words.length > NAMED ? [...words.slice(0, NAMED), `${words.length - NAMED} more`] : words;
  // likely amounts of different crops are not one forecast; their sum is only said as "about"
  const together = amountWords(pick.reduce((sum, row) => sum + row.grams.likely, 0));
  const picks = words.length === 0 ? (missing ? "There is nothing to pick yet." : "Nothing has to be picked today.") : `Pick ${listWords(named)} today, about ${together}${words.length > 1 ? " together" : ""}.`;
  return frost ? `${picks} Frost can come this week.` : picks;
}

/** Cook days to come, then ways chosen for this week and the next that are in none of them. */
function cookAhead(kitchen: KitchenFacts, { lines }: GardenReckoning, today: LocalDate): TodayList["cook"] {
  const titles = new Map(kitchen.recipes.map((recipe) => [recipe.id, recipe.title]));
  const coming = kitchen.cookDays.filter((day) => day.on >= today);
  const days = coming.map((day) => {
    const dishes = day.dishes.flatMap((dish) => titles.get(dish.recipeId) ?? []);
    const what = day.title ?? (dishes.length === 0 ? "nothing in it yet" : listWords(dishes.length > NAMED ? [...dishes.slice(0, NAMED), `${dishes.length - NAMED} more`] : dishes));
    return { cookDayId: day.id, on: day.on, text: `${sentenceCase(nearDayWords(day.on, today))} at ${day.startsAt}: ${what}.`, href: `/cook-day/${day.id}` };
  });
  const thisWeek = weekOf(today);
  const chosen = [thisWeek, addWeeks(thisWeek, 1)].flatMap((week) => {
    const inDays = new Set(coming.filter((day) => weekOf(day.on) === week).flatMap((day) => day.dishes.map((dish) => dish.recipeId)));
    const open = lines.filter((line) => line.week === week && !inDays.has(line.recipeId));
    if (open.length === 0) return [];
    const what = listWords(open.map((line) => (line.batches === 1 ? line.title : `${line.title} (${line.batches} batches)`)));
    return [{ cookDayId: null, on: weekEnd(week), text: `Chosen for ${week === thisWeek ? "this week" : "next week"}: ${what}.`, href: `/calendar?week=${week}` }];
  });
  return [...days, ...chosen];
}
