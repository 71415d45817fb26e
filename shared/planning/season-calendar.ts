/** What the season's plan has for a week of the calendar, before the ranked alternatives; what of a dish another recipe makes; what a cook day begins with. */
import type { Pairing } from "../engines/pairing/index.ts";
import type { Part } from "./facts.ts";
import type { OutlookWeek } from "./outlook-types.ts";
import type { PlannedLineWords, SeasonAnswerWords } from "./season-answer-types.ts";

export interface CalendarPairing extends Pairing {
  readonly planned: boolean;
  readonly parts: readonly Part[];
}

export interface CalendarWays {
  readonly pairings: readonly CalendarPairing[];
  readonly cookDay: readonly { readonly recipeId: string; readonly batches: number }[];
}

export interface WaysQuestion {
  readonly week: OutlookWeek;
  readonly plan: SeasonAnswerWords | null;
  /** By recipe: what must be said beside it. */
  readonly cautions: ReadonlyMap<string, readonly string[]>;
  /** By recipe: what it takes from others. */
  readonly parts: ReadonlyMap<string, readonly Part[]>;
}

/** What is agreed of the plan already stands among the chosen ways and is not offered again. */
export function calendarWays({ week, plan, cautions, parts }: WaysQuestion): CalendarWays {
  const chosen = sums(week.planned);
  const lines = (plan?.weeks.find((one) => one.week === week.week)?.lines ?? []).flatMap((line) => stillToChoose(line, chosen.get(line.recipeId) ?? 0));
  const planned = lines.map((line): CalendarPairing => {
    const { recipeId, title, way, batches, uses, makes, handsOnMin, why } = line;
    return { recipeId, title, way, batches, uses: uses.map(({ crop, grams }) => ({ crop, grams })), makes, handsOnMin, why, cautions: cautions.get(recipeId) ?? [], planned: true, parts: parts.get(recipeId) ?? [] };
  });
  const offered = new Set(planned.map(({ recipeId }) => recipeId));
  const others = week.pairings.filter(({ recipeId }) => !offered.has(recipeId)).map((pairing): CalendarPairing => ({ ...pairing, planned: false, parts: parts.get(pairing.recipeId) ?? [] }));
  const cooked = chosen.size > 0 ? [...chosen] : lines.filter(({ way }) => way !== "give").map(({ recipeId, batches }): [string, number] => [recipeId, batches]);
  return { pairings: [...planned, ...others], cookDay: cooked.map(([recipeId, batches]) => ({ recipeId, batches })) };
}

function sums(lines: OutlookWeek["planned"]): Map<string, number> {
  const batches = new Map<string, number>();
  for (const line of lines) batches.set(line.recipeId, (batches.get(line.recipeId) ?? 0) + line.batches);
  return batches;
}

/** A line less what is chosen of it already. */
function stillToChoose(line: PlannedLineWords, chosen: number): PlannedLineWords[] {
  const batches = line.batches - chosen;
  if (batches <= 0) return [];
  if (chosen === 0) return [line];
  const share = batches / line.batches;
  return [{ ...line, batches, uses: line.uses.map((use) => ({ ...use, grams: Math.round(use.grams * share) })), makes: { ...line.makes, amount: Math.round(line.makes.amount * share * 100) / 100 }, handsOnMin: Math.round(line.handsOnMin * share) }];
}

export function standingWords(plan: SeasonAnswerWords, upToDate: boolean): string {
  const by = plan.plannedBy === "solver" ? "From the season's plan" : "From the simple rule's plan of the season";
  return upToDate ? `${by}.` : `${by}, made before the last change; plan again to bring it up to date.`;
}
