/** Planning's words → the wire's. Grams on the wire are whole, chances have four decimals. */
import type { Calendar, CalendarCrop, CalendarRow, CalendarWeek, Pairing } from "#shared/contracts/calendar.ts";
import { mapBand, type Band } from "#shared/kernel/band.ts";
import type { Part } from "#shared/planning/facts.ts";
import type { SeasonAnswerWords } from "#shared/planning/season-answer-types.ts";
import { calendarWays, standingWords, type CalendarPairing, type CalendarWays } from "#shared/planning/season-calendar.ts";
import type { GardenOutlook, OutlookCrop, OutlookRow, OutlookWeek } from "#shared/planning/outlook-types.ts";

export interface StandingHere {
  readonly answer: SeasonAnswerWords;
  readonly upToDate: boolean;
}

export function toContract(outlook: GardenOutlook, plan: StandingHere | null, parts: ReadonlyMap<string, readonly Part[]>): Calendar {
  const { today, headline, headlineOver, overGrams, overUntil, eatsGrams, frost, missing, basis, notes } = outlook;
  return {
    today,
    headline,
    headlineOver,
    overGrams: whole(overGrams),
    overUntil,
    eatsGrams: whole(eatsGrams),
    frost: { ...frost },
    rows: outlook.rows.map(rowOf),
    weeks: outlook.weeks.map((week) => weekOf(week, calendarWays({ week, plan: plan?.answer ?? null, cautions: outlook.cautions, parts }))),
    seasonPlan: plan && { by: plan.answer.plannedBy, from: plan.answer.from, weeks: plan.answer.weeks.length, asOf: plan.answer.asOf, upToDate: plan.upToDate, text: standingWords(plan.answer, plan.upToDate) },
    missing: [...missing],
    basis: basis.map(({ id, text }) => ({ id, text })),
    notes: [...notes],
  };
}

function rowOf({ crop, name, waits, sowings, lift, bestWeekGrams, seasonGrams }: OutlookRow): CalendarRow {
  return { crop, name, waits, sowings: sowings.map((sowing) => ({ ...sowing })), lift, bestWeekGrams: whole(bestWeekGrams), seasonGrams: wholeBand(seasonGrams) };
}

function weekOf(week: OutlookWeek, ways: CalendarWays): CalendarWeek {
  const { starts, ends, headline, glut } = week;
  return {
    week: week.week,
    starts,
    ends,
    headline,
    crops: week.crops.map(cropOf),
    grams: wholeBand(week.grams),
    pickedGrams: whole(week.pickedGrams),
    eatsGrams: whole(week.eatsGrams),
    surplusGrams: whole(week.surplusGrams),
    glut,
    planned: week.planned.map(({ uses, ...line }) => ({ ...line, uses: uses.map((use) => ({ ...use })) })),
    pairings: ways.pairings.map(pairingOf),
    cookDay: ways.cookDay.map((dish) => ({ ...dish })),
  };
}

function pairingOf({ recipeId, title, way, batches, uses, makes, handsOnMin, why, cautions, planned, parts }: CalendarPairing): Pairing {
  return {
    recipeId,
    title,
    way,
    batches,
    uses: uses.map((use) => ({ ...use })),
    makes: { ...makes },
    handsOnMin,
    why,
    cautions: [...cautions],
    planned,
    parts: parts.map(({ id, title: part, inStore }) => ({ recipeId: id, title: part, ...(inStore === undefined ? {} : { inStore }) })),
  };
}

function cropOf({ crop, name, grams, pickedGrams, freshGrams, surplusGrams, chanceInHarvest, waits }: OutlookCrop): CalendarCrop {
  return {
    crop,
    name,
    grams: wholeBand(grams),
    pickedGrams: whole(pickedGrams),
    freshGrams: whole(freshGrams),
    surplusGrams: whole(surplusGrams),
    chanceInHarvest: Math.round(chanceInHarvest * 10_000) / 10_000,
    waits,
  };
}

const whole = (grams: number): number => Math.round(grams);
const wholeBand = (band: Band): Band => mapBand(band, whole);
