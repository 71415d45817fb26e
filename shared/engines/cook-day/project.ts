/**
 * The lag form: what a cook day, or a published project instance, becomes before it is solved. Nothing in here knows
 * of kitchens. Starts are whole numbers; start 0 is the beginning of the day and stands at 0.
 * Model: resource-constrained project scheduling with minimum and maximum time lags
 * (Neumann, Schwindt, Zimmermann, Project Scheduling with Time Windows and Scarce Resources, Springer 2003; from memory).
 */

/** start(to) ≥ start(from) + min; a longest wait is a lag the other way round with a negative `min`. */
export interface Lag {
  readonly from: number;
  readonly to: number;
  readonly min: number;
  /** What takes that long, in words, for the explanation of an impossibility; empty where it is a limit. */
  readonly why: string;
}

/** `amount` of something is taken over [start(from) + head, start(to) + tail). */
export interface Use {
  readonly from: number;
  readonly head: number;
  readonly to: number;
  readonly tail: number;
  readonly amount: number;
  /** Counts only when the choice of start `from` fell on this option; −1 = always. */
  readonly option: number;
}

export interface Capacity {
  readonly name: string;
  readonly limit: number;
  readonly uses: readonly Use[];
}

/** Starts `a` and `b` keep apart: start(b) ≥ start(a) + ab, or start(a) ≥ start(b) + ba. */
export interface Pair {
  readonly a: number;
  readonly b: number;
  readonly ab: number;
  readonly ba: number;
  /** Only where both chose this option; −1 = always. */
  readonly option: number;
}

/** One of several like things must be taken (which oven). */
export interface Choice {
  readonly start: number;
  /** Option → earliest start with it. Options are numbered as in the uses; null = cannot be taken. */
  readonly earliest: readonly (number | null)[];
}

export interface Project {
  readonly starts: number;
  /** The start that stands for "everything is done". */
  readonly end: number;
  readonly lengths: readonly number[];
  readonly lags: readonly Lag[];
  readonly capacities: readonly Capacity[];
  readonly pairs: readonly Pair[];
  readonly choices: readonly Choice[];
}

/** Starts by number, and the option taken by each start that has a choice (else −1). */
export interface Plan {
  readonly starts: Int32Array;
  readonly options: Int32Array;
}

/**
 * The same project with every number divided by their greatest common divisor. Some plan of least end has starts that are
 * sums of lags and lengths, so nothing is lost by keeping to that grid.
 */
export function onGrid(project: Project): { project: Project; grid: number } {
  let grid = 0;
  const see = (n: number): void => void (grid = gcd(grid, Math.abs(n)));
  for (const lag of project.lags) see(lag.min);
  for (const { uses } of project.capacities) for (const use of uses) [use.head, use.tail].forEach(see);
  for (const pair of project.pairs) [pair.ab, pair.ba].forEach(see);
  for (const { earliest } of project.choices) for (const e of earliest) see(e ?? 0);
  project.lengths.forEach(see);
  if (grid <= 1) return { project, grid: 1 };
  return { grid, project: divided(project, grid) };
}

/** No plan of least end ends later than this: a longest chain of waits and lengths that visits each start once. */
export function horizonOf(project: Project): number {
  const longest = new Array<number>(project.starts).fill(0);
  const see = (from: number, gap: number): void => void (longest[from] = Math.max(longest[from] as number, gap));
  for (const lag of project.lags) see(lag.from, lag.min);
  for (const { uses } of project.capacities) {
    const head = uses.reduce((least, use) => Math.min(least, use.head), 0);
    for (const use of uses) see(use.to, use.tail - head);
  }
  for (const pair of project.pairs) {
    see(pair.a, pair.ab);
    see(pair.b, pair.ba);
  }
  for (const { earliest } of project.choices) for (const e of earliest) see(0, e ?? 0);
  return longest.reduce((sum, gap) => sum + gap, 0);
}

/**
 * The project read from its end: start i of it stands at the chosen end − start i of the first. The earliest moments of options
 * fall out, so what is made of it gives an order of the starts and not yet a plan.
 */
export function mirrored(project: Project): Project {
  return {
    ...project,
    lags: project.lags.map((lag) => ({ ...lag, from: lag.to, to: lag.from })),
    capacities: project.capacities.map((c) => ({
      ...c,
      uses: c.uses.map((use) => ({ ...use, from: use.to, head: -use.tail, to: use.from, tail: -use.head })),
    })),
    pairs: project.pairs.map((pair) => ({ ...pair, ab: pair.ba, ba: pair.ab })),
    choices: project.choices.map((choice) => ({ ...choice, earliest: choice.earliest.map((e) => (e === null ? null : 0)) })),
  };
}

/** A use that is more than there is: no plan can have it. */
export function overfull(project: Project): Capacity | undefined {
  return project.capacities.find(({ uses, limit }) =>
    uses.some((use) => use.option < 0 && use.amount > limit && (use.from !== use.to || use.tail > use.head)),
  );
}

function divided(project: Project, grid: number): Project {
  return {
    ...project,
    lengths: project.lengths.map((length) => length / grid),
    lags: project.lags.map((lag) => ({ ...lag, min: lag.min / grid })),
    capacities: project.capacities.map((c) => ({ ...c, uses: c.uses.map((use) => ({ ...use, head: use.head / grid, tail: use.tail / grid })) })),
    pairs: project.pairs.map((pair) => ({ ...pair, ab: pair.ab / grid, ba: pair.ba / grid })),
    choices: project.choices.map((choice) => ({ ...choice, earliest: choice.earliest.map((e) => (e === null ? null : e / grid)) })),
  };
}

function gcd(a: number, b: number): number {
  while (b > 0) [a, b] = [b, a % b];
  return a;
}
