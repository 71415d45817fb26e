/** What a person should know beside the figures, in plain words, and the rows that the figures rest on. */
import type { CropFacts } from "../../kernel/crop-facts.ts";
import { waitsForTheGrower } from "../../kernel/crop-facts.ts";
import type { SourceRef } from "../../kernel/outcome.ts";
import { dateOf, yearOf } from "../../kernel/local-date.ts";
import { dayWords } from "../../kernel/words.ts";
import type { Clock } from "./clock.ts";
import { coverShift } from "./cover.ts";
import { dayBandOf } from "./frost-dates.ts";
import { ranToSeedOn, RUN_TO_SEED_DAYS } from "./flowering.ts";
import type { KnownFacts } from "./known-facts.ts";
import { slowedByShortDays } from "./season-limits.ts";
import type { Seasons } from "./seasons.ts";
import { nextDays, soilOf } from "./thermal-time.ts";
import type { CoveredWeather } from "./thermal-time.ts";
import type { ForecastQuestion, LiftingDays } from "./types.ts";

/** Shares below this are not worth a sentence. */
export const WORTH_SAYING = 0.02;

/** Nothing is said of ripeness where there is no weather to reckon it by, or where the planting was cleared. */
export function seasonNotes(q: ForecastQuestion, facts: KnownFacts, seasons: Seasons): string[] {
  if (q.weather.restsOn === "nothing" || facts.finishedOn !== null) return [];
  const n = seasons.first.length;
  const notes: string[] = [];
  const say = (count: number, sentence: (chance: string) => string): void => {
    if (count / n >= WORTH_SAYING) notes.push(sentence(inHundred(count / n)));
  };
  const { tooSlow, lostToFrost, cutByFrost, cutByBolting, underDeadTops } = seasons.counts;
  say(tooSlow, (chance) => `In ${chance} reckoned seasons it does not ripen in time.`);
  say(lostToFrost, (chance) => `In ${chance} reckoned seasons frost comes before the first pick.`);
  say(underDeadTops, (chance) => `In ${chance} reckoned seasons frost kills the tops early: what is under them is lifted two weeks later, and is less.`);
  say(cutByFrost, (chance) => (waitsForTheGrower(q.planting.crop) ? `Lift before the frost: in ${chance} seasons it ends the picking.` : `In ${chance} seasons frost ends the picking early.`));
  say(cutByBolting, (chance) => `In ${chance} seasons it runs to seed in the long days before its time.`);
  return notes;
}

const inHundred = (share: number): string => (share > 0.995 ? "all" : `${Math.max(1, Math.round(100 * share))} of 100`);

export function restNotes(q: ForecastQuestion, facts: KnownFacts, clock: Clock | null, seasons: Seasons, lifting: LiftingDays | null): string[] {
  const { crop, cover } = q.planting;
  const notes: string[] = [];
  if (facts.firstPick !== null) {
    const over = facts.finishedOn !== null || seasons.until.every((day) => day <= q.asOf);
    notes.push(`First picked on ${dayWords(dateOf(facts.firstPick), yearOf(dateOf(q.asOf)))}; ${over ? "the picking is over" : "only the amount and the end are still open"}.`);
  }
  const seeded = ranToSeedOn(crop, facts.seen);
  if (seeded !== null) notes.push(`Seen to flower on ${dayWords(dateOf(seeded), yearOf(dateOf(q.asOf)))}: it has run to seed. Use it within ${RUN_TO_SEED_DAYS} days; it does not keep.`);
  notes.push(...unreadNotes(q, clock, seasons));
  if (waitsForTheGrower(crop)) notes.push("Waits for you: the dates say from when it is ready, and it is not counted as a surplus.", ...liftingNotes(q, lifting));
  if (cover !== "open") notes.push(coverNote(cover));
  if (slowedByShortDays(crop) && (q.latitudeDeg ?? null) === null) notes.push("Without a place, short days are left out; they all but stop leaf crops in winter.");
  return notes;
}

/** "At its best from about 3 August to 28 September; most likely it stands well until 10 November, and in one season of ten only until 24 October." */
function liftingNotes({ asOf }: ForecastQuestion, lifting: LiftingDays | null): string[] {
  const [from, until, out] = lifting ? [lifting.bestFrom, lifting.bestUntil, lifting.outBy].map((days) => dayBandOf(days.filter((day) => day >= 0))) : [];
  if (!from || !until || !out) return [];
  const words = (day: number): string => dayWords(dateOf(day), yearOf(dateOf(asOf)));
  return [`At its best from about ${words(from.likely)} to ${words(until.likely)}; most likely it stands well until ${words(out.likely)}${out.low === out.likely ? "" : `, and in one season of ten only until ${words(out.low)}`}.`];
}

/** Days of the planting's own season, from its start to its last pick, of which the record has no reading. */
function unreadNotes({ weather, asOf }: ForecastQuestion, clock: Clock | null, seasons: Seasons): string[] {
  if (!clock) return [];
  const until = seasons.until.reduce((latest, day) => Math.max(latest, day < 0 ? asOf : day), -1);
  const unread = (weather.unreadDays ?? []).filter((day) => day >= clock.startDay && day < Math.min(until, asOf)).length;
  if (unread === 0) return [];
  return [unread === 1 ? "1 past day has no reading; each season fills it with its own weather." : `${unread} past days have no reading; each season fills them with its own weather.`];
}

/** Days after sowing within which the soil should reach the seed's least temperature, and the share of seasons from which a warning is due. */
const SOAKS_DAYS = 10;
const LIKELY = 0.5;

/** Cold wet soil rots seed before it germinates (common practice; least temperatures UC ANR 3382). */
export function coldSoilNotes(q: ForecastQuestion, air: CoveredWeather, clock: Clock): string[] {
  const least = q.planting.crop.germinationMinC;
  const start = clock.startDay - q.weather.firstDay;
  if (!clock.emerges || least === null || start < 0) return [];
  const warmFrom = nextDays(air, `soil of ${least}`, (_, d, y) => !((soilOf(air, y)[d] as number) < least));
  const cold = air.years.filter((_, y) => (warmFrom[y * (air.days + 1) + Math.min(start, air.days)] as number) > start + SOAKS_DAYS).length;
  if (cold / air.years.length < LIKELY) return [];
  return [`In ${inHundred(cold / air.years.length)} seasons the soil stays below ${least} °C for ten days after this sowing: seed may rot.`];
}

function coverNote(cover: ForecastQuestion["planting"]["cover"]): string {
  if (cover === "indoors") return "Indoors is taken as 16 °C by night and 20 °C by day.";
  const { minC, maxC, minHalfWidthC, maxHalfWidthC } = coverShift(cover);
  const names = { open: "", fleece: "Fleece", "cold-frame": "The cold frame", polytunnel: "The polytunnel", greenhouse: "The greenhouse" };
  return `${names[cover]} is taken to add ${minC} °C by night and ${maxC} °C by day, give or take ${minHalfWidthC} and ${maxHalfWidthC} °C.`;
}

/** Rows behind the figures: the crop's own, the cover's, the household's sightings and picks. */
export function basisOf(q: ForecastQuestion, facts: KnownFacts): SourceRef[] {
  const { crop, cover } = q.planting;
  const rows = crop.sources.map((id) => ({ id, text: `${crop.name}: crop table` }));
  const covers = coverShift(cover).sources.map((id) => ({ id, text: `Temperatures under cover: ${cover}` }));
  const own: SourceRef[] = [];
  if (facts.seen.size > 0) own.push({ id: "household", text: `${facts.seen.size} of your own sightings` });
  if (facts.picks.length > 0) own.push({ id: "household", text: `${facts.picks.length} of your own picks` });
  return [...rows, ...methodSources(crop), ...covers, ...own];
}

function methodSources(crop: CropFacts): SourceRef[] {
  const rows: SourceRef[] = [{ id: "BE", text: "Degree-days by the single sine" }];
  if (crop.habit === "cut-again" && !crop.perennial) rows.push({ id: "ISU92", text: "First leaves before full growth" });
  if (slowedByShortDays(crop)) rows.push({ id: "FOR", text: "Day length" });
  return rows;
}
