/** Picks and lots of a garden → the account of every gram, crop by crop, in words. */
import { gramAccount, seasonOfDay, type CropSeason, type PickedGrams } from "../engines/larder/index.ts";
import { cropWord } from "../kernel/crop-words.ts";
import { measuredWords, sentenceCase, weighedWords } from "../kernel/words.ts";
import type { LarderFacts, LotFacts } from "./larder-facts.ts";
import { lotsToday } from "./larder-lots.ts";

export interface AccountFacts {
  readonly larder: LarderFacts;
  readonly picks: readonly PickedGrams[];
  readonly southern: boolean;
  /** Names by slug, as the crop table has them. */
  readonly names: ReadonlyMap<string, string>;
}

export interface CropAccountRow extends CropSeason {
  readonly name: string;
  /** Of what is on hand: past its keeping time. */
  readonly onHandPast: number;
  readonly text: string;
}

export interface SeasonAccount {
  readonly season: number;
  /** All seasons anything is known of, newest first. */
  readonly seasons: readonly number[];
  readonly headline: string;
  readonly crops: readonly CropAccountRow[];
}

export function seasonAccount(facts: AccountFacts, season: number): SeasonAccount {
  const rows = accountRows(facts);
  const crops = rows
    .filter((row) => row.season === season)
    .map((row): CropAccountRow => ({ ...row, name: facts.names.get(row.crop) ?? row.crop, onHandPast: pastGrams(facts, row), text: rowWords(row, facts.names.get(row.crop) ?? row.crop) }))
    .sort((a, b) => b.picked - a.picked || (a.name < b.name ? -1 : 1));
  return { season, seasons: [...new Set(rows.map((row) => row.season))].sort((a, b) => b - a), headline: headlineOf(crops, season), crops };
}

/** The account without words: every crop and season. */
export function accountRows({ larder, picks, southern }: AccountFacts): CropSeason[] {
  const known = larder.lots.filter((lot) => lot.madeOn <= larder.today && lot.crop !== null);
  const entriesUntil = (lot: LotFacts) => lot.entries.filter((entry) => entry.on <= larder.today);
  return gramAccount(
    picks.filter((pick) => pick.on <= larder.today),
    known.map((lot) => ({ crop: lot.crop as string, madeOn: lot.madeOn, homePlaceId: lot.homePlaceId, entries: entriesUntil(lot) })),
    southern,
  );
}

function pastGrams({ larder, southern }: AccountFacts, { crop, season }: CropSeason): number {
  const lots = lotsToday({ ...larder, lots: larder.lots.filter((lot) => lot.crop === crop) });
  const ofSeason = lots.filter(({ lot }) => seasonOfDay(lot.madeOn, southern) === season);
  return ofSeason.filter(({ discard, bestUntil }) => discard || (bestUntil !== null && bestUntil < larder.today)).reduce((sum, { balance }) => sum + balance.left, 0);
}

function rowWords({ picked, eaten, batches, composted, unaccounted }: CropSeason, name: string): string {
  const used = `${sentenceCase(cropWord(name))}: ${weighedWords(picked)} picked, ${weighedWords(eaten)} eaten, ${weighedWords(batches)} cooked or kept, ${weighedWords(composted)} composted or spoiled.`;
  if (unaccounted === 0) return used;
  return `${used} ${unaccounted > 0 ? `Of ${measuredWords(unaccounted)} nobody has said where it went.` : `${measuredWords(-unaccounted)} more were put away or taken than were picked.`}`;
}

function headlineOf(crops: readonly CropSeason[], season: number): string {
  if (crops.length === 0) return `Nothing was picked or put away in ${season}.`;
  const sum = (of: (row: CropSeason) => number): number => crops.reduce((grams, row) => grams + of(row), 0);
  const open = sum(({ unaccounted }) => Math.abs(unaccounted));
  const picked = `${weighedWords(sum((row) => row.picked))} picked in ${season}.`;
  return open === 0 ? `${picked} Every gram is accounted for.` : `${picked} Of ${weighedWords(open)} nobody has said where it went or came from.`;
}
