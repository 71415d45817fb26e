/** What each place holds against its litres, what a freezer takes in a day, and whether something more fits. */
import { freezingLoad, litresOf, overDays, roomState } from "../engines/larder/index.ts";
import type { PreservationTables } from "../engines/preservation/index.ts";
import type { LocalDate } from "../kernel/local-date.ts";
import { measuredWords } from "../kernel/words.ts";
import { bothAmounts, type LarderFacts, type LotToday, type PlaceFacts } from "./larder-facts.ts";
import { endsOn, isThere, lotsToday } from "./larder-lots.ts";
import { lotLine, type LotLine } from "./larder-words.ts";
import { freezingPounds } from "./rule-figures.ts";

export interface PlaceToday {
  readonly place: PlaceFacts;
  readonly usedLitres: number;
  readonly freeLitres: number | null;
  readonly state: "has room" | "nearly full" | "full" | null;
  readonly lots: number;
  readonly unmeasuredLots: number;
  readonly loadGrams: { readonly low: number; readonly high: number } | null;
  readonly inTodayGrams: number;
  readonly notes: readonly string[];
}

export function placesToday(facts: Pick<LarderFacts, "today" | "places" | "preservation">, lots: readonly LotToday[]): PlaceToday[] {
  return facts.places.map((place) => placeToday(place, lots, facts.today, facts.preservation));
}

export interface RoomQuestion {
  readonly litres: number | null;
  /** Not frozen yet. */
  readonly grams: number | null;
}

export interface RoomAnswer {
  readonly fits: boolean;
  readonly text: string;
  readonly freeLitres: number | null;
  readonly days: readonly { readonly grams: number }[];
  readonly eatFirst: readonly LotLine[];
}

/** Undefined when there is no such place. */
export function roomFor(facts: LarderFacts, placeId: string, asked: RoomQuestion): RoomAnswer | undefined {
  const lots = lotsToday(facts);
  const found = facts.places.find(({ id }) => id === placeId);
  if (!found) return undefined;
  const { place, freeLitres, loadGrams, inTodayGrams } = placeToday(found, lots, facts.today, facts.preservation);
  const litres = asked.litres ?? litresOf({ grams: asked.grams, portions: null, portionMl: null });
  const fits = litres === null || freeLitres === null || litres <= freeLitres;
  const here = lots.filter((one) => isThere(one) && one.stands.some((stand) => stand.place.id === placeId)).sort((a, b) => (endsOn(a) < endsOn(b) ? -1 : 1));
  const days = asked.grams === null ? [] : overDays(asked.grams, loadGrams?.high ?? asked.grams).map((grams) => ({ grams }));
  return { fits, text: [roomWords(place, litres, freeLitres), loadWords(place, asked.grams, loadGrams, inTodayGrams, days.length)].filter(Boolean).join(" "), freeLitres, days, eatFirst: fits ? [] : here.slice(0, 3).map((lot) => lotLine(lot, facts.today)) };
}

function placeToday(place: PlaceFacts, lots: readonly LotToday[], today: LocalDate, tables: PreservationTables): PlaceToday {
  const here = lots.flatMap((one) => one.stands.filter((stand) => stand.place.id === place.id).map(({ amount }) => litresOf({ ...amount, portionMl: one.lot.portionMl })));
  const usedLitres = tenths(here.reduce<number>((sum, litres) => sum + (litres ?? 0), 0));
  const unmeasuredLots = here.filter((litres) => litres === null).length;
  const loadGrams = place.kind === "freezer" && place.litres !== null ? freezingLoad(place.litres, freezingPounds(tables)) : null;
  const inTodayGrams = lots.reduce((sum, one) => sum + gramsInto(one, place.id, today), 0);
  return {
    place,
    usedLitres,
    freeLitres: place.litres === null ? null : Math.max(0, tenths(place.litres - usedLitres)),
    state: place.litres === null ? null : roomState(usedLitres, place.litres),
    lots: here.length,
    unmeasuredLots,
    loadGrams,
    inTodayGrams,
    notes: [
      ...(unmeasuredLots > 0 ? [`Of ${unmeasuredLots} ${unmeasuredLots === 1 ? "lot" : "lots"} here nobody has said how much room ${unmeasuredLots === 1 ? "it takes" : "they take"}.`] : []),
      ...(loadGrams !== null && inTodayGrams > loadGrams.low ? [`${measuredWords(inTodayGrams)} went in today; it freezes ${measuredWords(loadGrams.low)} to ${measuredWords(loadGrams.high)} well in 24 hours. Spread the rest over more days.`] : []),
    ],
  };
}

function gramsInto({ lot }: LotToday, placeId: string, today: LocalDate): number {
  const into = lot.entries.filter((entry) => entry.on === today && (entry.kind === "put" ? (entry.placeId ?? lot.homePlaceId) === placeId : entry.toPlaceId === placeId));
  return into.reduce((sum, entry) => sum + (bothAmounts(lot, entry.amount).grams ?? 0), 0);
}

function roomWords(place: PlaceFacts, litres: number | null, freeLitres: number | null): string {
  if (litres === null) return freeLitres === null ? "" : `${freeLitres} l are free in ${place.name}.`;
  if (freeLitres === null) return `Nobody has said how many litres ${place.name} has.`;
  const asked = `${tenths(litres)} l`;
  return litres <= freeLitres ? `${asked} fit: ${freeLitres} l are free in ${place.name}.` : `${place.name} is full for that: ${asked} into ${freeLitres} l. Eat something from it first.`;
}

function loadWords(place: PlaceFacts, grams: number | null, load: { low: number; high: number } | null, inToday: number, days: number): string {
  if (grams === null || load === null || grams + inToday <= load.low) return "";
  const limit = `${place.name} freezes ${measuredWords(load.low)} to ${measuredWords(load.high)} well in 24 hours.`;
  return days > 1 ? `${limit} Put it in over ${days} days, or more.` : `${limit} Spread it out and leave gaps.`;
}

const tenths = (litres: number): number => Math.round(litres * 10) / 10;
