/** Planning's words → the wire's. Grams on the wire are whole, chances have four decimals. */
import type { Calendar, CalendarCrop, CalendarRow, CalendarWeek } from "#shared/contracts/calendar.ts";
import { mapBand, type Band } from "#shared/kernel/band.ts";
import type { GardenOutlook, OutlookCrop, OutlookRow, OutlookWeek } from "#shared/planning/outlook-types.ts";

export function toContract(outlook: GardenOutlook): Calendar {
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
    weeks: outlook.weeks.map(weekOf),
    seasonPlan: null,
    missing: [...missing],
    basis: basis.map(({ id, text }) => ({ id, text })),
    notes: [...notes],
  };
}

function rowOf({ crop, name, waits, sowings, lift, bestWeekGrams, seasonGrams }: OutlookRow): CalendarRow {
  return { crop, name, waits, sowings: sowings.map((sowing) => ({ ...sowing })), lift, bestWeekGrams: whole(bestWeekGrams), seasonGrams: wholeBand(seasonGrams) };
}

function weekOf(week: OutlookWeek): CalendarWeek {
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
    pairings: week.pairings.map(({ uses, makes, cautions, ...pairing }) => ({ ...pairing, uses: uses.map((use) => ({ ...use })), makes: { ...makes }, cautions: [...cautions], planned: false, parts: [] })),
    cookDay: week.planned.map(({ recipeId, batches }) => ({ recipeId, batches })),
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
