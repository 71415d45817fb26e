/**
 * What may still be agreed: produce, room and jars that are there, less what is agreed already. Each gram, litre and jar is given out once.
 * Produce is that of the usual course of the season and of what is on hand; a crop that neither grows here nor lies here is bought anyway.
 */
import { checkSeasonPlan, type Batches, type Method, type Season, type SeasonCrop } from "../engines/season-plan/index.ts";
import { needsTestedProcess } from "../engines/pairing/index.ts";
import { processesFor } from "../engines/preservation/index.ts";
import { cropWord } from "../kernel/crop-words.ts";
import { weekOf, type IsoWeek } from "../kernel/iso-week.ts";
import { measuredWords } from "../kernel/words.ts";
import type { LotFacts } from "./larder-facts.ts";
import { bothAmounts } from "./larder-facts.ts";
import { useOf } from "./season-agreed.ts";
import type { SeasonFacts, SeasonRecipe } from "./season-facts.ts";
import { seasonInstance } from "./season-instance.ts";
import { mainUses, portionsOf } from "./season-methods.ts";
import type { SeasonWeeks } from "./season-weeks.ts";

export const CONTAINERS = ["freezer", "jar", "lid", "bag"] as const;
export type Container = (typeof CONTAINERS)[number];

/** What does not depend on what is agreed, and so can be kept from one press to the next. */
export interface ThereToReserve {
  readonly weeks: SeasonWeeks;
  readonly crops: readonly SeasonCrop[];
  /** Null where nothing is put down, and then nothing is counted. Litres free now, and pieces. */
  readonly containers: Readonly<Record<Container, number | null>>;
  readonly names: ReadonlyMap<string, string>;
  readonly madeLots: readonly LotFacts[];
}

export interface ReservedLine {
  readonly recipe: SeasonRecipe;
  readonly week: IsoWeek;
  readonly batches: number;
}

/** Weeks ahead for which anything can be agreed. */
export const RESERVE_WEEKS = 40;

export function thereToReserve(facts: SeasonFacts): ThereToReserve {
  const { weeks, whole, limits, names } = seasonInstance({ ...facts, kitchen: { ...facts.kitchen, planLines: [] }, recipes: [], targets: [], wishes: [] }, { from: weekOf(facts.garden.asOf), weeks: RESERVE_WEEKS, allowance: 0 });
  const pieces = (kind: string): number | null => {
    const there = facts.supplies.filter((supply) => supply.kind === kind);
    return there.length === 0 ? null : there.reduce((sum, { amount }) => sum + amount, 0);
  };
  const freezer = limits.freezerLitres === null ? null : Math.max(0, limits.freezerLitres - limits.freezerUsed);
  return { weeks, crops: whole.crops, containers: { freezer, jar: pieces("jar"), lid: pieces("lid"), bag: pieces("bag") }, names, madeLots: facts.larder.lots.filter(({ recipe }) => recipe !== null) };
}

/** Batches of a line that are still to be made: what was put into store of the recipe in its week is done. */
export function stillToMake({ madeLots }: ThereToReserve, line: ReservedLine): number {
  const portions = madeLots.reduce((sum, lot) => {
    if (lot.recipe?.id !== line.recipe.id || weekOf(lot.madeOn) !== line.week) return sum;
    return sum + lot.entries.reduce((all, { kind, amount }) => all + (kind === "put" ? (bothAmounts(lot, amount).portions ?? 0) : 0), 0);
  }, 0);
  return Math.max(0, line.batches - Math.round(portions / portionsOf(line.recipe.makes)));
}

export interface Shortage {
  readonly kind: "crop" | Container;
  readonly id: string;
  readonly asked: number;
  readonly left: number;
  readonly text: string;
}

/** What of a line does not fit beside those agreed; none when all of it does. */
export function shortagesOf(there: ThereToReserve, agreed: readonly ReservedLine[], line: ReservedLine): Shortage[] {
  const short: Shortage[] = [];
  for (const { crop, grams } of mainUses(line.recipe)) {
    const asked = grams * line.batches;
    const left = leftOfCrop(there, agreed, crop, line.week);
    if (left === null || asked <= left) continue;
    const word = cropWord(there.names.get(crop) ?? crop);
    short.push({ kind: "crop", id: crop, asked, left, text: `${line.recipe.title} takes ${measuredWords(asked)} of ${word}, and ${left === 0 ? "nothing is" : `${measuredWords(left)} ${left === 1 ? "is" : "are"}`} left of it for that week.` });
  }
  for (const kind of CONTAINERS) {
    const asked = tenths(useOf(line, kind));
    const { left } = leftOf(there, agreed, kind);
    if (left === null || asked <= left) continue;
    short.push({ kind, id: kind, asked, left, text: `${line.recipe.title} takes ${CONTAINER_WORDS[kind](asked)}, and ${left} ${left === 1 ? "is" : "are"} left.` });
  }
  return short;
}

/** Most grams of a crop that one more line may take in a week, without any agreed line going short; null where none of it grows or lies here. */
export function leftOfCrop(there: ThereToReserve, agreed: readonly ReservedLine[], crop: string, week: IsoWeek): number | null {
  const found = there.crops.find((one) => one.crop === crop);
  const t = there.weeks.weeks.indexOf(week);
  const all = (found?.harvestGrams[0] ?? []).reduce((sum, grams) => sum + grams, 0);
  if (!found || t < 0 || all === 0) return null;
  const takes = takenOf(there, agreed, crop);
  const before = shortOf(found, takes);
  return all - (shortOf(found, takes.map((grams, u) => (u === t ? grams + all : grams))) - before);
}

export function leftOf(there: ThereToReserve, agreed: readonly ReservedLine[], kind: Container): { there: number | null; left: number | null } {
  const amount = there.containers[kind];
  if (amount === null) return { there: null, left: null };
  const reserved = coming(there, agreed).reduce((sum, line) => sum + useOf({ recipe: line.recipe, batches: stillToMake(there, line) }, kind), 0);
  return { there: tenths(amount), left: Math.max(0, tenths(amount - reserved)) };
}

const coming = ({ weeks }: ThereToReserve, lines: readonly ReservedLine[]): ReservedLine[] => lines.filter(({ week }) => weeks.weeks.indexOf(week) >= weeks.running);

function takenOf(there: ThereToReserve, lines: readonly ReservedLine[], crop: string): number[] {
  const takes = there.weeks.weeks.map(() => 0);
  for (const line of coming(there, lines)) {
    const t = there.weeks.weeks.indexOf(line.week);
    takes[t] = (takes[t] ?? 0) + (mainUses(line.recipe).find((use) => use.crop === crop)?.grams ?? 0) * stillToMake(there, line);
  }
  return takes;
}

/** Grams that the lines of one crop go short by, what goes off first being used first. */
function shortOf(crop: SeasonCrop, takes: readonly number[]): number {
  const left = [...(crop.harvestGrams[0] ?? [])];
  return takes.reduce((short, grams, t) => {
    let open = grams;
    for (let picked = Math.max(0, t - crop.keepWeeks + 1); picked <= t && open > 0; picked++) {
      const taken = Math.min(open, left[picked] ?? 0);
      left[picked] = (left[picked] ?? 0) - taken;
      open -= taken;
    }
    return short + open;
  }, 0);
}

/** The referee's word on all lines together: sentences on what cannot be; none when all can. It shares nothing with the reckoning above. */
export function refereeOf(there: ThereToReserve, lines: readonly ReservedLine[], facts: Pick<SeasonFacts, "kitchen">): readonly string[] {
  const known = coming(there, lines).filter(({ recipe }) => mainUses(recipe).every(({ crop }) => leftOfCrop(there, [], crop, there.weeks.weeks[there.weeks.running] as IsoWeek) !== null));
  const sums = new Map<string, Batches>();
  for (const line of known) {
    const week = there.weeks.weeks.indexOf(line.week);
    const key = `${week} ${line.recipe.id}`;
    sums.set(key, { method: line.recipe.id, week, batches: stillToMake(there, line) + (sums.get(key)?.batches ?? 0) });
  }
  const planned = [...sums.values()].filter(({ batches }) => batches > 0);
  const recipes = new Map(known.map(({ recipe }) => [recipe.id, recipe]));
  const zero = there.weeks.weeks.map(() => 0);
  const season: Season = {
    firstWeek: there.weeks.weeks[0] as IsoWeek,
    weeks: zero.length,
    scenarios: [{ id: "usual", chance: 1 }],
    crops: there.crops,
    resources: CONTAINERS.flatMap((id) => (there.containers[id] === null ? [] : [{ id, kind: id === "freezer" || id === "jar" ? ("held" as const) : ("consumed" as const), unit: id === "freezer" ? "l" : "pieces", amount: zero.map(() => there.containers[id] as number) }])),
    equipment: [],
    methods: [...recipes.values()].map((recipe) => plainMethod(recipe, facts, zero)),
    eatFromStorePortions: zero,
    targets: [],
    wishes: [],
    tastes: [],
    agreed: [],
    agreedUntil: 0,
    frozenWeeks: 0,
  };
  return checkSeasonPlan(season, { planned, outcomes: { usual: { made: planned, eat: [], give: [], draw: [] } } }).faults;
}

function plainMethod(recipe: SeasonRecipe, { kitchen }: Pick<SeasonFacts, "kitchen">, zero: readonly number[]): Method {
  const tested = recipe.process !== null && processesFor(recipe.process, kitchen.altitudeM, kitchen.preservation).value.lines.length > 0;
  const untested = needsTestedProcess(recipe) && !tested;
  return {
    id: recipe.id,
    title: recipe.title,
    way: recipe.way,
    // where it is kept ties up its room until somebody eats it, which nobody does here
    keptIn: untested ? "shelf" : "freezer",
    process: untested ? "none" : tested ? "tested" : "not-needed",
    needs: [],
    uses: mainUses(recipe),
    sessionBatches: { min: 1, max: Infinity },
    perSession: {},
    perBatch: Object.fromEntries(CONTAINERS.map((id) => [id, useOf({ recipe, batches: 1 }, id)])),
    portions: portionsOf(recipe.makes),
    keepWeeks: null,
    eatPortions: zero,
    opening: 0,
    recourse: false,
  };
}

const CONTAINER_WORDS: Readonly<Record<Container, (amount: number) => string>> = {
  freezer: (amount) => `${amount}\u00a0l of the freezer`,
  jar: (amount) => `${amount} ${amount === 1 ? "jar" : "jars"}`,
  lid: (amount) => `${amount} ${amount === 1 ? "lid" : "lids"}`,
  bag: (amount) => `${amount} ${amount === 1 ? "bag" : "bags"}`,
};

const tenths = (amount: number): number => Math.round(amount * 10) / 10;
