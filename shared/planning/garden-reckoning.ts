/**
 * The chain behind calendar and Today: forecasts of every planting, added up by crop scenario by scenario, what is eaten, planned and over.
 * Weather years are drawn once, each planting is forecast once for each of its seasons.
 */
import { findGluts, keepWeeksOf, type GlutAnswer } from "../engines/glut/index.ts";
import { waitsForTheGrower } from "../kernel/crop-facts.ts";
import { dayNumber } from "../kernel/local-date.ts";
import type { Outcome, SourceRef } from "../kernel/outcome.ts";
import type { GardenFacts, KitchenFacts, Window } from "./facts.ts";
import { forecastGarden, type GardenForecasts } from "./garden-forecasts.ts";
import { cropOutlooks, type CropOutlook } from "./outlook-supply.ts";
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
  const span = weekSpan(window, leadWeeks(garden), garden.asOf);
  const grown = forecastGarden(garden, { fromDay: span.firstMonday + 7 * span.lead, untilDay: span.untilDay });
  const crops = cropOutlooks(grown.forecasts, span, dayNumber(garden.asOf));
  const lines = plannedLines(kitchen);
  const { value: glut, basis } = glutsOf(crops, kitchen, span, plannedGrams(lines, span.weeks));
  return { span, grown, crops, lines, glut, basis };
}

/** Weeks before the window whose picks may still be on hand in its first week. */
function leadWeeks(garden: GardenFacts): number {
  return Math.max(0, ...garden.plantings.map(({ crop }) => keepWeeksOf(crop, waitsForTheGrower(crop)) - 1));
}

function glutsOf(crops: readonly CropOutlook[], kitchen: KitchenFacts, span: WeekSpan, planned: ReadonlyMap<string, Float64Array>): Outcome<GlutAnswer> {
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
