/** The method as steps, each with at most one stretch in which it runs by itself, one after another as they are written. */
import type { MinuteRange, StepNeeds } from "../../kernel/recipe.ts";
import { readStep, type StepReading } from "./read-step.ts";
import { sentencesOf } from "./sentences.ts";
import { LONGEST, type Doubt, type ReadStep, type Work } from "./types.ts";

/** Getting something ready and then seeing to it. Common practice, no source. */
const READY_AND_SEEING_TO_MIN = 5;

export interface ReadMethod {
  readonly steps: readonly ReadStep[];
  readonly doubts: readonly Doubt[];
  /** Sentences beyond the most that a recipe can hold. */
  readonly left: readonly string[];
}

export function readMethod(paragraphs: readonly string[], prepMin: number | null, work: Work): ReadMethod {
  const groups: StepReading[][] = [];
  const left: string[] = [];
  let ovenC: number | null = null;
  let full = false;
  for (const paragraph of paragraphs) {
    let group: StepReading[] = [];
    for (const sentence of sentencesOf(paragraph, work)) {
      const reading: StepReading | null = full ? null : readStep(sentence, ovenC, work);
      const joins: boolean = reading !== null && group.length > 0 && fits(group, reading);
      // what comes after a sentence without a place keeps its order, and is not read for nothing
      full ||= !joins && groups.length >= LONGEST.steps;
      if (reading === null || full) {
        left.push(sentence);
        continue;
      }
      ovenC = reading.ovenC ?? ovenC;
      if (joins) group.push(reading);
      else groups.push((group = [reading]));
    }
  }
  const unsaidMin = shareOf(prepMin, groups);
  const after = orderOf(groups);
  const merged = groups.map((group, i) => merge(group, i, after[i] ?? [], unsaidMin));
  return { steps: merged.map(({ step, found }) => ({ step, found })), doubts: merged.flatMap(({ doubts }) => doubts), left };
}

/** One step holds one stretch of waiting and one place to do it in. */
function fits(group: readonly StepReading[], next: StepReading): boolean {
  const length = group.reduce((sum, { step }) => sum + step.text.length + 1, next.step.text.length);
  if (length > LONGEST.step || next.beside !== null) return false;
  const waits = group.some(({ step }) => highOf(step.handsOffMin) > 0);
  if (waits && highOf(next.step.handsOffMin) > 0) return false;
  const hot = group.find(({ step }) => isHot(step.needs))?.step.needs;
  return !hot || !isHot(next.step.needs) || JSON.stringify(hot) === JSON.stringify(next.step.needs);
}

const isHot = (needs: StepNeeds): boolean => needs.oven !== undefined || (needs.burners ?? 0) > 0;
const highOf = (minutes: number | MinuteRange): number => (typeof minutes === "number" ? minutes : minutes.high);
const rangeOf = (minutes: number | MinuteRange): MinuteRange => (typeof minutes === "number" ? { low: minutes, likely: minutes, high: minutes } : minutes);

/** The recipe's own time for the work before the cooking, shared among the steps that give none. */
function shareOf(prepMin: number | null, groups: readonly (readonly StepReading[])[]): number | null {
  const unsaid = groups.filter((group) => group.every(({ handsUnsaid }) => handsUnsaid)).length;
  return prepMin === null || unsaid === 0 ? null : Math.max(1, Math.round(prepMin / unsaid));
}

/** One after another; what is done meanwhile begins where the step before began, and what follows waits for both. */
function orderOf(groups: readonly (readonly StepReading[])[]): string[][] {
  const order: string[][] = [];
  let open: string[] = [];
  groups.forEach((group, i) => {
    const beside = i > 0 && group[0]?.beside !== null;
    order.push(beside ? [...(order[i - 1] as string[])] : open);
    open = beside ? [...open, `s${i + 1}`] : [`s${i + 1}`];
  });
  return order;
}

function merge(group: readonly StepReading[], index: number, after: readonly string[], unsaidMin: number | null): ReadStep & { readonly doubts: readonly Doubt[] } {
  const offs = group.map(({ step }) => rangeOf(step.handsOffMin));
  const off: MinuteRange = { low: sum(offs.map((one) => one.low)), likely: sum(offs.map((one) => one.likely)), high: sum(offs.map((one) => one.high)) };
  const said = sum(group.map(({ handsUnsaid, step }) => (handsUnsaid ? 0 : step.handsOnMin)));
  const usual = group.length === 1 ? (group[0] as StepReading).step.handsOnMin : READY_AND_SEEING_TO_MIN;
  const first = group[0] as StepReading;
  const needs = group.map(({ step }) => step.needs).find(isHot) ?? {};
  return {
    step: {
      id: `s${index + 1}`,
      text: group.map(({ step }) => step.text).join(" "),
      handsOnMin: Math.min(said > 0 ? said : (unsaidMin ?? usual), LONGEST.minutes),
      handsOffMin: off.low === off.high ? off.likely : off,
      needs,
      after,
      ...(first.step.maxWaitMin !== undefined && after.length > 0 ? { maxWaitMin: first.step.maxWaitMin } : {}),
    },
    found: group.flatMap(({ found }) => found),
    doubts: [...besideDoubt(first, index), ...group.flatMap(({ doubts }) => doubts.map((doubt) => ({ ...doubt, path: `steps.${index}.${doubt.path}` })))],
  };
}

const besideDoubt = ({ beside }: StepReading, index: number): Doubt[] => (beside === null || index === 0 ? [] : [{ path: `steps.${index}.after`, text: beside, why: `Taken as done beside step ${index}; what comes next waits for both.` }]);

const sum = (numbers: readonly number[]): number => Math.min(LONGEST.minutes, numbers.reduce((all, one) => all + one, 0));
