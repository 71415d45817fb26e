/** The season's plan in sentences. Amounts become words in format.ts; this file decides what is said. Pure. */
import type { SeasonPlanAnswer } from "#shared/contracts/season-plan.ts";
import { cropWord } from "#shared/kernel/crop-words.ts";
import { amount, capital, count, length, listed, made, shortDay, weekName, weekNumber } from "../../format.ts";

export type Plan = SeasonPlanAnswer;
export type PlanWeek = Plan["weeks"][number];
export type PlanLineOf = PlanWeek["lines"][number];
export type Asked = Plan["asked"][number];

/** Who worked it out and how sure that is. */
export function sureWords({ plannedBy, status, gapPct }: Pick<Plan, "plannedBy" | "status" | "gapPct">): string {
  if (status === "infeasible") return "What is agreed cannot all be done. What clashes stands below.";
  if (plannedBy === "rule" || status === "rule") return "Worked out by the simple rule, which takes the best way week by week; the solver has not answered. A better plan may exist.";
  if (status === "optimal") return "Worked out by the solver, and proved: no plan for the usual year does better.";
  if (gapPct === null) return "Worked out by the solver, which ran out of time; how much better a plan could be is not known.";
  return `Worked out by the solver, which ran out of time: at best a plan could lose ${lessBy(gapPct)} less.`;
}

/** The gap as a share of what is lost, in words: per cent stand nowhere on these pages. */
function lessBy(gapPct: number): string {
  return TENTHS[Math.max(0, Math.min(10, Math.round(gapPct / 10)))] ?? "a little";
}

const TENTHS = ["a little", "about a tenth", "about a fifth", "about a third", "about two fifths", "about half", "about three fifths", "about two thirds", "about four fifths", "nearly all of it", "all of it"] as const;

/** Grams of a week that lines put up. */
export const putUpGrams = ({ pickedGrams, freshGrams, lostGrams }: Pick<PlanWeek, "pickedGrams" | "freshGrams" | "lostGrams">): number => Math.max(0, pickedGrams - freshGrams - lostGrams);

const fullest = <T>(all: readonly T[], of: (one: T) => number): T | null => all.reduce<T | null>((best, one) => (best === null || of(one) > of(best) ? one : best), null);

/** “Most ripens in week 33: 14 kg, of which 2.3 kg find no use.” */
export function ripensWords(weeks: readonly PlanWeek[]): string {
  const most = fullest(weeks, ({ pickedGrams }) => pickedGrams);
  if (!most || most.pickedGrams === 0) return "Nothing ripens in these weeks.";
  const lost = fullest(weeks, ({ lostGrams }) => lostGrams);
  const first = `Most ripens in ${weekName(most.week)}: about ${amount(most.pickedGrams)}.`;
  if (!lost || lost.lostGrams === 0) return `${first} All of it is eaten, put up or keeps.`;
  return lost === most ? `${first} Of it ${amount(lost.lostGrams)} finds no use.` : `${first} Most is lost in ${weekName(lost.week)}: ${amount(lost.lostGrams)}.`;
}

/** “The kitchen is busiest in week 33: 3 h 40 of 4 h.” */
export function handsWords(weeks: readonly PlanWeek[]): string {
  const most = fullest(weeks, ({ handsOnMin }) => handsOnMin);
  if (!most || most.handsOnMin === 0) return "Nothing is to be cooked or put up.";
  return `Hands are busiest in ${weekName(most.week)}: ${length(most.handsOnMin)}${most.handsOnMostMin > 0 ? ` of ${length(most.handsOnMostMin)}` : ""}.`;
}

const litres = (n: number): string => `${Math.round(n)}\u00a0l`;

/** “The freezer is fullest in week 40: 118 l of 150 l.” */
export function freezerWords({ weeks }: Plan["freezer"]): string {
  const most = fullest(weeks, ({ usedLitres }) => usedLitres);
  if (!most || most.usedLitres === 0) return "Nothing goes into the freezer.";
  if (most.capacityLitres === null) return `The freezer is fullest in ${weekName(most.week)}: ${litres(most.usedLitres)}. Nobody has said how many litres it has; say so in the larder.`;
  const free = most.capacityLitres - most.usedLitres;
  return `The freezer is fullest in ${weekName(most.week)}: ${litres(most.usedLitres)} of ${litres(most.capacityLitres)}${free < 1 ? ", full" : ""}.`;
}

/** What is given away stands together: it is many small lines, each of one crop. */
export const givenAway = ({ lines }: PlanWeek): readonly PlanLineOf[] => lines.filter(({ way }) => way === "give");
export const madeOf = ({ lines }: PlanWeek): readonly PlanLineOf[] => lines.filter(({ way }) => way !== "give");

/** What a week does, in its one line: “Freeze French beans; Tomato sauce, 2 batches; 3 crops to give away”. */
export function titlesWords(week: PlanWeek): string {
  const gives = givenAway(week).length;
  const titles = madeOf(week).map(({ title, batches }) => (batches === 1 ? title : `${title}, ${count(batches, "batch", "batches")}`));
  return [...titles, ...(gives > 0 ? [`${count(gives, "crop", "crops")} to give away`] : [])].join("; ");
}

/** “Give away courgettes 50 g and cucumbers 750 g.” Empty where nothing is. */
export function givenWords(week: PlanWeek): string {
  const uses = givenAway(week).flatMap((line) => line.uses);
  return uses.length === 0 ? "" : `Give away ${listed(uses.map(({ name, grams }) => `${cropWord(name)} ${amount(grams)}`))}.`;
}

/** “About 12 kg ripens: 4 kg eaten fresh and 7.5 kg put up or kept.” */
export function weekWords(week: PlanWeek): string {
  if (week.pickedGrams === 0) return "Nothing ripens.";
  const up = putUpGrams(week);
  const parts = [week.freshGrams > 0 ? `${amount(week.freshGrams)} eaten fresh` : "", up > 0 ? `${amount(up)} put up or kept` : ""].filter(Boolean);
  return `About ${amount(week.pickedGrams)} ripens${parts.length > 0 ? `: ${listed(parts)}` : ""}.`;
}

/** “Makes 6 portions; uses courgettes 1.2 kg; hands on 35 min; 2.4 l of the freezer; 6 jars”. */
export function lineWords({ makes, uses, handsOnMin, freezerLitres, jars }: PlanLineOf): string {
  return [
    `makes ${made(makes)}`,
    uses.length > 0 ? `uses ${listed(uses.map(({ name, grams }) => `${cropWord(name)} ${amount(grams)}`))}` : "",
    handsOnMin > 0 ? `hands on ${length(handsOnMin)}` : "",
    freezerLitres > 0 ? `${Math.round(freezerLitres * 10) / 10}\u00a0l of the freezer` : "",
    jars > 0 ? count(jars, "jar", "jars") : "",
  ]
    .filter(Boolean)
    .join("; ");
}

const ORDER = ["poor", "usual", "good"] as const;
/** From the poor year to the good one. */
export const inOrder = (courses: Plan["courses"]): Plan["courses"] => [...courses].sort((a, b) => ORDER.indexOf(a.id) - ORDER.indexOf(b.id));

/** “By then all 40 portions.” “By then 27 of 40 portions, 13 short.” A wish: “The plan makes all 6 portions.” */
export function reachedWords({ kind, portions, reachedPortions, missingPortions }: Pick<Asked, "kind" | "portions" | "reachedPortions" | "missingPortions">): string {
  const reached = missingPortions === 0 ? `all ${count(portions, "portion", "portions")}` : `${reachedPortions === 0 ? "none" : String(reachedPortions)} of ${count(portions, "portion", "portions")}, ${missingPortions} short`;
  return kind === "target" ? `By then ${reached}.` : `The plan makes ${reached}.`;
}

/** Quiet weeks in a row that say the same stand in one row; a week with lines or a loss stands by itself. */
export function together(weeks: readonly PlanWeek[]): PlanWeek[][] {
  const rows: PlanWeek[][] = [];
  for (const week of weeks) {
    const before = rows.at(-1);
    const [last] = before ?? [];
    const alike = last !== undefined && isQuiet(week) && isQuiet(last) && week.text === last.text && week.away === last.away;
    if (before && alike) before.push(week);
    else rows.push([week]);
  }
  return rows;
}

const isQuiet = ({ lines, lostGrams }: PlanWeek): boolean => lines.length === 0 && lostGrams < 50;

/** “Weeks 41–49 · 11 Oct – 12 Dec”. */
export const weeksTitle = (first: PlanWeek, last: PlanWeek): string =>
  `Weeks\u00a0${weekNumber(first.week)}–${weekNumber(last.week)} · ${shortDay(first.starts, first.starts)} – ${shortDay(last.ends, first.starts)}`;

export const sentence = (text: string): string => (text === "" ? "" : `${capital(text)}${/[.!?]$/.test(text) ? "" : "."}`);
