/** How many batches of a method one week can see at most, before anything is solved: what can be on hand and what each limit leaves. */
import type { Method, Season, SeasonCrop } from "./types.ts";

/** Most that can be on hand in a week: what was picked within the keeping time. */
export function onHandAtMost(crop: SeasonCrop, s: number, t: number): number {
  let grams = 0;
  for (let picked = Math.max(0, t - crop.keepWeeks + 1); picked <= t; picked++) grams += crop.harvestGrams[s]?.[picked] ?? 0;
  return grams;
}

/** 0 where a session's least does not fit. */
export function mostBatches(season: Season, method: Method, s: number, t: number): number {
  const closed = season.atMost?.find((line) => line.method === method.id && line.week === t);
  let most = Math.min(method.sessionBatches.max, closed?.batches ?? Infinity);
  for (const { crop, grams } of method.uses) {
    const found = season.crops.find((one) => one.crop === crop);
    if (found && grams > 0) most = Math.min(most, Math.floor(onHandAtMost(found, s, t) / grams + 1e-9));
  }
  for (const { id, amount } of season.resources) {
    const each = method.perBatch[id] ?? 0;
    const room = (amount[t] ?? 0) - (method.perSession[id] ?? 0);
    if (each > 0) most = Math.min(most, Math.floor(room / each + 1e-9));
    else if ((method.perSession[id] ?? 0) > 0 && room < -1e-9) most = 0;
  }
  return most < Math.max(1, method.sessionBatches.min) ? 0 : most;
}

/** Whether the number of sessions matters beside that of batches. */
export function countsSessions(method: Method, season: Season): boolean {
  const limited = new Set([...season.resources.map(({ id }) => id), "hands-on"]);
  return method.sessionBatches.min > 1 || Object.entries(method.perSession).some(([id, amount]) => amount > 0 && limited.has(id));
}
