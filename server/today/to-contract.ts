import type { Today } from "#shared/contracts/today.ts";
import { mapBand } from "#shared/kernel/band.ts";
import type { TodayList } from "#shared/planning/today-types.ts";

/** Planning's words → the wire's; grams are whole. */
export function toContract(list: TodayList): Today {
  const { today, headline, urgent, pick, sow, jobs, useFirst, cook } = list;
  return {
    today,
    headline,
    urgent: urgent.map((one) => ({ ...one })),
    pick: pick.map(({ grams, ...row }) => ({ ...row, grams: mapBand(grams, Math.round) })),
    sow: sow.map((one) => ({ ...one })),
    jobs: jobs.map((one) => ({ ...one })),
    useFirst: useFirst.map((one) => ({ ...one })),
    cook: cook.map((one) => ({ ...one })),
  };
}
