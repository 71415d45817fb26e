/** The chosen week in sentences. Amounts in words come from format.ts; this file only decides what is said. */
import type { CalendarCrop, CalendarWeek, Pairing } from "#shared/contracts/calendar.ts";
import { amount, amountSpan, expectedAmount, capital, listed, measured } from "../format.ts";
import type { CropNames } from "./crop-names.ts";

export interface WeekSentence {
  readonly before: string;
  /** Set in the surplus colour; empty in a calm week. */
  readonly over: string;
  readonly after: string;
}

/** Worth a line of its own: likely 50 g or more, as the least step in which amounts are written. */
const LEAST_G = 50;

/** What ripens and how much of it is over. `short` leaves out the span where it stands in the row above. */
export function weekSentence(week: CalendarWeek, short = false): WeekSentence {
  const { grams, eatsGrams, surplusGrams } = week;
  if (grams.high < LEAST_G) return { before: "Nothing ripens this week that has to be eaten.", over: "", after: "" };
  const much = short ? `Most likely ${amount(grams.likely)}.` : `${capital(expectedAmount(grams))}.`;
  if (surplusGrams >= LEAST_G && !week.glut) return { before: `${much} About ${amount(surplusGrams)} of it stays over.`, over: "", after: "" };
  if (surplusGrams < LEAST_G) {
    const planned = week.planned.length > 0 ? "What is not eaten fresh has its place in the plan." : "All of it is eaten fresh or keeps.";
    return { before: `${much} ${planned}`, over: "", after: "" };
  }
  if (eatsGrams < LEAST_G) return { before: `${much} `, over: `${amount(surplusGrams)} is over`, after: "." };
  return { before: `${much} We eat about ${amount(eatsGrams)} a week; `, over: `${amount(surplusGrams)} is over`, after: "." };
}

/** Crops that ripen, most first, those that wait at the end. */
export function ripeCrops(week: CalendarWeek): CalendarCrop[] {
  return week.crops.filter((crop) => crop.grams.likely >= LEAST_G || (!crop.waits && crop.grams.high >= 5 * LEAST_G)).sort((a, b) => Number(a.waits) - Number(b.waits) || b.grams.likely - a.grams.likely);
}

/** “courgette, tomato, chard”: the three that weigh most. */
export function leadingCrops(week: CalendarWeek, names: CropNames): string {
  return ripeCrops(week)
    .filter((crop) => !crop.waits)
    .slice(0, 3)
    .map((crop) => wordFor(crop, names))
    .join(", ");
}

/** “courgette 1,200 g, peas 380 g”, as picked. */
export function pickedWords(week: CalendarWeek, names: CropNames): string {
  const picked = week.crops.filter((crop) => crop.pickedGrams > 0).sort((a, b) => b.pickedGrams - a.pickedGrams);
  return picked.length === 0 ? "nothing" : picked.map((crop) => `${wordFor(crop, names)} ${measured(crop.pickedGrams)}`).join(", ");
}

/** “Uses courgette 1.2 kg and chard 400 g.” */
export function usesWords(uses: Pairing["uses"], names: CropNames): string {
  return uses.length === 0 ? "" : `Uses ${listed(uses.map(({ crop, grams }) => `${names.get(crop)?.word ?? crop} ${grams < LEAST_G ? measured(grams) : amount(grams)}`))}.`;
}

/** What the slider says: “Week 34, 23–29 August, 7.5 kg over”. */
export function weekRuleWords(title: string, week: CalendarWeek | undefined): string {
  const plain = title.replace(" · ", ", ");
  if (!week) return plain;
  if (week.glut) return `${plain}, ${amount(week.surplusGrams)} over`;
  return `${plain}, ${week.grams.high < LEAST_G ? "nothing ripens" : amountSpan(week.grams.low, week.grams.high)}`;
}

export interface EatingLabel {
  /** The week in which the eating line first stands near its height. */
  readonly level: number;
  /** The week before which the words end, clear of the bars of what was picked. */
  readonly at: number;
  readonly words: string;
}

export function eatingLabel({ eats, picked }: { readonly eats: readonly number[]; readonly picked: readonly number[] }, eatsGrams: number): EatingLabel | null {
  const most = Math.max(0, ...eats);
  if (most === 0) return null;
  const level = eats.findIndex((grams) => grams >= 0.9 * most);
  const high = picked.findIndex((grams) => grams >= 0.5 * most);
  return { level, at: high < 0 ? level : Math.min(level, high), words: `we eat ${Math.min(...eats) >= 0.9 * most ? "about" : "up to"} ${amount(eatsGrams)}` };
}

const wordFor = (crop: CalendarCrop, names: CropNames): string => names.get(crop.crop)?.word ?? crop.name;
