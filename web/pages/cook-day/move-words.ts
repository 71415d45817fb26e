/** What is said of a step moved by hand, and of one that may not be. Pure. */
import type { CookDay, Timetable, TimetableStep } from "#shared/contracts/cook-days.ts";
import { inOurUnits } from "../../format.ts";
import { clockAt } from "./day-words.ts";
import { shortWords } from "./lanes.ts";

/** What the referee has against a move; the first two reasons are enough to see it by. */
export function refusalWords(faults: readonly string[]): string {
  const more = faults.length - 2;
  const rest = more <= 0 ? "" : more === 1 ? " One more thing stands against it." : ` ${more} more things stand against it.`;
  return `Not moved. ${faults.slice(0, 2).map(brief).map(inOurUnits).join(" ")}${rest}`;
}

/** Steps are named by all they say; here the first words are enough, since the step stands beside. */
const brief = (fault: string): string => fault.replace(/“([^”]+)”/g, (_, text: string) => `“${text.split(/[,;.:(]/)[0]?.trim() ?? text}”`);

/** “A, slash and bake: moved from 13:30 to 13:35.” */
export function movedWords(day: CookDay, plan: Timetable, moving: readonly TimetableStep[], byMin: number): string {
  const first = moving.reduce((a, b) => (b.startMin < a.startMin ? b : a));
  const others = moving.length - 1;
  const along = others === 0 ? "" : others === 1 ? " and one step with it" : ` and ${others} steps with it`;
  return `${stepName(plan, first)}${along}: moved from ${clockAt(day, first.startMin)} to ${clockAt(day, first.startMin + byMin)}.`;
}

/** “A, slash and bake”. */
export function stepName(plan: Timetable, step: TimetableStep): string {
  const letter = plan.dishes.find(({ dish }) => dish === step.dish)?.letter ?? "";
  return `${letter}, ${shortWords(step.text)}`;
}
