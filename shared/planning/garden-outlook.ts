/** Facts of garden and kitchen → the calendar: what ripens in which week, what of it is over, and what can be done with it. */
import { overBetween, type GlutAnswer } from "../engines/glut/index.ts";
import { frostDates } from "../engines/harvest-forecast/index.ts";
import { cropWord } from "../kernel/crop-words.ts";
import { dateOf, dayNumber } from "../kernel/local-date.ts";
import type { SourceRef } from "../kernel/outcome.ts";
import { asKnown } from "./as-known.ts";
import { toDatesOrNull } from "./day-bands.ts";
import type { GardenFacts, KitchenFacts, Window } from "./facts.ts";
import type { GardenForecasts } from "./garden-forecasts.ts";
import { reckonGarden, type GardenReckoning } from "./garden-reckoning.ts";
import { outlookRows } from "./outlook-rows.ts";
import type { CropOutlook } from "./outlook-supply.ts";
import type { GardenOutlook, Missing, OutlookWeek } from "./outlook-types.ts";
import { outlookWeeks } from "./outlook-weeks.ts";
import { answerWords, WORTH_SAYING_GRAMS } from "./outlook-words.ts";
import { candidatesOf, heldBackNotes, loadJarsOf } from "./recipe-cautions.ts";
import { seasonOf } from "./season.ts";

/** The calendar of a window of weeks, as known on the facts' `asOf`. */
export function gardenOutlook(facts: GardenFacts, kitchen: KitchenFacts, window: Window): GardenOutlook {
  const garden = asKnown(facts);
  const reckoning = reckonGarden(garden, kitchen, window);
  const { span, grown, crops } = reckoning;
  const candidates = candidatesOf(kitchen);
  const weeks = outlookWeeks({ ...reckoning, candidates, loadJars: loadJarsOf(kitchen.preservation) });
  const coming = weeks.slice(Math.max(0, span.current - span.lead));
  const season = seasonOf(Math.min(Math.max(dayNumber(garden.asOf), span.firstMonday + 7 * span.lead), span.untilDay - 1), grown.southern);
  const frost = frostDates(grown.weather.value, season, grown.southern);
  return {
    today: garden.asOf,
    ...answerOf(garden, reckoning, weeks),
    eatsGrams: coming.reduce((most, week) => Math.max(most, week.eatsGrams), 0),
    frost: { lastSpring: toDatesOrNull(frost.lastSpring), firstAutumn: toDatesOrNull(frost.firstAutumn) },
    rows: outlookRows(crops, span),
    weeks,
    missing: missingOf(garden, grown),
    basis: basisOf(garden, kitchen, reckoning),
    notes: [...grown.weather.notes, ...appetiteNotes(crops, kitchen), ...heldBackNotes(candidates)],
    cautions: new Map(candidates.map(({ recipe, cautions }) => [recipe.id, cautions])),
  };
}

type Answer = Pick<GardenOutlook, "headline" | "headlineOver" | "overGrams" | "overUntil">;

function answerOf(garden: GardenFacts, { grown, crops, glut, span }: GardenReckoning, weeks: readonly OutlookWeek[]): Answer {
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

export function missingOf(garden: GardenFacts, grown: GardenForecasts): Missing[] {
  const missing: Missing[] = [];
  if (!garden.placed) missing.push("place");
  if (grown.weather.value.restsOn === "nothing") missing.push("weather");
  if (garden.beds.length === 0) missing.push("beds");
  if (garden.plantings.length === 0) missing.push("sowings");
  return missing;
}

function basisOf(garden: GardenFacts, kitchen: KitchenFacts, { grown, basis }: GardenReckoning): SourceRef[] {
  const count = (of: (planting: GardenFacts["plantings"][number]) => readonly unknown[]): number => garden.plantings.reduce((sum, planting) => sum + of(planting).length, 0);
  const own = (n: number, one: string, many: string): SourceRef[] => (n === 0 ? [] : [{ id: "household", text: `${n} ${n === 1 ? one : many}` }]);
  return [
    ...grown.weather.basis,
    ...(garden.weatherAttribution === null ? [] : [{ id: "household", text: garden.weatherAttribution }]),
    ...own(garden.plantings.length, "sowing", "sowings and standing plants"),
    ...own(count((planting) => planting.sightings), "sighting", "sightings"),
    ...own(count((planting) => planting.picks), "pick", "picks"),
    kitchen.eatsFrom === "household" ? { id: "household", text: "What the household says it eats" } : { id: "CP", text: `What ${kitchen.people} people usually eat fresh, by the book` },
    ...basis,
  ];
}

function appetiteNotes(crops: readonly CropOutlook[], kitchen: KitchenFacts): string[] {
  return crops
    .filter(({ crop, waits }) => !waits && !kitchen.eats.has(crop.slug))
    .map(({ crop }) => `Nobody has said how much of the ${cropWord(crop.name)} the household eats, so all of it counts as over.`);
}
