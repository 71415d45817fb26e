/** Which methods may be offered at all. Decided before a programme is built: what is refused has no column, so no weight brings it back. */
import type { Method, Season } from "./types.ts";

export interface RefusedMethod {
  readonly method: string;
  readonly reason: string;
  /** Allowed methods for the same crops, by id. */
  readonly instead: readonly string[];
}

/** USDA, Complete Guide to Home Canning (2015), Guide 1: only tested processes for what stands unchilled. */
export function refusalOf(method: Method, equipment: readonly string[]): string | null {
  if (method.keptIn === "shelf" && method.process === "none") return `No tested process is known for ${lower(method.title)} on a shelf.`;
  const missing = method.needs.filter((need) => !equipment.includes(need));
  return missing.length === 0 ? null : `${method.title} needs what is not there: ${missing.join(", ")}.`;
}

export function refusedMethods(season: Season): RefusedMethod[] {
  const allowed = season.methods.filter((method) => refusalOf(method, season.equipment) === null && method.sessionBatches.max > 0);
  return season.methods.flatMap((method): RefusedMethod[] => {
    const reason = refusalOf(method, season.equipment);
    if (reason === null) return [];
    const crops = new Set(method.uses.map(({ crop }) => crop));
    const instead = allowed.filter(({ uses }) => uses.some(({ crop }) => crops.has(crop))).map(({ id }) => id);
    return [{ method: method.id, reason, instead }];
  });
}

function lower(title: string): string {
  return title.charAt(0).toLowerCase() + title.slice(1);
}
