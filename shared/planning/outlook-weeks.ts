/** The weeks of the calendar: what ripens, what is eaten and over, what is planned, and the ways to use it. */
import type { GlutAnswer } from "../engines/glut/index.ts";
import { pairWeek, type Candidate, type Pairing, type RipeCrop } from "../engines/pairing/index.ts";
import { keepWeeksOf } from "../engines/glut/index.ts";
import { chanceInHarvest } from "../kernel/supply.ts";
import { weekEnd, weekStart } from "../kernel/iso-week.ts";
import { mapBand, type Band } from "../kernel/band.ts";
import { weekHeadline, WORTH_SAYING_GRAMS, type WeekFacts } from "./outlook-words.ts";
import type { OutlookCrop, OutlookWeek, PlannedLine } from "./outlook-types.ts";
import { weekBands, type CropOutlook } from "./outlook-supply.ts";
import type { WeekSpan } from "./season.ts";

export interface WeeksQuestion {
  readonly crops: readonly CropOutlook[];
  /** Balances in the order of `crops`, with the same weeks. */
  readonly glut: GlutAnswer;
  readonly lines: readonly PlannedLine[];
  readonly candidates: readonly Candidate[];
  readonly loadJars: number;
  readonly span: WeekSpan;
}

export function outlookWeeks(question: WeeksQuestion): OutlookWeek[] {
  const { crops, span } = question;
  const together = weekBands(sumOfScenarios(crops.filter((outlook) => !outlook.waits)), span.weeks.length);
  const chances = crops.map((outlook) => chanceInHarvest(outlook.supply));
  return span.weeks.slice(span.lead).map((_, i) => {
    const w = i + span.lead;
    const present = crops.map((outlook, c) => ({ outlook, c, grams: outlook.bands[w] as Band, chance: chances[c]?.[w] as number }));
    return weekOf(question, w, present, together[w] as Band);
  });
}

interface Present {
  readonly outlook: CropOutlook;
  readonly c: number;
  readonly grams: Band;
  readonly chance: number;
}

function weekOf(question: WeeksQuestion, w: number, present: readonly Present[], grams: Band): OutlookWeek {
  const { glut, span } = question;
  const week = span.weeks[w] as string;
  const when = w < span.current ? "past" : w === span.current ? "running" : "coming";
  const balance = glut.weeks[w] as GlutAnswer["weeks"][number];
  const planned = question.lines.filter((line) => line.week === week);
  const kept = present.filter(({ outlook }) => !outlook.waits);
  return {
    week,
    starts: weekStart(week),
    ends: weekEnd(week),
    headline: weekHeadline(weekFacts(question, w, when, present, grams)),
    crops: present.map((one) => cropOf(question, w, one)).filter(isThere),
    grams: mapBand(grams, Math.round),
    pickedGrams: kept.reduce((sum, { outlook }) => sum + (outlook.pickedGrams[w] as number), 0),
    eatsGrams: Math.round(balance.freshGrams),
    surplusGrams: Math.round(balance.surplusGrams),
    glut: balance.glut,
    planned,
    pairings: when === "past" ? [] : pairingsOf(question, w, present),
  };
}

function weekFacts({ glut }: WeeksQuestion, w: number, when: WeekFacts["when"], present: readonly Present[], grams: Band): WeekFacts {
  const balance = glut.weeks[w] as GlutAnswer["weeks"][number];
  return {
    when,
    grams,
    eatsGrams: balance.freshGrams,
    plannedGrams: balance.usedGrams,
    surplusGrams: balance.surplusGrams,
    picked: present.filter(({ outlook }) => when === "past" || !outlook.waits).map(({ outlook }) => ({ name: outlook.crop.name, grams: outlook.pickedGrams[w] as number })),
    waiting: present.filter(({ outlook, c }) => outlook.waits && (glut.crops[c]?.availableGrams[w] as number) >= WORTH_SAYING_GRAMS).map(({ outlook }) => outlook.crop.name),
  };
}

function cropOf({ glut }: WeeksQuestion, w: number, { outlook, c, grams, chance }: Present): OutlookCrop {
  return {
    crop: outlook.crop.slug,
    name: outlook.crop.name,
    grams: mapBand(grams, Math.round),
    pickedGrams: outlook.pickedGrams[w] as number,
    freshGrams: Math.round(glut.crops[c]?.freshGrams[w] as number),
    surplusGrams: Math.round(glut.crops[c]?.surplusGrams[w] as number),
    chanceInHarvest: Math.round(chance * 1000) / 1000,
    waits: outlook.waits,
  };
}

/** What comes in fewer than one season in ten, and is not eaten from the store, has no line in the week. */
const isThere = (crop: OutlookCrop): boolean => crop.grams.high > 0 || crop.pickedGrams > 0 || crop.freshGrams > 0 || crop.surplusGrams > 0;

function pairingsOf({ glut, candidates, loadJars }: WeeksQuestion, w: number, present: readonly Present[]): Pairing[] {
  const ripe = present.flatMap(({ outlook: { crop, waits }, c, grams }): RipeCrop[] => {
    const balance = glut.crops[c];
    const availableGrams = balance?.availableGrams[w] as number;
    if (!(availableGrams > 0)) return [];
    return [{ crop: crop.slug, name: crop.name, ripensGrams: grams.likely, availableGrams, surplusGrams: balance?.surplusGrams[w] as number, keepWeeks: keepWeeksOf(crop, waits), waits }];
  });
  return pairWeek({ ripe, candidates, loadJars, weekSurplusGrams: glut.weeks[w]?.surplusGrams ?? 0 });
}

/** All crops together, added in each scenario. */
function sumOfScenarios(crops: readonly CropOutlook[]): Float64Array[] {
  const first = crops[0];
  if (!first) return [];
  return first.supply.scenarios.map((grams, s) => {
    const sum = new Float64Array(grams);
    for (const { supply } of crops.slice(1)) {
      const more = supply.scenarios[s] as Float64Array;
      for (let w = 0; w < sum.length; w++) sum[w] = (sum[w] as number) + (more[w] as number);
    }
    return sum;
  });
}
