/** Advice of planning in the words of the wire: chances have four decimals, a planting is a sowing. */
import type { BedAdvice, SowingAdvice, TrackRecord } from "#shared/contracts/advice.ts";
import type { SowingAdvice as Advised } from "#shared/planning/sowing-advice.ts";
import type { BedAdvice as AdvisedBed, StillRipens } from "#shared/planning/still-ripens.ts";
import type { TrackRecord as Track } from "#shared/planning/track-record.ts";

const share = (chance: number): number => Math.round(chance * 10_000) / 10_000;
const sources = (basis: readonly { readonly id: string; readonly text: string }[]): { id: string; text: string }[] => basis.map(({ id, text }) => ({ id, text }));

export function toSowingAdvice({ sowings, outOfReach, basis, notes }: Advised): SowingAdvice {
  return { sowings: sowings.map((sowing) => ({ ...sowing, chanceOfPick: share(sowing.chanceOfPick) })), outOfReach: [...outOfReach], basis: sources(basis), notes: [...notes] };
}

export function toBedAdvice({ on, freeM2, sensible, gamble, basis, notes }: AdvisedBed): BedAdvice {
  const each = (list: readonly StillRipens[]): BedAdvice["sensible"] => list.map((one) => ({ ...one, chanceOfPick: share(one.chanceOfPick), notes: [...one.notes] }));
  return { on, freeM2, sensible: each(sensible), gamble: each(gamble), basis: sources(basis), notes: [...notes] };
}

export function toTrackRecord({ text, atSowing, monthBefore, rows }: Track): TrackRecord {
  return { text, atSowing, monthBefore, rows: rows.map(({ plantingId, ...row }) => ({ sowingId: plantingId, ...row })) };
}
