import type { CookDay, Timetable } from "#shared/contracts/cook-days.ts";
import type { CookDayProposal } from "#shared/planning/cook-day-proposal.ts";
import type { StoredDay } from "./store.ts";

export function toContract(row: StoredDay): CookDay {
  const { id, on, startsAt, endsBy, cooks, kitchen, dishes, unavailable, title } = row;
  return { id, on, startsAt, ...(endsBy === null ? {} : { endsBy }), cooks, kitchen, dishes: [...dishes], unavailable, ...(title === null ? {} : { title }) };
}

export function toTimetable(plan: CookDayProposal): Timetable {
  const { status, endMin, lowerBoundMin, endSpread, handsOnMin, oneAfterAnotherMin, longestStandMin, steps, dishes, conflicts, cautions, notes } = plan;
  return {
    status,
    endMin,
    lowerBoundMin,
    endSpread,
    handsOnMin,
    oneAfterAnotherMin,
    longestStandMin,
    steps: [...steps],
    dishes: [...dishes],
    conflicts: conflicts.map(({ text, ways }) => ({ text, ways: [...ways] })),
    cautions: [...cautions],
    notes: [...notes],
  };
}
