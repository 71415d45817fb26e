/** Everything about a cook day that is searched for, and so is done beside the thread that answers. Plain data in, plain data out. */
import { dishesThatFit, replanCookDay, theNightBefore, whatEachAdds, windowsOfRests, type Budget, type CookDayInput, type DayUnderWay, type DishCost, type DishesThatFit, type EveningWork, type Replan, type RestWindow } from "../engines/cook-day/index.ts";
import type { PreservationTables } from "../engines/preservation/index.ts";
import { proposeCookDay, USUAL_BUDGET, type CookDayProposal } from "./cook-day-proposal.ts";
import type { CookDayFacts } from "./facts.ts";

/** Each of these asks the scheduler once for each dish, set or moment that it tries, so each try gets less. */
const A_TRY: Budget = { schedules: 300, seed: 1 };

export interface ChoiceFound {
  readonly fits: DishesThatFit;
  readonly costs: readonly DishCost[];
}

export interface AdviceFound {
  readonly costs: readonly DishCost[];
  readonly rests: readonly RestWindow[];
  readonly evening: readonly EveningWork[];
}

export interface CookDayTasks {
  propose(day: CookDayFacts): CookDayProposal;
  replan(ask: DayUnderWay): Replan;
  choose(ask: { readonly day: CookDayInput; readonly withinMin: number }): ChoiceFound;
  advise(day: CookDayInput): AdviceFound;
}

/** The same tasks, each answered when its turn has come. */
export type CookDayDesk = { readonly [Task in keyof CookDayTasks]: (ask: Parameters<CookDayTasks[Task]>[0]) => Promise<ReturnType<CookDayTasks[Task]>> };

export const cookDayTasks = (tables: PreservationTables): CookDayTasks => ({
  propose: (day) => proposeCookDay(day, tables),
  replan: (ask) => replanCookDay(ask, USUAL_BUDGET),
  choose: ({ day, withinMin }) => ({ fits: dishesThatFit(day, withinMin, A_TRY), costs: whatEachAdds(day, A_TRY) }),
  advise: (day) => ({ costs: whatEachAdds(day, A_TRY), rests: windowsOfRests(day, A_TRY), evening: theNightBefore(day, A_TRY) }),
});
