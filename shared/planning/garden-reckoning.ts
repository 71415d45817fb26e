/**
 * The chain behind calendar and Today: forecasts of every planting, added up by crop scenario by scenario, what is eaten, planned and over.
 * Weather years are drawn once, each planting is forecast once for each of its seasons.
 */
import { findGluts, keepWeeksOf, type GlutAnswer, type GlutCrop } from "../engines/glut/index.ts";
import { waitsForTheGrower } from "../kernel/crop-facts.ts";
import { dayNumber } from "../kernel/local-date.ts";
import { addWeeks, type IsoWeek } from "../kernel/iso-week.ts";
import type { SourceRef } from "../kernel/outcome.ts";
import type { GardenFacts, KitchenFacts, Window } from "./facts.ts";
import { forecastGarden, type GardenForecasts } from "./garden-forecasts.ts";
import { outlooksOf } from "./forecast-memory.ts";
import type { CropOutlook } from "./outlook-supply.ts";
import type { PlannedLine } from "./outlook-types.ts";
import { plannedGrams, plannedLines } from "./planned-uses.ts";
import { weekSpan, type WeekSpan } from "./season.ts";

export interface GardenReckoning {
  readonly span: WeekSpan;
  readonly grown: GardenForecasts;
  readonly crops: readonly CropOutlook[];
  readonly lines: readonly PlannedLine[];
  /** Balances in the order of `crops`. */
  readonly glut: GlutAnswer;
  readonly basis: readonly SourceRef[];
}

export function reckonGarden(garden: GardenFacts, kitchen: KitchenFacts, window: Window): GardenReckoning {
  const asOf = dayNumber(garden.asOf);
  const span = weekSpan(window, leadWeeks(garden, false), garden.asOf);
  const grown = forecastGarden(garden, { fromDay: span.firstMonday + 7 * span.lead, untilDay: span.untilDay });
  const crops = outlooksOf(grown.forecasts, span, asOf, garden.memory);
  const lines = plannedLines(kitchen);
  const inStore = storesBefore(garden, kitchen, grown, span, lines);
  const { value: glut, basis } = findGluts({ weeks: span.weeks, glutGrams: kitchen.glutGrams, crops: glutCrops(crops, kitchen, lines, span, inStore) });
  return { span, grown, crops, lines, glut, basis };
}

/** Weeks before the window whose picks may still be on hand in its first week. */
function leadWeeks(garden: GardenFacts, waiting: boolean): number {
  const crops = garden.plantings.map(({ crop }) => crop).filter((crop) => waitsForTheGrower(crop) === waiting);
  return Math.max(0, ...crops.map((crop) => keepWeeksOf(crop, waiting) - 1));
}

/** What stood or lay of the crops that wait when the first week began, by crop and scenario: the months before, reckoned by themselves. */
function storesBefore(garden: GardenFacts, kitchen: KitchenFacts, grown: GardenForecasts, span: WeekSpan, lines: readonly PlannedLine[]): Map<string, Float64Array> {
  const weeks = leadWeeks(garden, true);
  const waiting = grown.forecasts.filter((one) => one.value.waits && one.value.firstPickDay.some((day) => day >= 0 && day < span.firstMonday));
  if (weeks === 0 || waiting.length === 0) return new Map();
  const before = weekSpan({ from: addWeeks(span.weeks[0] as IsoWeek, -weeks), weeks }, 0, garden.asOf);
  const crops = glutCrops(outlooksOf(waiting, before, dayNumber(garden.asOf), garden.memory), kitchen, lines, before, new Map());
  return new Map(findGluts({ weeks: before.weeks, glutGrams: kitchen.glutGrams, crops }).value.crops.map(({ crop, ledger }) => [crop, ledger.onHand]));
}

function glutCrops(crops: readonly CropOutlook[], kitchen: KitchenFacts, lines: readonly PlannedLine[], span: WeekSpan, inStore: ReadonlyMap<string, Float64Array>): GlutCrop[] {
  const planned = plannedGrams(lines, span.weeks);
  const none = new Float64Array(span.weeks.length);
  return crops.map(({ crop, waits, kept }) => {
    const openingGrams = inStore.get(crop.slug);
    return {
      supply: kept,
      keepWeeks: keepWeeksOf(crop, waits),
      waits,
      eatsGrams: kitchen.eats.get(crop.slug) ?? 0,
      plannedGrams: planned.get(crop.slug) ?? none,
      ...(openingGrams ? { openingGrams } : {}),
    };
  });
}
