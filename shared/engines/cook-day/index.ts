/**
 * When does each step of a cook day start, so that all is done soonest, nothing stands too long and hot food is cold in time?
 * Minutes are whole numbers from the start of the day. One input and one budget give one plan, on any machine. Model: README.
 */
import { answerFor, SOLVER } from "./door.ts";
import type { Budget, CookDayInput, CookDayPlan } from "./types.ts";

export { checkCookDay, type PlacedStep, type Verdict } from "./check.ts";
export { dishesThatFit, whatEachAdds, windowsOfRests, type DishCost, type DishesThatFit, type FittingSet, type RestWindow } from "./choose.ts";
export { WASH_UP, withThawing, withWashingUp, type FrozenPart } from "./extra-steps.ts";
export type { DayEvent } from "./events.ts";
export { dayToPlan, lastSteps, type DayAsPut, type DishAsPut } from "./from-day.ts";
export { replanCookDay, type DayUnderWay, type MovedStep, type Replan } from "./late.ts";
export { theNightBefore, type EveningWork } from "./night-before.ts";
export type { Begun } from "./under-way.ts";
export type { StepRef } from "./unrolled.ts";
export type * from "./types.ts";

/**
 * The best plan that the budget finds, with its lower bound; the referee has passed it. A day that cannot be is an answer, with what
 * clashes and ways out; so is one with more loads than a plan is made for.
 */
export function scheduleCookDay(day: CookDayInput, budget: Budget): CookDayPlan {
  return answerFor(day, budget, SOLVER);
}
