/** How long a plan may be looked for, and how that is shared out. Counted in steps of the solver, so that a plan does not hang on how busy the machine is. */
import type { Found } from "./solve.ts";
import type { Level } from "./types.ts";

export interface SolveOptions {
  /** Share of what is picked that later levels may cost the first, and the third. */
  readonly allowance: number;
  /** What a level may take on a quiet machine. It is counted in steps of the solver; the clock ends a plan only after ten times this, and then `stoppedEarly` says so. */
  readonly secondsPerLevel: number;
  /** Steps of the solver for a level, instead of so many seconds' worth of them. */
  readonly stepsPerLevel?: number;
  /** Of the solver's clock for the whole plan, instead of ten levels' worth. */
  readonly secondsInAll?: number;
  /** Only so many levels, from the first; all seven where it is left out. */
  readonly levels?: number;
  /** Told each better plan as it comes, already refereed. */
  readonly onBetter?: (found: Found) => void;
  /** Told when a level begins, and with each better plan. */
  readonly onProgress?: (progress: Progress) => void;
  /** Asked now and then, also within a run of the solver; true ends with the best so far. */
  readonly stop?: () => boolean;
}

export interface Progress {
  readonly level: Level;
  readonly lostGrams: number;
  /** None can lose less; null until it is known. */
  readonly boundGrams: number | null;
}

/** What the solver does in a second on one core of a quiet machine; measured on the worked seasons. */
export const STEPS_A_SECOND = { small: 3000, large: 1500 };
export const CLOCK_FOR_LEVELS = 10;
/** A plan better than the rule's is wanted at once: so many steps for each window of the first way through. */
export const ROLL_STEPS = 400;
/** In levels' worth of steps: the bound of the loss, each run of the blend as a whole, its crossings and pieces, what is asked for, loss down again, each later level, loss down at the end. */
export const SHARE = { bound: 1.4, blend: 2, crossing: 1.3, pieces: 0.5, asked: 0.5, down: 0.7, later: 0.1, close: 0.3 };
/** So many roads from the same start: each ends in another good plan, and crossed they give a better one. */
export const ROADS = 3;
