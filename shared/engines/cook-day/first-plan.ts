/**
 * A first plan, and the fallback when the budget of the exact search ends: many orders of the starts, each turned into a plan
 * forwards, backwards and forwards again (Li and Willis, EJOR 56 (1992) 370–379), bred by a genetic algorithm on activity lists
 * (Hartmann, NRL 45 (1998) 733–750; both from memory). Every run of the serial scheme costs one schedule. Units of the project.
 */
import type { Random } from "../../kernel/seeded-random.ts";
import { activityRank, ruleOrders, type ActivityRank } from "./orders.ts";
import { mirrored, type Plan, type Project } from "./project.ts";
import { SerialScheme } from "./serial.ts";
import { NONE, type Windows } from "./windows.ts";

export interface PlanAsk {
  /** Stop as soon as a plan ends here: it cannot end earlier. */
  readonly bound: number;
  readonly horizon: number;
}

const POPULATION = 30;
/** Hartmann 1998: chance that two neighbours of a list change places. */
const SWAP_CHANCE = 0.05;
/** Children in a row that were no better, before all but the best are drawn anew; found by trying, no source. */
const STALE_CHILDREN = 120;
const NO_PLAN = 1_000_000_000;

interface Individual {
  readonly order: Int32Array;
  readonly end: number;
}

/** The best plan found so far; `breed` may be called again to go on. */
export class FirstPlan {
  private readonly decoder: Decoder;
  private readonly rank: ActivityRank;
  private readonly random: Random;
  private readonly rules: Int32Array[];
  private people: Individual[] = [];
  private stale = 0;

  constructor(project: Project, windows: Windows, ask: PlanAsk, random: Random) {
    this.decoder = new Decoder(project, windows, ask);
    this.rank = activityRank(project, windows);
    this.rules = ruleOrders(project, windows, ask.horizon, this.rank);
    this.random = random;
  }

  get plan(): Plan | null {
    return this.decoder.best;
  }

  /** Null while there is no plan. */
  get end(): number | null {
    return this.decoder.best === null ? null : this.decoder.end;
  }

  get used(): number {
    return this.decoder.used;
  }

  /** The lists of the rules; a look before anything is bred. */
  byRules(schedules: number): void {
    this.decoder.limit = schedules;
    while (!this.decoder.done() && this.rules.length > 0) this.people.push(this.decoder.decode(this.rules.shift() as Int32Array));
  }

  /** A plan from elsewhere joins the population. */
  join({ starts }: Plan, end: number): void {
    const order = this.rank.listBy([...starts], -1);
    this.people.push({ order, end });
  }

  /** Goes on until so many schedules have been made since the beginning. */
  breed(schedules: number): void {
    this.byRules(schedules);
    while (!this.decoder.done()) {
      if (this.people.length < POPULATION) this.people.push(this.decoder.decode(this.rank.listBy(biased(this.rank, this.random), 0)));
      else this.replaceWorst();
    }
  }

  private replaceWorst(): void {
    const { people, random } = this;
    const child = this.decoder.decode(mutate(cross(pick(people, random), pick(people, random), random), this.rank, random));
    const worst = people.reduce((at, one, i) => (one.end > (people[at] as Individual).end ? i : at), 0);
    this.stale = people.every((one) => child.end < one.end) ? 0 : this.stale + 1;
    if (child.end <= (people[worst] as Individual).end) people[worst] = child;
    if (this.stale < STALE_CHILDREN) return;
    this.people = people.sort((a, b) => a.end - b.end).slice(0, 2);
    this.stale = 0;
  }
}

/** Turns lists into plans, keeps the best, counts. */
class Decoder {
  best: Plan | null = null;
  end = NO_PLAN;
  used = 0;
  limit = 0;
  private readonly forward: SerialScheme;
  private readonly backward: SerialScheme;
  private readonly project: Project;
  private readonly bound: number;

  constructor(project: Project, windows: Windows, ask: PlanAsk) {
    this.project = project;
    this.bound = ask.bound;
    const slots = ask.horizon + 1;
    this.forward = new SerialScheme(project, windows, slots);
    this.backward = new SerialScheme(mirrored(project), transposed(windows), slots);
  }

  done(): boolean {
    return this.used >= this.limit || this.end <= this.bound;
  }

  decode(order: Int32Array): Individual {
    if (this.done() || !this.forwards(order)) return { order, end: NO_PLAN };
    let end = this.forward.starts[this.project.end] as number;
    let list = sorted(order, this.forward.starts, 1);
    if (this.done()) return { order: list, end };
    this.used++;
    const late = sorted(order, this.ends(), -1);
    if (!this.backward.place(late, [[this.project.end, 0], [0, end]])) return { order: list, end };
    const again = sorted(order, this.backward.starts, -1);
    if (!this.done() && this.forwards(again) && (this.forward.starts[this.project.end] as number) <= end) {
      end = this.forward.starts[this.project.end] as number;
      list = sorted(order, this.forward.starts, 1);
    }
    return { order: list, end };
  }

  private forwards(order: Int32Array): boolean {
    this.used++;
    if (!this.forward.place([...order, this.project.end], [[0, 0]])) return false;
    const end = this.forward.starts[this.project.end] as number;
    if (end < this.end) [this.end, this.best] = [end, this.forward.plan()];
    return true;
  }

  private ends(): Int32Array {
    return this.forward.starts.map((at, i) => at + (this.project.lengths[i] as number));
  }
}

/** Stable, so that equal moments keep the order of the list, which respects the lags. */
function sorted(order: Int32Array, by: Int32Array, sign: 1 | -1): Int32Array {
  const from = sign === 1 ? order : order.slice().reverse();
  return Int32Array.from([...from].sort((a, b) => sign * ((by[a] as number) - (by[b] as number))));
}

function transposed({ size, paths, cycle }: Windows): Windows {
  const other = new Int32Array(paths.length).fill(NONE);
  for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) other[j * size + i] = paths[i * size + j] as number;
  return { size, paths: other, cycle };
}

/** Two are drawn, the better one is taken. */
function pick(people: readonly Individual[], random: Random): Individual {
  const one = people[random.below(people.length)] as Individual;
  const other = people[random.below(people.length)] as Individual;
  return one.end <= other.end ? one : other;
}

/** Two-point crossover: the middle in the second parent's order, head and tail in the first's. */
function cross(one: Individual, other: Individual, random: Random): Int32Array {
  const n = one.order.length;
  const cuts = [random.below(n + 1), random.below(n + 1)].sort((a, b) => a - b);
  const child = new Int32Array(n);
  const taken = new Set<number>();
  let filled = 0;
  const fillFrom = (order: Int32Array, until: number): void => {
    for (let k = 0; k < n && filled < until; k++) {
      const start = order[k] as number;
      if (taken.has(start)) continue;
      taken.add(start);
      child[filled++] = start;
    }
  };
  fillFrom(one.order, cuts[0] as number);
  fillFrom(other.order, cuts[1] as number);
  fillFrom(one.order, n);
  return child;
}

function mutate(order: Int32Array, rank: ActivityRank, random: Random): Int32Array {
  for (let k = 1; k < order.length; k++) {
    if (random.next() >= SWAP_CHANCE) continue;
    const [a, b] = [order[k - 1] as number, order[k] as number];
    if (!rank.precedes(a, b)) [order[k - 1], order[k]] = [b, a];
  }
  return order;
}

/** Long tails first, blurred: what the serial scheme samples from. */
function biased(rank: ActivityRank, random: Random): number[] {
  const spread = rank.criticalPath / 4;
  return rank.latest.map((latest) => latest + random.normal() * spread);
}
