/**
 * Facts of garden and kitchen → the calendar: forecasts of every planting, added up by crop scenario by scenario, what is eaten and over,
 * and for each week what can be done with it. Weather years are drawn once, each planting is forecast once for each of its seasons.
 */
import { findGluts, keepWeeksOf, overBetween, type GlutAnswer } from "../engines/glut/index.ts";
import { frostDates } from "../engines/harvest-forecast/index.ts";
import { waitsForTheGrower } from "../kernel/crop-facts.ts";
import { cropWord } from "../kernel/crop-words.ts";
import { dateOf, dayNumber } from "../kernel/local-date.ts";
import type { SourceRef } from "../kernel/outcome.ts";
import { toDatesOrNull } from "./day-bands.ts";
import type { GardenFacts, KitchenFacts, Window } from "./facts.ts";
import { forecastGarden, type GardenForecasts } from "./garden-forecasts.ts";
import { outlookRows } from "./outlook-rows.ts";
import { cropOutlooks, type CropOutlook } from "./outlook-supply.ts";
import type { GardenOutlook, Missing, OutlookWeek } from "./outlook-types.ts";
import { outlookWeeks } from "./outlook-weeks.ts";
import { answerWords, WORTH_SAYING_GRAMS } from "./outlook-words.ts";
import { plannedGrams, plannedLines } from "./planned-uses.ts";
import { candidatesOf } from "./recipe-cautions.ts";
import { seasonOf, weekSpan, type WeekSpan } from "./season.ts";

/** The calendar of a window of weeks, as known on `garden.asOf`. */
export function gardenOutlook(garden: GardenFacts, kitchen: KitchenFacts, window: Window): GardenOutlook {
  const span = weekSpan(window, leadWeeks(garden), garden.asOf);
  const grown = forecastGarden(garden, { fromDay: span.firstMonday + 7 * span.lead, untilDay: span.untilDay });
  const crops = cropOutlooks(grown.forecasts, span, dayNumber(garden.asOf));
  const lines = plannedLines(kitchen);
  const { value: glut, basis } = glutsOf(crops, kitchen, span, plannedGrams(lines, span.weeks));
  const weeks = outlookWeeks({ crops, glut, lines, candidates: candidatesOf(kitchen), span });
  const coming = weeks.slice(Math.max(0, span.current - span.lead));
  const season = seasonOf(Math.min(Math.max(dayNumber(garden.asOf), span.firstMonday + 7 * span.lead), span.untilDay - 1), grown.southern);
  const frost = frostDates(grown.weather.value, season, grown.southern);
  return {
    today: garden.asOf,
    ...answerOf(garden, grown, crops, glut, span, weeks),
    eatsGrams: coming.reduce((most, week) => Math.max(most, week.eatsGrams), 0),
    frost: { lastSpring: toDatesOrNull(frost.lastSpring), firstAutumn: toDatesOrNull(frost.firstAutumn) },
    rows: outlookRows(crops, span),
    weeks,
    missing: missingOf(garden, grown),
    basis: basisOf(garden, kitchen, grown, basis),
    notes: [...grown.weather.notes, ...appetiteNotes(crops, kitchen)],
  };
}

/** Weeks before the window whose picks may still be on hand in its first week. */
function leadWeeks(garden: GardenFacts): number {
  return Math.max(0, ...garden.plantings.map(({ crop }) => keepWeeksOf(crop, waitsForTheGrower(crop)) - 1));
}

function glutsOf(crops: readonly CropOutlook[], kitchen: KitchenFacts, span: WeekSpan, planned: ReadonlyMap<string, Float64Array>) {
  const none = new Float64Array(span.weeks.length);
  return findGluts({
    weeks: span.weeks,
    glutGrams: kitchen.glutGrams,
    crops: crops.map(({ crop, waits, kept }) => ({
      supply: kept,
      keepWeeks: keepWeeksOf(crop, waits),
      waits,
      eatsGrams: kitchen.eats.get(crop.slug) ?? 0,
      plannedGrams: planned.get(crop.slug) ?? none,
    })),
  });
}

type Answer = Pick<GardenOutlook, "headline" | "headlineOver" | "overGrams" | "overUntil">;

function answerOf(garden: GardenFacts, grown: GardenForecasts, crops: readonly CropOutlook[], glut: GlutAnswer, span: WeekSpan, weeks: readonly OutlookWeek[]): Answer {
  const from = Math.max(span.current, span.lead);
  const coming = weeks.slice(from - span.lead);
  const lastOf = (fits: (week: OutlookWeek) => boolean): number => coming.findLastIndex(fits);
  const lastGlut = lastOf((week) => week.glut);
  const lastRipe = lastOf((week) => week.grams.likely >= WORTH_SAYING_GRAMS);
  const until = from + (lastGlut >= 0 ? lastGlut + 1 : coming.length);
  const over = (ledgers: GlutAnswer["crops"]): number => (until > from ? overBetween(ledgers.filter((crop) => !crop.waits).map((crop) => crop.ledger), from, until) : 0);
  const overGrams = Math.round(over(glut.crops));
  const overUntil = coming[lastGlut]?.ends ?? null;
  const words = answerWords({
    today: garden.asOf,
    missing: missingOf(garden, grown),
    from: span.current < span.lead ? dateOf(span.firstMonday + 7 * span.lead) : null,
    overUntil,
    overGrams,
    overBy: crops.map(({ crop }, c) => ({ name: crop.name, grams: over(glut.crops.slice(c, c + 1)) })),
    ripensUntil: coming[lastRipe]?.ends ?? null,
    pickedGrams: coming.length > 0 ? null : weeks.reduce((sum, week) => sum + week.crops.reduce((all, crop) => all + crop.pickedGrams, 0), 0),
  });
  return { ...words, overGrams, overUntil };
}

function missingOf(garden: GardenFacts, grown: GardenForecasts): Missing[] {
  const missing: Missing[] = [];
  if (!garden.placed) missing.push("place");
  if (grown.weather.value.restsOn === "nothing") missing.push("weather");
  if (garden.beds.length === 0) missing.push("beds");
  if (garden.plantings.length === 0) missing.push("sowings");
  return missing;
}

function basisOf(garden: GardenFacts, kitchen: KitchenFacts, grown: GardenForecasts, glut: readonly SourceRef[]): SourceRef[] {
  const asOf = dayNumber(garden.asOf);
  const count = (days: (planting: GardenFacts["plantings"][number]) => readonly { readonly day: number }[]): number =>
    garden.plantings.reduce((sum, planting) => sum + days(planting).filter(({ day }) => day <= asOf).length, 0);
  const own = (n: number, one: string, many: string): SourceRef[] => (n === 0 ? [] : [{ id: "household", text: `${n} ${n === 1 ? one : many}` }]);
  return [
    ...grown.weather.basis,
    ...(garden.weatherAttribution === null ? [] : [{ id: "household", text: garden.weatherAttribution }]),
    ...own(garden.plantings.length, "sowing", "sowings and standing plants"),
    ...own(count((planting) => planting.sightings), "sighting", "sightings"),
    ...own(count((planting) => planting.picks), "pick", "picks"),
    kitchen.eatsFrom === "household" ? { id: "household", text: "What the household says it eats" } : { id: "CP", text: `What ${kitchen.people} people usually eat fresh, by the book` },
    ...glut,
  ];
}

function appetiteNotes(crops: readonly CropOutlook[], kitchen: KitchenFacts): string[] {
  return crops
    .filter(({ crop, waits }) => !waits && !kitchen.eats.has(crop.slug))
    .map(({ crop }) => `Nobody has said how much ${cropWord(crop.name)} the household eats, so all of it counts as over.`);
}
